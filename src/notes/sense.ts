import type { Clause } from './clauses.ts';
import { harmlessItems } from './harmless.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import type { PredicateKind } from './lexicon/predicates/index.ts';
import { wordSet } from './lexicon/word-set.ts';
import { careFits, TWO_FACED } from './sense-care.ts';
import { noneFits } from './sense-none.ts';
import { dropFits, pickFits } from './sense-picked.ts';
import { hasStopped, isTipOfTree, objectFits, subjectFits } from './sense-tipped.ts';
import { isOnGround, isTreeOfPlace, isWeak, weakFits } from './weak-figs.ts';

/** Whether a decisive phrase has the company it needs: what was pinched, picked or dropped must be a tree's. */
export function makesSense(
  kind: PredicateKind,
  clause: Clause,
  first: number,
  last: number,
  at: readonly number[],
): boolean {
  const { items, sub } = clause;
  const verb = items[first];
  if (!verb) return false;
  if ((kind === 'fruitlets' || kind === 'dropped') && isTreeOfPlace(items, at)) return false;
  if (kind === 'fruitlets' && isOnGround(items)) return false;
  if (kind === 'fruitlets' && isWeak(items, at)) return weakFits(items, at);
  if (kind === 'tipped' && !isTipOfTree(items, at)) return false;
  // "the pinched shoots on the ronde have done nothing": which shoots, no news
  if (
    kind === 'tipped' &&
    verb.classes.has('TIPPED') &&
    ['the', 'those', 'these'].includes(items[first - 1]?.text ?? '') &&
    (items[first + 1]?.classes.has('SHOOT') || ['ones', 'one'].includes(items[first + 1]?.text ?? ''))
  )
    return false;
  // "the celeste has stopped": growing.
  if (kind === 'tipped' && verb.text === 'stopped' && hasStopped(items, first)) return false;
  // "was tipping it wrong"
  if (kind === 'tipped' && first === 0 && verb.text === 'was') return false;
  if (kind === 'tipped' && verb.classes.has('TIPPED')) {
    return subjectFits(items, first) && objectFits(items, first);
  }
  if (kind === 'tipped' && verb.classes.has('TIPPING') && at.length <= 1) {
    if ((sub === 'after' || sub === 'since') && items.some((item) => item.type === 'date')) return true;
    // "saw 2 figs while nipping it yesterday"
    if (sub === 'while' && first === 0 && isTreeDone(items)) return true;
    return (
      items
        .slice(0, first)
        .some((item) =>
          ['spent', 'finished', 'done', 'been', 'am', 'was', 'were', 'busy', 'out', 'morning'].includes(
            item.text,
          ),
        ) && objectFits(items, first)
    );
  }
  // "picking spotty leaves off"
  if (
    kind === 'picked' &&
    items.slice(first + 1, first + 4).some((item) => item.classes.has('LEAF')) &&
    !items.some((item) => item.classes.has('FRUIT'))
  )
    return false;
  if (kind === 'picked') return pickFits(items, at);
  if (kind === 'dropped' && liesAbout(items, at)) return false;
  if (kind === 'dropped' && verb.classes.has('DROPPED')) return dropFits(items, first);
  if (kind === 'dropped')
    return !items.some((item) => item.classes.has('LEAF') || item.classes.has('CUTTING'));
  if (kind === 'no-fruitlets') {
    const harmless = harmlessItems(items);
    // "the pinched shoots have done nothing": they have not grown.
    if (
      items.some((item) => item.text === 'done') &&
      items.some((item) => item.classes.has('SHOOT')) &&
      !items.some((item) => item.classes.has('FRUIT'))
    )
      return false;
    return !at.some((i) => harmless.has(i) && items[i]?.classes.has('NEG')) && noneFits(items, at);
  }
  // "figs at the base of the new growth": where they are.
  // "before the kids woke up"
  if (kind === 'leafed-out' && /^(?:woke|waking|woken|awake)$/.test(verb.text)) {
    const who = items[first - 1];
    if (who && (isAnyOf(who, ['HOUSE', 'CLUMSY', 'OTHERS']) || ['i', 'we'].includes(who.text))) return false;
  }
  if (kind === 'leafed-out' && items[at.at(-1) ?? 0]?.text === 'growth') {
    if (items.slice(last + 1).some((item) => item.classes.has('NONE'))) return false;
    // "old growth new growth all tangled"
    if (items.some((item) => item.classes.has('OLDWOOD'))) return false;
    let i = first - 1;
    while (items[i]?.classes.has('DET')) i--;
    if (['of', 'on', 'in', 'from', 'along', 'at'].includes(items[i]?.text ?? '')) return false;
  }
  // "covered it before the frost", "fleece on against the cold"
  if (kind === 'frost' && at.length <= 2) {
    let i = first - 1;
    while (items[i]?.classes.has('DET') || items[i]?.classes.has('SIZE')) i--;
    if (['before', 'against', 'from', 'for', 'until', 'till', 'despite'].includes(items[i]?.text ?? ''))
      return false;
  }
  // "roots poking out of its pot": the tree's own.
  if (
    kind === 'rooted' &&
    items.some((item) => ['pot', 'pots', 'drainage', 'tub', 'container'].includes(item.text)) &&
    items[items.findIndex((item) => item.classes.has('ROOT')) - 1]?.type === 'tree' &&
    !items.some((item) => item.classes.has('CUTTING'))
  )
    return false;
  // "roots coming out the bottom of pot 3": the tree's own
  if (
    kind === 'rooted' &&
    items.some((item) => ['bottom', 'base', 'holes', 'hole', 'drainage'].includes(item.text)) &&
    items.some(
      (item, i) =>
        item.type === 'tree' && i > first && ['of', 'under', 'from'].includes(items[i - 1]?.text ?? ''),
    ) &&
    !items.some((item) => item.classes.has('CUTTING') || ['cup', 'cups', 'jar', 'bag'].includes(item.text))
  )
    return false;
  // "its pot is full of roots"
  if (
    kind === 'rooted' &&
    items.some(
      (item, i) =>
        ['pot', 'tub', 'container'].includes(item.text) &&
        i <= first &&
        (items[i - 1]?.type === 'tree' ||
          ["'s", 'its', 'the', 'her', 'his'].includes(items[i - 1]?.text ?? '')),
    ) &&
    items.some((item) => ['full', 'bursting', 'packed', 'solid', 'jammed', 'circling'].includes(item.text)) &&
    !items.some((item) => item.classes.has('CUTTING') || item.classes.has('ROOTED'))
  )
    return false;
  // "the fleece went over it"
  if (kind === 'trouble' && items[first - 1]?.classes.has('GEAR')) return false;
  // "hit 26f", not "hit 104f" and not "hit 6 ft"
  if (
    kind === 'frost' &&
    at.some((i) => items[i]?.text === 'measure') &&
    !items.some((item) => item.classes.has('FROST'))
  ) {
    const typed = items[at.find((i) => items[i]?.text === 'measure') ?? 0]?.typed ?? '';
    const degrees = /^(-?\d+)(?:°|degrees|degree|deg)?([cf]?)$/.exec(typed.replaceAll(' ', ''));
    if (!degrees) return false;
    return Number(degrees[1]) <= (degrees[2] === 'c' ? 0 : 32) && (typed !== degrees[1] || at.length > 2);
  }
  // "14 for the season"
  if (kind === 'dormant' && verb.text === 'for' && items.some((item) => item.type === 'quantity'))
    return false;
  // "propped up with a stick"
  if (kind === 'cuttings' && at.length === 1 && (verb.text === 'stick' || verb.text === 'sticks')) {
    let i = first - 1;
    while (isAnyOf(items[i], ['DET', 'SIZE', 'BRANCHED'])) i--;
    if (PROPPING.has(items[i]?.text ?? '')) return false;
  }
  if (kind === 'rooted' && at.length === 1 && ['for', 'to'].includes(items[first - 1]?.text ?? ''))
    return false;
  if (
    kind === 'pruned' &&
    at.length === 1 &&
    ['raised', 'lifted', 'lowered', 'crowned'].includes(verb.text) &&
    !items.some((item) => ['crown', 'canopy', 'skirt', 'skirts', 'limbs'].includes(item.text))
  )
    return false;
  if (kind === 'care' && at.length === 2 && verb.type === 'tree' && POTS.has(items[last]?.text ?? ''))
    return false;
  // "dropped everything back in may": a time, no place.
  if (
    kind === 'care' &&
    verb.type === 'tree' &&
    items[last]?.text === 'in' &&
    ['date', 'vague'].includes(items[last + 1]?.type ?? '')
  )
    return false;
  // "the king sent out laterals", "put on leaf": growth, no move.
  if (
    kind === 'care' &&
    verb.type === 'tree' &&
    items.slice(last + 1, last + 4).some((item) => isAnyOf(item, GROWTHS))
  )
    return false;
  // "the mission in the greenhouse has 5 figlets": where it stands, not where it went.
  const then = items.slice(last + 1).find((item) => !isOfPlace(item));
  if (
    kind === 'care' &&
    verb.type === 'tree' &&
    then &&
    (then.classes.has('HAVE') || then.classes.has('AUX'))
  )
    return false;
  // "mites again despite the neem"
  if (kind === 'care' && items.slice(Math.max(0, last - 2), last).some((item) => item.text === 'despite'))
    return false;
  if (kind === 'care' && at.length === 1) return careFits(items, first);
  if (kind === 'fruitlets' && verb.type === 'tree' && items[last]?.type === 'quantity') {
    return !items
      .slice(last + 1)
      .some((item) => item.classes.has('LEAF') || item.classes.has('SHOOT') || item.classes.has('CUTTING'));
  }
  if (kind === 'fruitlets' && at.length === 1 && verb.text === 'crop')
    return items.some((item) =>
      ['main', 'first', 'second', 'good', 'big', 'decent', 'nice', 'heavy', 'breba'].includes(item.text),
    );
  // "every bud swelling" is no ripening.
  if (
    kind === 'ripening' &&
    !items.some((item) => item.classes.has('FRUIT')) &&
    items.some((item) => item.text === 'bud' || item.text === 'buds')
  )
    return false;
  if (
    kind === 'ripening' &&
    at.length === 1 &&
    ['colour', 'color', 'soft', 'swell', 'swollen'].includes(verb.text)
  )
    return !items.some((item) => item.classes.has('LEAF'));
  if (
    kind === 'ask-kind' &&
    at.length === 1 &&
    ['something', 'somethings', 'thing', 'things', 'bits', 'growth', 'stuff', 'thingy', 'growths'].includes(
      verb.text,
    )
  )
    return false;
  if (kind === 'trouble' && at.length === 1 && TWO_FACED.has(verb.text)) return false;
  return true;
}

/** "wasps all over the fallen fruit": figs on the ground that nothing more is told of. */
function liesAbout(items: readonly Item[], at: readonly number[]): boolean {
  return at.some((i) => {
    if (!['fallen', 'dropped'].includes(items[i]?.text ?? '') || !items[i + 1]?.classes.has('FRUIT'))
      return false;
    const lead = items[i - 1];
    return lead !== undefined && (lead.classes.has('DET') || lead.classes.has('PREP'));
  });
}

/** "nipping it", "pinching the alma": the tree and then nothing, a day, or what was seen meanwhile. */
function isTreeDone(items: readonly Item[]): boolean {
  const at = items[1]?.classes.has('DET') ? 2 : 1;
  const [object, then] = [items[at], items[at + 1]];
  if (object?.type === 'tree') return then === undefined || then.type === 'date' || MEANWHILE.has(then.text);
  return (
    object !== undefined &&
    ['it', 'them', 'both'].includes(object.text) &&
    (then === undefined || then.type === 'date' || MEANWHILE.has(then.text))
  );
}

const MEANWHILE = wordSet('i we this last earlier');

/** "by the wall": more of where it stands. */
function isOfPlace(item: Item): boolean {
  return item.classes.has('PREP') || item.classes.has('DET') || item.classes.has('PLACE');
}

/** Before "sticks": no cuttings, but a prop, or all that a tree is ("just green sticks"). */
const PROPPING = wordSet('with to against by on using just only mere all but still like of basically');

const GROWTHS = ['BRANCH', 'LEAF', 'FRUIT', 'BUD', 'BUMP', 'SHOOT'];

/** What a tree stands in says nothing of care by itself: "the alma pot". */
const POTS = wordSet('pot soil saucer tray');
