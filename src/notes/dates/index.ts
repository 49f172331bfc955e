/**
 * Dates as growers write them: whole phrases (`readDates`) and dates inside notes (`findDates`, `findVagueDates`).
 *
 * How it is built. `tokenize` cuts a text into words, numbers and signs and gives each every role it may play
 * (words.ts: months, weekdays, units, … with their spellings). Rules, one a family of phrases, read at a token and
 * return a `Phrase` with the token after it; `grammar.ts` lists them, takes the longest find, and joins finds to
 * ranges and "around". A `Phrase` is a span of days for every year, month or week it may mean; `pickByLean` (span.ts)
 * picks one. In a note (`prose`) a rule first asks prose.ts, weekdays-in-prose.ts or slashes-in-prose.ts whether the
 * words around prove a date.
 *
 * To add a phrase:
 * - a spelling or abbreviation: a word in its row of words.ts;
 * - a holiday: a row in holidays.ts;
 * - a vague past ("yonks back"): an entry in vague.ts;
 * - a word that looks like a date and is none: a word in the set it belongs to in prose.ts and its neighbours;
 * - a new kind of phrase: a rule, and a line in the list of grammar.ts.
 * Its test is a line in tests/notes/corpus/dates-own.jsonl, or a row in the tables of tests/notes/dates/.
 *
 * All is arithmetic on days: no clock, no zone, no `Date` but UTC midnights.
 */
import { type Day, fromEpochDays, parseDay, toEpochDays } from '../../engine/day.ts';
import type { Hemisphere } from '../../engine/season.ts';
import type { DateHit, DateOrder, DateReading, Lean } from '../contract.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { shiftDay } from './amounts.ts';
import { readPhrase } from './grammar.ts';
import { type Input, type Problem, type Read, textAt } from './input.ts';
import { dayAt, earliest, pickByLean, type Span, todayOf } from './span.ts';
import { type Token, tokenize } from './tokens.ts';
import { vagueEndAt } from './vague.ts';
import { TIMES_OF_DAY, type Unit } from './words.ts';

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

/** Words that may come before a date phrase without changing it. */
const LEADING = wordSet(
  'on in by from since until till til during over sometime maybe probably possibly perhaps likely',
);
/** What may come after one. */
const TRAILING = new Set([
  '',
  ...'i think|i guess|i reckon|i believe|maybe|probably|possibly|perhaps|please|pls|sometime|at the latest|latest|to the day|or thereabouts|iirc'.split(
    '|',
  ),
]);
/** "in the sun", "some sat": these four are days only where they stand first or after one of these. */
const SHORT_DAYS = new Set(['sun', 'sat', 'mon', 'wed']);
const BEFORE_SHORT_DAY = new Set(['on', 'by', 'since', 'until', 'till', 'til', 'maybe', 'probably']);

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
      const isShort = i > 0 && read.end === i + 1 && SHORT_DAYS.has(textAt(input, i));
      if (read.problem || (isShort && !BEFORE_SHORT_DAY.has(textAt(input, i - 1)))) return null;
      const span = spanFor(read, input, context.anchor ? toEpochDays(context.anchor) : null);
      return span && placed(span, read);
    }
    // "morning of july 4", "some time in may".
    const isPair = SECOND_OF_PAIR.get(textAt(input, i)) === textAt(input, i + 1);
    if (isPair) i++;
    else if (!LEADING.has(textAt(input, i))) return null;
  }
  return null;
}

const SECOND_OF_PAIR = new Map([
  ...[...TIMES_OF_DAY].map((time) => [time, 'of'] as const),
  ['some', 'time'],
  ['first', 'thing'],
]);

function isRest(tokens: readonly Token[], end: number): boolean {
  const rest = tokens.slice(end).filter((token) => token.isWord || token.number !== null);
  return rest.length <= 4 && TRAILING.has(rest.map((token) => token.text).join(' '));
}

function inputOf(tokens: readonly Token[], context: DateContext, prose: boolean): Input {
  const { hemisphere, order, lean } = context;
  return { tokens, today: todayOf(context.today), hemisphere, order, lean, prose, anchors: new Map() };
}

function spanFor(read: Read, input: Input, anchor: number | null): Span | null {
  if (!read.relative) {
    const span = pickByLean(read.phrase, input.today, input.lean);
    // "Early july" on the 2nd: what is told of has happened by today. Around a day to come stays there, to be asked.
    const isRunning = span && input.lean === 'past' && span.from <= input.today.day && !read.phrase.isAround;
    return isRunning && span.to >= input.today.day
      ? { ...span, on: Math.min(span.on, input.today.day) }
      : span;
  }
  if (anchor === null) return null;
  const day = shiftDay(anchor, read.relative.count, read.relative.unit);
  return { from: day, to: day, on: day };
}

function placed(span: Span, read: Read): PlacedReading {
  const from = dayAt(span.from);
  return {
    from,
    to: span.to === span.from ? from : dayAt(span.to),
    on: span.on === span.from ? from : dayAt(span.on),
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
  const lastCore = tokens.findLastIndex((token) => token.isCore);
  if (lastCore < 0) return hits;
  const input = inputOf(tokens, context, true);
  let anchor = context.anchor ? toEpochDays(context.anchor) : null;
  for (let i = 0; i <= lastCore; ) {
    const read = readPhrase(input, i);
    if (!read) {
      i++;
      continue;
    }
    const hit = hitOf(read, input, i, text, anchor);
    if (hit) {
      const before = hits.at(-1);
      const within = before && dayWithin(hit, before, text);
      if (within) hits.pop();
      hits.push(within ?? followOn(hit, before, text, context.today));
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
  const index = first.start;
  const length = last.end - index;
  const typed = text.slice(index, last.end);
  if (read.relative && read.relative.count < 0 && anchor === null) return null;
  const unanchored = read.relative && read.relative.count !== 0 && anchor === null ? 'unanchored' : undefined;
  const problem = read.problem ?? unanchored;
  if (problem) {
    const today = fromEpochDays(input.today.day);
    return { from: today, to: today, on: today, assumed: [], index, length, text: typed, problem };
  }
  const span = spanFor(read, input, anchor ?? input.today.day);
  if (!span) return null;
  const { from, to, on, assumed } = placed(span, read);
  // What only some hits have is set on them: a spread into a literal costs more than all the rest of a hit.
  const hit: { -readonly [K in keyof PlacedHit]: PlacedHit[K] } = {
    from,
    to,
    on,
    assumed,
    index,
    length,
    text: typed,
  };
  if (read.relative) {
    hit.relative = read.relative;
    return hit;
  }
  const { day } = input.today;
  if (read.phrase.cycle === 'fixed' || span.from > day) return hit;
  const coming = earliest(read.phrase, input.today, (next) => next.from > day);
  if (coming) hit.coming = dayAt(coming.on);
  return hit;
}

/** "in february on the 9th": the day of the month just named. */
function dayWithin(hit: PlacedHit, before: PlacedHit, text: string): PlacedHit | null {
  if (before.problem || hit.problem || hit.assumed.join() !== 'month' || hit.from !== hit.to) return null;
  if (
    !before.from.endsWith('-01') ||
    before.to < `${before.from.slice(0, 8)}28` ||
    before.to.slice(0, 7) !== before.from.slice(0, 7)
  )
    return null;
  if (!/^[\s,]*on\s*$/i.test(text.slice(before.index + before.length, hit.index))) return null;
  const on = parseDay(`${before.from.slice(0, 8)}${hit.on.slice(8)}`);
  const length = hit.index + hit.length - before.index;
  return (
    on && { ...before, from: on, to: on, on, length, text: text.slice(before.index, before.index + length) }
  );
}

/** "went in march 1, roots on the 17th": a bare day of the month goes on from the date told before it. */
function followOn(hit: PlacedHit, before: PlacedHit | undefined, text: string, today: Day): PlacedHit {
  if (!before || before.problem || hit.problem || hit.assumed.join() !== 'month' || hit.from !== hit.to)
    return hit;
  if (!before.assumed.includes('year') || before.from !== before.to) return hit;
  const between = text.slice(before.index + before.length, hit.index).toLowerCase();
  const repaired = /\b(?:no|wait|sorry|oops|edit|actually|mean|meant)\b/.test(between);
  if (!repaired && /[.!?;\n]/.test(between)) return hit;
  const [year, month] = [before.on.slice(0, 4), before.on.slice(5, 7)];
  const on = parseDay(`${year}-${month}-${hit.on.slice(8)}`);
  return on && (repaired || on >= before.on) && on <= today && on < hit.on
    ? { ...hit, from: on, to: on, on }
    : hit;
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
