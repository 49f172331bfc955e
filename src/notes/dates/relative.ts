import { type Amount, amountAt, shiftSpan } from './amounts.ts';
import { type Input, isClauseEnd, type Read, type Rule, skipThe, textAt } from './input.ts';
import { fixed, mapPhrase, type Phrase, type Span, single } from './span.ts';
import { weekdayAfter, weekdayBefore } from './weekdays.ts';
import { LAST, NEXT, THIS } from './words.ts';

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
    const today = input.today.day;
    if (textAt(input, i) === 'in') {
      const amount = amountAt(input, i + 1);
      if (!amount || input.tokens[i + 1]?.unit) return null;
      if (isBareCount(input, amount.end)) return null;
      const end = textAt(input, amount.end) === 'time' ? amount.end + 1 : amount.end;
      return { phrase: fromDay(today, amount, 1), end };
    }
    const amount = amountAt(input, skipThe(input, i));
    if (!amount) return null;
    const j = amount.end;
    const word = textAt(input, j);
    if (word === 'time' && !input.prose) return { phrase: fromDay(today, amount, 1), end: j + 1 };
    if (AGO.has(word) && !(word === 'since' && input.prose)) {
      if (word === 'earlier' && input.prose) return laterRead(amount, j + 1, -1);
      return ago(input, amount, j + 1);
    }
    if (ONWARD.has(word) && !input.prose) return { phrase: fromDay(today, amount, 1), end: j + 1 };
    const direct = input.tokens[j];
    if (direct?.dayWord != null && (amount.unit === 'week' || amount.unit === 'fortnight')) {
      // "a week tomorrow" runs on from a coming day, "a week yesterday" back.
      const base = today + direct.dayWord;
      return { phrase: fromDay(base, amount, direct.dayWord < 0 ? -1 : 1), end: j + 1 };
    }
    if (word === 'on' && direct && input.tokens[j + 1]?.weekday != null && amount.unit === 'week') {
      const coming = weekdayAfter(today, input.tokens[j + 1]?.weekday ?? 0);
      return { phrase: fromDay(coming, amount, 1), end: j + 2 };
    }
    // "a week next tuesday" is a week after the coming one.
    if (
      (NEXT.has(word) || THIS.has(word)) &&
      input.tokens[j + 1]?.weekday != null &&
      amount.unit === 'week'
    ) {
      const coming = weekdayAfter(today, input.tokens[j + 1]?.weekday ?? 0);
      return { phrase: fromDay(coming, amount, 1), end: j + 2 };
    }
    if (LAST.has(word) && input.tokens[j + 1]?.weekday != null && amount.unit === 'week') {
      const before = weekdayBefore(today, input.tokens[j + 1]?.weekday ?? 0);
      return { phrase: fromDay(before, amount, -1), end: j + 2 };
    }
    if (FROM.has(word) || BEFORE.has(word)) {
      const found = fromAnchor(anchor, input, amount, j, depth);
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
  return { phrase: mapPhrase(anchor.phrase, move), end: anchor.end };
}
