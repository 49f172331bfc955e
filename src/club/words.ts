import {
  type Day,
  dayOfMonthOf,
  daysBetween,
  MONTH_NAMES,
  type MonthDay,
  monthOf,
  yearOf,
} from '../engine/day.ts';
import type { DateOrder } from '../notes/contract.ts';

/** `7 July`, or `July 7` for those who write the month first. */
export function dayWords(of: Day, order: DateOrder): string {
  return monthDayWords(of.slice(5) as MonthDay, order);
}

/** `7 July 2026`, or `July 7, 2026`. */
export function fullDayWords(of: Day, order: DateOrder): string {
  const year = yearOf(of);
  return order === 'MDY' ? `${dayWords(of, order)}, ${year}` : `${dayWords(of, order)} ${year}`;
}

export function monthDayWords(of: MonthDay, order: DateOrder): string {
  const month = MONTH_NAMES[Number(of.slice(0, 2)) - 1] ?? '';
  const dayOfMonth = Number(of.slice(3));
  return order === 'MDY' ? `${month} ${dayOfMonth}` : `${dayOfMonth} ${month}`;
}

/** `14–24 September`, `28 August – 6 September`, and the like with the month first. */
export function rangeWords(from: Day, to: Day, order: DateOrder): string {
  if (from === to) return dayWords(from, order);
  if (yearOf(from) === yearOf(to) && monthOf(from) === monthOf(to)) {
    const month = MONTH_NAMES[monthOf(from) - 1] ?? '';
    const days = `${dayOfMonthOf(from)}–${dayOfMonthOf(to)}`;
    return order === 'MDY' ? `${month} ${days}` : `${days} ${month}`;
  }
  return `${dayWords(from, order)} – ${dayWords(to, order)}`;
}

/** `today`, `tomorrow`, `in 12 days`, `3 weeks ago`. */
export function distanceWords(today: Day, to: Day): string {
  const days = daysBetween(today, to);
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  if (days === -1) return 'yesterday';
  return days > 0 ? `in ${lengthWords(days)}` : `${lengthWords(-days)} ago`;
}

/** Days up to three weeks, then whole weeks where it makes no difference: `18 days`, `5 weeks`. */
export function lengthWords(days: number): string {
  if (days < 21) return countWords(days, 'day');
  return `${Math.round(days / 7)} weeks`;
}

/** `1 tree`, `3 trees`. */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listWords(items: readonly string[], last: 'and' | 'or' = 'and'): string {
  if (items.length <= 1) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;
}

/** The same, with all beyond the first `most` only counted: `a, b and 3 more`. */
export function listSome(items: readonly string[], most: number): string {
  const more = items.length - most;
  return more > 0 ? `${items.slice(0, most).join(', ')} and ${more} more` : listWords(items);
}

/** The first letter large, for a sentence that begins with it. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
