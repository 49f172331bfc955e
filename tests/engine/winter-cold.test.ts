import { describe, expect, it } from 'vitest';
import { type DailyRow, fromRows } from '../../src/engine/climate.ts';
import { addDays, type Day, day, daysBetween } from '../../src/engine/day.ts';
import { flatten } from '../../src/engine/flat-series.ts';
import { BREBA_KILL_C, coldStatOf, WOOD_KILL_C } from '../../src/engine/winter-cold.ts';
import { observed, seriesOf } from './observed.ts';

function lows(from: string, to: string, lowOn: (on: Day) => number | null) {
  const rows: DailyRow[] = [];
  for (let on = day(from); on <= day(to); on = addDays(on, 1))
    rows.push({ day: on, tmaxC: 9, tminC: lowOn(on) });
  return flatten(fromRows(rows));
}

describe('the cold of winters', () => {
  it('in New York came first and last on the days of the file', () => {
    // vega-datasets 3.2.1, data/weather.csv (NOAA, US Government work): three whole winters, 2012/13–2014/15.
    const days = observed('New York');
    const firstDays = [2012, 2013, 2014].map(
      (year) =>
        days.find(({ date, low }) => date >= `${year}-07-24` && date < `${year + 1}-07-24` && low <= -6.7)
          ?.date,
    );
    const stat = coldStatOf(flatten(seriesOf(days)), 'N', WOOD_KILL_C);
    expect(stat).toMatchObject({
      winters: 3,
      reached: firstDays.filter((date) => date !== undefined).length,
    });
    // Days from 24 July sort the three winters; the median is the second.
    const from = (date: string) =>
      daysBetween(day(`${Number(date.slice(0, 4)) - (date.slice(5) < '07-24' ? 1 : 0)}-07-24`), day(date));
    const inOrder = firstDays.filter((date) => date !== undefined).sort((a, b) => from(a) - from(b));
    expect(stat.firstP50).toBe(inOrder[1]?.slice(5));
  });

  it('counts a day at the temperature itself', () => {
    const winter = lows('2020-07-24', '2021-07-23', (on) =>
      on === day('2021-01-10') ? -4 : on === day('2021-02-01') ? -3.9 : 3,
    );
    expect(coldStatOf(winter, 'N', BREBA_KILL_C)).toEqual({
      atC: -4,
      winters: 1,
      reached: 1,
      firstP10: '01-10',
      firstP50: '01-10',
      lastP90: '01-10',
    });
  });

  it('is none where no winter got so cold, and passes over winters with too many gaps', () => {
    const mild = lows('2020-07-24', '2022-07-23', () => 2);
    expect(coldStatOf(mild, 'N', BREBA_KILL_C)).toMatchObject({
      winters: 2,
      reached: 0,
      firstP50: null,
      lastP90: null,
    });
    // 37 of 365 days are more than a tenth, 36 are not.
    const without = (to: string) =>
      coldStatOf(
        lows('2020-07-24', '2022-07-23', (on) => (on >= day('2021-01-01') && on <= day(to) ? null : 2)),
        'N',
        BREBA_KILL_C,
      ).winters;
    expect(without('2021-02-05')).toBe(2);
    expect(without('2021-02-06')).toBe(1);
  });

  it('is that of a southern winter from January to January', () => {
    const winter = lows('2021-01-24', '2022-01-23', (on) =>
      on === day('2021-07-05') || on === day('2021-08-02') ? -5 : 4,
    );
    expect(coldStatOf(winter, 'S', BREBA_KILL_C)).toMatchObject({
      winters: 1,
      firstP50: '07-05',
      lastP90: '08-02',
    });
  });
});
