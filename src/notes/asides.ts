import type { Item } from './items.ts';
import { ASIDES } from './lexicon/asides.ts';
import { compileTable, findMatches } from './patterns.ts';

const INDEX = compileTable(ASIDES);

/** The items without the asides among them; the same array when there are none. */
export function dropAsides(items: readonly Item[]): readonly Item[] {
  const matches = findMatches(items, INDEX);
  if (matches.length === 0) return items;
  const gone = new Set<number>();
  for (const { at } of matches) {
    const last = at.at(-1) ?? 0;
    // Whatever a gap of the pattern passed over goes with it.
    for (let i = at[0] ?? 0; i <= last; i++) gone.add(i);
  }
  const left = items.filter((_, i) => !gone.has(i));
  // Nothing but an aside: it is all that there is to read.
  return left.some((item) => item.type !== 'mark') ? left : items;
}
