import type { Hemisphere } from '../../engine/season.ts';
import { goneAt } from './calendar-units.ts';
import { timeEnd } from './day-words.ts';
import { findHoliday, type HolidayName, holidaySpan, holidayWeekend, startsHoliday } from './holidays.ts';
import { type Input, isClauseEnd, type Read, type Rule, skipThe, textAt, yearAt } from './input.ts';
import { isHolidayInProse } from './prose.ts';
import {
  earliest,
  fixed,
  latest,
  mapPhrase,
  type Phrase,
  pickByLean,
  type Span,
  single,
  spanOf,
  weekdayNumber,
  yearly,
} from './span.ts';
import { mondayOf, weekdayAfter, weekdayBefore } from './weekdays.ts';
import { isWeekdayInProse } from './weekdays-in-prose.ts';
import { LAST, NEXT, THIS, WEEKENDS } from './words.ts';

/** A bare weekday: this week's, last week's, … but never today (RULES §8). */
function weekdayPhrase(input: Input, weekday: number): Phrase {
  const inWeek = mondayOf(input.today.day) + ((weekday + 6) % 7);
  return {
    cycle: 'week',
    at: (k) => (inWeek + 7 * k === input.today.day ? null : single(inWeek + 7 * k)),
    assumed: [],
  };
}

/** The day a weekday means when `how` is said before it; "next" is next week's, Monday to Sunday. */
function modified(input: Input, weekday: number, how: string): Span {
  const { day } = input.today;
  const inWeek = mondayOf(day) + ((weekday + 6) % 7);
  if (LAST.has(how)) return single(weekdayBefore(day, weekday));
  if (how === 'coming' || how === 'following') return single(weekdayAfter(day, weekday));
  if (NEXT.has(how)) return single(inWeek + 7);
  if (input.lean === 'past' && inWeek <= day) return single(inWeek);
  return single(inWeek >= day ? inWeek : inWeek + 7);
}

/** "sunday", "last firday", "sunday week", "monday before last", "thurs last week", "sunday just gone", "sat 13 june". */
export function readWeekday(dateRules: readonly Rule[]): Rule {
  return (input, i, depth) => {
    const { day } = input.today;
    let j = skipThe(input, i);
    let how = textAt(input, j);
    if (LAST.has(how) || NEXT.has(how) || THIS.has(how)) {
      j++;
      const second = textAt(input, j);
      if (how === 'this' && (LAST.has(second) || second === 'coming')) {
        how = second;
        j++;
      }
    } else how = '';
    // "last week thursday", "next week on tuesday".
    if (how && input.tokens[j]?.unit === 'week') {
      const k = textAt(input, j + 1) === 'on' ? j + 2 : j + 1;
      const weekday = input.tokens[k]?.weekday;
      if (weekday == null) return null;
      return { phrase: fixed(inWeekOf(day, weekday, how)), end: timeEnd(input, k + 1) };
    }
    const weekday = input.tokens[j]?.weekday;
    if (weekday == null) return null;
    if (input.prose && !isWeekdayInProse(input, j)) return null;
    // "the sun".
    const isShort = input.tokens[j]?.text.length === 3;
    if (isShort && !how && j > i && !isDatedNext(input, j + 1)) return null;
    let end = j + 1;
    // "thurs. 25 june", but "tuesday. scratch that".
    const isCutShort = (input.tokens[j]?.text.length ?? 0) < 6;
    if (textAt(input, end) === '.' && isCutShort && input.tokens[end + 1]) end++;
    end = timeEnd(input, end);
    if (how) return { phrase: fixed(modified(input, weekday, how)), end: timeEnd(input, end) };
    const special = weekdaySuffix(input, weekday, end);
    if (special) return special;
    const dated = withDate(dateRules, input, weekday, end, depth);
    if (dated) return dated;
    return { phrase: weekdayPhrase(input, weekday), end };
  };
}

/** "the sat before last", "the fri after easter", "the sat just gone". */
function isDatedNext(input: Input, i: number): boolean {
  return ['before', 'after', 'just'].includes(textAt(input, i));
}

function inWeekOf(day: number, weekday: number, how: string): Span {
  const shift = LAST.has(how) ? -7 : NEXT.has(how) ? 7 : 0;
  return single(mondayOf(day) + ((weekday + 6) % 7) + shift);
}

function weekdaySuffix(input: Input, weekday: number, end: number): Read | null {
  const { day } = input.today;
  const word = textAt(input, end);
  if (input.tokens[end]?.unit === 'week' && input.tokens[end]?.text !== 'weeks') {
    const next = textAt(input, end + 1);
    if (next !== 'ago') return { phrase: fixed(single(weekdayAfter(day, weekday) + 7)), end: end + 1 };
  }
  if (word === 'fortnight') return { phrase: fixed(single(weekdayAfter(day, weekday) + 14)), end: end + 1 };
  if (word === 'before' && LAST.has(textAt(input, end + 1))) {
    return { phrase: fixed(single(weekdayBefore(day, weekday) - 7)), end: end + 2 };
  }
  if (word === 'after' && NEXT.has(textAt(input, end + 1))) {
    return { phrase: fixed(single(weekdayAfter(day, weekday) + 7)), end: end + 2 };
  }
  const gone = goneAt(input, end);
  if (gone > end) return { phrase: fixed(single(weekdayBefore(day, weekday))), end: gone };
  // "tuesday last", "friday next".
  if (isClauseEnd(input, end + 1) && (word === 'last' || word === 'next' || word === 'coming')) {
    return { phrase: fixed(modified(input, weekday, word)), end: end + 1 };
  }
  const k = skipThe(input, word === 'of' || word === ',' ? end + 1 : end);
  const how = textAt(input, k);
  if ((LAST.has(how) || NEXT.has(how) || how === 'this') && input.tokens[k + 1]?.unit === 'week') {
    return { phrase: fixed(inWeekOf(day, weekday, how)), end: k + 2 };
  }
  if ((how === 'week' || how === 'a' || how === 'one' || how === 'wk') && isWeekAgo(input, k)) {
    return {
      phrase: fixed(single(weekdayBefore(day, weekday) - 7)),
      end: how === 'week' || how === 'wk' ? k + 2 : k + 3,
    };
  }
  return null;
}

function isWeekAgo(input: Input, k: number): boolean {
  const unit = input.tokens[k]?.unit === 'week' ? k : k + 1;
  return input.tokens[unit]?.unit === 'week' && textAt(input, unit + 1) === 'ago';
}

/** A weekday with its date: they have to agree, else the pair is a question and not a day. */
function withDate(
  dateRules: readonly Rule[],
  input: Input,
  weekday: number,
  end: number,
  depth: number,
): Read | null {
  let k = end;
  while (textAt(input, k) === ',' || textAt(input, k) === '(' || (k > end && textAt(input, k) === 'on')) k++;
  let best: Read | null = null;
  for (const rule of dateRules) {
    const read = rule(input, k, depth);
    if (read && (!best || read.end > best.end)) best = read;
  }
  if (!best) return null;
  const close = k > end && textAt(input, best.end) === ')' ? best.end + 1 : best.end;
  if (best.problem) return { ...best, end: close };
  const span = pickByLean(best.phrase, input.today, input.lean);
  if (span && span.from === span.to && weekdayNumber(span.from) !== weekday)
    return { ...best, end: close, problem: 'weekday' };
  return { ...best, end: close };
}

/** "labor day", "last easter", "christmas 2025", "thanksgiving week", "memorial day weekend". */
export const readHoliday: Rule = (input, i) => {
  let j = skipThe(input, i);
  let how = textAt(input, j);
  if (LAST.has(how) || NEXT.has(how) || THIS.has(how)) j++;
  else how = '';
  if (!startsHoliday(textAt(input, j))) return null;
  const at: number[] = [];
  for (let k = j; at.length < 6 && input.tokens[k]; k++) {
    const text = textAt(input, k);
    if (at.length > 0 && (text === '.' || text === '-') && (textAt(input, k - 1) === 'st' || text === '-'))
      continue;
    at.push(k);
  }
  const name = findHoliday((n) => {
    const index = at[n];
    return index === undefined ? undefined : textAt(input, index);
  });
  if (!name || (input.prose && name.short && !isNamedTime(input, i, j + name.words))) return null;
  let end = (at[name.words - 1] ?? j) + 1;
  if (input.prose && !isHolidayInProse(input, i, end)) return null;
  const year = yearAt(input, end);
  if (year) end = year.end;
  const base = year
    ? fixed(holidaySpan(name.rule, year.year, input.hemisphere))
    : yearlyHoliday(name.rule, input.hemisphere);
  const span = how && !year ? settle(input, base, how) : null;
  const phrase = span ? fixed(span) : base;
  return suffixed(input, phrase, goneAt(input, end));
};

/** "at new year", "over new year"; and "mlk weekend", which can be nothing else. */
function isNamedTime(input: Input, i: number, end: number): boolean {
  return (
    WEEKENDS.has(textAt(input, end)) ||
    (textAt(input, end - 1) === 'year' && AT_A_TIME.has(textAt(input, i - 1))) ||
    // "valentines: 7 cuttings"
    (i === 0 && textAt(input, end - 1).length >= 8 && [':', ','].includes(textAt(input, end))) ||
    // "on valentines", "since groundhog"
    (textAt(input, end - 1).length >= 8 && ON_A_DAY.has(textAt(input, i - 1)) && isClauseEnd(input, end))
  );
}

const ON_A_DAY = new Set(['on', 'since', 'by', 'before', 'after', 'around']);
const AT_A_TIME = new Set(['at', 'around', 'over', 'since', 'before', 'after', 'about', 'by']);

function yearlyHoliday(rule: HolidayName['rule'], hemisphere: Hemisphere): Phrase {
  return yearly((year) => holidaySpan(rule, year, hemisphere));
}

function settle(input: Input, phrase: Phrase, how: string): Span | null {
  const { day, year } = input.today;
  if (LAST.has(how)) return latest(phrase, input.today, (span) => span.to < day);
  if (NEXT.has(how)) return earliest(phrase, input.today, (span) => span.from > day);
  return how === 'coming' ? earliest(phrase, input.today, (span) => span.from >= day) : phrase.at(year);
}

/** "week" and "weekend" after a holiday. */
export function suffixed(input: Input, phrase: Phrase, end: number): Read {
  const word = textAt(input, end);
  if (WEEKENDS.has(word)) {
    // "memorial day weekend monday"
    const weekday = input.tokens[end + 1]?.weekday;
    const within = (span: Span): Span => {
      const weekend = holidayWeekend(span.from);
      return weekday == null ? weekend : single(weekdayAfter(weekend.from - 2, weekday));
    };
    return { phrase: mapPhrase(phrase, within), end: timeEnd(input, weekday == null ? end + 1 : end + 2) };
  }
  if (input.tokens[end]?.text === 'week' && textAt(input, end + 1) !== 'ago') {
    return { phrase: mapPhrase(phrase, (span) => spanOf(span.from, span.from + 6)), end: end + 1 };
  }
  return { phrase, end: timeEnd(input, end) };
}
