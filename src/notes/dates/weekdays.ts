import { daysInMonth } from '../../engine/day.ts';
import { weekdayNumber } from './span.ts';

/** Day of the epoch of the n-th `weekday` (0 Sunday) of a month; n −1 is the last. Null if there is no n-th. */
export function nthWeekday(year: number, month: number, weekday: number, n: number): number | null {
  const first = Date.UTC(year, month - 1, 1) / 86_400_000;
  const length = daysInMonth(year, month);
  if (n < 0) {
    const last = first + length - 1;
    return last - ((weekdayNumber(last) - weekday + 7) % 7);
  }
  const dayOfMonth = 1 + ((weekday - weekdayNumber(first) + 7) % 7) + (n - 1) * 7;
  return dayOfMonth <= length ? first + dayOfMonth - 1 : null;
}

/** The first `weekday` after `day`, never `day` itself. */
export function weekdayAfter(day: number, weekday: number): number {
  return day + ((weekday - weekdayNumber(day) + 6) % 7) + 1;
}

/** The last `weekday` before `day`, never `day` itself. */
export function weekdayBefore(day: number, weekday: number): number {
  return day - ((weekdayNumber(day) - weekday + 6) % 7) - 1;
}

/** The Monday of the week (Monday to Sunday, ISO 8601) that holds `day`. */
export function mondayOf(day: number): number {
  return day - ((weekdayNumber(day) + 6) % 7);
}
