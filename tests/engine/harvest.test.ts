import { describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import {
  addHarvests,
  GRAMS,
  harvestOf,
  NO_HARVEST,
  type PickedObservation,
} from '../../src/engine/harvest.ts';
import type { Crop, WeightUnit } from '../../src/engine/observation.ts';
import { note } from './season-case.ts';

const pick = (on: string, count: number | null, unit: WeightUnit | null = null, crop: Crop | null = null) =>
  ({ ...note('picked', on, { count, crop }), unit }) satisfies PickedObservation;
const harvest = (...observations: PickedObservation[]) =>
  harvestOf({ observations, mainCropFrom: day('2026-05-10'), spanFrom: 90 });

describe('a harvest', () => {
  it('adds figs and weights apart', () => {
    const { main } = harvest(
      pick('2026-09-10', 4, null, 'main'),
      pick('2026-09-12', 0.5, 'kg', 'main'),
      pick('2026-09-20', null, null, 'main'),
    );
    expect(main).toEqual({ picks: 3, figs: 4, grams: 500, from: '2026-09-10', to: '2026-09-20' });
  });

  it('weighs in the international pound and ounce', () => {
    // 1 lb = 453.59237 g exactly, 16 oz to the lb: international yard and pound agreement of 1959.
    expect(GRAMS).toEqual({ g: 1, kg: 1000, lb: 453.59237, oz: 28.349523125 });
  });

  it('keeps brebas and main crop apart', () => {
    const { main, breba } = harvest(
      pick('2026-07-01', 6, null, 'breba'),
      // Unnamed and too early for main crop: brebas. From 90 days after 10 May on: main crop.
      pick('2026-08-07', 2),
      pick('2026-08-08', 3),
      { ...note('remark', '2026-08-09'), unit: null },
    );
    expect(breba).toMatchObject({ picks: 2, figs: 8, from: '2026-07-01', to: '2026-08-07' });
    expect(main).toMatchObject({ picks: 1, figs: 3 });
  });

  it('of nothing is nothing, and adds as such', () => {
    expect(harvest()).toEqual({ main: NO_HARVEST, breba: NO_HARVEST });
    const { main } = harvest(pick('2026-09-10', 4, null, 'main'));
    expect(addHarvests(main, NO_HARVEST)).toEqual(main);
    expect(addHarvests(NO_HARVEST, main)).toEqual(main);
  });
});
