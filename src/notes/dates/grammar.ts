import { readDayMonth, readDayOfMonth, readMonthDay } from './absolute.ts';
import { readBesideAnchor, readWeekOf } from './beside.ts';
import { readCalendarUnit, readSeasonsAgo, readThisTime, readWeekdaysAgo } from './calendar-units.ts';
import { readByChrono } from './chrono.ts';
import { readDayWord, readFollowing } from './day-words.ts';
import { dayOfMonthAt, type Input, isClauseEnd, type Read, type Rule, skipThe, textAt } from './input.ts';
import { readNthOfMonth, readPart, readStretch, readYear } from './months.ts';
import { readHoliday, readWeekday, suffixed } from './named.ts';
import { readNumeric } from './numeric.ts';
import { readAmount } from './relative.ts';
import {
  fixed,
  mapPhrase,
  type Phrase,
  pickByLean,
  type Span,
  single,
  spanOf,
  type Today,
  weekdayNumber,
  widen,
} from './span.ts';
import { mondayOf } from './weekdays.ts';
import { AROUND, BEFORE_RANGE, TO, WEEKENDS } from './words.ts';

/** A phrase within a phrase within a phrase; deeper nesting is nobody's date. */
const MAX_DEPTH = 3;

const DATES: readonly Rule[] = [readMonthDay, readDayMonth, readNumeric, readDayOfMonth];

/** What stands after "before", "after", "week of": any phrase. */
const readAnchor: Rule = (input, i, depth) => {
  const key = i * (MAX_DEPTH + 2) + depth;
  const known = input.anchors.get(key);
  if (known !== undefined) return known;
  const read = readItem(input, i, depth);
  input.anchors.set(key, read);
  return read;
};

/** One rule a family; the longest find wins, the earlier of two as long. */
const RULES: readonly Rule[] = [
  readDayWord,
  readPart,
  readNthOfMonth,
  readHoliday,
  ...DATES,
  readWeekday([...DATES, readHoliday]),
  readAmount(readAnchor),
  readBesideAnchor(readAnchor),
  readWeekOf(readAnchor),
  readCalendarUnit,
  readFollowing,
  readThisTime,
  readWeekdaysAgo,
  readSeasonsAgo,
  readStretch,
  readYear,
  readByChrono,
];

/** The longest single phrase at `i`. */
export function readItem(input: Input, i: number, depth: number): Read | null {
  if (depth > MAX_DEPTH || !input.tokens[i]?.isStart) return null;
  let best: Read | null = null;
  for (const rule of RULES) {
    const read = rule(input, i, depth);
    if (read && (!best || read.end > best.end)) best = read;
  }
  return best && orSo(input, weekdayBehind(input, dayBehind(input, fourthWeekend(input, best))));
}

/** "june 7, sunday", "28 june (sunday)": taken in where the two agree. */
function weekdayBehind(input: Input, read: Read): Read {
  if (read.phrase.cycle === 'week' || read.problem || read.relative) return read;
  const sign = textAt(input, read.end);
  const at = sign === ',' || sign === '(' ? read.end + 1 : read.end;
  const token = input.tokens[at];
  if (token?.weekday == null || (token.text.length < 5 && sign !== '(')) return read;
  const span = pickByLean(read.phrase, input.today, input.lean);
  if (!span || span.from !== span.to || weekdayNumber(span.from) !== token.weekday) return read;
  return { ...read, end: sign === '(' && textAt(input, at + 1) === ')' ? at + 2 : at + 1 };
}

/** "in february, the 21st": the day of the month that was named. */
function dayBehind(input: Input, read: Read): Read {
  if (read.phrase.cycle !== 'year' || read.problem || read.relative) return read;
  let at = read.end;
  if (textAt(input, at) === ',' || textAt(input, at) === '(') at++;
  const the = skipThe(input, at);
  const day = the > at ? dayOfMonthAt(input, the) : null;
  if (!day?.isOrdinal || !isClauseEnd(input, day.end)) return read;
  const phrase = mapPhrase(read.phrase, (span) => {
    const on = span.from + day.value - 1;
    return span.to - span.from >= 27 && on <= span.to ? single(on) : span;
  });
  const end = textAt(input, at - 1) === '(' && textAt(input, day.end) === ')' ? day.end + 1 : day.end;
  const span = pickByLean(phrase, input.today, input.lean);
  return span && span.from === span.to ? { ...read, phrase, end } : read;
}

/** "july 4th weekend": a holiday under its date. */
function fourthWeekend(input: Input, read: Read): Read {
  if (read.phrase.cycle !== 'year' || !WEEKENDS.has(textAt(input, read.end))) return read;
  const span = read.phrase.at(input.today.year);
  return span && span.from === span.to ? suffixed(input, read.phrase, read.end) : read;
}

/** "or so", "ish", "or thereabouts" after a phrase: around it. */
function orSo(input: Input, read: Read): Read {
  const { end } = read;
  const word = textAt(input, end);
  const next = textAt(input, end + 1);
  if (word === 'or' && (next === 'so' || next === 'thereabouts'))
    return { ...read, phrase: widen(read.phrase), end: end + 2 };
  if (word === 'ish') return { ...read, phrase: widen(read.phrase), end: end + 1 };
  if (word === '-' && next === 'ish') return { ...read, phrase: widen(read.phrase), end: end + 2 };
  return read;
}

/** A phrase, a range of two, or "around" one. The grammar's top. */
export function readPhrase(input: Input, i: number): Read | null {
  if (!input.tokens[i]?.isStart) return null;
  const word = textAt(input, i);
  if (AROUND.has(word)) {
    if (word !== 'around' && isFraction(input, i + 1)) return null;
    const inner = readRange(input, skipAround(input, i + 1));
    if (!inner || inner.relative) return null;
    return { ...inner, phrase: widen(inner.phrase) };
  }
  if (BEFORE_RANGE.has(word)) {
    const range = word === 'from' ? readRange(input, i + 1) : readRange(withTo(input, i + 1), i + 1);
    return range?.isRange ? range : null;
  }
  return readRange(input, i);
}

/** "about 1/3" is a share. */
function isFraction(input: Input, i: number): boolean {
  const [top, sign, bottom] = [input.tokens[i]?.number, textAt(input, i + 1), input.tokens[i + 2]?.number];
  return sign === '/' && top != null && bottom != null && top < bottom && bottom <= 5;
}

function skipAround(input: Input, i: number): number {
  return textAt(input, i) === 'the' && textAt(input, i + 1) === 'time' ? i + 3 : i;
}

const ALSO = new Set(['or', '/', '&']);

function readRange(input: Input, i: number): (Read & { isRange?: boolean }) | null {
  const first = readItem(input, i, 0);
  if (!first || first.problem || first.relative) return first;
  let sign = textAt(input, first.end);
  let j = first.end + 1;
  if (sign === 'up' && textAt(input, j) === 'to') {
    sign = 'to';
    j++;
  }
  const and = sign === 'and' && !input.prose;
  if (!TO.has(sign) && !ALSO.has(sign) && !and) {
    return isInnerRange(input, i, first) ? { ...first, isRange: true } : first;
  }
  if (sign === '-' && input.prose && !(input.tokens[first.end]?.glued === input.tokens[j]?.glued))
    return first;
  // In a range the second name needs no proof of its own: "in may or june".
  const second = readItem(
    input.prose && sign !== '-' ? { ...input, prose: false, anchors: new Map() } : input,
    j,
    0,
  );
  if (!second || second.problem || second.relative || (input.prose && isLooseSecond(input, j, second))) {
    return isInnerRange(input, i, first) ? { ...first, isRange: true } : first;
  }
  const phrase = joinPhrases(first.phrase, second.phrase, input.today, and);
  return phrase ? { phrase, end: second.end, isRange: true } : first;
}

const LOOSE = new Set(['fall', 'spring', 'march']);

/** "may or may not", "to fall off", "sunday to sun itself": a name that goes on as another word. */
function isLooseSecond(input: Input, j: number, second: Read): boolean {
  if (second.end > j + 1) return false;
  const word = textAt(input, j);
  if (word === 'sun' || word === 'sat') return textAt(input, j - 1) === 'to';
  return LOOSE.has(word) || (word === 'may' && textAt(input, j + 1) === 'not');
}

/** "from aug 10 to 14" was read as one phrase already. */
function isInnerRange(input: Input, i: number, first: Read): boolean {
  for (let k = i; k < first.end; k++) if (TO.has(textAt(input, k))) return true;
  return false;
}

/** "between aug 10 and 14" reads as "aug 10 to 14": the nearest "and" becomes "to". */
function withTo(input: Input, i: number): Input {
  const at = input.tokens.findIndex((token, k) => k > i && k < i + 8 && token.text === 'and');
  const and = input.tokens[at];
  return and
    ? { ...input, tokens: input.tokens.with(at, { ...and, text: 'to' }), anchors: new Map() }
    : input;
}

/** From the first phrase to the second, the second after the first; with "and" only where the two adjoin. */
function joinPhrases(first: Phrase, second: Phrase, today: Today, adjoining: boolean): Phrase | null {
  const assumed = [...new Set([...first.assumed, ...second.assumed])];
  const join = (from: Span, to: Span | null): Span | null =>
    to && to.to >= from.from && (!adjoining || to.from === from.to + 1)
      ? spanOf(from.from, to.to, from.on)
      : null;
  if (first.cycle === 'fixed' && second.cycle === 'fixed') {
    const from = first.at(0);
    return from && fixedOrNull(join(from, second.at(0)));
  }
  if (second.cycle === 'fixed') {
    const to = second.at(0);
    if (!to) return null;
    const k = cycleAt(first, to.from, today);
    const from = [k, k - 1].map((n) => first.at(n)).find((span) => span && span.from <= to.to);
    return from ? { ...fixed(join(from, to)), assumed } : null;
  }
  const follow = (from: Span): Span | null => {
    const k = cycleAt(second, from.from, today);
    for (const n of [k, k + 1, k + 2]) {
      const to = second.at(n);
      if (to && to.from >= from.from) return join(from, to);
    }
    return null;
  };
  if (first.cycle === 'fixed') {
    const from = first.at(0);
    return from && fixedOrNull(follow(from));
  }
  return { ...mapPhrase(first, follow), assumed };
}

function fixedOrNull(span: Span | null): Phrase | null {
  return span && fixed(span);
}

function cycleAt(phrase: Phrase, day: number, today: Today): number {
  const date = new Date(day * 86_400_000);
  if (phrase.cycle === 'year') return date.getUTCFullYear();
  if (phrase.cycle === 'month') return date.getUTCFullYear() * 12 + date.getUTCMonth();
  return Math.floor((day - mondayOf(today.day)) / 7);
}
