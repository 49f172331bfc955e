import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Words of care that are as often said of other things. */
const TENDINGS = wordSet(`
  topped stripped cleaned covered moved turned rotated treated sunk trained inspected divided hauled
`);

/** Words of trouble that are trouble only beside another. */
export const TWO_FACED = wordSet(
  'broken fly flies blown spot spotted curl burn something crisp dog spider bug beat hens chickens sick',
);

/** Single words of care that are as often something else. */
export function careFits(items: readonly Item[], at: number): boolean {
  const word = items[at]?.text ?? '';
  if (['water', 'feed', 'mulch'].includes(word)) {
    const before = items[at - 1]?.text ?? '';
    return (
      !['to', 'not', 'no', 'of', 'under', 'without', 'the', 'rain', 'standing', 'hose'].includes(before) ||
      before === 'of' ||
      before === 'the'
    );
  }
  if (['given', 'gave'].includes(word)) return false;
  if (TENDINGS.has(word)) {
    if (word === 'topped' || word === 'sunk') return false;
    if (word === 'covered')
      return (at === 0 || !items.some((item) => item.classes.has('BE'))) && at !== items.length - 1;
    return true;
  }
  return true;
}
