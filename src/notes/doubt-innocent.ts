import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

const WALKED = wordSet('past by home back in out through round to from inside indoors up down');

/** "on the way past", "on my way home": where the grower walked, and nothing that is still to come. */
export function walksBy(items: readonly Item[], at: readonly number[]): boolean {
  const last = at.at(-1) ?? -1;
  return (
    items[at[0] ?? -1]?.text === 'on' &&
    items[last]?.text === 'way' &&
    WALKED.has(items[last + 1]?.text ?? '')
  );
}

const OWNED = new Set(['his', 'hers', 'theirs']);
const SHARES = new Set(['all', 'most', 'some', 'both', 'half', 'none', 'each']);
const PEOPLE = ['OTHERS', 'HOUSE', 'KIN'];

/** "the king held on to all of his": the tree's own figs, where nobody else is spoken of. */
export function isOfTheTree(items: readonly Item[], at: readonly number[]): boolean {
  const first = at[0] ?? 0;
  return (
    at.length === 1 &&
    OWNED.has(items[first]?.text ?? '') &&
    items[first - 1]?.text === 'of' &&
    SHARES.has(items[first - 2]?.text ?? '') &&
    items.slice(0, first).some((item) => item.type === 'tree') &&
    !items.some((item) => isAnyOf(item, PEOPLE) || item.text === 'he' || item.text === 'she')
  );
}
