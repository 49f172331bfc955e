import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { isOrdinary } from './lexicon/ordinary.ts';
import { isPlainWord } from './lexicon/plain-words.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Words for picking that are as often said of other things. */
const PICKINGS = wordSet(`
  pinched grabbed pulled gathered collected enjoyed polished swiped bagged sampled tasted tried
  crunched picked plucked
`);

/** Whether what was taken, eaten or given is fruit of a tree. */
export function pickFits(items: readonly Item[], at: readonly number[]): boolean {
  const first = at[0] ?? 0;
  const verb = items[first];
  if (verb?.classes.has('PICKED')) return verbFits(items, first);
  if (namesPlants(items, at.at(-1) ?? 0)) return false;
  const giver = at.find((i) => items[i]?.classes.has('YIELDS'));
  if (giver !== undefined && takesOther(items, giver)) return false;
  if (verb?.classes.has('TAKEN') || verb?.classes.has('EATEN')) return !takesOther(items, first);
  return true;
}

/** "picked the leaves off", "pinched the label": not every picking is a harvest. */
function verbFits(items: readonly Item[], at: number): boolean {
  const word = items[at]?.text ?? '';
  // "necked the tonic"
  if (takesOther(items, at)) return false;
  // "celeste ate and left no crumbs": slang for doing well.
  if (
    word === 'ate' &&
    items[at - 1]?.type === 'tree' &&
    !items.slice(at + 1).some((item) => item.quantity || item.classes.has('FRUIT'))
  )
    return false;
  // "ate under the celeste"
  if (PLACES.has(items[at + 1]?.text ?? '')) return false;
  if (PICKINGS.has(word)) {
    const rest = items.slice(at + 1);
    const object = rest.find(
      (item) =>
        !item.classes.has('DET') &&
        !item.classes.has('SIZE') &&
        !item.classes.has('PREP') &&
        !item.classes.has('ADV'),
    );
    // "gathered 4 pots round the alma"
    const counted = object?.type === 'quantity' ? rest[rest.indexOf(object) + 1] : undefined;
    if (
      counted?.type === 'word' &&
      PLANTS.has(counted.text) &&
      !rest.some(({ classes }) => classes.has('FRUIT'))
    )
      return false;
    if (word === 'picked') {
      if (!object) return true;
      if (object.classes.has('LEAF') || object.classes.has('SUCKER') || object.classes.has('CUTTING'))
        return false;
      if (
        object.type === 'word' &&
        object.classes.size === 0 &&
        isOrdinary(object.text) &&
        rest[0]?.classes.has('DET')
      )
        return false;
      return true;
    }
    if (['tasted', 'sampled', 'munched'].includes(word) && object?.type === 'tree') return true;
    return (
      rest.some((item) => item.classes.has('FRUIT')) ||
      // "the ripe ones off pot 3"
      (rest.some((item) => item.classes.has('RIPE')) &&
        rest.some((item) => ['off', 'from'].includes(item.text))) ||
      // "gathered a punnet off the alma"
      (object?.classes.has('CONTAINER') === true &&
        rest.some((item) => ['off', 'from'].includes(item.text)) &&
        rest.some((item) => item.type === 'tree')) ||
      // "grabbed some missions": a tree's name in the plural is its fruit.
      (object?.type === 'tree' &&
        /[^s]s$/.test(object.typed) &&
        rest.slice(0, 3).some((item) => SEVERAL.has(item.text))) ||
      // "grabbed the last one off the alma"
      (['one', 'ones'].includes(object?.text ?? '') &&
        rest.some((item) => ['off', 'from'].includes(item.text)) &&
        rest.some((item) => item.type === 'tree')) ||
      // "plucked a pair", and nothing more in the clause
      (object?.type === 'quantity' && rest.length <= 2 && rest.at(-1) === object && at === 0) ||
      // "grabbed 4 celestes"
      (object?.type === 'quantity' && rest.some((item) => item.type === 'tree')) ||
      (object !== undefined &&
        (object.type === 'quantity' || object.type === 'tree') &&
        rest.some((item) => ['off', 'from'].includes(item.text))) ||
      // "grabbed the other 9"
      (object?.type === 'quantity' && rest.slice(0, 2).some((item) => OTHERS.has(item.text))) ||
      (object?.type === 'quantity' && object.classes.has('WEIGHT'))
    );
  }
  return true;
}

const SEVERAL = new Set(['some', 'few', 'several', 'more', 'loads', 'plenty', 'heaps', 'lots']);

const OTHERS = new Set(['other', 'rest', 'remaining', 'last']);

const PLACES = new Set([
  'under',
  'underneath',
  'by',
  'beside',
  'near',
  'behind',
  'outside',
  'next',
  'around',
]);

const PLANTS = wordSet(`
  plant plants tree trees sapling saplings seedling seedlings starter starters stick sticks scion scions
  cutting cuttings pot pots label labels leaf leaves shoot shoots bush bushes whip whips
`);

/** "gave mum 2 celeste plants": the tree's name belongs to another noun. */
function namesPlants(items: readonly Item[], last: number): boolean {
  return items[last]?.type === 'tree' && PLANTS.has(items[last + 1]?.text ?? '');
}

const NO_FRUIT = ['CAREOBJ', 'LEAF', 'SUCKER', 'CUTTING', 'SHOOT', 'ROOT'];

/** The first thing named after the verb is nothing that grows on a fig to be eaten. */
function takesOther(items: readonly Item[], at: number): boolean {
  const object = items
    .slice(at + 1)
    .find(
      (item) =>
        !isAnyOf(item, ['DET', 'SIZE', 'PREP', 'ADV', 'PRO']) &&
        item.type !== 'quantity' &&
        !item.classes.has('CONTAINER'),
    );
  return object?.type === 'word' && !object.classes.has('FRUIT') && isAnyOf(object, NO_FRUIT);
}

/** Only figs dropped count; leaves are another kind. */
export function dropFits(items: readonly Item[], at: number): boolean {
  // "… and fell": of what the clause before was about.
  if (items.length <= 2) return true;
  if (items.some((item) => item.classes.has('LEAF') || item.classes.has('CUTTING'))) return false;
  const word = items[at]?.text ?? '';
  if (losesOther(items)) return false;
  const said = items.some(
    (item) =>
      item.classes.has('FRUIT') ||
      ['everything', 'lot', 'them', 'all', 'both', 'every', 'whole'].includes(item.text),
  );
  if (word === 'dropped' || word === 'aborted')
    return said || items[at + 1] === undefined || items.some((item) => item.classes.has('BREBA'));
  return said;
}

/** "lost all my labels": all of something else. */
function losesOther(items: readonly Item[]): boolean {
  const at = items.findIndex((item) => ['all', 'every', 'both', 'whole', 'entire'].includes(item.text));
  if (at < 0 || items.some((item) => item.classes.has('FRUIT'))) return false;
  const noun = items.slice(at + 1).find((item) => !item.classes.has('DET') && item.text !== 'of');
  return noun?.type === 'word' && noun.classes.size === 0 && isOrdinary(noun.text) && !isPlainWord(noun.text);
}
