import { isAnyOf } from '../item.ts';
import type { Item } from '../items.ts';
import { wordSet } from '../lexicon/word-set.ts';

const PLACE_LEADS = wordSet(`
  by in on near at against beside next to behind under of from outside inside into onto over along off
  around through towards past up
`);

const ARTICLES = wordSet(`
  the my our that this a your his her their back front other
`);

const COUNTING = new Set([
  'one',
  'a',
  'an',
  'single',
  'every',
  'each',
  'another',
  'first',
  'lone',
  'any',
  'no',
  'only',
  'last',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'couple',
  'several',
  'few',
  'many',
]);

export const GENERIC = wordSet(`
  tree plant bush one un thing guy fella boy girl specimen bugger beast chap lad lass
`);

export const VERBISH = [
  'BE',
  'HAVE',
  'AUX',
  'TIPPED',
  'PICKED',
  'DROPPED',
  'PRUNED',
  'LEAFED',
  'BRANCHED',
  'RIPEN',
  'RIPE',
  'WATERED',
  'ROOTED',
  'DORMANT',
  'TROUBLE',
  'SNIPPED',
];

/** Whether weak words stand as a description: "the tall one", "the one by the shed", "tall one". */
export function isDescribed(items: readonly Item[], at: number, end: number, named: boolean): boolean {
  const before = items[at - 1]?.text ?? '';
  // "a bigger pot" is none of the trees.
  if (before === 'a' || before === 'an') return false;
  const next = items[end];
  let lead = at - 1;
  while (lead >= 0 && ARTICLES.has(items[lead]?.text ?? '')) lead--;
  const placed = PLACE_LEADS.has(items[lead]?.text ?? '');
  // "not even one little fig": a fruit, no tree.
  if (next?.text === 'fig' && (COUNTING.has(before) || items[at - 1]?.type === 'number')) return false;
  if (
    next &&
    (GENERIC.has(next.text) || ((next.text === 'fig' || next.text === 'pot') && !isCountable(items, end)))
  ) {
    return (
      !placed ||
      !named ||
      items[lead]?.text === 'off' ||
      items[lead]?.text === 'from' ||
      items[lead]?.text === 'on' ||
      items[lead]?.text === 'of' ||
      items[lead]?.text === 'to'
    );
  }
  // "the greenhouse figs", not "the little figs"
  if (
    next?.text === 'figs' &&
    !named &&
    !items.slice(at, end).some((item) => item.classes.has('SIZE')) &&
    (at === 0 || ['the', 'my', 'our'].includes(before))
  )
    return true;
  if (placed) {
    const head = items[lead - 1]?.text ?? '';
    const further = items[lead - 2]?.text ?? '';
    if (
      GENERIC.has(head) ||
      (!named && ['fig', 'it', 'thats', 'is', 'pot'].includes(head)) ||
      (head === 'next' && GENERIC.has(further))
    )
      return true;
    return false;
  }
  if (named) {
    // "kadota (tall)", "the kadota, the tall one": settled later; alone a size says nothing.
    return before === '(';
  }
  const verb = !next || next.type === 'mark' || isAnyOf(next, VERBISH);
  return verb && (before === 'the' || before === '' || at === 0 || items[at - 1]?.type === 'mark');
}

function isCountable(items: readonly Item[], at: number): boolean {
  return items[at + 1]?.type === 'number';
}
