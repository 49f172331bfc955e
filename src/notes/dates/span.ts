import {
  type Day,
  dayOfMonthOf,
  daysInMonth,
  fromEpochDays,
  monthOf,
  toEpochDays,
  yearOf,
} from '../../engine/day.ts';
import type { DateReading, Lean } from '../contract.ts';

/** Days of the epoch, both ends inclusive, and the one of them that a note takes (RULES §7). */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly on: number;
}

type Assumed = DateReading['assumed'][number];

/**
 * A phrase that may recur: `at(k)` is its occurrence in the k-th year, month (year × 12 + month − 1) or week
 * (0 is the week of today), or null where there is none, e.g. 31 June. A fixed phrase has `at(0)` only.
 */
export interface Phrase {
  readonly cycle: 'fixed' | 'year' | 'month' | 'week';
  readonly at: (k: number) => Span | null;
  readonly assumed: readonly Assumed[];
  readonly isAround?: boolean;
  /** Last day of the date that the phrase is counted from, where it is: "90 days before september 10". */
  readonly anchorEnd?: (k: number) => number | null;
}

/** A phrase with the day it is read on: what the composing rules need to settle an anchor. */
export interface Today {
  readonly day: number;
  readonly year: number;
  readonly month: number;
}

export function todayOf(today: Day): Today {
  return { day: toEpochDays(today), year: yearOf(today), month: monthOf(today) };
}

/** Day of the epoch, or null if there is no such day. Month 1–12. */
export function dayNumber(year: number, month: number, dayOfMonth: number): number | null {
  if (month < 1 || month > 12 || dayOfMonth < 1 || dayOfMonth > daysInMonth(year, month)) return null;
  if (year < 1000 || year > 9998) return null;
  return Date.UTC(year, month - 1, dayOfMonth) / 86_400_000;
}

/** Days written so far: notes tell of the same few hundred, and writing one takes longer than reading a word. */
const written = new Map<number, Day>();
const MOST_WRITTEN = 2000;

/** As `fromEpochDays`. */
export function dayAt(day: number): Day {
  const known = written.get(day);
  if (known !== undefined) return known;
  const text = fromEpochDays(day);
  if (written.size >= MOST_WRITTEN) written.clear();
  written.set(day, text);
  return text;
}

/** 0 (Sunday) to 6. */
export function weekdayNumber(day: number): number {
  return (((day + 4) % 7) + 7) % 7;
}

/** The day `months` later, or the last day of that month where it has no such day. */
export function addMonths(day: number, months: number): number {
  const text = fromEpochDays(day);
  const index = yearOf(text) * 12 + monthOf(text) - 1 + months;
  const year = Math.floor(index / 12);
  const month = (((index % 12) + 12) % 12) + 1;
  return dayNumber(year, month, Math.min(dayOfMonthOf(text), daysInMonth(year, month))) ?? day;
}

export function single(day: number): Span {
  return { from: day, to: day, on: day };
}

export function spanOf(from: number, to: number, on: number = from): Span {
  return { from, to, on };
}

export function fixed(span: Span | null): Phrase {
  return { cycle: 'fixed', at: () => span, assumed: [] };
}

export function yearly(at: (year: number) => Span | null): Phrase {
  return { cycle: 'year', at, assumed: ['year'] };
}

export function mapPhrase(phrase: Phrase, change: (span: Span) => Span | null): Phrase {
  return {
    ...phrase,
    at: (k) => {
      const span = phrase.at(k);
      return span && change(span);
    },
  };
}

/** A phrase counted from another: `mapPhrase`, and the other's end is kept. */
export function countFrom(phrase: Phrase, change: (span: Span) => Span | null): Phrase {
  const anchorEnd = phrase.anchorEnd ?? ((k: number) => phrase.at(k)?.to ?? null);
  return { ...mapPhrase(phrase, change), anchorEnd };
}

/** Around X is X plus or minus three days. */
const AROUND_DAYS = 3;

export function widen(phrase: Phrase): Phrase {
  const wide = mapPhrase(phrase, ({ from, to, on }) => ({
    from: from - AROUND_DAYS,
    to: to + AROUND_DAYS,
    on,
  }));
  return { ...wide, isAround: true };
}

/** How many cycles either side of today are looked at; 29 February can be eight years away (1896–1904). */
const REACH = { fixed: 0, year: 9, month: 13, week: 4 } as const;

function middle(phrase: Phrase, today: Today): number {
  if (phrase.cycle === 'year') return today.year;
  if (phrase.cycle === 'month') return today.year * 12 + today.month - 1;
  return 0;
}

/**
 * Past is the latest starting on or before today, future the earliest ending on or after it. A day counted back
 * from a coming one belongs to that one, though it may be over: on 2 July "90 days before september 10" is 12 June.
 */
export function pickByLean(phrase: Phrase, today: Today, lean: Lean): Span | null {
  if (phrase.cycle === 'fixed') return phrase.at(0);
  if (lean === 'past') return latest(phrase, today, (span) => span.from <= today.day);
  return earliest(
    phrase,
    today,
    (span, k) => Math.max(span.to, phrase.anchorEnd?.(k) ?? span.to) >= today.day,
  );
}

/** The latest occurrence that `fits`. */
export function latest(phrase: Phrase, today: Today, fits: (span: Span) => boolean): Span | null {
  const k = middle(phrase, today);
  for (let i = REACH[phrase.cycle]; i >= -REACH[phrase.cycle]; i--) {
    const span = phrase.at(k + i);
    if (span && fits(span)) return span;
  }
  return null;
}

/** The earliest occurrence that `fits`. */
export function earliest(
  phrase: Phrase,
  today: Today,
  fits: (span: Span, k: number) => boolean,
): Span | null {
  const k = middle(phrase, today);
  for (let i = -REACH[phrase.cycle]; i <= REACH[phrase.cycle]; i++) {
    const span = phrase.at(k + i);
    if (span && fits(span, k + i)) return span;
  }
  return null;
}
