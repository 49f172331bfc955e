import type { Hit } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import type { PredicateKind } from './lexicon/predicates/index.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isOutdone } from './sift-fruit.ts';

/** Of several things said at once, those that stand. */
export function sift(hits: readonly Hit[], items: readonly Item[]): Hit[] {
  const kinds = new Set(hits.map((hit) => hit.kind));
  return hits.filter((hit) => {
    if (isOutdone(hit, hits, items)) return false;
    if (
      hit.kind === 'care' &&
      (kinds.has('cuttings') || kinds.has('rooted')) &&
      !/^(?:watered|fed|potted|repotted|moved)$/.test(items[hit.first]?.text ?? '')
    )
      return false;
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
    if (
      hit.kind === 'picked' &&
      (kinds.has('cuttings') || kinds.has('rooted')) &&
      !items.some((item) => item.classes.has('FRUIT'))
    )
      return false;
    if (hit.kind === 'trouble' && kinds.has('dropped')) return false;
    // "rain split every ripe fig", "wasps all over the ripe ones": which ones it harmed.
    if (
      hit.kind === 'ripening' &&
      hit.at.length <= 2 &&
      items[hit.first]?.classes.has('RIPE') &&
      isAnyOf(items[hit.first + 1], ['FRUIT', 'PRO']) &&
      hits.some((each) => each.kind === 'trouble' && each.first < hit.first)
    )
      return false;
    // "lost all its leaves to rust": harm, no rest
    if (
      hit.kind === 'dormant' &&
      hits.some(
        (each) =>
          each.kind === 'trouble' && ['to', 'from', 'with'].includes(items[each.first - 1]?.text ?? ''),
      )
    )
      return false;
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
    // "bagged the fruit against wasps"
    if (
      hit.kind === 'trouble' &&
      hit.at.length === 2 &&
      items[hit.first]?.classes.has('FRUIT') &&
      isPest(items[hit.last]) &&
      ['against', 'from', 'for'].includes(items[hit.last - 1]?.text ?? '') &&
      hits.some((each) => each.kind === 'care' && each.first < hit.first)
    )
      return false;
    // "hosed the mites off", "slug pellets", "bird netting": what was done, not what it was done against.
    if (hit.kind === 'trouble' && hit.at.length === 1 && isPest(items[hit.first])) {
      const care = hits.find((each) => each.kind === 'care');
      const droppings = DROPPINGS.has(items[hit.last + 1]?.text ?? '');
      if (care && !droppings && (care.first < hit.first || hit.last + 1 === care.first)) return false;
    }
    // "cut the dead leaves off", "tied up a floppy branch": what was tended.
    if (
      hit.kind === 'trouble' &&
      hits.some(
        (each) =>
          each.kind === 'care' &&
          each.first < hit.first &&
          (hit.last < each.last ||
            (hit.at.length <= 2 &&
              hit.first - each.last <= 2 &&
              items
                .slice(hit.first, hit.last + 2)
                .some((item) => item.classes.has('SHOOT') || item.classes.has('LEAF')))),
      )
    )
      return false;
    const raid = hits.find((each) => each.kind === 'trouble' && isRaid(each, items));
    if (raid && raid !== hit && SPOILED.has(hit.kind) && hit.last > raid.first) return false;
    // "frost took the new leaves off"
    if (
      hit.kind === 'care' &&
      (items[hit.first]?.classes.has('WRECKED') || items[hit.first]?.classes.has('LEAF')) &&
      hits.some((each) => each.kind === 'frost' && each.first < hit.first)
    )
      return false;
    if (hit.kind === 'trouble' && kinds.has('frost')) return false;
    // "sawed off the frost damaged limb"
    if (hit.kind === 'frost' && hits.some((each) => each.kind === 'pruned' && each.first < hit.first))
      return false;
    if (hit.kind === 'ask-kind' && kinds.has('frost')) return false;
    // "nothing but leaves"
    if (hit.kind === 'leafed-out' && kinds.has('no-fruitlets')) return false;
    // "hacked a dead limb out"
    if (
      hit.kind === 'trouble' &&
      hit.at.length <= 2 &&
      hits.some((each) => each.kind === 'pruned' && each.first < hit.first)
    )
      return false;
    // "sprouted 3 side branches", "tied in the new growth"
    if (
      hit.kind === 'leafed-out' &&
      hits.some(
        (each) =>
          each !== hit &&
          (each.kind === 'branched' ||
            each.kind === 'pruned' ||
            (each.kind === 'care' && each.first < hit.first)),
      )
    )
      return false;
    // "snapped a branch moving it"
    if (
      hit.kind === 'care' &&
      /ing$/.test(items[hit.first]?.text ?? '') &&
      hits.some((each) => each.kind === 'trouble' && each.at.length > 1 && each.first < hit.first)
    )
      return false;
    // "caterpillar poo on the leaves"
    if (
      hit.kind === 'care' &&
      DROPPINGS.has(items[hit.first]?.text ?? '') &&
      items[hit.first - 1]?.classes.has('PEST')
    )
      return false;
    // "pinched out the ronde back on june 9": a tree and where it is, no work of its own.
    if (
      hit.kind === 'care' &&
      (kinds.has('tipped') || kinds.has('pruned')) &&
      items[hit.first]?.type === 'tree'
    )
      return false;
    if (
      hit.kind === 'branched' &&
      onlyShootWord(hit, items) &&
      hits.some(
        (each) => each.kind === 'tipped' && !['each', 'every'].includes(items[each.first - 1]?.text ?? ''),
      )
    )
      return false;
    // "tipped two side shoots": what was tipped, not what grew.
    if (
      hit.kind === 'branched' &&
      !hit.at.some((i) => items[i]?.classes.has('BRANCHED') || GREW.has(items[i]?.text ?? '')) &&
      hits.some(
        (each) =>
          each.kind === 'tipped' &&
          each.first < hit.first &&
          (hit.first - each.last <= 2 ||
            items
              .slice(each.last + 1, hit.first)
              .every((item) => isAnyOf(item, BEFORE_NOUN) || item.text === 'of')),
      )
    )
      return false;
    if (hit.kind === 'branched' && (kinds.has('pruned') || kinds.has('cuttings'))) return false;
    // "dieback on two branches": where it is, not what grew.
    if (
      hit.kind === 'branched' &&
      kinds.has('trouble') &&
      !hit.at.some((i) => items[i]?.classes.has('BRANCHED')) &&
      hit.at.some((i) => items[i]?.classes.has('SHOOT') && isPlace(items, i))
    )
      return false;
    // "2 of 9 cuttings have roots": the cuttings are what has rooted.
    if (hit.kind === 'cuttings' && kinds.has('rooted') && !hit.at.some((i) => isTaking(items[i])))
      return false;
    // "lost 3 cuttings to mould"
    if (
      hit.kind === 'cuttings' &&
      kinds.has('trouble') &&
      hit.at.every(
        (i) =>
          items[i]?.classes.has('CUTTING') ||
          items[i]?.type === 'quantity' ||
          SLIPS.has(items[i]?.text ?? ''),
      )
    )
      return false;
    // "soft tips off": how the tips are.
    if (hit.kind === 'ripening' && kinds.has('tipped') && !items.some((item) => item.classes.has('FRUIT')))
      return false;
    // "the tips i took off have wilted": what became of the tips.
    if (
      (hit.kind === 'trouble' || hit.kind === 'care') &&
      hits.some(
        (each) => each.kind === 'tipped' && items[each.first]?.classes.has('APEX') && each.last < hit.last,
      ) &&
      items.some((item, i) => (item.text === 'i' || item.text === 'we') && i < hit.last && i > 0)
    )
      return false;
    // "nematodes in the alma, roots all knobbly"
    if (hit.kind === 'ask-kind' && (kinds.has('trouble') || items.some((item) => item.classes.has('ROOT'))))
      return false;
    if (hit.kind === 'leafed-out' && (kinds.has('trouble') || kinds.has('dormant') || kinds.has('frost')))
      return false;
    return true;
  });
}

function isPest(item: Item | undefined): boolean {
  return item !== undefined && (item.classes.has('PEST') || item.classes.has('THIEF'));
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

/** "on two branches", "off the top shoot" */
function isPlace(items: readonly Item[], at: number): boolean {
  let i = at - 1;
  while (
    i >= 0 &&
    (items[i]?.classes.has('DET') || items[i]?.classes.has('SIZE') || items[i]?.type === 'quantity')
  )
    i--;
  return ['on', 'in', 'off', 'from', 'of', 'to', 'under', 'along'].includes(items[i]?.text ?? '');
}

const BEFORE_NOUN = ['DET', 'MY', 'SIZE', 'NUM', 'NUM2', 'ADV'];

const GREW = wordSet('into shot sprung popped come grown started appeared formed');

const SLIPS = wordSet('slips slip sticks stick scions scion clones clone truncheons truncheon');

const TAKING = wordSet(`
  took taken cut snipped clipped saved made struck stuck snagged grabbed harvested bagged collected
  pulled sliced nipped lopped chopped started pinched
`);

function isTaking(item: Item | undefined): boolean {
  return item !== undefined && TAKING.has(item.text);
}

const SPOILED: ReadonlySet<PredicateKind> = new Set([
  'care',
  'pruned',
  'picked',
  'cuttings',
  'rooted',
  'branched',
  'leafed-out',
  'fruitlets',
  'ripening',
]);
const DROPPINGS = wordSet('poo poop droppings frass muck dung');

function isRaider(item: Item | undefined): boolean {
  return item !== undefined && isAnyOf(item, ['THIEF', 'FORCE', 'CLUMSY']);
}

/** "the dog dug a hole", "voles ate the roots": an animal or the weather, and what it did. */
function isRaid(hit: Hit, items: readonly Item[]): boolean {
  // "some git pinched the figs": the raider behind a small word.
  const who = items[hit.at.find((i) => i <= hit.first + 1 && isRaider(items[i])) ?? hit.first];
  return (
    who !== undefined &&
    isRaider(who) &&
    (hit.at.length > 1 ||
      items
        .slice(hit.first + 1, hit.first + 5)
        .some(
          (item, k, near) =>
            (item.classes.has('GNAWED') || item.classes.has('WRECKED')) &&
            !near.slice(0, k).some((each) => each.classes.has('GEAR')),
        ))
  );
}
