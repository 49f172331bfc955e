import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import type { PredicateKind } from './lexicon/predicates/index.ts';
import { wordSet } from './lexicon/word-set.ts';

const LACKING = wordSet('deficiency deficient shortage lockout burn burnt toxicity overdose starved');

const OWN_WORK: ReadonlySet<PredicateKind> = new Set([
  'care',
  'pruned',
  'tipped',
  'picked',
  'cuttings',
  'none',
]);
const MISHAP = wordSet(
  'carrying moving lugging dragging shifting wheeling repotting turning tripped fell reversing mowing',
);
const STOLEN = wordSet(
  'pinched nicked stole stolen swiped borrowed lifted robbed taken took knocked broke broken lost snapped dropped',
);
const TOOLS = wordSet(`
  secateurs snips pruners scissors shears loppers knife trowel fork spade shovel hose hosepipe can bucket barrow
  wheelbarrow trolley dolly ladder stepladder gloves saw label labels lunch sandwich sandwiches bike car van phone keys
  wallet purse parking chair bench dibber rake hoe sprayer strimmer mower scales basket tools tool sandwiches pasty pie biscuit biscuits
`);
const HARM = ['GNAWED', 'WRECKED', 'EATEN', 'TIPPED'];
const BESIDE_RAIDER = wordSet(`
  has have had 's just just all been only also even already then quickly completely finally came come
  and a the my absolutely totally must got to in is are was were on up
`);

/** "grasshoppers stripped it", "a fox dug it up": no work of the grower's, so its words are left for the harm. */
export function isMisread(kind: PredicateKind, items: readonly Item[], at: readonly number[]): boolean {
  // "necks gone floppy": figs that ripen, no thirst.
  if (
    kind === 'trouble' &&
    at.length <= 2 &&
    items.some((item) => item.text === 'necks' || item.text === 'neck')
  )
    return true;
  // "broke a tip off carrying it in": a mishap, no pinch
  if (
    kind === 'tipped' &&
    ['broke', 'snapped', 'knocked', 'caught', 'lost'].includes(items[at[0] ?? 0]?.text ?? '') &&
    items.some((item) => MISHAP.has(item.text))
  )
    return true;
  // "brought a dozen celestes in": fruit, no tree.
  if (kind === 'care' && ['brought', 'took', 'carried'].includes(items[at[0] ?? 0]?.text ?? '')) {
    const tree = items.findIndex((item) => item.type === 'tree');
    const number = items[tree - 1]?.quantity;
    if (number && number.value > 2 && /s$/.test(items[tree]?.typed ?? '')) return true;
  }
  // "half a pound of alma went in the dehydrator"
  if (
    kind === 'care' &&
    items.some((item) => item.classes.has('WEIGHT')) &&
    items.some((item) => item.text === 'went')
  )
    return true;
  // "pulled the frost cloth off"
  if (
    kind === 'frost' &&
    at.length <= 2 &&
    at.some((i) =>
      ['cloth', 'cover', 'covers', 'fleece', 'blanket', 'protection', 'jacket'].includes(
        items[i + 1]?.text ?? '',
      ),
    )
  )
    return true;
  // "someone pinched my secateurs", "the dog ate my sandwich": no tree's loss.
  if (kind === 'trouble' && items.some((item, i) => isLossOf(item) && TOOLS.has(objectBehind(items, i))))
    return true;
  // "nicked some netting from work"
  if (
    kind === 'trouble' &&
    at.length <= 2 &&
    ['nicked', 'pinched', 'stole', 'robbed'].includes(items[at[0] ?? 0]?.text ?? '') &&
    items.slice((at[0] ?? 0) + 1).some((item) => item.classes.has('GEAR') || item.classes.has('FEEDSTUFF'))
  )
    return true;
  // "magnesium deficiency", "fertiliser burn"
  if (kind === 'care' && LACKING.has(items[(at[0] ?? 0) + 1]?.text ?? '')) return true;
  // "bagged 5 celeste figs against the birds": what keeps them out.
  if (
    kind === 'picked' &&
    ['bagged', 'netted', 'sleeved'].includes(items[at[0] ?? 0]?.text ?? '') &&
    items.some((item) => item.text === 'against')
  )
    return true;
  if (!OWN_WORK.has(kind)) return false;
  const first = at[0] ?? 0;
  if (kind !== 'pruned' && items[first]?.text !== 'had' && !isAnyOf(items[first], HARM)) return false;
  let i = first - 1;
  while (i > 0 && i > first - 4 && (BESIDE_RAIDER.has(items[i]?.text ?? '') || items[i]?.type === 'date'))
    i--;
  const who = items[i];
  return who !== undefined && i < first && (who.classes.has('THIEF') || who.classes.has('FORCE'));
}

function isLossOf(item: Item): boolean {
  return STOLEN.has(item.text) || isAnyOf(item, ['EATEN', 'GNAWED']);
}

/** The first noun behind a verb. */
function objectBehind(items: readonly Item[], verb: number): string {
  return items.slice(verb + 1).find((item) => !isAnyOf(item, ['DET', 'MY', 'SIZE']))?.text ?? '';
}
