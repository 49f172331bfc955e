import { type Day, dayOfMonthOf, MONTH_NAMES, monthOf } from '../engine/day.ts';
import { toFahrenheit } from '../engine/record-summary.ts';
import type { DateOrder, Units } from './picture.ts';

/** `shortDate('2026-07-07', 'DMY') //=> '7 Jul'` */
export function shortDate(on: Day, dates: DateOrder): string {
  const month = shortMonth(monthOf(on));
  return dates === 'MDY' ? `${month} ${dayOfMonthOf(on)}` : `${dayOfMonthOf(on)} ${month}`;
}

/** `shortDates('2026-09-02', '2026-09-17', 'DMY') //=> '2–17 Sep'` */
export function shortDates(from: Day, to: Day, dates: DateOrder): string {
  if (from === to) return shortDate(from, dates);
  if (from.slice(0, 7) !== to.slice(0, 7)) return `${shortDate(from, dates)} – ${shortDate(to, dates)}`;
  const days = `${dayOfMonthOf(from)}–${dayOfMonthOf(to)}`;
  const month = shortMonth(monthOf(from));
  return dates === 'MDY' ? `${month} ${days}` : `${days} ${month}`;
}

/** `month` is 1–12. */
export function shortMonth(month: number): string {
  return MONTH_NAMES[month - 1]?.slice(0, 3) ?? '';
}

/** `counted(1, 'tree') //=> '1 tree'`, `counted(3, 'tree') //=> '3 trees'` */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** `listed(['a', 'b', 'c']) //=> 'a, b and c'` */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

export function inUnits(celsius: number, units: Units): number {
  return units === 'C' ? celsius : toFahrenheit(celsius);
}
