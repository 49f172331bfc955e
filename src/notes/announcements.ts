import { itemTest } from './filed-rules.ts';
import type { Item } from './items.ts';
import { TEASERS } from './lexicon/teasers.ts';
import { compileTable, findMatches } from './patterns.ts';

const TEASER_INDEX = compileTable(TEASERS);

/** Words that announce news and tell none: "new development on the alma, folks". */
const isAnnouncing = itemTest(`
  for on from with of about is time you what everyone 's new today my at this in here quick something
  again i have some to guys all development developments are got folks special ladies gentlemen we go
  major great me never believe will details later see the has front finally last over and lads team
  did done doing theres up to EMPTY DET TREEWORD
`);

/** Whether a clause only announces: what was seen has to be asked. */
export function onlyAnnounces(items: readonly Item[]): boolean {
  if (items.some((item, i) => isFaringWord(item) && isFaring(items[i - 1]))) return false;
  if (items.every((item) => !isSpoken(item) || isAnnouncing(item))) return true;
  const teasers = findMatches(items, TEASER_INDEX);
  if (teasers.length === 0) return false;
  const teasing = new Set(teasers.flatMap(({ at }) => at.map((i) => items[i])));
  return items.every(
    (item) => !isSpoken(item) || teasing.has(item) || isAnnouncing(item) || item.classes.has('NODE'),
  );
}

/** "alma ok", "the king is doing well": that is what was seen. */
const isFaringWord = itemTest('ok okay well great good fine lovely alright');

function isSpoken({ type }: Item): boolean {
  return type === 'word' || type === 'number';
}

function isFaring(before: Item | undefined): boolean {
  return (
    before !== undefined &&
    (before.type === 'tree' ||
      before.classes.has('BE') ||
      ['doing', 'looking', 'going', 'all'].includes(before.text))
  );
}
