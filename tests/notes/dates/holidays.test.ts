import Holidays from 'date-holidays';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, daysBetween, fromEpochDays, weekdayOf } from '../../../src/engine/day.ts';
import { findHoliday } from '../../../src/notes/dates/holidays.ts';
import { turnOfSun } from '../../../src/notes/dates/sun.ts';
import { DEADLINE, read } from './support.ts';

const YEARS = Array.from({ length: 16 }, (_, i) => 2020 + i);

/** Our phrase and the name the reference library date-holidays has for the same day. */
const PAIRS: readonly (readonly [calendar: readonly string[], ours: string, theirs: string])[] = [
  [['US'], "new year's day", "New Year's Day"],
  [['US'], 'mlk day', 'Martin Luther King Jr. Day'],
  [['US'], "presidents' day", "Washington's Birthday"],
  [['US'], "valentine's day", "Valentine's Day"],
  [['US'], 'st patrick’s day', "St. Patrick's Day"],
  [['US'], 'easter', 'Easter Sunday'],
  [['US'], "mother's day", "Mother's Day"],
  [['US'], 'memorial day', 'Memorial Day'],
  [['US'], "father's day", "Father's Day"],
  [['US'], 'july 4th', 'Independence Day'],
  [['US'], 'labor day', 'Labor Day'],
  [['US'], 'columbus day', 'Columbus Day'],
  [['US'], 'halloween', 'Halloween'],
  [['US'], 'veterans day', 'Veterans Day'],
  [['US'], 'thanksgiving', 'Thanksgiving Day'],
  [['US'], 'black friday', 'Day after Thanksgiving Day'],
  [['US'], 'christmas eve', 'Christmas Eve'],
  [['US'], 'christmas', 'Christmas Day'],
  [['GB', 'ENG'], 'mothering sunday', "Mother's Day"],
  [['GB', 'ENG'], 'good friday', 'Good Friday'],
  [['GB', 'ENG'], 'easter monday', 'Easter Monday'],
  [['GB', 'ENG'], 'early may bank holiday', 'Early May bank holiday'],
  [['GB', 'ENG'], 'spring bank holiday', 'Spring bank holiday'],
  [['GB', 'ENG'], 'august bank holiday', 'Summer bank holiday'],
  [['GB', 'ENG'], 'boxing day', 'Boxing Day'],
  [['AU'], 'anzac day', 'Anzac Day'],
  [['AU', 'VIC'], 'melbourne cup day', 'Melbourne Cup'],
  [['NZ'], 'waitangi day', 'Waitangi Day'],
  [['CA'], 'canada day', 'Canada Day'],
  [['CA'], 'groundhog day', 'Groundhog Day'],
  [['CA', 'ON'], 'victoria day', 'Victoria Day'],
  [['CA', 'ON'], 'canadian thanksgiving', 'Thanksgiving'],
];

/** Bank holidays moved for once by proclamation, for VE Day and for the jubilee. */
const MOVED = new Set(['Early May bank holiday 2020', 'Spring bank holiday 2022']);

describe('holidays fall as in date-holidays', () => {
  it.each(PAIRS)('%j %s', (calendar, ours, theirs) => {
    const [country = '', state] = calendar;
    const reference = state ? new Holidays(country, state) : new Holidays(country);
    for (const year of YEARS) {
      if (MOVED.has(`${theirs} ${year}`)) continue;
      const there = reference
        .getHolidays(year)
        .find((holiday) => holiday.name === theirs && !holiday.substitute);
      expect(there, `${theirs} ${year}`).toBeDefined();
      expect(read(`${ours} ${year}`, DEADLINE), `${ours} ${year}`).toBe(there?.date.slice(0, 10));
    }
  });
});

/**
 * Easter by the method of the Astronomical Society of South Australia ("The Date of Easter", assa.org.au), with
 * its own tables of corrections by century; March days run on past 31.
 */
function marchDayOfEaster(year: number): number {
  const century = Math.floor(year / 100);
  let moon = Math.floor((century - 15) / 2) + 202 - 11 * (year % 19);
  if ([21, 24, 25, 27, 28, 29, 30, 31, 32, 34, 35, 38].includes(century)) moon -= 1;
  if ([33, 36, 37, 39, 40].includes(century)) moon -= 2;
  moon %= 30;
  const isEarlier = moon === 29 || (moon === 28 && year % 19 > 10);
  const fullMoon = moon + (isEarlier ? 20 : 21);
  let c = (40 - century) % 4;
  if (c === 3) c += 1;
  if (c > 1) c += 1;
  const short = year % 100;
  const d = (short + Math.floor(short / 4)) % 7;
  return fullMoon + ((((20 - ((fullMoon - 19) % 7) - c - d) % 7) + 7) % 7) + 1;
}

describe('Australia Day', () => {
  it('is 26 January; the reference has the day off, which moves to Monday from a weekend', () => {
    const reference = new Holidays('AU');
    for (const year of YEARS) {
      const day26 = day(`${year}-01-26`);
      expect(read(`australia day ${year}`, DEADLINE)).toBe(day26);
      if (weekdayOf(day26) % 6 === 0) continue;
      const there = reference.getHolidays(year).find((holiday) => holiday.name === 'Australia Day');
      expect(there?.date.slice(0, 10)).toBe(day26);
    }
  });
});

describe('Easter', () => {
  it('is where the Astronomical Society of South Australia puts it, 1900–2198', () => {
    for (let year = 1900; year < 2199; year++) {
      const easter = addDays(day(`${year}-03-01`), marchDayOfEaster(year) - 1);
      expect(read(`easter ${year}`, DEADLINE)).toBe(easter);
    }
  });
});

describe('turns of the sun', () => {
  const turns = {
    'march equinox': 'march',
    'june solstice': 'june',
    'september equinox': 'september',
    'december solstice': 'december',
  } as const;
  const reference = new Holidays('US', { timezone: 'UTC' });
  for (const name of Object.keys(turns))
    reference.setHoliday(`${name} in UTC`, { name: { en: name }, type: 'observance' });
  const daysThere = (year: number): Day[] =>
    Object.keys(turns).map((name) => {
      const there = reference.getHolidays(year).find((holiday) => holiday.name === name);
      return day(there?.date.slice(0, 10) ?? '');
    });
  const daysHere = (year: number): Day[] =>
    Object.values(turns).map((turn) => fromEpochDays(turnOfSun(turn, year)));

  it('fall on the days that date-holidays computes with astronomia, a day off at most where midnight is near', () => {
    for (let year = 2000; year <= 2060; year++) {
      const here = daysHere(year);
      const off = daysThere(year).filter((there, i) => Math.abs(daysBetween(there, here[i]!)) > 1);
      expect(off).toEqual([]);
    }
    expect([2025, 2026, 2027].map(daysHere)).toEqual([2025, 2026, 2027].map(daysThere));
  });

  it('are named for the member’s own season', () => {
    expect(read('summer solstice', DEADLINE)).toBe(fromEpochDays(turnOfSun('june', 2027)));
    expect(read('summer solstice', { ...DEADLINE, hemisphere: 'S' })).toBe(
      fromEpochDays(turnOfSun('december', 2026)),
    );
  });
});

describe('names', () => {
  it('take the longest that fits', () => {
    const words = ['easter', 'monday', 'evening'];
    expect(findHoliday((i) => words[i])?.words).toBe(2);
  });

  it('of nations keep their own day, and Thanksgiving is the United States’', () => {
    expect(read('canadian thanksgiving 2026', DEADLINE)).toBe('2026-10-12');
    expect(read('thanksgiving 2026', DEADLINE)).toBe('2026-11-26');
  });
});
