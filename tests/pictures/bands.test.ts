import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { fromRows } from '../../src/engine/climate.ts';
import { addDays, day } from '../../src/engine/day.ts';
import { daysOf, seasonStarting } from '../../src/engine/season.ts';
import { BANDS_NEED, highsOf } from '../../src/pictures/bands.ts';
import { observed, seriesOf } from '../engine/observed.ts';

describe('Bands of past highs', () => {
  const days = observed('New York');
  const season = seasonStarting(2015, 'N');

  it('are the percentiles of all earlier highs within a week, by jstat', () => {
    const { bands, past } = highsOf(seriesOf(days), season);
    expect(past.map(({ label }) => label)).toEqual(['2012', '2013', '2014']);
    // Days in whose window no leap day and no turn of the year shifts anything.
    for (const monthDay of ['03-20', '07-05', '09-10', '12-20']) {
      const window = days
        .filter(({ date }) => date < '2015')
        .filter(({ date }) => {
          const middle = day(`${date.slice(0, 4)}-${monthDay}`);
          // 2012 has a 29 February: its days are laid along the season by their number, one day later.
          const centre = date.startsWith('2012') ? addDays(middle, -1) : middle;
          return date >= addDays(centre, -7) && date <= addDays(centre, 7);
        })
        .map(({ high }) => high);
      expect(window).toHaveLength(45);
      const expected = jStat.quantiles(window, [0.1, 0.25, 0.5, 0.75, 0.9], 1, 1);
      const index = daysOf(season).indexOf(day(`2015-${monthDay}`));
      const band = bands[index];
      expect(band && [band.p10, band.p25, band.p50, band.p75, band.p90].map((v) => v.toFixed(6))).toEqual(
        expected.map((v) => v.toFixed(6)),
      );
    }
  });

  it('lay this season along its own days, gaps left open', () => {
    const without = days.filter(({ date }) => date !== '2015-04-02' && date < '2015-06-01');
    const { thisSeason } = highsOf(seriesOf(without), season);
    expect(thisSeason).toHaveLength(365);
    expect(thisSeason[90]).toBe(days.find(({ date }) => date === '2015-04-01')?.high);
    expect(thisSeason[91]).toBeNull();
    expect(thisSeason[151]).toBeNull();
  });

  it('give way to the single seasons when there are fewer than three', () => {
    const two = highsOf(seriesOf(days.filter(({ date }) => date >= '2013')), season);
    expect(two.past).toHaveLength(BANDS_NEED - 1);
    expect(two.bands).toEqual([]);
    expect(two.single.map((each) => each.season.label)).toEqual(['2013', '2014']);
    const one = highsOf(seriesOf(days.filter(({ date }) => date >= '2015')), season);
    expect(one.single).toEqual([]);
  });

  it('count a leap season whole', () => {
    const leap = highsOf(seriesOf(days), seasonStarting(2016, 'N'));
    expect(leap.bands).toHaveLength(366);
    expect(leap.bands.every((band) => band !== null)).toBe(true);
    expect(leap.thisSeason.every((high) => high === null)).toBe(true);
  });

  it('leave later seasons and seasons without a high out', () => {
    const first = highsOf(seriesOf(days), seasonStarting(2012, 'N'));
    expect(first.past).toEqual([]);
    const lowsOnly = fromRows([{ day: day('2014-05-05'), tmaxC: null, tminC: 3 }]);
    expect(highsOf(lowsOnly, season).past).toEqual([]);
  });
});
