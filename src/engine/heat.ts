import { type DailySeries, MISSING, toTenths } from './climate.ts';
import { dayInYear, isLeapYear, type MonthDay, monthDayOf } from './day.ts';
import type { Hemisphere } from './season.ts';

/** Calendar days of a common year; 29 February counts as the 28th. */
const CALENDAR_DAYS = 365;

/** A day's share is taken over this many days to either side. Ours. */
const HALF_WINDOW_DAYS = 7;

/** Heat is reliable on days on which at least this share of highs reached the mark. Ours. */
const RELIABLE_SHARE = 0.5;

export const DEFAULT_MARK_F = 80;
export const DEFAULT_MARK_C = 27;

/** Where the reliable heat of a place ends, by its daily highs. */
export type HeatEnd =
  | {
      /** Heat ends on this day of the year. */
      readonly kind: 'date';
      readonly heatEnd: MonthDay;
      /** Its first day, where the unbroken run of reliable days begins. */
      readonly heatStart: MonthDay;
      readonly greatestShare: number;
    }
  | { readonly kind: 'never-ends'; readonly greatestShare: number }
  /** No time of the year has half of its days at the mark; `null` without any reading. */
  | { readonly kind: 'none'; readonly greatestShare: number | null };

export interface HeatOptions {
  /** °C. It is rounded to the tenth a series keeps, so that 80 °F days in such a series reach 80 °F. */
  readonly markC: number;
  readonly hemisphere: Hemisphere;
}

/**
 * The last day of the year's unbroken run of reliable heat: around the calendar day of greatest share, days
 * of which at least half of all observed highs within a week to either side reach the mark. All seasons are
 * pooled; missing days count neither way.
 */
export function heatEndOf(series: DailySeries, options: HeatOptions): HeatEnd {
  const shares = sharesOf(series, options.markC);
  const start = options.hemisphere === 'N' ? 0 : SOUTHERN_START;
  let peak: number | null = null;
  // From the season's first day on, so that the earliest of tied days is the season's earliest.
  for (let i = 0; i < CALENDAR_DAYS; i++) {
    const at = (start + i) % CALENDAR_DAYS;
    const share = shares[at] ?? null;
    if (share !== null && (peak === null || share > (shares[peak] ?? 0))) peak = at;
  }
  if (peak === null) return { kind: 'none', greatestShare: null };
  const greatestShare = shares[peak] ?? 0;
  if (greatestShare < RELIABLE_SHARE) return { kind: 'none', greatestShare };
  if (shares.every(isReliable)) return { kind: 'never-ends', greatestShare };
  return {
    kind: 'date',
    heatEnd: calendarDay(runEnd(shares, peak, 1)),
    heatStart: calendarDay(runEnd(shares, peak, -1)),
    greatestShare,
  };
}

/**
 * For each of 365 calendar days, which part of the observed highs within a week reached the mark; null where
 * none was observed.
 */
export function sharesOf(series: DailySeries, markC: number): readonly (number | null)[] {
  const mark = toTenths(markC);
  const observed = new Int32Array(CALENDAR_DAYS);
  const reached = new Int32Array(CALENDAR_DAYS);
  for (const { year, tmax } of series) {
    const leap = isLeapYear(year);
    for (let slot = 0; slot < tmax.length; slot++) {
      const high = tmax[slot] ?? MISSING;
      if (high === MISSING) continue;
      const at = leap && slot >= LEAP_DAY ? slot - 1 : slot;
      observed[at] = (observed[at] ?? 0) + 1;
      if (high >= mark) reached[at] = (reached[at] ?? 0) + 1;
    }
  }
  return Array.from({ length: CALENDAR_DAYS }, (_, at) => {
    const days = windowSum(observed, at);
    return days === 0 ? null : windowSum(reached, at) / days;
  });
}

/** Slot of 29 February in a leap year. */
const LEAP_DAY = 59;

/** Slot of 1 July, the first day of a southern season, in a common year. */
const SOUTHERN_START = 181;

function windowSum(of: Int32Array, around: number): number {
  let sum = 0;
  for (let d = around - HALF_WINDOW_DAYS; d <= around + HALF_WINDOW_DAYS; d++) {
    sum += of[(d + CALENDAR_DAYS) % CALENDAR_DAYS] ?? 0;
  }
  return sum;
}

function isReliable(share: number | null): boolean {
  return share !== null && share >= RELIABLE_SHARE;
}

/** The last reliable day from `peak` in that direction, around the turn of the year if need be. */
function runEnd(shares: readonly (number | null)[], peak: number, step: 1 | -1): number {
  let at = peak;
  for (;;) {
    const next = (at + step + CALENDAR_DAYS) % CALENDAR_DAYS;
    if (!isReliable(shares[next] ?? null)) return at;
    at = next;
  }
}

function calendarDay(slot: number): MonthDay {
  const common = 2001;
  return monthDayOf(dayInYear(common, slot));
}
