import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** A number or a day, which one may not be quite sure of. */
export function isGuessable(item: Item | undefined): boolean {
  return item?.quantity !== undefined || item?.type === 'date' || item?.type === 'vague';
}

/** "tipped it monday i think": it is the day or the number that may be a little off. */
export function guessesOnlyWhen(items: readonly Item[], i: number): boolean {
  const guessed = items[i - 2];
  return (
    i === items.length - 1 &&
    items[i - 1]?.text === 'i' &&
    !items.some((item) => item.text === 'by') &&
    isGuessable(guessed)
  );
}

/**
 * "in 23 the adriatic …", "back in 22", "the feb freeze of 23": a year by its last digits, with nothing behind it
 * that it could count.
 */
export function isShortYear(items: readonly Item[], i: number, year: number): boolean {
  const item = items[i];
  if (item?.type !== 'quantity' || !/^\d\d$/.test(item.typed)) return false;
  const lead = items[i - 1]?.text;
  if (lead !== 'in' && !(lead === 'of' && isOfAYear(items[i - 2]))) return false;
  const years = Number(item.typed);
  if (years < (year % 100) - 15 || years >= year % 100) return false;
  const next = items[i + 1];
  if (isBroughtIn(items, i)) return false;
  return (
    next === undefined ||
    (next.type === 'tree' && !items[i + 2]?.classes.has('CUTTING')) ||
    next.classes.has('DET') ||
    next.classes.has('PRO') ||
    ['i', 'we', 'when'].includes(next.text)
  );
}

/** What a year is named by: its frost, its storm, its summer. */
function isOfAYear(item: Item | undefined): boolean {
  return item !== undefined && (isAnyOf(item, OF_A_YEAR) || item.type === 'date' || YEARLY.has(item.text));
}

const OF_A_YEAR = ['FROST', 'WEATHER'];
const YEARLY = wordSet(
  'summer winter spring autumn fall season year flood hurricane hailstorm crop drop harvest plague',
);

/** "brought in 15 kadotas": indoors, no year. */
export function isBroughtIn(items: readonly Item[], i: number): boolean {
  return items[i - 1]?.text === 'in' && FETCHED.has(items[i - 2]?.text ?? '');
}

const FETCHED = wordSet('brought bring came come carried took taken fetched hauled got');
