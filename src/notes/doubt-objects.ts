import type { ObservationKind } from '../engine/observation.ts';
import type { ReadEvent } from './contract.ts';
import type { Piece } from './doubt-pieces.ts';
import { isStrange } from './doubt-signs.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { THINGS } from './lexicon/things.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Words between a verb or a number and the thing it is about. */
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

/**
 * What a number counts, what a deed was done to, or what did it, is nothing of a fig tree: "king has 3 visitors",
 * "dropped labels all over the ronde", "the gate by the alma dropped".
 */
export function isAboutOther(event: ReadEvent, piece: Piece, core: number): boolean {
  const { items } = piece;
  return (
    countsOther(event, items) ||
    (core >= 0 && DEEDS.has(event.kind) && (isDoneToOther(items, core) || isDoneByOther(items, core)))
  );
}

const DEEDS: ReadonlySet<ObservationKind> = new Set(['tipped', 'picked', 'dropped']);

function isOther(item: Item | undefined): boolean {
  return item?.type === 'word' && (THINGS.has(item.text) || isStrange(item)) && !isAnyOf(item, OF_THE_TREE);
}

/** Where the thing stands that is spoken of from an index on: past articles and adjectives. */
function thingAt(items: readonly Item[], from: number, between: readonly string[] = BETWEEN): number {
  let i = from;
  while (
    items[i]?.type === 'quantity' ||
    (items[i]?.type === 'word' && !isOther(items[i]) && isAnyOf(items[i], between))
  )
    i++;
  return i;
}

/** A thing, and not the beginning of a name for figs ("3 bottle figs"). */
function standsAlone(items: readonly Item[], i: number): boolean {
  const next = items[i + 1];
  return (
    isOther(items[i]) &&
    // "dropped al its figs"
    !isAnyOf(next, ['FRUIT', 'CONTAINER', 'SHOOT', 'APEX', 'DET', 'NEG']) &&
    !['of', 'worth'].includes(next?.text ?? '') &&
    // "the apical bud"
    !isAnyOf(items[i - 1], ['APEX'])
  );
}

function countsOther({ kind, count }: ReadEvent, items: readonly Item[]): boolean {
  if (count === undefined || kind === 'tipped') return false;
  return items.some(
    (item, i) =>
      item.quantity?.value === count &&
      item.quantity.unit === null &&
      standsAlone(items, thingAt(items, i + 1, COUNTED_BETWEEN)),
  );
}

/** "dropped labels all over the ronde", "picked the ladder off the alma" */
function isDoneToOther(items: readonly Item[], core: number): boolean {
  // "pinch job on the king complete"
  if (!isAnyOf(items[core], VERBS)) return false;
  const at = thingAt(items, core + 1);
  if (
    items.slice(core + 1, at).some((item) => item.quantity !== undefined) &&
    GIVING.has(items[core]?.text ?? '')
  )
    return false;
  return standsAlone(items, at) && !GIVING.has(items[core]?.text ?? '');
}

const VERBS = ['TIPPED', 'PICKED', 'DROPPED', 'SNIPPED', 'EATEN', 'TAKEN', 'GOT'];
const GIVING = wordSet('gave given handed passed sold sent had got');

/** "the gate by the alma dropped", "the ladder on the alma tipped" */
function isDoneByOther(items: readonly Item[], core: number): boolean {
  const at = thingAt(items, 0);
  // Of others' deeds more is asked elsewhere.
  if (items[at]?.classes.has('OTHERS')) return false;
  return (
    at < core && standsAlone(items, at) && !items.slice(at + 1, core).some((item) => SELF.has(item.text))
  );
}

const SELF = new Set(['i', 'we']);
