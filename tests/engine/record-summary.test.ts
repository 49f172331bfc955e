import { describe, expect, it } from 'vitest';
import { type DailyRow, fromRows, rowsOf } from '../../src/engine/climate.ts';
import { day } from '../../src/engine/day.ts';
import { flatten } from '../../src/engine/flat-series.ts';
import { summariseRecord, toCelsius, toFahrenheit } from '../../src/engine/record-summary.ts';
import { coverOf, hasGap, seasonsIn } from '../../src/engine/seasons-in.ts';
import { observed, seriesOf } from './observed.ts';

const newYork = seriesOf(observed('New York'));

describe('the summary of a record', () => {
  it('says heat end, frosts and completeness, and survives JSON', () => {
    const summary = summariseRecord(newYork, { mark: { value: 80, unit: 'F' }, hemisphere: 'N' });
    expect(summary).toMatchObject({
      mark: { value: 80, unit: 'F' },
      from: '2012-01-01',
      to: '2015-12-31',
      heat: { kind: 'date', heatEnd: '09-10' },
      frost: { first: { p50: '11-13', seasons: 4, none: 0 } },
      seasons: 4,
      gaps: [],
    });
    expect(JSON.parse(JSON.stringify(summary))).toEqual(summary);
  });

  it('takes the mark in °C as well', () => {
    const summary = summariseRecord(newYork, { mark: { value: 27, unit: 'C' }, hemisphere: 'N' });
    expect(summary.heat.kind).toBe('date');
    // 0 °C = 32 °F, 100 °C = 212 °F: by definition.
    expect([toCelsius(32, 'F'), toCelsius(212, 'F'), toCelsius(27, 'C')]).toEqual([0, 100, 27]);
    expect([toFahrenheit(0), toFahrenheit(100)]).toEqual([32, 212]);
  });

  it('names the seasons that miss more than a tenth of their days', () => {
    const rows: DailyRow[] = [...rowsOf(newYork)].filter(
      ({ day: on }) => on < day('2013-05-01') || on > day('2013-06-10'),
    );
    const { seasons, gaps } = summariseRecord(fromRows(rows), {
      mark: { value: 80, unit: 'F' },
      hemisphere: 'N',
    });
    expect(seasons).toBe(4);
    expect(gaps).toEqual([{ season: '2013', days: 365, missingHighs: 41, missingLows: 41 }]);
    expect(hasGap({ season: '2013', days: 365, missingHighs: 0, missingLows: 36 })).toBe(false);
    expect(hasGap({ season: '2013', days: 365, missingHighs: 0, missingLows: 37 })).toBe(true);
  });

  it('has seasons of its own hemisphere, cut by the record’s ends', () => {
    const flat = flatten(newYork);
    const southern = seasonsIn(flat, 'S');
    expect(southern.map(({ label }) => label)).toEqual([
      '2011/12',
      '2012/13',
      '2013/14',
      '2014/15',
      '2015/16',
    ]);
    expect(coverOf(flat, southern[0]!)).toMatchObject({ days: 366, missingHighs: 184 });
    expect(coverOf(flat, southern[4]!)).toMatchObject({ days: 366, missingHighs: 182 });
  });

  it('does not count a season without a reading', () => {
    const rows = [...rowsOf(newYork)].filter(
      ({ day: on }) => on < day('2013-01-01') || on > day('2013-12-31'),
    );
    const { seasons, gaps } = summariseRecord(fromRows(rows), {
      mark: { value: 80, unit: 'F' },
      hemisphere: 'N',
    });
    expect(seasons).toBe(3);
    expect(gaps.map(({ season }) => season)).toEqual(['2013']);
  });

  it('of nothing is no season', () => {
    const summary = summariseRecord([], { mark: { value: 80, unit: 'F' }, hemisphere: 'S' });
    expect(summary).toMatchObject({ from: null, to: null, seasons: 0, gaps: [], heat: { kind: 'none' } });
  });
});
