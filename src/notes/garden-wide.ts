import { type Filed, fileRules } from './filed-rules.ts';
import { isAnyOf, textAt } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

interface WideRule extends Filed {
  readonly tells: (items: readonly Item[], i: number) => boolean;
}

const RULES: readonly WideRule[] = [
  { on: 'all', tells: isAllTold },
  { on: 'each', tells: (items, i) => ONE_OF_ALL.has(textAt(items, i + 1)) },
  // "rotated the pots"
  {
    on: 'pots trees plants tubs containers',
    tells: (items, i) => ['the', 'my', 'our'].includes(textAt(items, i - 1)),
  },
  {
    on: 'everything everybody everyone',
    tells: (items, i) =>
      (items[i + 1]?.text !== 'on' || items[i + 2]?.type === 'date') && items[i + 1]?.text !== 'off',
  },
  { on: 'every whole entire', tells: isOfGarden },
  { on: 'the', tells: isTheLot },
];

const rulesOf = fileRules(RULES);

/** At this word it is told of the garden as a whole. */
export function isWide(items: readonly Item[], i: number): boolean {
  const word = items[i]?.word;
  return word !== undefined && rulesOf(word).some(({ tells }) => tells(items, i));
}

const ONE_OF_ALL = wordSet('tree pot plant tub');
const ALL_OF_ONE_KIND = wordSet('trees pots plants tubs');
/** Nouns that with "all" or "whole" mean the garden. */
const GARDEN = wordSet(`
  trees pots plants collection garden yard orchard containers pot greenhouse patio tubs
`);

function isAllTold(items: readonly Item[], i: number): boolean {
  const [before, next, next2] = [items[i - 1], textAt(items, i + 1), textAt(items, i + 2)];
  // "they all got fed"
  if (before?.text === 'they' && items.some((item) => item.classes.has('WATERED')))
    return items.every((item) => item.type !== 'tree');
  // "watered all round"
  if ((next === 'round' || next === 'around') && items[i + 2] === undefined) return true;
  // "watered all", "watered all of them"
  if (before?.classes.has('WATERED') && (items[i + 1] === undefined || (next === 'of' && next2 === 'them')))
    return true;
  // "all 6 trees"
  if (items[i + 1]?.type === 'quantity' && ALL_OF_ONE_KIND.has(next2)) return true;
  return isOfGarden(items, i);
}

/** "all my pots", "the whole garden", "every pot" */
function isOfGarden(items: readonly Item[], i: number): boolean {
  const [next, next2] = [textAt(items, i + 1), textAt(items, i + 2)];
  const inner = next2 === 'my' || next2 === 'the' ? textAt(items, i + 3) : next2;
  const noun = ['the', 'my', 'of', 'our'].includes(next) ? inner : next;
  return GARDEN.has(noun) || (textAt(items, i) === 'every' && ['tree', 'pot', 'plant'].includes(noun));
}

/** "the lot", "the whole patio", "the rest" */
function isTheLot(items: readonly Item[], i: number): boolean {
  const [next, next2] = [textAt(items, i + 1), textAt(items, i + 2)];
  if (next === 'lot') return !TAKEN_WHOLE.has(textAt(items, i - 1));
  if (next === 'whole') return WHOLE_GARDEN.has(next2);
  // "wasps got the rest" of what one tree bore
  if (next === 'rest')
    return !items.slice(0, i).some((each) => isAnyOf(each, ['THIEF', 'PICKED', 'EATEN', 'DROPPED']));
  return false;
}

const WHOLE_GARDEN = wordSet('lot garden yard collection patio greenhouse orchard');

/** Before "the lot": all of what one tree bore. */
const TAKEN_WHOLE = wordSet(`
  had got took taken ate eaten lost dropped stripped cleaned scoffed nicked picked chucked binned shed
  pinched stole swiped demolished
`);
