import type { Day } from './day.ts';
import { inOrder, type MainCropInput, mainCropOf, type SeasonObservation } from './fruit.ts';
import type { Crop, WeightUnit } from './observation.ts';

/** One pick as noted: a number of figs, a weight, or neither. */
export interface PickedObservation extends SeasonObservation {
  readonly unit: WeightUnit | null;
}

/** What was picked of one crop in one season. */
export interface Harvest {
  /** Notes of a pick. */
  readonly picks: number;
  /** Figs counted; picks noted by weight or without a count add none. */
  readonly figs: number;
  /** Weight noted, grams; picks noted by count add none. */
  readonly grams: number;
  readonly from: Day | null;
  readonly to: Day | null;
}

export const NO_HARVEST: Harvest = { picks: 0, figs: 0, grams: 0, from: null, to: null };

/** Grams in one of each: the international avoirdupois pound of 1959 is 453.59237 g, an ounce its 16th. */
export const GRAMS: Readonly<Record<WeightUnit, number>> = {
  g: 1,
  kg: 1000,
  lb: 453.59237,
  oz: 453.59237 / 16,
};

/**
 * The picks of a tree's season, brebas and main crop apart. A pick of an unnamed crop is taken for what the
 * notes before it make of it, as the verdict does (engine/fruit.ts).
 */
export function harvestOf(
  input: Omit<MainCropInput, 'observations'> & { readonly observations: readonly PickedObservation[] },
): Readonly<Record<Crop, Harvest>> {
  const ordered = inOrder(input.observations) as readonly PickedObservation[];
  const totals: Record<Crop, Harvest> = { main: NO_HARVEST, breba: NO_HARVEST };
  for (const [i, note] of ordered.entries()) {
    if (note.kind !== 'picked') continue;
    const known = mainCropOf({ ...input, observations: ordered.slice(0, i + 1) });
    const crop = note.crop ?? (known.pickedOn === null ? 'breba' : 'main');
    totals[crop] = withPick(totals[crop], note);
  }
  return totals;
}

/** Two harvests as one. */
export function addHarvests(a: Harvest, b: Harvest): Harvest {
  return {
    picks: a.picks + b.picks,
    figs: a.figs + b.figs,
    grams: a.grams + b.grams,
    from: extreme(a.from, b.from, (x, y) => x < y),
    to: extreme(a.to, b.to, (x, y) => x > y),
  };
}

function withPick(total: Harvest, { on, count, unit }: PickedObservation): Harvest {
  const figs = unit === null ? (count ?? 0) : 0;
  const grams = unit === null ? 0 : (count ?? 0) * GRAMS[unit];
  return addHarvests(total, { picks: 1, figs, grams, from: on, to: on });
}

function extreme(a: Day | null, b: Day | null, wins: (a: Day, b: Day) => boolean): Day | null {
  if (a === null || b === null) return a ?? b;
  return wins(a, b) ? a : b;
}
