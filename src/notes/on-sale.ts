import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** "at the garden centre", "down the market": where trees are looked at or sold, and none is the member's. */
export function isOnSale(items: readonly Item[], tree: number): boolean {
  if (!items.slice(0, tree).some(({ text }) => SEEING.has(text))) return false;
  return items.some(
    (item, i) =>
      SALES.has(item.text) &&
      i !== tree &&
      items.slice(Math.max(0, i - 4), i).some((each) => AT_SALES.has(each.text)),
  );
}

const SALES = wordSet(`
  centre center market supermarket shop store nursery fair fete show stall park museum hotel pub restaurant cafe
  university campus church churchyard cemetery hospital roadside depot lot
  exhibition auction fayre boot greengrocer grocer orchard vineyard winery
`);
const SEEING = wordSet('saw seen spotted noticed admired eyed eyeing clocked passed found met spied seeing');
const AT_SALES = wordSet('at in outside down by from near behind opposite inside up');

/** "went up the allotment, …": the member's own plot, unless somebody was met there. */
export function isOwnPlot(items: readonly Item[], i: number): boolean {
  const next = items[i + 1];
  return (
    items[i]?.text === 'allotment' &&
    ['the', 'my', 'our'].includes(items[i - 1]?.text ?? '') &&
    next?.text !== "'s" &&
    next?.type !== 'tree' &&
    !items.slice(0, i).some((each) => PEOPLE.has(each.text) || isAnyOf(each, ['OTHERS', 'KIN']))
  );
}

const PEOPLE = wordSet(`
  woman man lady chap lad lass girl boy guy bloke person couple family gardener grower member stranger fella geezer
  someone somebody people folk folks they everyone dude
`);
