import { describe, expect, it } from 'vitest';
import { day } from '../../../src/engine/day.ts';
import { noteDay, readDates } from '../../../src/notes/dates/index.ts';
import { DEADLINE, NOTE, read } from './support.ts';

/** One table a family: phrase, as a note (lean past), as a deadline (lean future). Today is Thursday 2026-07-02. */
const FAMILIES: Record<
  string,
  readonly (readonly [phrase: string, past: string | null, future: string | null])[]
> = {
  // RULES §8: early 1–10, mid 11–20, late 21–end, beginning 1–5, end = last 5 days.
  'parts of a month': [
    ['early may', '2026-05-01..2026-05-10', '2027-05-01..2027-05-10'],
    ['mid to late august', '2025-08-11..2025-08-31', '2026-08-11..2026-08-31'],
    ['early/mid june', '2026-06-01..2026-06-20', '2027-06-01..2027-06-20'],
    ['mid-to-late september', '2025-09-11..2025-09-30', '2026-09-11..2026-09-30'],
    ['begining of august', '2025-08-01..2025-08-05', '2026-08-01..2026-08-05'],
    ['end of next month', '2026-08-27..2026-08-31', '2026-08-27..2026-08-31'],
    ['last few days of june', '2026-06-26..2026-06-30', '2027-06-26..2027-06-30'],
    ['first half of june', '2026-06-01..2026-06-15', '2027-06-01..2027-06-15'],
  ],
  // RULES §8: weeks of a month by sevens, the last by its last seven days; "week of D" and the six days after.
  weeks: [
    ['third week of october', '2025-10-15..2025-10-21', '2026-10-15..2026-10-21'],
    ['last week of february', '2026-02-22..2026-02-28', '2027-02-22..2027-02-28'],
    ['week commencing 15 june', '2026-06-15..2026-06-21', '2027-06-15..2027-06-21'],
    ['thanksgiving week', '2025-11-27..2025-12-03', '2026-11-26..2026-12-02'],
    ['next week', '2026-07-06..2026-07-12', '2026-07-06..2026-07-12'],
  ],
  'weekdays of a month': [
    ['second sunday in october', '2025-10-12', '2026-10-11'],
    ['last friday of last month', '2026-06-26', '2026-06-26'],
    ['first weekend of june', '2026-06-06..2026-06-07', '2027-06-05..2027-06-06'],
    ['last day of may', '2026-05-31', '2027-05-31'],
  ],
  // RULES §8: three whole months by hemisphere, the latest started or the earliest not yet over.
  'months and seasons': [
    ['spring', '2026-03-01..2026-05-31', '2027-03-01..2027-05-31'],
    ['summer', '2026-06-01..2026-08-31', '2026-06-01..2026-08-31'],
    ['winter 2025/26', '2025-12-01..2026-02-28', '2025-12-01..2026-02-28'],
    ['last june', '2026-06-01..2026-06-30', '2026-06-01..2026-06-30'],
    ['december or january', '2025-12-01..2026-01-31', '2026-12-01..2027-01-31'],
    ['08/2026', '2026-08-01..2026-08-31', '2026-08-01..2026-08-31'],
  ],
  // RULES §8: "the 31st" skips months that lack it.
  'days of the month': [
    ['the 2nd', '2026-07-02', '2026-07-02'],
    ['the twenty first', '2026-06-21', '2026-07-21'],
    ['the 31st', '2026-05-31', '2026-07-31'],
    ['the 15th of last month', '2026-06-15', '2026-06-15'],
  ],
  'written dates': [
    ['sept. 5th', '2025-09-05', '2026-09-05'],
    ['22-aug-26', '2026-08-22', '2026-08-22'],
    ['oct 3rd 2027', '2027-10-03', '2027-10-03'],
    ['fifth of june', '2026-06-05', '2027-06-05'],
    ['2026 august 22', '2026-08-22', '2026-08-22'],
    ['saturday, 22 august 2026', '2026-08-22', '2026-08-22'],
    ['monday, 22 august 2026', null, null],
  ],
  ranges: [
    ['oct 15-20', '2025-10-15..2025-10-20', '2026-10-15..2026-10-20'],
    ['between the 3rd and the 7th', '2026-06-03..2026-06-07', '2026-07-03..2026-07-07'],
    ['dec 20 to jan 5', '2025-12-20..2026-01-05', '2026-12-20..2027-01-05'],
    ['late aug/early sept', '2025-08-21..2025-09-10', '2026-08-21..2026-09-10'],
    ['easter to whitsun', '2026-04-05..2026-05-24', '2027-03-28..2027-05-16'],
    ['sat and sun', '2026-06-27..2026-06-28', '2026-07-04..2026-07-05'],
    ['aug 10 and 14', null, null],
  ],
  // RULES §8: relative phrases ignore the lean; months and years keep the day of the month.
  'counted from today': [
    ['5 wks from today', '2026-08-06', '2026-08-06'],
    ['in two weeks’ time', '2026-07-16', '2026-07-16'],
    ['twenty-one days from now', '2026-07-23', '2026-07-23'],
    ['half a dozen days ago', '2026-06-26', '2026-06-26'],
    ['2 or 3 days ago', '2026-06-29..2026-06-30', '2026-06-29..2026-06-30'],
    ['1 week and 3 days ago', '2026-06-22', '2026-06-22'],
    ['in 1 month and 2 weeks', '2026-08-16', '2026-08-16'],
    ['day b4 yesterday', '2026-06-30', '2026-06-30'],
    ['this time last year', '2025-07-02', '2025-07-02'],
    ['two sundays ago', '2026-06-21', '2026-06-21'],
    ['a week yesterday', '2026-06-24', '2026-06-24'],
    ['a week on tuesday', '2026-07-14', '2026-07-14'],
  ],
  'counted from a date': [
    // Counted back from the coming tenth, though the day itself is over; forward from a past one, when still to come.
    ['90 days before sept 10', '2026-06-12', '2026-06-12'],
    ['100 days from may 1', '2025-08-09', '2026-08-09'],
    ['10 days before july 4', '2026-06-24', '2026-06-24'],
    ['the monday after easter', '2026-04-06', '2027-03-29'],
    ['weekend before halloween', '2025-10-25..2025-10-26', '2026-10-24..2026-10-25'],
    ['two weeks before the end of october', '2025-10-13..2025-10-17', '2026-10-13..2026-10-17'],
    ['a week after next friday', '2026-07-17', '2026-07-17'],
    ['june 15 or so', '2026-06-12..2026-06-18', '2027-06-12..2027-06-18'],
    ['two weeks before first frost', null, null],
  ],
  // RULES §8: a bare weekday never means today.
  'weekdays and weekends': [
    ['thursday', '2026-06-25', '2026-07-09'],
    ['wendesday', '2026-07-01', '2026-07-08'],
    ['monday before last', '2026-06-22', '2026-06-22'],
    ['thurs last week', '2026-06-25', '2026-06-25'],
    ['sunday just gone', '2026-06-28', '2026-06-28'],
    ['next friday', '2026-07-10', '2026-07-10'],
    ['over the weekend', '2026-06-27..2026-06-28', '2026-07-04..2026-07-05'],
    ['the weekend before last', '2026-06-20..2026-06-21', '2026-06-20..2026-06-21'],
  ],
  'too vague or no date': [
    ['soon', null, null],
    ['a few days ago', null, null],
    ['2026', null, null],
    ['90 days', null, null],
    ['every sunday', null, null],
    ['feb 29 2027', null, null],
    ['', null, null],
    ['🎉', null, null],
  ],
};

describe.each(Object.entries(FAMILIES))('%s', (_, rows) => {
  it.each(rows)('reads “%s”', (phrase, past, future) => {
    expect(read(phrase, NOTE)).toBe(past);
    expect(read(phrase, DEADLINE)).toBe(future);
  });
});

describe('the day a note takes', () => {
  // RULES §7.
  it.each([
    ['early june', '2026-06-05'],
    ['mid april', '2026-04-15'],
    ['late may', '2026-05-25'],
    ['end of june', '2026-06-30'],
    ['first week of june', '2026-06-04'],
    ['over the weekend', '2026-06-27'],
    ['around may 20', '2026-05-20'],
    ['since june 5', '2026-06-05'],
    ['a month ago', '2026-06-02'],
    ['the 28th', '2026-06-28'],
    ["mother's day", '2026-05-10'],
    ['last night', '2026-07-01'],
  ])('of “%s” is %s', (phrase, on) => {
    const reading = readDates(phrase, NOTE);
    expect(reading && noteDay(reading)).toBe(on);
  });
});

describe('what was taken for granted', () => {
  it.each([
    ['2026-08-22', []],
    ['aug 22', ['year']],
    ['mid aug', ['year', 'part']],
    ['the 5th', ['month']],
    ['8/9/2026', ['order']],
    ['8/22', ['year']],
    ['tomorrow', []],
  ])('in “%s” is %j', (phrase, assumed) => {
    expect(readDates(phrase, DEADLINE)?.assumed).toEqual(assumed);
  });
});

describe('29 February', () => {
  const leapDay = { ...NOTE, today: day('2028-02-29') };
  it.each([
    ['a year ago', '2027-02-28'],
    ['a month ago', '2028-01-29'],
    ['in 4 years', '2032-02-29'],
    ['feb 29', '2028-02-29'],
    ['last leap day', '2024-02-29'],
    ['end of the month', '2028-02-25..2028-02-29'],
    ['yesterday', '2028-02-28'],
    ['tuesday', '2028-02-22'],
  ])('as today reads “%s” as %s', (phrase, expected) => {
    expect(read(phrase, leapDay)).toBe(expected);
  });

  it('is the next or the latest leap year when no year is said', () => {
    expect(read('29 february', NOTE)).toBe('2024-02-29');
    expect(read('29 february', DEADLINE)).toBe('2028-02-29');
    // 1900 was no leap year: eight years from one to the next.
    expect(read('feb 29', { ...DEADLINE, today: day('1897-01-01') })).toBe('1904-02-29');
  });
});

describe('“3 days later”', () => {
  it('counts from the anchor it is given', () => {
    expect(read('3 days later', { ...NOTE, anchor: day('2026-06-10') })).toBe('2026-06-13');
    expect(read('3 days later', NOTE)).toBeNull();
  });
});
