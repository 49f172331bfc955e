import { addDays as addDaysOfLibrary, differenceInCalendarDays, getDay } from 'date-fns';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  type Day,
  day,
  dayInYear,
  dayOf,
  dayOfMonthOf,
  dayOfYear,
  daysBetween,
  daysInYear,
  earlier,
  fromEpochDays,
  inYear,
  isLeapYear,
  later,
  monthDay,
  monthDayOf,
  monthOf,
  parseDay,
  parseMonthDay,
  toEpochDays,
  weekdayOf,
  yearOf,
} from '../../src/engine/day.ts';

/** Days from 1600 to 2400, so that three century years that are not leap years are among them. */
const days = fc.integer({ min: -135_140, max: 157_054 }).map(fromEpochDays);

/** The same day for date-fns, at local noon, where no change of clocks can move it. */
const forLibrary = (of: Day) => new Date(yearOf(of), monthOf(of) - 1, dayOfMonthOf(of), 12);

describe('a day', () => {
  it('is read only from a real date', () => {
    expect(parseDay('2024-02-29')).toBe('2024-02-29');
    expect(parseDay('2026-02-29')).toBeNull();
    expect(parseDay('1900-02-29')).toBeNull();
    expect(parseDay('2000-02-29')).toBe('2000-02-29');
    for (const wrong of [
      '2026-13-01',
      '2026-00-10',
      '2026-04-31',
      '2026-4-3',
      ' 2026-04-03',
      '0999-01-01',
      '',
    ]) {
      expect(parseDay(wrong)).toBeNull();
    }
    expect(dayOf(2026.5, 1, 1)).toBeNull();
    expect(() => day('2026-02-30')).toThrow(RangeError);
  });

  it('of any year may be 29 February, and falls on the 28th where a year has none', () => {
    expect(parseMonthDay('02-29')).toBe('02-29');
    expect(parseMonthDay('02-30')).toBeNull();
    expect(parseMonthDay('2-3')).toBeNull();
    expect(() => monthDay('04-31')).toThrow(RangeError);
    expect(inYear(monthDay('02-29'), 2026)).toBe('2026-02-28');
    expect(inYear(monthDay('02-29'), 2028)).toBe('2028-02-29');
  });

  it('is counted as a library counts it', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: -4000, max: 4000 }), (from, n) => {
        const to = addDays(from, n);
        const expected = addDaysOfLibrary(forLibrary(from), n);
        expect([yearOf(to), monthOf(to), dayOfMonthOf(to)]).toEqual([
          expected.getFullYear(),
          expected.getMonth() + 1,
          expected.getDate(),
        ]);
        expect(daysBetween(from, to)).toBe(n);
        expect(differenceInCalendarDays(forLibrary(to), forLibrary(from))).toBe(n);
        expect(weekdayOf(from)).toBe(getDay(forLibrary(from)));
      }),
    );
  });

  it('goes to a number and back, and sorts as text', () => {
    fc.assert(
      fc.property(days, days, (a, b) => {
        expect(fromEpochDays(toEpochDays(a))).toBe(a);
        expect(parseDay(a)).toBe(a);
        expect(Math.sign(daysBetween(a, b))).toBe(a < b ? 1 : a > b ? -1 : 0);
        expect(earlier(a, b) <= later(a, b)).toBe(true);
        expect(inYear(monthDayOf(a), yearOf(a))).toBe(a);
      }),
    );
  });

  it('has its place in its year', () => {
    fc.assert(
      fc.property(days, (of) => {
        const index = dayOfYear(of);
        expect(index).toBeGreaterThanOrEqual(0);
        expect(index).toBeLessThan(daysInYear(yearOf(of)));
        expect(dayInYear(yearOf(of), index)).toBe(of);
      }),
    );
    expect(dayOfYear(day('2024-12-31'))).toBe(365);
    expect(dayOfYear(day('2023-12-31'))).toBe(364);
    expect([1900, 2000, 2023, 2024].map(isLeapYear)).toEqual([false, true, false, true]);
  });
});
