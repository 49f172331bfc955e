import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day, fromEpochDays, type MonthDay, monthDay, monthDayOf } from '../../src/engine/day.ts';
import {
  daysOf,
  type Hemisphere,
  inSeason,
  midSeason,
  nextSeason,
  parseSeason,
  previousSeason,
  seasonOf,
  seasonStarting,
} from '../../src/engine/season.ts';

const days = fc.integer({ min: 0, max: 40_000 }).map(fromEpochDays);
const hemispheres = fc.constantFrom<Hemisphere>('N', 'S');
const monthDays = days.map(monthDayOf);

describe('a season', () => {
  it('is the calendar year in the north, and July to June in the south', () => {
    expect(seasonOf(day('2026-12-31'), 'N').label).toBe('2026');
    expect(seasonOf(day('2026-12-31'), 'S').label).toBe('2026/27');
    expect(seasonOf(day('2027-01-01'), 'S').label).toBe('2026/27');
    expect(seasonOf(day('2026-06-30'), 'S').label).toBe('2025/26');
    expect(seasonOf(day('2026-07-01'), 'S').label).toBe('2026/27');
    expect(seasonStarting(1999, 'S').label).toBe('1999/00');
  });

  it('holds every day exactly once', () => {
    fc.assert(
      fc.property(days, hemispheres, (on, hemisphere) => {
        const season = seasonOf(on, hemisphere);
        expect(season.from <= on && on <= season.to).toBe(true);
        expect(addDays(season.to, 1)).toBe(nextSeason(season).from);
        expect(previousSeason(nextSeason(season))).toEqual(season);
        expect(daysOf(season).length).toBeGreaterThanOrEqual(365);
        expect(daysOf(season)[0]).toBe(season.from);
        expect(daysOf(season).at(-1)).toBe(season.to);
      }),
    );
  });

  it('has one day of each month and day, also in leap years', () => {
    fc.assert(
      fc.property(
        monthDays,
        fc.integer({ min: 1970, max: 2070 }),
        hemispheres,
        (of: MonthDay, year, side) => {
          const season = seasonStarting(year, side);
          const found = inSeason(of, season);
          expect(seasonOf(found, side)).toEqual(season);
          expect(monthDayOf(found) === of || of === '02-29').toBe(true);
        },
      ),
    );
    expect(inSeason(monthDay('02-29'), seasonStarting(2027, 'S'))).toBe('2028-02-29');
    expect(inSeason(monthDay('02-29'), seasonStarting(2026, 'S'))).toBe('2027-02-28');
  });

  it('is read from its label', () => {
    expect(parseSeason(' 2026/27 ', 'S')?.from).toBe('2026-07-01');
    expect(parseSeason('2026', 'S')?.from).toBe('2026-07-01');
    expect(parseSeason('2026', 'N')?.from).toBe('2026-01-01');
    for (const wrong of ['2026/28', '26', '2026/27/28', 'last']) expect(parseSeason(wrong, 'S')).toBeNull();
    expect(parseSeason('2026/27', 'N')).toBeNull();
  });

  it('parts spring and fall on 24 July, in the south on 24 January', () => {
    // Source: Utah Climate Center, freeze tables, as recorded for its search of spring and fall freezes.
    expect(midSeason(seasonStarting(2026, 'N'))).toBe('2026-07-24');
    expect(midSeason(seasonStarting(2026, 'S'))).toBe('2027-01-24');
  });
});
