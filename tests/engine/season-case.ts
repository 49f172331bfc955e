import type { Day } from '../../src/engine/day.ts';
import { day } from '../../src/engine/day.ts';
import type { SeasonObservation } from '../../src/engine/fruit.ts';
import type { GardenSeason } from '../../src/engine/garden-season.ts';
import type { Crop, ObservationKind } from '../../src/engine/observation.ts';
import { spanOf } from '../../src/engine/ripening.ts';
import { seasonOf } from '../../src/engine/season.ts';
import type { TreeFacts, VerdictInput } from '../../src/engine/tree-season.ts';

/** Heat to 15 October, first frost 20 November, last frost 10 April; a late tree: decision date 7 July 2026. */
export const GARDEN: GardenSeason = {
  heat: { kind: 'date', day: day('2026-10-15'), basis: 'stated' },
  firstFrost: day('2026-11-20'),
  lastFrost: day('2026-04-10'),
  caution: 0,
};

export const TREE: TreeFacts = {
  span: spanOf({ group: 'late' }),
  needsPollination: false,
  pollinated: false,
  purpose: 'fruit',
  kept: 'ground',
  coverDays: 0,
  firstYear: false,
};

interface Case {
  readonly garden?: Partial<GardenSeason>;
  readonly tree?: Partial<TreeFacts>;
  readonly notes?: readonly SeasonObservation[];
}

/** A case of the verdict on `today`, all but the differences being as above. */
export function seasonCase(today: string, { garden, tree, notes = [] }: Case = {}): VerdictInput {
  return {
    today: day(today),
    season: seasonOf(day(today), 'N'),
    garden: { ...GARDEN, ...garden },
    tree: { ...TREE, ...tree },
    observations: notes,
  };
}

let entries = 0;

/** One note; of two made for one day the later made counts as the later entered. */
export function note(
  kind: ObservationKind,
  on: string,
  { crop = null, count = null }: { crop?: Crop | null; count?: number | null } = {},
): SeasonObservation {
  entries += 1;
  return { kind, on: on as Day, crop, count, order: entries };
}
