import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Words of idioms that mean none of anything; that it is figs must be clear from the rest. */
const OF_ANYTHING = wordSet(`
  drew drawn draw drawing draws blank blanks no joy luck dice cigar banana bugger sod naff jack diddly
  sweet damn bog all fa fanny squat square root of nothing zero a big on in at with
`);
const SOUGHT = wordSet(`
  hunt search front department stakes look looked checked check hunted searched combed went been round
  over score count see whatsoever to the show fruitwise figwise cropwise
`);

function isOfFigs(items: readonly Item[], at: readonly number[]): boolean {
  return items.every(
    (item, i) =>
      at.includes(i) ||
      item.type !== 'word' ||
      isAnyOf(item, ['FRUIT', 'DET', 'ADV', 'EMPTY', 'BE', 'HAVE', 'PRO', 'NODE', 'FOODISH']) ||
      (item.classes.has('PREP') && item.text !== 'for' && item.text !== 'with') ||
      SOUGHT.has(item.text) ||
      BESIDE_NONE.has(item.text),
  );
}

const DOINGS = ['PRUNED', 'TIPPED', 'PICKED', 'WATERED', 'SNIPPED', 'DROPPED'];

/** "nothing" is no fruit only where nothing else is said: not in "nothing else touched", "none made it". */
export function noneFits(items: readonly Item[], at: readonly number[]): boolean {
  const from = at[0] ?? 0;
  const before = items[from - 1];
  // "not a single tip left": none of something else.
  const last = items[at.at(-1) ?? from];
  const what = items
    .slice((at.at(-1) ?? from) + 1)
    .find((item) => !isAnyOf(item, ['SIZE', 'DET', 'TREEWORD']));
  if (
    what?.classes.has('APEX') &&
    (items[from]?.classes.has('NEG') || last?.classes.has('NONE')) &&
    !items.some((item) => item.classes.has('FRUIT'))
  )
    return false;
  // "pruned nothing"
  if (before && isAnyOf(before, DOINGS)) return false;
  if (at.every((i) => items[i]?.type !== 'word' || OF_ANYTHING.has(items[i]?.text ?? '')))
    return items.some((item) => item.classes.has('FRUIT')) || isOfFigs(items, at);
  const alone = at.every(
    (i) =>
      items[i]?.classes.has('NONE') ||
      ['still', 'not', 'blind', 'empty', 'is', 'on', 'at', 'in', 'yet', 'so', 'there'].includes(
        items[i]?.text ?? '',
      ),
  );
  const other = items
    .slice(from + 1)
    .some(
      (item, k) =>
        !at.includes(from + 1 + k) &&
        isAnyOf(item, [
          'PICKED',
          'DROPPED',
          'FALLEN',
          'RIPE',
          'RIPEN',
          'ROOTED',
          'TROUBLE',
          'LEAFED',
          'TIPPED',
          'WATERED',
          'PRUNED',
          'CUTTING',
          'FROST',
          'ROOT',
        ]) &&
        !['gone', 'down', 'hit', 'ground', 'bare', 'off', 'bug'].includes(item.text),
    );
  if (other) return false;
  if (!alone) return true;
  return items.every(
    (item, i) =>
      at.includes(i) || item.type !== 'word' || isAnyOf(item, BESIDE_NOTHING) || BESIDE_NONE.has(item.text),
  );
}

const BESIDE_NOTHING = ['DET', 'ADV', 'EMPTY', 'NONE', 'NEG', 'FOODISH', 'FRUIT', 'WEATHER', 'LEAF', 'BUMP'];
const BESIDE_NONE = wordSet(`
  still yet so far on there to see report show for this time year season round either as of at in up
  top whole thing doing happening forming visible showing from all sadly alas again it them and i
  looked check checked though anywhere whatsoever mate absolutely literally shoot shoots tree branch
  branches node nodes any plant bottom but measure lol haha is has are have got had was seen found
  over wood side every single here me 's
`);
