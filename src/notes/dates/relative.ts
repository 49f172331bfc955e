import { type Amount, amountAt, shiftSpan } from './amounts.ts';
import { after, type Input, isClauseEnd, type Read, type Rule, skipThe, textAt } from './input.ts';
import { countFrom, fixed, type Phrase, type Span, single, widen } from './span.ts';
import { weekdayAfter, weekdayBefore } from './weekdays.ts';
import { AROUND, LAST, NEXT, THIS } from './words.ts';

const AGO = new Set(['ago', 'back', 'agi', 'agao', 'earlier', 'since']);
const FROM = new Set(['from', 'after', 'past', 'frm']);
const BEFORE = new Set(['before', 'bf', 'til', 'till', 'until', 'ahead', 'prior', 'bfore']);
const ONWARD = new Set(['hence', 'out', 'away']);
const LATER = new Set(['after', 'afterwards', 'afterward', 'on']);
const NOW = new Set(['now', 'today', 'tody']);

function fromDay(day: number, amount: Amount, sign: 1 | -1): Phrase {
  return fixed(shiftSpan(single(day), amount, sign));
}

/** "5 days ago", "in two weeks", "75 days from today", "two weeks before november 1", "a week ago tuesday". */
export function readAmount(anchor: Rule): Rule {
  return (input, i, depth) => {
    if (textAt(input, i) === 'in') return inAmount(input, i + 1);
    const amount = amountAt(input, skipThe(input, i));
    if (!amount) return null;
    const today = input.today.day;
    // "a week or so ago" is around it.
    const isLoose = after(input, amount.end, 'or', 'so') > 0;
    const j = isLoose ? amount.end + 2 : amount.end;
    const word = textAt(input, j);
    if (AGO.has(word) && !(word === 'since' && isDateNext(input, j + 1))) {
      if (word === 'earlier' && input.prose) return laterRead(amount, j + 1, -1);
      const read = ago(input, amount, j + 1);
      return isLoose ? { ...read, phrase: widen(read.phrase) } : read;
    }
    if ((ONWARD.has(word) || word === 'time') && !input.prose) {
      return { phrase: fromDay(today, amount, 1), end: j + 1 };
    }
    const beside = amount.unit === 'week' || amount.unit === 'fortnight' ? weekFrom(input, amount, j) : null;
    if (beside) return beside;
    if (FROM.has(word) || BEFORE.has(word)) {
      const found = fromAnchor(anchor, input, amount, j, depth);
      if (found) return isLoose ? { ...found, phrase: widen(found.phrase) } : found;
    }
    if (word === 'later' || word === 'l8r') return laterRead(amount, j + 1, 1);
    // "10 days after i tipped it" counts from no day; "10 days after" and "2 days on" do, at a clause's end.
    const counted = input.tokens[i]?.unit == null;
    if (LATER.has(word) && counted && isClauseEnd(input, j + 1)) return laterRead(amount, j + 1, 1);
    return null;
  };
}

/** "3 weeks since i tipped" is three weeks ago, "3 weeks since june 5" is no day. */
function isDateNext(input: Input, i: number): boolean {
  const next = input.tokens[skipThe(input, i)];
  return (
    next !== undefined &&
    (next.month !== null || next.weekday !== null || next.ordinal !== null || next.number !== null)
  );
}

/** "in two weeks", "in about 10 days", "in a month's time". */
function inAmount(input: Input, i: number): Read | null {
  // In a note it is how long something took ("4 leaves in a week"), or a plan, which is told of today.
  if (input.prose && input.lean === 'past') return null;
  const j = AROUND.has(textAt(input, i)) ? i + 1 : i;
  const amount = amountAt(input, j);
  if (!amount || input.tokens[j]?.unit || isBareCount(input, amount.end)) return null;
  const end = textAt(input, amount.end) === 'time' ? amount.end + 1 : amount.end;
  const phrase = fromDay(input.today.day, amount, 1);
  return { phrase: j > i ? widen(phrase) : phrase, end };
}

/** "a week tomorrow", "a week on tuesday", "a fortnight last monday": weeks on from a coming day, back from a past one. */
function weekFrom(input: Input, amount: Amount, j: number): Read | null {
  const today = input.today.day;
  const dayWord = input.tokens[j]?.dayWord;
  if (dayWord != null) return { phrase: fromDay(today + dayWord, amount, dayWord < 0 ? -1 : 1), end: j + 1 };
  const word = textAt(input, j);
  const weekday = input.tokens[j + 1]?.weekday;
  if (weekday == null) return null;
  if (LAST.has(word)) return { phrase: fromDay(weekdayBefore(today, weekday), amount, -1), end: j + 2 };
  // "a week next tuesday" is a week after the coming one.
  const isComing = word === 'on' || NEXT.has(word) || THIS.has(word);
  return isComing ? { phrase: fromDay(weekdayAfter(today, weekday), amount, 1), end: j + 2 } : null;
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
    return { phrase: fromDay(weekdayBefore(today, weekday), amount, -1), end: j + 1 };
  }
  const dayWord = input.tokens[i]?.dayWord;
  if (dayWord != null) return { phrase: fromDay(today + dayWord, amount, -1), end: i + 1 };
  return { phrase: fromDay(today, amount, -1), end: i };
}

function laterRead(amount: Amount, end: number, sign: 1 | -1): Read {
  const count = sign * amount.least;
  return { phrase: fixed(null), end, relative: { count, unit: amount.unit } };
}

function fromAnchor(readAnchor: Rule, input: Input, amount: Amount, j: number, depth: number): Read | null {
  const word = textAt(input, j);
  const sign = FROM.has(word) ? 1 : -1;
  let k = j + 1;
  if (textAt(input, k) === 'to' || textAt(input, k) === 'of') k++;
  if (textAt(input, k) === 'right' && textAt(input, k + 1) === 'now') k++;
  if (NOW.has(textAt(input, k))) return { phrase: fromDay(input.today.day, amount, sign), end: k + 1 };
  const weekday = input.tokens[k]?.weekday;
  const anchor = readAnchor(input, k, depth + 1);
  if (!anchor || anchor.problem || anchor.relative) return null;
  const move = (span: Span): Span => shiftSpan(span, amount, sign);
  if (weekday != null && anchor.end === k + 1 && word === 'from') {
    return { phrase: fixed(move(single(weekdayAfter(input.today.day, weekday)))), end: anchor.end };
  }
  return { phrase: countFrom(anchor.phrase, move), end: anchor.end };
}
