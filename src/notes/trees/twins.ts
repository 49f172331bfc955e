import type { RosterIndex } from './roster-index.ts';

/** The other trees of a tree's cultivar. */
export function twinsOf(id: number, index: RosterIndex): readonly number[] {
  for (const ids of index.cultivars.values())
    if (ids.has(id) && ids.size > 1) return [...ids].filter((each) => each !== id);
  return [];
}
