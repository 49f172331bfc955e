import { type Input, isClauseEnd, type Read, type Rule, skipThe, textAt } from './input.ts';
import { fixed, single } from './span.ts';
import { LAST, TIMES_OF_DAY } from './words.ts';

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
  // "edit: day before": of the day that was told; with none there, no day.
  if (word === 'day' && textAt(input, start + 1) === 'before') {
    if (textAt(input, start + 2) === 'that') return relative(-1, start + 3);
    if (isClauseEnd(input, start + 2)) return relative(-1, start + 2);
  }
  return null;
};

function relative(count: number, end: number): Read {
  return { phrase: fixed(null), end, relative: { count, unit: 'day' } };
}
