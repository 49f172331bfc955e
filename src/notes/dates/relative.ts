import { countAt, type Input, isClauseEnd, type Read, type Rule, skipThe, textAt } from './input.ts';
import {
  addMonths,
  fixed,
  mapPhrase,
  type Phrase,
  type Span,
  single,
  spanOf,
  weekdayNumber,
} from './span.ts';
import { mondayOf, weekdayAfter, weekdayBefore } from './weekdays.ts';
import { LAST, NEXT, OVER, THIS, TIMES_OF_DAY, type Unit, WEEKDAYS, WEEKENDS } from './words.ts';

/** The phrase after "before", "from", "week of": anything the grammar reads. Set by grammar.ts. */
export interface Anchors {
  readonly read: Rule;
}

export function shiftDay(day: number, count: number, unit: Unit): number {
  switch (unit) {
    case 'day':
      return day + count;
    case 'week':
      return day + 7 * count;
    case 'fortnight':
      return day + 14 * count;
    case 'month':
      return addMonths(day, count);
    case 'year':
      return addMonths(day, 12 * count);
  }
}

function shiftSpan(span: Span, count: number, unit: Unit): Span {
  return {
    from: shiftDay(span.from, count, unit),
    to: shiftDay(span.to, count, unit),
    on: shiftDay(span.on, count, unit),
  };
}

interface Amount {
  readonly least: number;
  readonly most: number;
  readonly unit: Unit;
  readonly end: number;
}

const PLURAL = new Set('days dys weeks wks fortnights months mths mos years yrs'.split(' '));
const OR = new Set(['or', 'to', '-', '–']);

/** "3 weeks", "a couple of days", "2-3 weeks", "wk", "fortnight". */
function amountAt(input: Input, i: number): Amount | null {
  const bare = input.tokens[i]?.unit;
  // "weeks ago" is no number of weeks.
  if (bare && PLURAL.has(textAt(input, i))) return null;
  if (bare) return { least: 1, most: 1, unit: bare, end: i + 1 };
  const half = textAt(input, i) === 'half' && textAt(input, i + 1) === 'a' ? i + 2 : i;
  if (half > i) {
    // Half a dozen and half a year; half a week or month is no whole number of days.
    if (textAt(input, half) === 'dozen') return amountOf(input, half + 1, 6, 6);
    return textAt(input, half) === 'year' ? { least: 6, most: 6, unit: 'month', end: half + 1 } : null;
  }
  const count = countAt(input, i);
  if (!count) return null;
  if (OR.has(textAt(input, count.end))) {
    const most = countAt(input, count.end + 1);
    if (most && most.value > count.value) return amountOf(input, most.end, count.value, most.value);
  }
  return amountOf(input, count.end, count.value, count.value);
}

const FILLING = new Set(['whole', 'full', 'odd', 'more', 'calendar', 'good']);

function amountOf(input: Input, i: number, least: number, most: number): Amount | null {
  const j = FILLING.has(textAt(input, i)) ? i + 1 : i;
  const unit = input.tokens[j]?.unit;
  return unit ? { least, most, unit, end: j + 1 } : null;
}

const AGO = new Set(['ago', 'back', 'agi', 'agao', 'earlier', 'since']);
const FROM = new Set(['from', 'after', 'past', 'frm']);
const BEFORE = new Set(['before', 'bf', 'til', 'till', 'until', 'ahead', 'prior', 'bfore']);
const ONWARD = new Set(['hence', 'out', 'away']);
const LATER = new Set(['after', 'afterwards', 'afterward', 'on']);
const NOW = new Set(['now', 'today', 'tody']);

/** Spans between the two ends of "2-3 weeks ago"; the note takes the nearer end. */
function spread(today: number, amount: Amount, sign: 1 | -1): Span {
  const near = shiftDay(today, sign * amount.least, amount.unit);
  const far = shiftDay(today, sign * amount.most, amount.unit);
  return spanOf(Math.min(near, far), Math.max(near, far), near);
}

/** "5 days ago", "in two weeks", "75 days from today", "two weeks before november 1", "a week ago tuesday". */
export function readAmount(anchors: Anchors): Rule {
  return (input, i, depth) => {
    const today = input.today.day;
    if (textAt(input, i) === 'in') {
      const amount = amountAt(input, i + 1);
      if (!amount || input.tokens[i + 1]?.unit) return null;
      if (isBareCount(input, amount.end)) return null;
      const end = textAt(input, amount.end) === 'time' ? amount.end + 1 : amount.end;
      return { phrase: fixed(spread(today, amount, 1)), end };
    }
    const amount = amountAt(input, skipThe(input, i));
    if (!amount) return null;
    const j = amount.end;
    const word = textAt(input, j);
    if (word === 'time' && !input.prose) return { phrase: fixed(spread(today, amount, 1)), end: j + 1 };
    if (AGO.has(word) && !(word === 'since' && input.prose)) {
      if (word === 'earlier' && input.prose) return laterRead(amount, j + 1, -1);
      return ago(input, amount, j + 1);
    }
    if (ONWARD.has(word) && !input.prose) return { phrase: fixed(spread(today, amount, 1)), end: j + 1 };
    const direct = input.tokens[j];
    if (direct?.dayWord != null && (amount.unit === 'week' || amount.unit === 'fortnight')) {
      // "a week tomorrow" runs on from a coming day, "a week yesterday" back.
      const base = today + direct.dayWord;
      return { phrase: fixed(spread(base, amount, direct.dayWord < 0 ? -1 : 1)), end: j + 1 };
    }
    if (word === 'on' && direct && input.tokens[j + 1]?.weekday != null && amount.unit === 'week') {
      const coming = weekdayAfter(today, input.tokens[j + 1]?.weekday ?? 0);
      return { phrase: fixed(spread(coming, amount, 1)), end: j + 2 };
    }
    // "a week next tuesday" is a week after the coming one.
    if (
      (NEXT.has(word) || THIS.has(word)) &&
      input.tokens[j + 1]?.weekday != null &&
      amount.unit === 'week'
    ) {
      const coming = weekdayAfter(today, input.tokens[j + 1]?.weekday ?? 0);
      return { phrase: fixed(spread(coming, amount, 1)), end: j + 2 };
    }
    if (LAST.has(word) && input.tokens[j + 1]?.weekday != null && amount.unit === 'week') {
      const before = weekdayBefore(today, input.tokens[j + 1]?.weekday ?? 0);
      return { phrase: fixed(spread(before, amount, -1)), end: j + 2 };
    }
    if (FROM.has(word) || BEFORE.has(word)) {
      const found = fromAnchor(anchors, input, amount, j, depth);
      if (found) return found;
    }
    if (word === 'later' || word === 'l8r') return laterRead(amount, j + 1, 1);
    // "10 days after i tipped it" counts from no day; "10 days after" and "2 days on" do, at a clause's end.
    const counted = input.tokens[i]?.unit == null;
    if (LATER.has(word) && counted && isClauseEnd(input, j + 1)) return laterRead(amount, j + 1, 1);
    return null;
  };
}

/** "in 3 weeks old leaves": a unit that goes on as something else. */
function isBareCount(input: Input, end: number): boolean {
  const word = textAt(input, end);
  return word === 'old' || word === 'of' || word === 'ago';
}

function ago(input: Input, amount: Amount, i: number): Read {
  const today = input.today.day;
  const j = textAt(input, i) === 'on' || textAt(input, i) === 'last' ? i + 1 : i;
  const weekday = input.tokens[j]?.weekday;
  if (weekday != null && (amount.unit === 'week' || amount.unit === 'fortnight')) {
    return { phrase: fixed(spread(weekdayBefore(today, weekday), amount, -1)), end: j + 1 };
  }
  const dayWord = input.tokens[i]?.dayWord;
  if (dayWord != null) return { phrase: fixed(spread(today + dayWord, amount, -1)), end: i + 1 };
  return { phrase: fixed(spread(today, amount, -1)), end: i };
}

function laterRead(amount: Amount, end: number, sign: 1 | -1): Read {
  const count = sign * amount.least;
  return { phrase: fixed(null), end, relative: { count, unit: amount.unit } };
}

function fromAnchor(anchors: Anchors, input: Input, amount: Amount, j: number, depth: number): Read | null {
  const word = textAt(input, j);
  const sign = FROM.has(word) ? 1 : -1;
  let k = j + 1;
  if (textAt(input, k) === 'to' || textAt(input, k) === 'of') k++;
  if (textAt(input, k) === 'right' && textAt(input, k + 1) === 'now') k++;
  if (NOW.has(textAt(input, k))) return { phrase: fixed(spread(input.today.day, amount, sign)), end: k + 1 };
  const weekday = input.tokens[k]?.weekday;
  const anchor = anchors.read(input, k, depth + 1);
  if (!anchor || anchor.problem || anchor.relative) return null;
  const move = (span: Span): Span => {
    const near = shiftSpan(span, sign * amount.least, amount.unit);
    const far = shiftSpan(span, sign * amount.most, amount.unit);
    return spanOf(Math.min(near.from, far.from), Math.max(near.to, far.to), near.on);
  };
  if (weekday != null && anchor.end === k + 1 && word === 'from') {
    return { phrase: fixed(move(single(weekdayAfter(input.today.day, weekday)))), end: anchor.end };
  }
  return { phrase: mapPhrase(anchor.phrase, move), end: anchor.end };
}

/** Saturday and Sunday of the week (Monday to Sunday) that holds `day`. */
export function weekendIn(day: number): Span {
  const saturday = mondayOf(day) + 5;
  return spanOf(saturday, saturday + 1);
}

/** Saturday and Sunday nearest to `day`. */
function weekendNear(day: number): Span {
  const weekday = weekdayNumber(day);
  const saturday = weekday === 6 ? day : weekday <= 2 ? day - weekday - 1 : weekdayAfter(day, 6);
  return spanOf(saturday, saturday + 1);
}

/** "the day before thanksgiving", "weekend after labor day", "the week before christmas", "monday after easter". */
export function readBesideAnchor(anchors: Anchors): Rule {
  return (input, i, depth) => {
    const j = skipThe(input, i);
    const token = input.tokens[j];
    if (!token) return null;
    const n = token.ordinal !== null && token.ordinal <= 5 ? token.ordinal : null;
    const at = n === null ? j : j + 1;
    const what = input.tokens[at];
    const word = textAt(input, at + 1);
    const later = word === 'after' || word === 'following';
    if (!what || !(later || word === 'before' || word === 'bf')) return null;
    const change = beside(what.weekday, what.text, what.unit, later, n ?? 1);
    if (!change) return null;
    const anchor = anchors.read(input, at + 2, depth + 1);
    if (!anchor || anchor.problem || anchor.relative) return null;
    return { phrase: mapPhrase(anchor.phrase, change), end: anchor.end };
  };
}

function beside(
  weekday: number | null,
  what: string,
  unit: Unit | null,
  later: boolean,
  n: number,
): ((span: Span) => Span) | null {
  const steps = (n - 1) * 7;
  if (weekday !== null) {
    return (span) =>
      single(later ? weekdayAfter(span.to, weekday) + steps : weekdayBefore(span.from, weekday) - steps);
  }
  if (WEEKENDS.has(what)) {
    return (span) => {
      const saturday = later ? weekdayAfter(span.to, 6) + steps : weekdayBefore(span.from - 1, 6) - steps;
      return spanOf(saturday, saturday + 1);
    };
  }
  if (what === 'day' && n === 1) return (span) => single(later ? span.to + 1 : span.from - 1);
  if (what === 'week' && n === 1 && unit === 'week') {
    return (span) => (later ? spanOf(span.to + 1, span.to + 7) : spanOf(span.from - 7, span.from - 1));
  }
  return null;
}

const OF = new Set(['of', 'beginning', 'commencing', 'starting', 'from', 'ending']);

/** "week of june 15", "week commencing 3 may", "weekend of the 13th". */
export function readWeekOf(anchors: Anchors): Rule {
  return (input, i, depth) => {
    const j = skipThe(input, i);
    const token = input.tokens[j];
    if (!token) return null;
    const weekend = WEEKENDS.has(token.text);
    if (token.unit !== 'week' && !weekend) return null;
    const how = textAt(input, j + 1);
    if (!OF.has(how) || (weekend && how !== 'of')) return null;
    const anchor = anchors.read(input, j + 2, depth + 1);
    if (!anchor || anchor.problem || anchor.relative) return null;
    if (weekend)
      return { phrase: mapPhrase(anchor.phrase, (span) => weekendNear(span.from)), end: anchor.end };
    if (how === 'from') return null;
    const ending = how === 'ending';
    const change = (span: Span): Span =>
      ending ? spanOf(span.to - 6, span.to, span.to) : spanOf(span.from, span.from + 6);
    return { phrase: mapPhrase(anchor.phrase, change), end: anchor.end };
  };
}

/** "this weekend", "over the weekend", "next week", "last year", "the week before last". */
export const readCalendarUnit: Rule = (input, i) => {
  const today = input.today.day;
  let j = i;
  const over = OVER.has(textAt(input, j));
  if (over) j++;
  const the = skipThe(input, j) > j;
  j = skipThe(input, j);
  const how = textAt(input, j);
  let shift = LAST.has(how) ? -1 : NEXT.has(how) ? 1 : THIS.has(how) ? 0 : null;
  let k = shift === null ? j : j + 1;
  if (how === 'this' && (textAt(input, k) === 'past' || textAt(input, k) === 'coming')) {
    shift = textAt(input, k) === 'past' ? -1 : 0;
    k++;
  }
  const what = input.tokens[k];
  if (!what) return null;
  const weekend = WEEKENDS.has(what.text);
  if (!weekend && what.unit !== 'week' && what.unit !== 'year' && what.unit !== 'month') return null;
  let end = k + 1;
  if (shift === null && textAt(input, end) === 'before' && LAST.has(textAt(input, end + 1))) {
    shift = -2;
    end += 2;
  } else if (shift === null && textAt(input, end) === 'after' && NEXT.has(textAt(input, end + 1))) {
    shift = 2;
    end += 2;
  }
  const justGone = shift === null || shift === 0 ? goneAt(input, end) : end;
  if (justGone > end) {
    shift = -1;
    end = justGone;
  }
  if (weekend) {
    if (shift !== null) return { phrase: fixed(weekendBy(today, shift)), end };
    if (!the && (input.prose || input.tokens.length > 1)) return null;
    return { phrase: weekendPhrase(today), end };
  }
  if (shift === null || over) return null;
  // "this week" and "this year" in a note say no more than that it was lately.
  if (shift === 0 && input.prose) return null;
  if (what.unit === 'week') {
    const monday = mondayOf(today) + 7 * shift;
    return { phrase: fixed(spanOf(monday, monday + 6, today + 7 * shift)), end };
  }
  if (what.unit === 'month') {
    const index = input.today.year * 12 + input.today.month - 1 + shift;
    const first = Date.UTC(Math.floor(index / 12), index % 12, 1) / 86_400_000;
    const last = Date.UTC(Math.floor(index / 12), (index % 12) + 1, 1) / 86_400_000 - 1;
    return { phrase: fixed(spanOf(first, last, first + 14)), end };
  }
  const year = input.today.year + shift;
  return {
    phrase: fixed(spanOf(Date.UTC(year, 0, 1) / 86_400_000, Date.UTC(year, 11, 31) / 86_400_000)),
    end,
  };
};

/** "this time last week", "this time next year". */
export const readThisTime: Rule = (input, i) => {
  const start = textAt(input, i) === 'this' || textAt(input, i) === 'same' ? i + 1 : i;
  if (start === i || textAt(input, start) !== 'time') return null;
  const how = textAt(input, start + 1);
  const unit = input.tokens[start + 2]?.unit;
  const count = LAST.has(how) ? -1 : NEXT.has(how) ? 1 : 0;
  if (!unit || count === 0) return null;
  return { phrase: fixed(single(shiftDay(input.today.day, count, unit))), end: start + 3 };
};

/** "two sundays ago": the second before today. */
export const readWeekdaysAgo: Rule = (input, i) => {
  const count = countAt(input, i);
  if (!count) return null;
  const plural = textAt(input, count.end);
  if (!plural.endsWith('s') || textAt(input, count.end + 1) !== 'ago' || count.value > 52) return null;
  const weekday = WEEKDAYS.get(plural.slice(0, -1));
  if (weekday === undefined) return null;
  const day = weekdayBefore(input.today.day, weekday) - 7 * (count.value - 1);
  return { phrase: fixed(single(day)), end: count.end + 2 };
};

/** The last weekend is over: on a Sunday it is the one a week back. */
function weekendBy(today: number, shift: number): Span {
  const monday = mondayOf(today) + 7 * shift;
  return spanOf(monday + 5, monday + 6);
}

function weekendPhrase(today: number): Phrase {
  const saturday = mondayOf(today) + 5;
  return { cycle: 'week', at: (k) => spanOf(saturday + 7 * k, saturday + 7 * k + 1), assumed: [] };
}

/** "just gone", "just past", "gone" after a weekday or weekend. */
export function goneAt(input: Input, i: number): number {
  const word = textAt(input, i);
  if (word === 'just') {
    const next = textAt(input, i + 1);
    return next === 'gone' || next === 'past' || next === 'passed' ? i + 2 : i;
  }
  return word === 'gone' || word === 'past' ? (input.prose && word === 'past' ? i : i + 1) : i;
}

/** "today", "last night", "this morning", "day before yesterday", "yesterday evening". */
export const readDayWord: Rule = (input, i) => {
  const { day } = input.today;
  const start = skipThe(input, i);
  const first = input.tokens[start];
  if (!first) return null;
  if (first.dayWord !== null)
    return { phrase: fixed(single(day + first.dayWord)), end: timeEnd(input, start + 1) };
  const next = textAt(input, start + 1);
  if (first.unit === 'day' || (first.text === 'night' && next === 'before')) {
    const beside = input.tokens[start + 2];
    if ((next === 'before' || next === 'bf' || next === 'befor') && beside?.dayWord === -1) {
      return { phrase: fixed(single(day - 2)), end: timeEnd(input, start + 3) };
    }
    if (next === 'after' && beside?.dayWord === 1)
      return { phrase: fixed(single(day + 2)), end: timeEnd(input, start + 3) };
    if (first.text === 'night' && LAST.has(textAt(input, start + 2)))
      return { phrase: fixed(single(day - 2)), end: start + 3 };
  }
  if (
    LAST.has(first.text) &&
    (next === 'night' || next === 'nights' || next === 'evening' || next === 'nite')
  ) {
    return { phrase: fixed(single(day - 1)), end: start + 2 };
  }
  if (first.text === 'this' && TIMES_OF_DAY.has(next)) return { phrase: fixed(single(day)), end: start + 2 };
  if (!input.prose && first.text === 'now' && input.tokens.length === 1)
    return { phrase: fixed(single(day)), end: start + 1 };
  return null;
};

export function timeEnd(input: Input, i: number): number {
  return TIMES_OF_DAY.has(textAt(input, i)) ? i + 1 : i;
}

/** "the next day", "the following monday", "same day": counted from what was told before. */
export const readFollowing: Rule = (input, i) => {
  const start = skipThe(input, i);
  const word = textAt(input, start);
  const unit = input.tokens[start + 1]?.unit;
  if (word === 'same' && unit === 'day') return relative(0, start + 2);
  if ((word === 'next' || word === 'following') && unit === 'day') return relative(1, start + 2);
  if (word === 'following' && unit === 'week')
    return { phrase: fixed(null), end: start + 2, relative: { count: 1, unit: 'week' } };
  if (start > i && word === 'day' && textAt(input, start + 1) === 'after') return relative(1, start + 2);
  return null;
};

function relative(count: number, end: number): Read {
  return { phrase: fixed(null), end, relative: { count, unit: 'day' } };
}
