import { type Item, isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { UNITS } from './numbers.ts';
import type { Read } from './quantities.ts';

/** Fractions that are parts of all before "ripe"; "4/7 ripe" is four. */
const PARTS = /^(?:1\/[2-9]|1\/10|2\/[35]|3\/[458])$/;
const COUNTED = ['FRUIT', 'APEX', 'SIZE', 'BREBA', 'ROOT'];
const COUNTED_WORDS = wordSet(
  'shoots branches stems laterals leaders nodes buds cuttings sticks scions slips pots trees rooted branched took survived made have had are were dropped ripened',
);

/** "3/4 ripe", "1/6 of the figs", "8/10 for taste": a share or a mark, and no number of figs; null for others. */
export function readShare(items: readonly Item[], i: number, out: readonly Item[]): Read | null {
  const [top, slash, bottom, behind] = items.slice(i, i + 4);
  if (top?.type !== 'number' || slash?.text !== '/' || bottom?.type !== 'number' || slash.start !== top.end)
    return null;
  const next = behind?.text ?? '';
  if (UNITS.has(next) || next === 'dozen' || next === 'doz' || next === 'a') return null;
  const [part, whole] = [Number(top.text), Number(bottom.text)];
  const ofAll = next === 'of' || (PARTS.test(`${part}/${whole}`) && isAnyOf(behind, ['RIPE', 'RIPEN']));
  const isShare = part < whole && whole <= 10 && (whole <= 4 || ofAll);
  // "gave the alma 9/10": how good it was; "rooted 6/10" are six.
  const isCounted = isAnyOf(behind, COUNTED) || COUNTED_WORDS.has(next);
  const before = out.at(-1);
  const isMark = whole === 10 && !isCounted && !before?.classes.has('ROOT') && before?.text !== 'rooted';
  return isShare || isMark
    ? { quantity: { value: part, unit: null, ofMore: true }, end: i + 3, measure: true }
    : null;
}
