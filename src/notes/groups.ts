import type { Saying } from './sayings.ts';
import type { Mention } from './trees/mentions.ts';

const PLURAL = new Set([
  'either',
  'neither',
  'both',
  'they',
  'them',
  'their',
  'themselves',
  'these',
  'all',
  'each',
]);

/** "both have figs", "the former has 3": the trees of a sentence that a clause without a name is about. */
export function ofGroup(
  saying: Saying,
  group: readonly Mention[],
  last: readonly Mention[],
): readonly Mention[] {
  if (isPlural(saying)) return group;
  return saying.items.some((item) => item.text === 'former') ? group.slice(0, 1) : last;
}

/** "fed em both, the kadotas i mean" */
export function isMeant({ items }: Saying): boolean {
  return items.length <= 4 && items.at(-1)?.text === 'mean' && items.at(-2)?.text === 'i';
}

/** "celeste: … ronde: … both have branched" */
export function isPair(saying: Saying): boolean {
  return saying.items.some((item) => ['both', 'either', 'neither'].includes(item.text));
}

/** "hosed the pair", "the two are fine" */
function isThePair(items: Saying['items'], i: number): boolean {
  const next = items[i + 1];
  return (
    ['pair', 'two', 'duo'].includes(items[i]?.typed ?? '') &&
    items[i - 1]?.text === 'the' &&
    (next === undefined || next.type === 'date' || next.classes.has('BE') || next.classes.has('HAVE'))
  );
}

export function isPlural(saying: Saying): boolean {
  return saying.items.some((item, i) => PLURAL.has(item.text) || isThePair(saying.items, i));
}
