import { type Day, fromEpochDays, toEpochDays } from '../../engine/day.ts';
import type { Hemisphere } from '../../engine/season.ts';
import type { DateHit, DateOrder, DateReading, Lean } from '../contract.ts';
import { shiftDay } from './amounts.ts';
import { readPhrase } from './grammar.ts';
import { type Input, type Problem, type Read, textAt } from './input.ts';
import { earliest, pickByLean, type Span, todayOf } from './span.ts';
import { type Token, tokenize } from './tokens.ts';
import { vagueEndAt } from './vague.ts';
import type { Unit } from './words.ts';

export interface DateContext {
  readonly today: Day;
  readonly hemisphere: Hemisphere;
  readonly order: DateOrder;
  readonly lean: Lean;
  /** The day "3 days later" counts from; in `findDates` the hit before, else this. */
  readonly anchor?: Day;
}

/** A reading with the day a note takes from it. */
export interface PlacedReading extends DateReading {
  readonly on: Day;
}

/** A date phrase in a note. */
export interface PlacedHit extends DateHit {
  /** The single day a note takes (RULES §7). */
  readonly on: Day;
  /** Set when the phrase cannot be a day: `from`, `to` and `on` are then today. Ask for the date. */
  readonly problem?: Problem;
  /** Set on "3 days later", "the next day", "same day": `on` counts from the hit before, or from `anchor`. */
  readonly relative?: { readonly count: number; readonly unit: Unit };
  /** For a day whose year or month was assumed in the past: its next occurrence after today. */
  readonly coming?: Day;
}

/** Words that may stand around a date phrase without changing it. */
const LEADING = new Set(
  'on in by from since until till til over sometime some maybe probably possibly perhaps likely think i guess for at during of the say its it is was be first thing morning night evening afternoon'.split(
    ' ',
  ),
);
const TRAILING = new Set([
  'i',
  'think',
  'maybe',
  'probably',
  'guess',
  'please',
  'pls',
  'sometime',
  'latest',
  '?',
  '!',
  '.',
  ',',
  'at',
  'the',
  'or',
  'possibly',
]);

/**
 * `text` as a whole as a date phrase, or null if it is not one, or too vague.
 * `readDates('mid sept', …) //=> { from: '2026-09-11', to: '2026-09-20', on: '2026-09-15', assumed: ['year', 'part'] }`
 */
export function readDates(text: string, context: DateContext): PlacedReading | null {
  const tokens = tokenize(text).filter(
    (token) =>
      token.isWord || token.number !== null || token.ordinal !== null || token.text.charCodeAt(0) < 0x2100,
  );
  if (tokens.length === 0 || tokens.length > 24) return null;
  const input = inputOf(tokens, context, false);
  for (let i = 0; i < tokens.length; i++) {
    const read = readPhrase(input, i);
    if (read && isRest(tokens, read.end)) {
      if (read.problem) return null;
      const span = spanFor(read, input, context.anchor ? toEpochDays(context.anchor) : null);
      return span && placed(span, read);
    }
    if (!LEADING.has(textAt(input, i))) return null;
  }
  return null;
}

function isRest(tokens: readonly Token[], end: number): boolean {
  for (let i = end; i < tokens.length; i++) if (!TRAILING.has(tokens[i]?.text ?? '')) return false;
  return true;
}

function inputOf(tokens: readonly Token[], context: DateContext, prose: boolean): Input {
  const { hemisphere, order, lean } = context;
  return { tokens, today: todayOf(context.today), hemisphere, order, lean, prose };
}

function spanFor(read: Read, input: Input, anchor: number | null): Span | null {
  if (!read.relative) return pickByLean(read.phrase, input.today, input.lean);
  if (anchor === null) return null;
  const day = shiftDay(anchor, read.relative.count, read.relative.unit);
  return { from: day, to: day, on: day };
}

function placed(span: Span, read: Read): PlacedReading {
  return {
    from: fromEpochDays(span.from),
    to: fromEpochDays(span.to),
    on: fromEpochDays(span.on),
    assumed: read.phrase.assumed,
  };
}

let lastText = '';
let lastTokens: readonly Token[] = [];

/** A note is asked for its dates and for its vague pasts in turn: its tokens are kept for the second. */
function tokensOf(text: string): readonly Token[] {
  if (text !== lastText) {
    lastTokens = tokenize(text);
    lastText = text;
  }
  return lastTokens;
}

/** The date phrases of a note, left to right, not overlapping. */
export function findDates(text: string, context: DateContext): PlacedHit[] {
  const tokens = tokensOf(text);
  const hits: PlacedHit[] = [];
  if (!tokens.some((token) => token.isCore)) return hits;
  const input = inputOf(tokens, context, true);
  let anchor = context.anchor ? toEpochDays(context.anchor) : null;
  for (let i = 0; i < tokens.length; ) {
    const read = readPhrase(input, i);
    if (!read) {
      i++;
      continue;
    }
    const hit = hitOf(read, input, i, text, anchor);
    if (hit) {
      hits.push(hit);
      anchor = hit.problem ? anchor : toEpochDays(hit.on);
    }
    i = hit ? read.end : i + 1;
  }
  return hits;
}

function hitOf(read: Read, input: Input, i: number, text: string, anchor: number | null): PlacedHit | null {
  const first = input.tokens[i];
  const last = input.tokens[read.end - 1];
  if (!first || !last) return null;
  const where = {
    index: first.start,
    length: last.end - first.start,
    text: text.slice(first.start, last.end),
  };
  const unanchored = read.relative && read.relative.count !== 0 && anchor === null ? 'unanchored' : undefined;
  const problem = read.problem ?? unanchored;
  if (problem) {
    const today = fromEpochDays(input.today.day);
    return { from: today, to: today, on: today, assumed: [], problem, ...where };
  }
  const span = spanFor(read, input, anchor ?? input.today.day);
  if (!span) return null;
  const hit = { ...placed(span, read), ...where };
  if (read.relative) return { ...hit, relative: read.relative };
  const { day } = input.today;
  if (read.phrase.cycle === 'fixed' || span.from > day) return hit;
  const coming = earliest(read.phrase, input.today, (next) => next.from > day);
  return coming ? { ...hit, coming: fromEpochDays(coming.on) } : hit;
}

/** The single day a note takes from a reading (RULES §7). */
export function noteDay(reading: PlacedReading | PlacedHit): Day {
  return reading.on;
}

export interface VagueHit {
  readonly index: number;
  readonly length: number;
  readonly text: string;
}

/** Pasts too vague to place: "a while back", "ages ago", "the other day". */
export function findVagueDates(text: string): VagueHit[] {
  const tokens = tokensOf(text);
  const hits: VagueHit[] = [];
  for (let i = 0; i < tokens.length; ) {
    const end = vagueEndAt(tokens, i);
    const first = tokens[i];
    const last = tokens[end - 1];
    if (end < 0 || !first || !last) {
      i++;
      continue;
    }
    hits.push({
      index: first.start,
      length: last.end - first.start,
      text: text.slice(first.start, last.end),
    });
    i = end;
  }
  return hits;
}
