import type { Item } from './items.ts';
import { isPossessorName } from './lexicon/first-names.ts';
import { isEnglish } from './lexicon/ordinary.ts';
import { isPlainWord } from './lexicon/plain-words.ts';

export const AGES = new Set(['old', 'new', 'young']);

/** A first name, or at the start of a clause a word nobody knows, with the possessor's s before a tree. */
export function isNamedOwner(items: readonly Item[], i: number): boolean {
  const item = items[i];
  const tree = items[i + 1]?.classes.has('SIZE') || AGES.has(items[i + 1]?.text ?? '') ? i + 2 : i + 1;
  if (item?.type !== 'word' || items[tree]?.type !== 'tree') return false;
  const typed = item.typed.toLowerCase();
  if (isPossessorName(typed)) return true;
  return (
    i === 0 &&
    /[^s]s$/.test(typed) &&
    typed === item.text &&
    item.classes.size === 0 &&
    !isPlainWord(typed) &&
    !isEnglish(typed)
  );
}
