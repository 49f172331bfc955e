import type { ObservationKind } from '../engine/observation.ts';
import type { ReadEvent } from './contract.ts';
import type { Piece } from './doubt-pieces.ts';
import { isStrange } from './doubt-signs.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { THINGS } from './lexicon/things.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Words between a verb and the thing it is about. */
const BETWEEN = ['DET', 'SIZE', 'RIPE', 'ADV'];
/** Behind a number an article begins something else: "brebas 12 this yr". */
const COUNTED_BETWEEN = ['SIZE', 'RIPE', 'ADV'];
const OF_THE_TREE = [
  'FRUIT',
  'FRUITLET',
  'BREBA',
  'SHOOT',
  'APEX',
  'CONTAINER',
  'TREEWORD',
  'PREP',
  'HOUSE',
  'KIN',
];
const VERBS = ['TIPPED', 'PICKED', 'DROPPED', 'SNIPPED', 'EATEN', 'TAKEN', 'GOT'];
const GIVING = wordSet('gave given handed passed sold sent had got');
const DEEDS: ReadonlySet<ObservationKind> = new Set(['tipped', 'picked', 'dropped']);
const SELF = new Set(['i', 'we']);

/**
 * The thing that a number counts, that a deed was done to or that did it, if it is nothing of a fig tree:
 * "king has 3 visitors", "dropped labels all over the ronde", "the gate by the alma dropped".
 */
export function otherThing(event: ReadEvent, piece: Piece, core: number): Item | null {
  const { items } = piece;
  return (
    otherCounted(event, items) ??
    (core >= 0 && DEEDS.has(event.kind) ? (otherObject(items, core) ?? otherDoer(items, core)) : null)
  );
}

/** "found 3 coins under the king" */
function otherCounted({ kind, count }: ReadEvent, items: readonly Item[]): Item | null {
  if (count === undefined || kind === 'tipped') return null;
  for (let i = 0; i < items.length; i++) {
    const quantity = items[i]?.quantity;
    if (quantity?.value !== count || quantity.unit !== null) continue;
    const thing = loneThing(items, thingAt(items, i + 1, COUNTED_BETWEEN));
    if (thing) return thing;
  }
  return null;
}

/** "dropped labels all over the ronde", "picked the ladder off the alma" */
function otherObject(items: readonly Item[], core: number): Item | null {
  // "pinch job on the king complete"
  if (!isAnyOf(items[core], VERBS) || GIVING.has(items[core]?.text ?? '')) return null;
  return loneThing(items, thingAt(items, core + 1, BETWEEN));
}

/** "the gate by the alma dropped", "the ladder on the alma tipped" */
function otherDoer(items: readonly Item[], core: number): Item | null {
  const at = thingAt(items, 0, BETWEEN);
  // Of others' deeds more is asked elsewhere.
  if (at >= core || items[at]?.classes.has('OTHERS')) return null;
  return items.slice(at + 1, core).some((item) => SELF.has(item.text)) ? null : loneThing(items, at);
}

function isOther(item: Item | undefined): item is Item {
  return item?.type === 'word' && (THINGS.has(item.text) || isStrange(item)) && !isAnyOf(item, OF_THE_TREE);
}

/** Where the thing stands that is spoken of from an index on. */
function thingAt(items: readonly Item[], from: number, between: readonly string[]): number {
  let i = from;
  while (
    items[i]?.type === 'quantity' ||
    (items[i]?.type === 'word' && !isOther(items[i]) && isAnyOf(items[i], between))
  )
    i++;
  return i;
}

/** A thing, and not the beginning of a name for figs ("3 bottle figs"). */
function loneThing(items: readonly Item[], i: number): Item | null {
  const thing = items[i];
  const next = items[i + 1];
  return isOther(thing) &&
    // "dropped al its figs"
    !isAnyOf(next, ['FRUIT', 'CONTAINER', 'SHOOT', 'APEX', 'DET', 'NEG']) &&
    !['of', 'worth'].includes(next?.text ?? '') &&
    // "the apical bud"
    !isAnyOf(items[i - 1], ['APEX'])
    ? thing
    : null;
}
