import { addDays } from '../engine/day.ts';
import type { Item } from './items.ts';
import { NUMBER_WORDS } from './numbers.ts';

const SPAN = /^(\d{1,2}|an?|one|two|three|four|five|six|seven|eight|nine|ten)\s*(day|week|wk)s?(?:\s+ago)?$/i;

function daysOf(typed: string): number | null {
  const [, number, unit] = SPAN.exec(typed.trim()) ?? [];
  if (number === undefined || unit === undefined) return null;
  const word = number.toLowerCase();
  const value = /^an?$/.test(word) ? 1 : (NUMBER_WORDS.get(word) ?? Number(word));
  return value * (unit.toLowerCase() === 'day' ? 1 : 7);
}

/** "3 weeks ago fed the alma, sorry, 2 weeks": the span alone, its "ago" left out. */
export function mendSpan(
  items: readonly Item[],
  isRepairWord: (item: Item | undefined) => boolean,
): readonly Item[] {
  const last = items.at(-1);
  if (last?.text !== 'measure') return items;
  const right = daysOf(last.typed);
  const from = items.findLastIndex((item) => item.date !== undefined && /ago$/i.test(item.typed));
  const wrong = items[from];
  const days = wrong ? daysOf(wrong.typed) : null;
  if (!wrong?.date || right === null || days === null) return items;
  let start = items.length - 1;
  while (start > from + 1 && isRepairWord(items[start - 1])) start--;
  if (!items.slice(start, -1).some((item) => item.type === 'word')) return items;
  const date = { ...wrong.date, on: addDays(wrong.date.on, days - right) };
  return [...items.slice(0, from), { ...wrong, date }, ...items.slice(from + 1, start)];
}
