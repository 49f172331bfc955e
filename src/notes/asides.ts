import type { Item } from './items.ts';
import { ASIDES } from './lexicon/asides.ts';
import { compileTable, findMatches } from './patterns.ts';

const INDEX = compileTable(ASIDES);

/** How many words at the end of a phrase stay. */
const KEPT = { aside: 0, 'lead 1': 1, 'lead 3': 3 } as const;

/** The items without the asides among them; the same array when there are none. */
export function dropAsides(items: readonly Item[]): readonly Item[] {
  const matches = findMatches(items, INDEX);
  if (matches.length === 0) return items;
  const gone = new Set<number>();
  for (const { at, kind } of matches) {
    const kept = KEPT[kind];
    const end = kept === 0 ? (at.at(-1) ?? -1) + 1 : (at.at(-kept) ?? 0);
    // Whatever a gap of the pattern passed over goes with it.
    for (let i = at[0] ?? 0; i < end; i++) gone.add(i);
  }
  const left = items.filter((_, i) => !gone.has(i));
  // Nothing but an aside: it is all that there is to read.
  return left.some((item) => item.type !== 'mark') ? left : items;
}
