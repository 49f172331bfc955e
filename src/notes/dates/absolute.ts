import { isOrdinary } from '../lexicon/ordinary.ts';
import { classesOf } from '../lexicon/word-classes.ts';
import {
  type DayOfMonth,
  dayOfMonthAt,
  type Input,
  isClauseEnd,
  isClauseStart,
  type Read,
  type Rule,
  skipThe,
  textAt,
  yearAt,
} from './input.ts';
import { isMayAsVerb, isMonthDayInProse, isNumberedInProse, isOrdinalInProse } from './prose.ts';
import { dayNumber, fixed, type Phrase, type Span, spanOf } from './span.ts';
import { putsRight } from './weekdays-in-prose.ts';
import { TO } from './words.ts';

/** Longest month of any year. */
const LONGEST = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** A day of a month, yearly or of one year; null days make the phrase an impossible date. */
export function dayPhrase(year: number | null, month: number, from: number, to: number, end: number): Read {
  const spanIn = (y: number): Span | null => {
    const first = dayNumber(y, month, from);
    const last = dayNumber(y, month, to);
    return first === null || last === null ? null : spanOf(first, last);
  };
  if (year !== null) {
    const span = spanIn(year);
    return { phrase: fixed(span), end, ...(span === null && { problem: 'impossible' as const }) };
  }
  const possible = Math.max(from, to) <= (LONGEST[month - 1] ?? 0);
  return {
    phrase: { cycle: 'year', at: spanIn, assumed: ['year'] },
    end,
    ...(!possible && { problem: 'impossible' as const }),
  };
}

const ALSO = new Set(['or', '/', '&']);

/** "- 14", "to the 14th", "or 11" after a day: the second day, of the same month. */
function secondDay(input: Input, i: number, first: DayOfMonth): DayOfMonth | null {
  const sign = textAt(input, i);
  if (!TO.has(sign) && !ALSO.has(sign)) return null;
  const day = dayOfMonthAt(input, skipThe(input, i + 1));
  if (!day || day.value <= first.value) return null;
  // "may 2 - 3 figs": in running text a loose dash separates.
  if (input.prose && !day.isOrdinal && !isClauseEnd(input, day.end) && !input.tokens[i]?.glued) {
    if (!isMonthDayInProse(input, i, day.end, false)) return null;
  }
  const next = input.tokens[day.end];
  if (next?.unit != null || (next?.glued && next.text === '/')) return null;
  return day;
}

/** "aug 22", "sept. 5th, 2026", "june the 5th", "aug 10-14", "oct 15 to 20 2025". */
export const readMonthDay: Rule = (input, i) => {
  const month = input.tokens[i]?.month;
  if (month == null) return null;
  let j = i + 1;
  while (
    textAt(input, j) === '.' ||
    ((textAt(input, j) === '-' || textAt(input, j) === '/') && input.tokens[j + 1]?.glued)
  )
    j++;
  j = skipThe(input, j);
  const day = dayOfMonthAt(input, j);
  // "june 36th"
  if (!day && isNoDay(input, j))
    return { phrase: { cycle: 'year', at: () => null, assumed: [] }, end: j + 1, problem: 'impossible' };
  if (!day) return null;
  if (input.prose && !isMonthDayInProse(input, i, day.end, day.isOrdinal)) return null;
  const second = secondDay(input, day.end, day);
  const last = second ?? day;
  const dotted =
    textAt(input, last.end) === '.' && input.tokens[last.end + 1]?.digits.length === 4
      ? last.end + 1
      : last.end;
  const short = !input.prose && !second;
  const year = sameDash(input, j, day) ?? yearAt(input, dotted, short);
  return dayPhrase(year?.year ?? null, month, day.value, last.value, year?.end ?? last.end);
};

/** A number above 31 with the ending of a day. */
function isNoDay(input: Input, i: number): boolean {
  return /^(?:3[2-9]|[4-9]\d)(?:st|nd|rd|th)$/.test(textAt(input, i));
}

/** "the 32nd of june"; "32 june" at the end of a clause. */
function readNoDayOfMonth(input: Input, start: number): Read | null {
  const ordinal = isNoDay(input, start);
  if (!ordinal && !/^3[2-9]$/.test(textAt(input, start))) return null;
  const j = textAt(input, start + 1) === 'of' ? start + 2 : start + 1;
  if (input.tokens[j]?.month == null || (!ordinal && !isClauseEnd(input, j + 1))) return null;
  return { phrase: { cycle: 'year', at: () => null, assumed: [] }, end: j + 1, problem: 'impossible' };
}

/** "aug-22-26". */
function sameDash(input: Input, i: number, day: DayOfMonth): { year: number; end: number } | null {
  const sign = textAt(input, i - 1);
  if ((sign !== '-' && sign !== '/') || textAt(input, day.end) !== sign) return null;
  return fullYear(input, day.end + 1);
}

/** "22 aug", "5th of june 2025", "10-14 aug", "15 Oct 26", "22-aug-2026". */
export const readDayMonth: Rule = (input, i) => {
  const start = skipThe(input, i);
  const day = dayOfMonthAt(input, start);
  if (!day) return readNoDayOfMonth(input, start);
  const second = secondDay(input, day.end, day);
  for (const last of second ? [second, day] : [day]) {
    let j = last.end;
    const sign = textAt(input, j);
    if (sign === 'of' || sign === '.' || ((sign === '-' || sign === '/') && input.tokens[j + 1]?.glued)) j++;
    const month = input.tokens[j]?.month;
    if (month == null) continue;
    const numbered = input.prose && !day.isOrdinal;
    if (numbered && isNumberedInProse(input, start)) continue;
    if (numbered && !isMonthDayInProse(input, start, j + 1, false)) continue;
    if (input.prose && isMayAsVerb(input, j, j + 1)) continue;
    if (numbered && sign !== 'of' && followsInstead(input, j)) continue;
    const afterDot = textAt(input, j + 1) === '.' && !isClauseEnd(input, j + 2) ? j + 2 : j + 1;
    const dashed =
      (sign === '-' || sign === '/') && textAt(input, j + 1) === sign ? fullYear(input, j + 2) : null;
    const year = dashed ?? yearAt(input, afterDot, true);
    return dayPhrase(year?.year ?? null, month, day.value, last.value, year?.end ?? j + 1);
  }
  return null;
};

/** "tipped 2 june 5": for those who write the month first the day comes after it. */
function followsInstead(input: Input, month: number): boolean {
  if (input.order !== 'MDY') return false;
  const day = dayOfMonthAt(input, month + 1);
  if (!day || (!day.isOrdinal && yearAt(input, month + 1, true))) return false;
  return isMonthDayInProse(input, month, day.end, day.isOrdinal);
}

function fullYear(input: Input, i: number): { year: number; end: number } | null {
  const token = input.tokens[i];
  if (!token?.glued || token.number === null) return null;
  if (token.digits.length === 4 && token.number >= 1900 && token.number < 2200)
    return { year: token.number, end: i + 1 };
  return token.digits.length === 2 ? { year: 2000 + token.number, end: i + 1 } : null;
}

const MONTH_WORDS = new Map([
  ['last', -1],
  ['previous', -1],
  ['next', 1],
  ['this', 0],
  ['the', 0],
]);

/** "the 17th", "the 5th of next month", "from the 3rd to the 7th"; "20th" alone where it is the whole text. */
export const readDayOfMonth: Rule = (input, i) => {
  const start = skipThe(input, i);
  const day = dayOfMonthAt(input, start);
  // "on the 32nd"
  if (
    !day &&
    start > i &&
    isNoDay(input, start) &&
    DAY_BEFORE.has(textAt(input, i - 1)) &&
    isClauseEnd(input, start + 1)
  )
    return { phrase: { cycle: 'month', at: () => null, assumed: [] }, end: start + 1, problem: 'impossible' };
  if (!day?.isOrdinal) return null;
  const bare = start === i;
  const inWords = input.tokens[start]?.digits === '';
  if (input.prose && !isProvenOrdinal(input, i, day, bare, inWords)) return null;
  const second = secondDay(input, day.end, day);
  const last = second ?? day;
  const j = textAt(input, last.end) === 'of' ? last.end + 1 : last.end;
  const shift = MONTH_WORDS.get(textAt(input, j));
  if (shift !== undefined && textAt(input, j + 1) === 'month') {
    const index = input.today.year * 12 + input.today.month - 1 + shift;
    return dayPhrase(Math.floor(index / 12), (index % 12) + 1, day.value, last.value, j + 2);
  }
  if (inWords && bare) return null;
  // "the 31st of smarch": no month of that name.
  if (input.prose && j > last.end && isNoWord(textAt(input, j))) {
    const none: Phrase = { cycle: 'month', at: () => null, assumed: [] };
    return { phrase: none, end: j + 1, problem: 'impossible' };
  }
  const at = (k: number): Span | null => {
    const first = dayNumber(Math.floor(k / 12), (k % 12) + 1, day.value);
    const end = dayNumber(Math.floor(k / 12), (k % 12) + 1, last.value);
    return first === null || end === null ? null : spanOf(first, end);
  };
  return { phrase: { cycle: 'month', at, assumed: ['month'] }, end: last.end };
};

/** A word that nobody knows, in the place of a month. */
function isNoWord(word: string): boolean {
  return word.length > 3 && /^[a-z]+$/.test(word) && !isOrdinary(word) && classesOf(word).size === 0;
}

const DAY_BEFORE = new Set([
  'on',
  'since',
  'by',
  'until',
  'till',
  'til',
  'from',
  'around',
  'before',
  'after',
]);

function isProvenOrdinal(input: Input, i: number, day: DayOfMonth, bare: boolean, inWords: boolean): boolean {
  const announced = DAY_BEFORE.has(textAt(input, i - 1)) || input.tokens[i - 1]?.weekday != null;
  if (inWords && (bare || !announced || day.value < 4)) return false;
  if (bare && !announced && putsRight(input, i, day.end)) return true;
  if (bare && !announced) {
    // "28th: tipped", "tipped alma 28th".
    if (isClauseStart(input, i)) return ':-–,'.includes(textAt(input, day.end) || '.');
    return day.value > 3 && isClauseEnd(input, day.end);
  }
  // "the 1st is ripe", "the 2nd was better" are figs as often as days.
  if (day.value <= 3 && !announced && !isClauseEnd(input, day.end)) return false;
  return isOrdinalInProse(input, i, day.end);
}
