/**
 * Calendar days without clock or zone, in the proleptic Gregorian calendar.
 *
 * A `Day` is text `YYYY-MM-DD`, so days compare with `<` and sort as text. The `Date` objects in here are
 * only arithmetic on UTC midnights; none of them ever meets a local zone.
 */
export type Day = string & { readonly __day: unique symbol };

/** A day of any year, `MM-DD`. 29 February is allowed. */
export type MonthDay = string & { readonly __monthDay: unique symbol };

const MS_PER_DAY = 86_400_000;
const DAY_TEXT = /^(\d{4})-(\d{2})-(\d{2})$/;
const MONTH_DAY_TEXT = /^(\d{2})-(\d{2})$/;

export const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** The day of these numbers (month 1–12), or null if there is none such, e.g. 30 February. */
export function dayOf(year: number, month: number, dayOfMonth: number): Day | null {
  if (!Number.isInteger(year) || year < 1000 || year > 9999) return null;
  if (month < 1 || month > 12 || dayOfMonth < 1 || dayOfMonth > daysInMonth(year, month)) return null;
  return `${year}-${pad(month)}-${pad(dayOfMonth)}` as Day;
}

/** `text` as a day, or null if it is not one. `parseDay('2026-02-29') //=> null` */
export function parseDay(text: string): Day | null {
  const match = DAY_TEXT.exec(text);
  return match ? dayOf(Number(match[1]), Number(match[2]), Number(match[3])) : null;
}

/** A literal that is known to be a day. Throws RangeError when it is not; for constants and tests. */
export function day(text: string): Day {
  const parsed = parseDay(text);
  if (parsed === null) throw new RangeError(`not a day: ${text}`);
  return parsed;
}

/** `text` (`MM-DD`) as a day of any year, or null. `parseMonthDay('02-29') //=> '02-29'` */
export function parseMonthDay(text: string): MonthDay | null {
  const match = MONTH_DAY_TEXT.exec(text);
  // 2000 is a leap year, so 29 February passes.
  return match && dayOf(2000, Number(match[1]), Number(match[2])) ? (text as MonthDay) : null;
}

/** A literal that is known to be a day of any year. Throws RangeError when it is not. */
export function monthDay(text: string): MonthDay {
  const parsed = parseMonthDay(text);
  if (parsed === null) throw new RangeError(`not a day of the year: ${text}`);
  return parsed;
}

export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

export function daysInYear(year: number): number {
  return isLeapYear(year) ? 366 : 365;
}

/** Days since 1 January of its own year: 0 to 365. */
export function dayOfYear(of: Day): number {
  return toEpochDays(of) - Date.UTC(yearOf(of), 0, 1) / MS_PER_DAY;
}

/** The day `index` days after 1 January of `year`. */
export function dayInYear(year: number, index: number): Day {
  return fromEpochDays(Date.UTC(year, 0, 1) / MS_PER_DAY + index);
}

export function yearOf(of: Day): number {
  return Number(of.slice(0, 4));
}

/** 1–12. */
export function monthOf(of: Day): number {
  return Number(of.slice(5, 7));
}

/** 1–31. */
export function dayOfMonthOf(of: Day): number {
  return Number(of.slice(8, 10));
}

export function monthDayOf(of: Day): MonthDay {
  return of.slice(5) as MonthDay;
}

/** That day of the year in `year`; 29 February falls on the 28th where the year has none. */
export function inYear(of: MonthDay, year: number): Day {
  const month = Number(of.slice(0, 2));
  const dayOfMonth = Math.min(Number(of.slice(3)), daysInMonth(year, month));
  return `${String(year).padStart(4, '0')}-${pad(month)}-${pad(dayOfMonth)}` as Day;
}

/** `addDays('2026-07-07', 100) //=> '2026-10-15'` */
export function addDays(to: Day, days: number): Day {
  return fromEpochDays(toEpochDays(to) + days);
}

/** Days from `from` to `to`, negative when `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return toEpochDays(to) - toEpochDays(from);
}

/** Days since 1970-01-01. */
export function toEpochDays(of: Day): number {
  return Date.UTC(yearOf(of), monthOf(of) - 1, dayOfMonthOf(of)) / MS_PER_DAY;
}

export function fromEpochDays(days: number): Day {
  return new Date(days * MS_PER_DAY).toISOString().slice(0, 10) as Day;
}

/** 0 (Sunday) to 6 (Saturday). */
export function weekdayOf(of: Day): number {
  return (((toEpochDays(of) + 4) % 7) + 7) % 7;
}

export function earlier(a: Day, b: Day): Day {
  return a < b ? a : b;
}

export function later(a: Day, b: Day): Day {
  return a > b ? a : b;
}

function pad(n: number): string {
  return String(n).padStart(2, '0');
}
