import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { type DailyRow, fromRows } from '../../src/engine/climate.ts';
import { addDays, type Day, day } from '../../src/engine/day.ts';
import { flatten } from '../../src/engine/flat-series.ts';
import { firstFrostIn, frostsOf, lastFrostIn } from '../../src/engine/frost.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { type ObservedDay, observed, seriesOf } from './observed.ts';

/** Made-up lows, each day's that of `lowOn`, null where there is no reading. */
function lows(from: string, to: string, lowOn: (on: Day) => number | null) {
  const rows: DailyRow[] = [];
  for (let on = day(from); on <= day(to); on = addDays(on, 1)) {
    rows.push({ day: on, tmaxC: 20, tminC: lowOn(on) });
  }
  return fromRows(rows);
}

/** First and last freezes straight from the rows of the file. */
function freezesByHand(days: readonly ObservedDay[]) {
  const freezes = days.filter(({ low }) => low <= 0).map(({ date }) => date);
  const ofYear = (year: number) => freezes.filter((date) => date.startsWith(`${year}`));
  return [2012, 2013, 2014, 2015].map((year) => ({
    last: ofYear(year).findLast((date) => date.slice(5) < '07-24'),
    first: ofYear(year).find((date) => date.slice(5) >= '07-24'),
  }));
}

const years = [2012, 2013, 2014, 2015];

describe('frosts', () => {
  // Daily lows of vega-datasets 3.2.1, data/weather.csv (NOAA, US Government work).
  it('came first on 6, 12, 15 and 24 November in New York 2012–2015', () => {
    const flat = flatten(seriesOf(observed('New York')));
    const first = years.map((year) => firstFrostIn(flat, seasonStarting(year, 'N')));
    expect(first).toEqual(['2012-11-06', '2013-11-12', '2014-11-15', '2015-11-24']);
    const last = years.map((year) => lastFrostIn(flat, seasonStarting(year, 'N')));
    expect(last).toEqual(['2012-03-27', '2013-04-04', '2014-04-16', '2015-03-29']);
    expect(freezesByHand(observed('New York'))).toEqual(
      years.map((_, i) => ({ last: last[i], first: first[i] })),
    );
  });

  it('came first on 10, 21, 12 and 23 November in Seattle', () => {
    const flat = flatten(seriesOf(observed('Seattle')));
    const first = years.map((year) => firstFrostIn(flat, seasonStarting(year, 'N')));
    expect(first).toEqual(['2012-11-10', '2013-11-21', '2014-11-12', '2015-11-23']);
    const last = years.map((year) => lastFrostIn(flat, seasonStarting(year, 'N')));
    expect(last).toEqual(['2012-03-19', '2013-03-04', '2014-02-09', '2015-03-04']);
    expect(freezesByHand(observed('Seattle'))).toEqual(
      years.map((_, i) => ({ last: last[i], first: first[i] })),
    );
  });

  it('have the percentiles of an independent library, to the nearest day', () => {
    const { first, last } = frostsOf(seriesOf(observed('New York')), 'N');
    // Days of November of the first freezes; days of March of the last ones.
    const inNovember = jStat.quantiles([6, 12, 15, 24], [0.1, 0.5, 0.9], 1, 1);
    expect(inNovember.map((value) => Number(value.toFixed(6)))).toEqual([7.8, 13.5, 21.3]);
    expect(first).toEqual({ p10: '11-08', p50: '11-13', p90: '11-21', seasons: 4, none: 0 });
    const inMarch = jStat.quantiles([27, 29, 35, 47], [0.1, 0.5, 0.9], 1, 1);
    expect(inMarch.map((value) => Number(value.toFixed(6)))).toEqual([27.6, 32, 43.4]);
    expect(last).toEqual({ p10: '03-28', p50: '04-01', p90: '04-12', seasons: 4, none: 0 });
  });

  it('are rounded to the careful side of half a day', () => {
    // Freezes half a day apart from a whole median: 10 and 11 October, 10 and 11 April.
    const dates = ['2021-04-10', '2021-10-10', '2022-04-11', '2022-10-11'];
    const series = lows('2021-01-01', '2022-12-31', (on) => (dates.includes(on) ? 0 : 5));
    const { first, last } = frostsOf(series, 'N');
    expect(first.p50).toBe('10-10');
    expect(last.p50).toBe('04-11');
  });

  it('count 0 °C as freezing and 0.1 °C not', () => {
    const series = lows('2021-01-01', '2021-12-31', (on) =>
      on === day('2021-10-09') ? 0.1 : on === day('2021-10-20') ? 0 : 4,
    );
    expect(frostsOf(series, 'N').first.p50).toBe('10-20');
  });

  it('part at 24 July: a freeze of the 23rd is spring’s, one of the 24th fall’s', () => {
    const series = lows('2021-01-01', '2021-12-31', (on) =>
      on === day('2021-07-23') || on === day('2021-07-24') ? -1 : 4,
    );
    expect(frostsOf(series, 'N')).toMatchObject({ last: { p50: '07-23' }, first: { p50: '07-24' } });
  });

  it('are counted as none where there were none', () => {
    const series = lows('2020-01-01', '2023-12-31', (on) => (on === day('2022-12-01') ? -2 : 6));
    const { first, last } = frostsOf(series, 'N');
    expect(first).toEqual({ p10: '12-01', p50: '12-01', p90: '12-01', seasons: 4, none: 3 });
    expect(last).toEqual({ p10: null, p50: null, p90: null, seasons: 4, none: 4 });
    expect(frostsOf([], 'N').first).toEqual({ p10: null, p50: null, p90: null, seasons: 0, none: 0 });
  });

  it('run from July to June in the south', () => {
    const freezes = ['2021-08-20', '2022-05-25', '2022-09-01', '2023-06-02'];
    const series = lows('2021-07-01', '2023-06-30', (on) => (freezes.includes(on) ? -1 : 8));
    expect(frostsOf(series, 'S')).toEqual({
      first: { p10: '05-26', p50: '05-29', p90: '06-01', seasons: 2, none: 0 },
      last: { p10: '08-21', p50: '08-26', p90: '08-31', seasons: 2, none: 0 },
    });
  });

  it('leave out a season with too many days missing where it matters', () => {
    const freezes = ['2021-10-20', '2022-10-10'];
    const lowOn = (on: Day) => (freezes.includes(on) ? -1 : 8);
    // 24 July to 20 October 2021 are 89 days: eight may be missing, nine not.
    const without = (days: number) => {
      const to = addDays(day('2021-09-01'), days - 1);
      return lows('2021-01-01', '2022-12-31', (on) =>
        on >= day('2021-09-01') && on <= to ? null : lowOn(on),
      );
    };
    expect(frostsOf(without(8), 'N').first).toMatchObject({ seasons: 2, p50: '10-15' });
    expect(frostsOf(without(9), 'N').first).toMatchObject({ seasons: 1, p50: '10-10' });
    // A season under way tells of a frost it had, and nothing of one still to come.
    const underWay = lows('2022-01-01', '2022-10-31', lowOn);
    expect(frostsOf(underWay, 'N').first).toMatchObject({ seasons: 1, none: 0, p50: '10-10' });
    const notYet = lows('2022-01-01', '2022-09-30', lowOn);
    expect(frostsOf(notYet, 'N').first).toMatchObject({ seasons: 0, none: 0 });
  });
});
