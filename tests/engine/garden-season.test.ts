import { describe, expect, it } from 'vitest';
import { monthDay } from '../../src/engine/day.ts';
import { gardenSeasonOf } from '../../src/engine/garden-season.ts';
import { seasonStarting } from '../../src/engine/season.ts';

const facts = {
  statedHeatEnd: null,
  statedFirstFrost: null,
  statedLastFrost: null,
  caution: 0,
  summary: null,
};

describe('a garden’s dates in a season', () => {
  it('puts a first frost of January after the season’s fall, not before its spring', () => {
    const stated = { ...facts, statedFirstFrost: monthDay('01-10') };
    expect(gardenSeasonOf(stated, seasonStarting(2026, 'N')).firstFrost).toBe('2027-01-10');
  });

  it('puts a southern first frost of May into the season that began in July', () => {
    const stated = { ...facts, statedFirstFrost: monthDay('05-20'), statedLastFrost: monthDay('09-15') };
    expect(gardenSeasonOf(stated, seasonStarting(2026, 'S'))).toMatchObject({
      firstFrost: '2027-05-20',
      lastFrost: '2026-09-15',
    });
  });

  it('knows no heat without a stated date or a record', () => {
    expect(gardenSeasonOf(facts, seasonStarting(2026, 'N')).heat).toEqual({ kind: 'unknown' });
  });
});
