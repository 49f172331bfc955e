import { type Item, isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { UNITS } from './numbers.ts';
import type { Read } from './quantities.ts';

/** "1/6 of the figs", "about 3/4 ripe": a part of them, and no number. "4/7 rooted" is four. */
export function isFractionOfAll(items: readonly Item[], i: number): boolean {
  const fraction = `${items[i]?.text}${items[i + 1]?.text}${items[i + 2]?.text}`;
  const after = items[i + 3];
  if (!/^(?:1\/[2-9]|1\/10|2\/[35]|3\/[458])$/.test(fraction) || !after) return false;
  const at = after.text === 'of' ? i + 4 : i + 3;
  const noun = items[at];
  return after.text === 'of'
    ? !UNITS.has(noun?.text ?? '')
    : after.classes.has('RIPE') || after.classes.has('RIPEN');
}

const COUNTED = ['FRUIT', 'APEX', 'SIZE', 'BREBA', 'ROOT'];
const COUNTED_WORDS = wordSet(
  'shoots branches stems laterals leaders nodes buds cuttings sticks scions slips pots trees rooted branched took survived made have had are were dropped ripened',
);

/** "3/4 ripe", "1/6 of the figs", "8/10 for taste": a share or a mark, and no number of figs; null for others. */
export function readShare(items: readonly Item[], i: number, out: readonly Item[]): Read | null {
  const [top, slash, bottom] = [items[i], items[i + 1], items[i + 2]];
  if (top?.type === 'number' && slash?.text === '/' && bottom?.type === 'number' && slash.start === top.end) {
    const share = Number(top.text) < Number(bottom.text) && Number(bottom.text) <= 10;
    const unit =
      UNITS.has(items[i + 3]?.text ?? '') || ['dozen', 'doz', 'a'].includes(items[i + 3]?.text ?? '');
    if (share && !unit && (Number(bottom.text) <= 4 || items[i + 3]?.text === 'of'))
      return { quantity: { value: 1, unit: null, ofMore: false }, end: i + 3, measure: true };
    // "gave the alma 9/10": how good it was.
    const counted = items[i + 3];
    const isMark =
      bottom.text === '10' &&
      !unit &&
      !(counted && (isAnyOf(counted, COUNTED) || COUNTED_WORDS.has(counted.text)));
    if (isMark && !out.at(-1)?.classes.has('ROOT') && out.at(-1)?.text !== 'rooted')
      return { quantity: { value: Number(top.text), unit: null, ofMore: true }, end: i + 3, measure: true };
  }
  return null;
}
