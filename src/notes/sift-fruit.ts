import type { Hit } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import type { PredicateKind } from './lexicon/predicates/index.ts';
import { isWeak } from './weak-figs.ts';

/** Whether what is said of fruit is only part of, or taken back by, what else the clause says. */
export function isOutdone(hit: Hit, hits: readonly Hit[], items: readonly Item[]): boolean {
  const kinds = new Set(hits.map((each) => each.kind));
  if (hit.kind === 'no-fruitlets' && hits.some((each) => each !== hit && OUTDOES_NONE.has(each.kind)))
    return true;
  if (
    hit.kind === 'no-fruitlets' &&
    hits.some((each) => each.first > hit.first && !SAYS_NOTHING.has(each.kind) && !isNewGrowth(each, items))
  )
    return true;
  if (
    hit.kind === 'fruitlets' &&
    (isWeak(items, hit.at) ||
      !hit.at.some((i) => items[i]?.classes.has('FRUIT')) ||
      onlyFruitWord(hit, items))
  ) {
    if ([...FRUIT_NEWS].some((kind) => kinds.has(kind as Hit['kind']))) return true;
    if (kinds.has('cuttings') || kinds.has('pruned')) return true;
    if (kinds.has('tipped') && !hasCount(hit, items)) return true;
  }
  // "all brebas picked off the alma"
  if (
    hit.kind === 'dropped' &&
    kinds.has('picked') &&
    items.some((item) => item.classes.has('PICKED')) &&
    !hit.at.some((i) => items[i]?.classes.has('DROPPED'))
  )
    return true;
  // "new growth has figs", "not one fig on the new growth"
  if (
    hit.kind === 'leafed-out' &&
    (kinds.has('fruitlets') || kinds.has('no-fruitlets')) &&
    items.some((item) => item.text === 'growth')
  )
    return true;
  // "lost a fig from the alma"
  if (
    hit.kind === 'picked' &&
    kinds.has('dropped') &&
    !hit.at.some((i) => isAnyOf(items[i], ['PICKED', 'EATEN', 'TAKEN']))
  )
    return true;
  // "a few brebas off the king have gone soft": what became of them.
  if (
    hit.kind === 'picked' &&
    !hit.at.some((i) => isAnyOf(items[i], ['PICKED', 'EATEN', 'TAKEN'])) &&
    ['have', 'has', 'are', 'were', 'is', 'was', 'went'].includes(items[hit.last + 1]?.text ?? '') &&
    hits.some((each) => each.first > hit.last && ['ripening', 'dropped', 'trouble'].includes(each.kind))
  )
    return true;
  // "1 ripe 1 picked": each with its own number.
  if (hit.kind === 'ripening' && hasCount(hit, items) && hits.some((each) => isCountedPick(each, hit, items)))
    return false;
  if (hit.kind === 'ripening' && (kinds.has('picked') || kinds.has('dropped'))) return true;
  if (
    hit.kind === 'ripening' &&
    kinds.has('trouble') &&
    !items.some((item) => item.classes.has('FRUIT') || item.text === 'ripe' || NECKS.has(item.text))
  )
    return true;
  // "necks gone limp": so figs ripen.
  if (hit.kind === 'trouble' && kinds.has('ripening') && items.some((item) => NECKS.has(item.text)))
    return true;
  if (
    hit.kind === 'picked' &&
    kinds.has('trouble') &&
    items.some((item) => item.classes.has('THIEF')) &&
    hits.some((each) => each.kind === 'trouble' && each.first <= hit.first)
  )
    return true;
  if (hit.kind === 'picked' && kinds.has('trouble') && items.some((item) => item.text === 'by')) return true;
  if (hit.kind === 'picked' && kinds.has('care') && hit.at.every((i) => items[i]?.classes.has('WEIGHT')))
    return true;
  if (
    hit.kind === 'fruitlets' &&
    (kinds.has('buds-double') || kinds.has('buds-single')) &&
    !items.some((item) => item.classes.has('FRUIT'))
  )
    return true;
  return false;
}

const NECKS = new Set(['neck', 'necks', 'ostiole', 'ostioles']);

const FRUIT_NEWS = new Set<PredicateKind>([
  'picked',
  'dropped',
  'ripening',
  'no-fruitlets',
  'trouble',
  'frost',
  'care',
]);

/** Beside these "no figs" adds nothing, or is part of the same news. */
const OUTDOES_NONE: ReadonlySet<PredicateKind> = new Set([
  'branched',
  'dropped',
  'buds-single',
  'ripening',
  'picked',
]);

const SAYS_NOTHING: ReadonlySet<PredicateKind> = new Set(['fruitlets', 'no-fruitlets', 'ask-kind']);

function isNewGrowth(hit: Hit, items: readonly Item[]): boolean {
  return hit.kind === 'leafed-out' && hit.at.some((i) => items[i]?.text === 'growth');
}

function onlyFruitWord(hit: Hit, items: readonly Item[]): boolean {
  return hit.at.every((i) => {
    const item = items[i];
    return (
      item !== undefined &&
      (item.classes.has('FRUIT') ||
        item.classes.has('FRUITLET') ||
        item.classes.has('SIZE') ||
        item.type === 'quantity' ||
        item.type === 'tree' ||
        item.classes.has('DET') ||
        item.classes.has('PREP'))
    );
  });
}

function isCountedPick(each: Hit, ripe: Hit, items: readonly Item[]): boolean {
  return each.kind === 'picked' && each.first > ripe.last && items[each.first]?.type === 'quantity';
}

function hasCount(hit: Hit, items: readonly Item[]): boolean {
  return hit.at.some((i) => items[i]?.type === 'quantity');
}
