import { describe, expect, it } from 'vitest';
import { monthDay } from '../../src/engine/day.ts';
import { type GardenFacts, gardenSeasonOf, medianFrost } from '../../src/engine/garden-season.ts';
import { type RecordSummary, summariseRecord } from '../../src/engine/record-summary.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { observed, seriesOf } from './observed.ts';

const nothing: GardenFacts = {
  statedHeatEnd: null,
  statedFirstFrost: null,
  statedLastFrost: null,
  caution: 0,
  summary: null,
};
// vega-datasets 3.2.1, data/weather.csv (NOAA, US Government work).
const newYork = summariseRecord(seriesOf(observed('New York')), {
  mark: { value: 80, unit: 'F' },
  hemisphere: 'N',
});
const season = seasonStarting(2026, 'N');

describe('a garden in a season', () => {
  it('takes its dates from the record', () => {
    expect(gardenSeasonOf({ ...nothing, summary: newYork, caution: 3 }, season)).toEqual({
      heat: { kind: 'date', day: '2026-09-10', basis: 'record' },
      firstFrost: '2026-11-13',
      lastFrost: '2026-04-01',
      caution: 3,
    });
  });

  it('believes its member before the record', () => {
    const facts = {
      ...nothing,
      summary: newYork,
      statedHeatEnd: monthDay('10-15'),
      statedFirstFrost: monthDay('11-20'),
      statedLastFrost: monthDay('04-10'),
    };
    expect(gardenSeasonOf(facts, season)).toMatchObject({
      heat: { kind: 'date', day: '2026-10-15', basis: 'stated' },
      firstFrost: '2026-11-20',
      lastFrost: '2026-04-10',
    });
  });

  it('is unknown without either, and with an empty record', () => {
    expect(gardenSeasonOf(nothing, season)).toMatchObject({ heat: { kind: 'unknown' }, firstFrost: null });
    const empty = summariseRecord([], { mark: { value: 80, unit: 'F' }, hemisphere: 'N' });
    expect(gardenSeasonOf({ ...nothing, summary: empty }, season).heat).toEqual({ kind: 'unknown' });
  });

  it('has no end of heat where the record has none', () => {
    const withHeat = (heat: RecordSummary['heat']) =>
      gardenSeasonOf({ ...nothing, summary: { ...newYork, heat } }, season).heat;
    expect(withHeat({ kind: 'never-ends', greatestShare: 1 })).toEqual({ kind: 'never-ends' });
    expect(withHeat({ kind: 'none', greatestShare: 0.3 })).toEqual({ kind: 'none' });
  });

  it('near Adelaide has its dates in the season 2026/27', () => {
    const facts = {
      ...nothing,
      statedHeatEnd: monthDay('03-20'),
      statedFirstFrost: monthDay('06-10'),
      statedLastFrost: monthDay('09-01'),
    };
    const south = seasonStarting(2026, 'S');
    expect(south.label).toBe('2026/27');
    expect(gardenSeasonOf(facts, south)).toMatchObject({
      heat: { day: '2027-03-20' },
      firstFrost: '2027-06-10',
      lastFrost: '2026-09-01',
    });
  });

  it('has a first frost of January after the season it ends, in the north', () => {
    const facts = { ...nothing, statedHeatEnd: monthDay('10-31'), statedFirstFrost: monthDay('01-08') };
    expect(gardenSeasonOf(facts, season).firstFrost).toBe('2027-01-08');
    expect(gardenSeasonOf({ ...facts, statedFirstFrost: monthDay('07-24') }, season).firstFrost).toBe(
      '2026-07-24',
    );
  });

  it('has no usual frost where half of its seasons or more had none', () => {
    const stat = { p10: null, p50: monthDay('12-01'), p90: null, seasons: 4 };
    expect(medianFrost({ ...stat, none: 1 })).toBe('12-01');
    expect(medianFrost({ ...stat, none: 2 })).toBeNull();
    expect(medianFrost({ ...stat, seasons: 0, none: 0 })).toBeNull();
  });
});
