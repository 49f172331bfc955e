import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Nothing but a word for figs, perhaps with a number: by itself that says they are there. */
export function isWeak(items: readonly Item[], at: readonly number[]): boolean {
  return at.every((i, k) => {
    const item = items[i];
    if (!item) return false;
    // "9 honest figs", "6 king figs"
    if (k === 1 && at.length === 3 && items[at[0] ?? -1]?.type === 'quantity') return true;
    return item.classes.has('FRUIT') || item.classes.has('SIZE') || item.type === 'quantity';
  });
}

/** Unknown words around make it doubtful what is said of the figs: then it is a remark. */
export function weakFits(items: readonly Item[], at: readonly number[]): boolean {
  const counted = at.some((i) => items[i]?.type === 'quantity');
  const strange = items.filter(
    (item, i) =>
      !at.includes(i) &&
      item.type === 'word' &&
      !KNOWN_BESIDE.some((name) => item.classes.has(name)) &&
      !PLAIN_BESIDE.has(item.text) &&
      !item.text.endsWith('ly'),
  );
  const figlets = at.some((i) => items[i]?.classes.has('FRUITLET'));
  return strange.length <= (counted ? 2 : figlets ? 1 : 0);
}

const KNOWN_BESIDE = [
  'DET',
  'PREP',
  'BE',
  'HAVE',
  'ADV',
  'NOW',
  'SIZE',
  'FRUIT',
  'NODE',
  'SHOOT',
  'WOOD',
  'EMPTY',
  'PRO',
  'MY',
  'OLDWOOD',
  'BREBA',
  'TREEWORD',
  'MEASURE',
  'LEAF',
  'BUD',
  'NEG',
  'WILL',
  'AUX',
  'WH',
  'HEDGE',
  'SAYS',
  'AND',
];

const PLAIN_BESIDE = wordSet(`
  become became turned chockers set bunch load loads lots lot plenty heaps ton tons dozens cluster
  clusters handful couple about roughly around maybe least more than over spotted found counted see
  can first up along look crop start started coming joy sign signs actual real visible honest teeny
  weeny everywhere galore tonnes surprise proper legit count total another extra every so no yes
  success result bingo happy finally there i main second this year morning not and love looking good
  great cute adorable whoop woohoo as of me many much again also far wee inch long like grape marble
  pea thumbnail size sized big each per off near tip base join right at wow omg baby 's exactly
  precisely approx tree behind hiding hidden under already still hanging holding made gave gives given
  bears bearing since dotted scattered clustered sprinkled throughout honestly promise swear
`);
