import type { ObservationKind, WeightUnit } from '../engine/observation.ts';
import type { Hit } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isWholeOfShare } from './whole-of-share.ts';

export interface Count {
  readonly count: number;
  readonly unit?: WeightUnit;
}

/** What each kind counts (labelling guide §6); kinds not listed have no count. */
export const COUNTED: ReadonlyMap<string, string> = new Map<ObservationKind, string>([
  ['fruitlets', 'FRUIT'],
  ['ripening', 'FRUIT'],
  ['picked', 'FRUIT'],
  ['dropped', 'FRUIT'],
  ['tipped', 'SHOOT'],
  ['cuttings', 'CUTTING'],
  ['rooted', 'CUTTING'],
]);

const OTHER_NOUNS = ['LEAF', 'NODE', 'SHOOT', 'CUTTING', 'BUD', 'FRUIT', 'PEST'];
const ONES = wordSet(`
  a an one lone single solitary sole first only another last solo
`);
const SINGULAR = wordSet(`
  fig figlet fruitlet breba breva baby shoot leader tip branch sideshoot lateral cutting stick scion
  stem figlette
`);

/** The number or weight a clause gives for `hit`, or null. `others` are the hits beside it, whose numbers are theirs. */
export function countFor(
  kind: ObservationKind,
  hit: Hit,
  items: readonly Item[],
  others: readonly Hit[],
): Count | null {
  const noun = COUNTED.get(kind);
  if (noun === undefined) return null;
  const taken = new Set(
    others
      .filter((other) => other !== hit && (COUNTED.has(other.kind) || other.kind === 'branched'))
      .flatMap((other) => other.at),
  );
  let weight: Count | null = null;
  let number: Count | null = null;
  for (let i = 0; i < items.length; i++) {
    const quantity = items[i]?.quantity;
    if (isNodeNumber(items, i) || isEveryLast(items, i) || isWholeOfShare(items, i)) continue;
    if (!quantity || (taken.has(i) && !hit.at.includes(i)) || BITES.has(items[i + 1]?.text ?? '')) continue;
    if (quantity.unit) {
      if (kind === 'picked' || kind === 'dropped') weight ??= { count: quantity.value, unit: quantity.unit };
      continue;
    }
    if (number === null && counts(items, i, noun, hit) && Number.isInteger(quantity.value))
      number = { count: quantity.value };
  }
  const each = noun === 'FRUIT' && number === null ? shootsWithOne(items, hit) : null;
  if (each !== null) return { count: each };
  // "the 5 figs on the alma are now 3"
  const last = items.at(-1);
  if (number !== null && last?.quantity && last.quantity.unit === null && isDownTo(items))
    return { count: last.quantity.value };
  const places = placesOf(items);
  if (places !== null) return { count: places * (number?.count ?? oneOf(items, noun, hit)?.count ?? 1) };
  // "a fig in every armpit": one of each is no number.
  if (
    number === null &&
    noun === 'FRUIT' &&
    items.some((item, i) => EACH.has(item.text) || (item.text === 'ever' && items[i + 1]?.text === 'last'))
  )
    return weight;
  return number ?? weight ?? oneOf(items, noun, hit);
}

/** "nodes 4, 6 and 9 have a fig each": how many times the number counts; null where it is said once. */
function placesOf(items: readonly Item[]): number | null {
  const places = items.find((item) => item.places !== undefined)?.places ?? null;
  return places !== null && items.some((item) => ['each', 'apiece', 'both'].includes(item.text))
    ? places
    : null;
}

/** "2 of 6 shoots have a fig": as many figs as shoots; null where it is not said like that. */
function shootsWithOne(items: readonly Item[], hit: Hit): number | null {
  const last = items[hit.last];
  if (!last?.classes.has('FRUIT') || !SINGULAR.has(last.text)) return null;
  const at = items.findIndex((item) => item.quantity !== undefined && item.quantity.unit === null);
  const noun = items[at + 1];
  if (at < 0 || at > hit.first || !noun || !isAnyOf(noun, ['SHOOT', 'NODE'])) return null;
  const has = items.slice(at + 2, hit.last).some((item) => item.classes.has('HAVE') || item.text === 'with');
  return has ? (items[at]?.quantity?.value ?? null) : null;
}

/** What figs are gone in. */
const BITES = new Set([
  'bites',
  'bite',
  'gulps',
  'gulp',
  'mouthfuls',
  'sittings',
  'goes',
  'seconds',
  'minutes',
  'days',
]);

/** "at nodes 4, 5 and 6": numbers behind the first one that is a place. */
function isNodeNumber(items: readonly Item[], i: number): boolean {
  for (let k = i - 1; k >= 0; k--) {
    const item = items[k];
    if (item?.text === 'measure') return ['nodes', 'leaves'].includes(items[k - 1]?.text ?? '');
    if (!item?.quantity) return false;
  }
  return false;
}

/** "every last 1" */
function isEveryLast(items: readonly Item[], i: number): boolean {
  return ['last', 'single'].includes(items[i - 1]?.text ?? '') && items[i - 2]?.text === 'every';
}

const EACH = new Set(['every', 'each', 'per', 'apiece', 'most']);

/** Words after a number that leave it the number of figs. */
const GOES_ON = wordSet(`
  going gone starting started now that which with look looking nearly almost getting turning showing
  to for not altogether all hanging ready coming pieces units
`);

function counts(items: readonly Item[], i: number, noun: string, hit: Hit): boolean {
  // "two bowls off the alma" are no two figs.
  if (noun === 'FRUIT' && items[i + (isAnyOf(items[i + 1], ['SIZE']) ? 2 : 1)]?.classes.has('CONTAINER'))
    return false;
  let j = i + 1;
  while (j < items.length && j < i + 5) {
    const item = items[j];
    if (!item) break;
    if (item.classes.has(noun)) return true;
    // "3 tips off it to root": cuttings by another name.
    if (noun === 'CUTTING' && item.classes.has('SHOOT') && hit.at.includes(i)) return true;
    // "6 mains": of the main crop.
    if (noun === 'FRUIT' && item.text === 'mains') return true;
    if (isAnyOf(item, OTHER_NOUNS) && !item.classes.has('SIZE')) return false;
    if (
      item.classes.has('SIZE') ||
      item.classes.has('DET') ||
      ['of', 'or', 'more', 'side', 'each', 'so'].includes(item.text)
    ) {
      j++;
      continue;
    }
    if (item.type === 'word' && item.classes.size === 0 && items[j + 1]?.classes.has(noun)) return true;
    break;
  }
  const next = items[i + 1];
  if (next && GOES_ON.has(next.text)) return true;
  // "i ate the 2 they left"
  if (
    ['they', 'i', 'we', 'it'].includes(next?.text ?? '') &&
    ['left', 'had', 'have', 'found', 'got'].includes(items[i + 2]?.text ?? '')
  )
    return true;
  if (next?.type !== 'word' || hit.at.includes(i)) return true;
  if (
    next.classes.has('PREP') ||
    next.classes.has('ADV') ||
    next.classes.has('BE') ||
    next.classes.has('AND') ||
    next.classes.has('SIZE') ||
    next.classes.has('PICKED') ||
    next.classes.has('ROOTED') ||
    next.classes.has('RIPE') ||
    next.classes.has('RIPEN') ||
    next.classes.has('DROPPED') ||
    ['each', 'in', 'out', 'outta', 'total', 'so', 'have', 'has', 'figs', 'came', 'more', 'this'].includes(
      next.text,
    )
  )
    return true;
  return false;
}

function isDownTo(items: readonly Item[]): boolean {
  const [lead, before] = [items.at(-3), items.at(-2)];
  return (
    (before?.text === 'now' && lead?.classes.has('BE') === true) ||
    (before?.text === 'to' && (lead?.text === 'down' || items.some((item) => item.text === 'went')))
  );
}

function isOfBothCrops(items: readonly Item[], both: number): boolean {
  return (
    items[both + 1]?.classes.has('BREBA') === true &&
    both + 2 === items.length &&
    items[both - 1]?.classes.has('HAVE') === true
  );
}

function oneOf(items: readonly Item[], noun: string, hit: Hit): Count | null {
  if (
    noun === 'CUTTING' &&
    items.some(
      (item, i) =>
        ['cutting', 'stick', 'scion'].includes(item.text) &&
        items[i - 1]?.type === 'tree' &&
        // "celeste scion wood" is of any number.
        items[i + 1]?.text !== 'wood',
    ) &&
    !items.some((item) => item.text === 'every' || item.text === 'each')
  )
    return { count: 1 };
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    if (
      item.text === 'both' &&
      items[i + 1]?.type !== 'tree' &&
      // "both brebas and main crop"
      !isOfBothCrops(items, i) &&
      // "they both have figs" counts trees.
      !isAnyOf(items[i + 1], ['HAVE', 'BE', 'AUX']) &&
      items.slice(i + 1, i + 4).some((each) => each.classes.has(noun))
    )
      return { count: 2 };
    if (!ONES.has(item.text)) continue;
    // "gave up its first"
    if (hit.kind === 'picked' && item.text === 'first' && i === items.length - 1) return { count: 1 };
    if (
      item.text === 'one' &&
      !hit.at.includes(i) &&
      !items[i + 1]?.classes.has(noun) &&
      // "one mission fig"
      !(items[i + 1]?.type === 'tree' && items[i + 2]?.classes.has(noun)) &&
      items[i + 1]?.text !== 'ripe' &&
      // "one soft breba"
      !(items[i + 1]?.classes.has('RIPE') && items[i + 2]?.classes.has(noun))
    ) {
      if (
        !(
          items[i + 1]?.text === 'off' ||
          items[i + 1]?.text === 'from' ||
          (noun === 'FRUIT' && ['first', 'ripe', 'only'].includes(items[i - 1]?.text ?? ''))
        )
      )
        continue;
      return { count: 1 };
    }
    for (let j = i + 1; j < Math.min(items.length, i + 5); j++) {
      const next = items[j];
      if (!next) break;
      if (
        hit.kind === 'picked' &&
        next.type === 'tree' &&
        !next.typed.endsWith('s') &&
        ['a', 'an', 'another', 'first', 'one', 'single', 'lone', 'only', 'sole'].includes(item.text) &&
        !items.slice(j + 1, j + 3).some((each) => each.classes.has('FRUIT') || each.text === "'s")
      )
        return { count: 1 };
      if (next.classes.has(noun) && SINGULAR.has(next.text)) {
        // "the first fig", "a leader"; "the side shoot" has more words of the kind before its noun.
        return { count: 1 };
      }
      // "a main crop from the celeste": one fig of it.
      if (
        hit.kind === 'picked' &&
        next.text === 'crop' &&
        items[j - 1]?.text === 'main' &&
        item.text !== 'first'
      )
        return { count: 1 };
      if (
        noun === 'FRUIT' &&
        next.text === 'one' &&
        item.text !== 'one' &&
        ['first', 'only', 'another', 'last', 'single', 'a'].includes(item.text)
      )
        return { count: 1 };
      if (
        !(
          next.classes.has('SIZE') ||
          next.classes.has('RIPE') ||
          next.type === 'tree' ||
          next.classes.has('SHOOT') ||
          next.classes.has('BREBA') ||
          next.text === 'crop' ||
          ['side', 'of', 'little', 'juicy', 'lovely', "'s"].includes(next.text) ||
          ONES.has(next.text)
        )
      )
        break;
    }
  }
  return null;
}
