import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** "they say", "the lads on here say": several, whoever they are; not "i say", "sad to say", "would say". */
export function isManySay(items: readonly Item[], i: number): boolean {
  const start = ['here', 'there', 'forum', 'online', 'group'].includes(items[i - 1]?.text ?? '') ? 3 : 1;
  return items
    .slice(Math.max(0, i - start), i)
    .some((item) => THEY.has(item.text) || isAnyOf(item, ['OTHERS', 'HOUSE', 'KIN']));
}

const THEY = wordSet('they people folks folk everyone everybody some many others experts most guys members');
