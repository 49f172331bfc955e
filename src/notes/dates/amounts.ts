import { wordSet } from '../lexicon/word-set.ts';
import { countAt, type Input, textAt } from './input.ts';
import { addMonths, type Span, spanOf } from './span.ts';
import type { Unit } from './words.ts';

/** A stretch of time: "3 weeks", "2-3 weeks" with its two ends, "1 week and 3 days" with what is added to it. */
export interface Amount {
  readonly least: number;
  readonly most: number;
  readonly unit: Unit;
  readonly added: { readonly count: number; readonly unit: Unit } | null;
  readonly end: number;
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

/** `day` moved by one end of an amount. Months before days, so that "a month and 3 days" keeps its month. */
function shiftBy(day: number, sign: 1 | -1, count: number, { unit, added }: Amount): number {
  const moved = shiftDay(day, sign * count, unit);
  return added ? shiftDay(moved, sign * added.count, added.unit) : moved;
}

/** `span` moved by an amount: from the nearer of its two ends to the farther; a note takes the nearer. */
export function shiftSpan(span: Span, amount: Amount, sign: 1 | -1): Span {
  const ends = [amount.least, amount.most].flatMap((count) => [
    shiftBy(span.from, sign, count, amount),
    shiftBy(span.to, sign, count, amount),
  ]);
  return spanOf(Math.min(...ends), Math.max(...ends), shiftBy(span.on, sign, amount.least, amount));
}

const PLURAL = wordSet('days dys weeks wks fortnights months mths mos years yrs');
const OR = new Set(['or', 'to', '-', '–']);

/** "3 weeks", "a couple of days", "2-3 weeks", "wk", "fortnight", "1 week and 3 days", "a year and a half". */
export function amountAt(input: Input, i: number): Amount | null {
  const amount = simpleAmountAt(input, i);
  if (!amount || amount.least !== amount.most) return amount;
  const and = textAt(input, amount.end);
  const j = and === 'and' || and === ',' || and === '&' ? amount.end + 1 : amount.end;
  if (textAt(input, j) === 'a' && textAt(input, j + 1) === 'half') {
    // Half a year is six months; half a week or month is no whole number of days.
    return amount.unit === 'year' ? { ...amount, added: { count: 6, unit: 'month' }, end: j + 2 } : null;
  }
  // A number has to be said: "2 weeks day" is no sum.
  const second = input.tokens[j]?.number == null ? null : simpleAmountAt(input, j);
  if (!second || second.least !== second.most || LENGTH[second.unit] >= LENGTH[amount.unit]) return amount;
  return { ...amount, added: { count: second.least, unit: second.unit }, end: second.end };
}

/** Greater is longer. */
const LENGTH: Readonly<Record<Unit, number>> = { day: 1, week: 2, fortnight: 3, month: 4, year: 5 };

function simpleAmountAt(input: Input, i: number): Amount | null {
  const bare = input.tokens[i]?.unit;
  // "weeks ago" is no number of weeks.
  if (bare && PLURAL.has(textAt(input, i))) return null;
  if (bare) return { least: 1, most: 1, unit: bare, added: null, end: i + 1 };
  const half = textAt(input, i) === 'half' && textAt(input, i + 1) === 'a' ? i + 2 : i;
  if (half > i) {
    if (textAt(input, half) === 'dozen') return amountOf(input, half + 1, 6, 6);
    return textAt(input, half) === 'year'
      ? { least: 6, most: 6, unit: 'month', added: null, end: half + 1 }
      : null;
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
  return unit ? { least, most, unit, added: null, end: j + 1 } : null;
}
