import type { Day } from '../engine/day.ts';
import type { ReadEvent } from './contract.ts';
import type { FoundDoubt } from './doubt-finding.ts';
import type { Piece } from './doubt-pieces.ts';
import { FULL_OF } from './doubt-senses.ts';
import { isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';

/** "ronde picking, 2 punnets" */
export function isHaul(piece: Piece, next: Piece | undefined): boolean {
  return (
    piece.items.every(
      (item) => item.type === 'tree' || item.classes.has('PICKING') || item.classes.has('DET'),
    ) &&
    next?.sentence === piece.sentence &&
    next.items.some((item) => item.classes.has('CONTAINER')) &&
    next.items.every((item) => item.quantity !== undefined || item.classes.has('CONTAINER'))
  );
}

export function isHeading(piece: Piece, next: Piece | undefined): boolean {
  return (
    next?.join === 'colon' &&
    next.sentence === piece.sentence &&
    next.own.length === 0 &&
    piece.items.every((item) => item.type === 'tree' || item.classes.has('FRUIT') || item.text === "'s")
  );
}

export function isOfCuttings(piece: Piece, pieces: readonly Piece[]): boolean {
  const has = (each: Piece, name: string): boolean => each.items.some((item) => item.classes.has(name));
  return (
    !has(piece, 'FRUIT') &&
    !has(piece, 'FRUITLET') &&
    pieces.some((each) => each.sentence === piece.sentence && has(each, 'CUTTING'))
  );
}

/** "☐ alma tipped": a box that waits for its tick. */
export function unticked(text: string): readonly FoundDoubt[] {
  return /[☐⬜]|\[ ?\]/u.test(text) && !/[☑☒✅✔✓]|\[x\]/iu.test(text)
    ? [{ why: 'plan', reach: 'text', first: 0, piece: 0 }]
    : [];
}

/** "nipped out, king looks good": out of the house, for nothing says what was nipped. */
export function isErrand({ items, own, lead }: Piece, next: Piece | undefined): boolean {
  const last = items.at(-1)?.text ?? '';
  return (
    own.length === 0 &&
    lead === null &&
    (last === 'out' || last === 'in' || last === 'off') &&
    items.some(({ text }) => ERRANDS.has(text)) &&
    items.every(
      ({ type, text, classes }) =>
        type === 'date' || ERRANDS.has(text) || classes.has('ADV') || HERE.has(text),
    ) &&
    next?.items.some(({ type, classes }) => type === 'word' && !classes.has('DET')) === true
  );
}

const ERRANDS = wordSet('nipped popped nip nipping');
const HERE = wordSet('i we just out in off again quickly quick');

/** "gave the king a tip: grow": advice. */
export function isAdvice({ items }: Piece, next: Piece | undefined): boolean {
  return (
    next?.join === 'colon' &&
    (items.at(-1)?.text === 'tip' || items.at(-1)?.text === 'tips') &&
    !items.some((item) => isAnyOf(item, ['TIPPED', 'SNIPPED']))
  );
}

/** "5 of 9 rondes gone": some of them, and nobody says who has them. */
export function isShareGone({ items }: Piece): boolean {
  return (
    items.some(({ quantity }) => quantity?.ofMore) &&
    items.some(({ text }) => text === 'gone' || text === 'missing') &&
    !items.some((item) => isAnyOf(item, ['PICKED', 'EATEN', 'CONTAINER', 'FOODISH', 'HOUSE']))
  );
}

/** "nah 2 figs on it": a number of figs after the no. */
export function deniesCount({ items }: Piece): boolean {
  return items.some(
    (item, i) =>
      item.classes.has('NEG') &&
      (items[i + 1]?.quantity?.value ?? 0) > 0 &&
      items[i + 1]?.quantity?.unit === null &&
      items[i + 2]?.classes.has('FRUIT') === true,
  );
}

/** "tipped the alma once", "6 figs on the king then": some time that is not told. */
export function isAtSomeTime({ kind, on }: ReadEvent, { items }: Piece, today: Day): boolean {
  if (on !== today || items.some(({ type }) => type === 'date')) return false;
  const last = items.at(-1)?.text;
  return last === 'then' || (last === 'once' && (kind === 'tipped' || kind === 'picked'));
}

/** "figs: alma y, king n" */
export function isRefused({ items }: Piece): boolean {
  return items.length === 2 && items[0]?.type === 'tree' && items[1]?.typed.toLowerCase() === 'n';
}

/** "king isn't loaded": it may have a few. */
export function isNotFull({ items }: Piece): boolean {
  const full = items.findIndex(({ text }) => FULL_OF.has(text));
  return (
    full > 0 &&
    !items.some((item) => item.classes.has('FRUIT') || item.classes.has('NONE')) &&
    items.slice(0, full).some(({ classes }) => classes.has('NEG'))
  );
}

const SOURCES = wordSet(
  'book books manual label tag sign poster article magazine blurb leaflet newsletter website wiki packet box screen app them him her everyone people experts legend',
);

/** "the book: tipped at five leaves": what is read or heard somewhere. */
export function isUnderSource({ join }: Piece, before: Piece | undefined): boolean {
  return (
    join === 'colon' &&
    before !== undefined &&
    SOURCES.has(before.items.at(-1)?.text ?? '') &&
    before.items.length <= 3
  );
}
