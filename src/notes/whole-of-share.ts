import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** "half of the king's 12 shoots": what the share is of. */
export function isWholeOfShare(items: readonly Item[], i: number): boolean {
  for (let k = i - 1; k > 0; k--) {
    const item = items[k];
    if (item?.text === 'of') return SHARES.has(items[k - 1]?.text ?? '');
    if (item?.type !== 'tree' && item?.text !== "'s" && !isAnyOf(item, ['DET', 'MY', 'SIZE'])) return false;
  }
  return false;
}

const SHARES = wordSet('half most some part third quarter many several few majority');
