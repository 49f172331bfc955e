import type { Hit } from './hits.ts';
import type { Item } from './items.ts';
import type { PredicateKind } from './lexicon/predicates/index.ts';
import { isWeak } from './weak-figs.ts';

/** Of several things said at once, those that stand. */
export function sift(hits: readonly Hit[], items: readonly Item[]): Hit[] {
  const kinds = new Set(hits.map((hit) => hit.kind));
  return hits.filter((hit) => {
    if (hit.kind === 'no-fruitlets' && hits.some((each) => each !== hit && OUTDOES_NONE.has(each.kind)))
      return false;
    if (
      hit.kind === 'no-fruitlets' &&
      hits.some((each) => each.first > hit.first && !SAYS_NOTHING.has(each.kind))
    )
      return false;
    if (
      hit.kind === 'care' &&
      (kinds.has('cuttings') || kinds.has('rooted')) &&
      !/^(?:watered|fed|potted|repotted|moved)$/.test(items[hit.first]?.text ?? '')
    )
      return false;
    if (
      hit.kind === 'fruitlets' &&
      (isWeak(items, hit.at) ||
        !hit.at.some((i) => items[i]?.classes.has('FRUIT')) ||
        onlyFruitWord(hit, items))
    ) {
      if ([...FRUIT_NEWS].some((kind) => kinds.has(kind as Hit['kind']))) return false;
      if (kinds.has('cuttings') || kinds.has('pruned')) return false;
      if (kinds.has('tipped') && !hasCount(hit, items)) return false;
    }
    if (
      hit.kind === 'ask-kind' &&
      (kinds.has('buds-double') ||
        kinds.has('buds-single') ||
        kinds.has('no-fruitlets') ||
        kinds.has('fruitlets') ||
        kinds.has('leafed-out') ||
        kinds.has('tipped'))
    )
      return false;
    if (hit.kind === 'picked' && kinds.has('cuttings') && !items.some((item) => item.classes.has('FRUIT')))
      return false;
    if (hit.kind === 'ripening' && (kinds.has('picked') || kinds.has('dropped'))) return false;
    if (
      hit.kind === 'ripening' &&
      kinds.has('trouble') &&
      !items.some((item) => item.classes.has('FRUIT') || item.text === 'ripe')
    )
      return false;
    if (hit.kind === 'trouble' && kinds.has('dropped')) return false;
    if (
      hit.kind === 'trouble' &&
      (kinds.has('frost') || kinds.has('care')) &&
      hit.at.length === 1 &&
      isPest(items[hit.first])
    ) {
      // "sprayed for mites", "netted it before the starlings": the reason, not the news.
      const care = hits.find((each) => each.kind === 'care' || each.kind === 'frost');
      if (
        care &&
        care.first < hit.first &&
        items
          .slice(care.first, hit.first)
          .some((item) => ['for', 'against', 'from', 'before', 'off', 'to', 'of', 'in'].includes(item.text))
      )
        return false;
    }
    if (hit.kind === 'branched' && kinds.has('tipped') && onlyShootWord(hit, items)) return false;
    // "tipped two side shoots": what was tipped, not what grew.
    if (
      hit.kind === 'branched' &&
      !hit.at.some((i) => items[i]?.classes.has('BRANCHED')) &&
      hits.some((each) => each.kind === 'tipped' && each.first < hit.first && hit.first - each.last <= 2)
    )
      return false;
    if (hit.kind === 'branched' && (kinds.has('pruned') || kinds.has('cuttings'))) return false;
    if (hit.kind === 'leafed-out' && (kinds.has('trouble') || kinds.has('dormant'))) return false;
    if (
      hit.kind === 'picked' &&
      kinds.has('trouble') &&
      items.some((item) => item.classes.has('THIEF')) &&
      hits.some((each) => each.kind === 'trouble' && each.first <= hit.first)
    )
      return false;
    if (hit.kind === 'picked' && kinds.has('trouble') && items.some((item) => item.text === 'by'))
      return false;
    if (hit.kind === 'picked' && kinds.has('care') && hit.at.every((i) => items[i]?.classes.has('WEIGHT')))
      return false;
    if (
      hit.kind === 'fruitlets' &&
      (kinds.has('buds-double') || kinds.has('buds-single')) &&
      !items.some((item) => item.classes.has('FRUIT'))
    )
      return false;
    return true;
  });
}

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

function isPest(item: Item | undefined): boolean {
  return item !== undefined && (item.classes.has('PEST') || item.classes.has('THIEF'));
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
        item.classes.has('PREP'))
    );
  });
}

function hasCount(hit: Hit, items: readonly Item[]): boolean {
  return hit.at.some((i) => items[i]?.type === 'quantity');
}

function onlyShootWord(hit: Hit, items: readonly Item[]): boolean {
  return hit.at.every(
    (i) =>
      items[i]?.classes.has('SHOOT') ||
      items[i]?.classes.has('SIZE') ||
      items[i]?.classes.has('DET') ||
      items[i]?.type === 'quantity' ||
      items[i]?.text === 'side',
  );
}
