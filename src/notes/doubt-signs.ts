import type { ObservationKind } from '../engine/observation.ts';
import type { ReadEvent } from './contract.ts';
import type { Piece } from './doubt-pieces.ts';
import type { Item } from './items.ts';
import { isPlainWord } from './lexicon/plain-words.ts';

/** What a clause must hold to be taken as saying a decisive kind: classes of words, and words. */
const SIGNS: Partial<
  Record<ObservationKind, { readonly classes: readonly string[]; readonly words: ReadonlySet<string> }>
> = {
  tipped: {
    classes: ['TIPPED', 'TIPPING', 'TIP', 'APEX', 'SNIPPED'],
    words: new Set(['pinch', 'tip', 'beheaded', 'decapitated', 'stop', 'nip']),
  },
  picked: {
    classes: ['PICKED', 'PICKING', 'PICK', 'HARVEST', 'GOT', 'WEIGHT', 'FOODISH'],
    words: new Set([
      'off',
      'from',
      'gave',
      'given',
      'yielded',
      'taste',
      'bite',
      'pick',
      'brought',
      'munched',
      'came',
      'tried',
      'breakfast',
    ]),
  },
  dropped: {
    classes: ['DROPPED', 'DROPPING', 'DROP', 'FALLEN'],
    words: new Set(['lost', 'came', 'gone', 'floor', 'ground', 'deck', 'fall', 'fell']),
  },
  fruitlets: {
    classes: ['FRUIT', 'FRUITLET', 'BREBA', 'NUM'],
    words: new Set(
      'fruiting fruited loaded covered laden dripping smothered studded bursting heaving groaning packed full heavy chocka chockers rammed plastered festooned pinhead pinheads peas marbles crop set setting figged'.split(
        ' ',
      ),
    ),
  },
  'no-fruitlets': {
    classes: ['NEG'],
    words: new Set(
      'bare empty blind fruitless figless barren only just skip skipped skipping clean leaf leaves 0'.split(
        ' ',
      ),
    ),
  },
  ripening: { classes: ['BREBA', 'RIPEN', 'RIPE', 'BUMP'], words: new Set(['turning', 'necks', 'neck']) },
};

/** Index of the first word of a clause that says the kind, or −1. */
export function coreOf(kind: ObservationKind, piece: Piece): number {
  const sign = SIGNS[kind];
  if (!sign) return -1;
  return piece.items.findIndex(
    (item) =>
      item.type !== 'tree' &&
      (sign.words.has(item.text) || sign.classes.some((name) => item.classes.has(name))),
  );
}

const FRUIT_BEARING =
  /^(?:fruiting|loaded|laden|dripping|smothered|heaving|groaning|studded|bursting|chocka|chockers|rammed|plastered|festooned)$/;
/** Words that mean something only beside another: they explain nothing by themselves. */
const UNSETTLED = ['OTHERS', 'SAYS', 'HEDGE', 'THIEF', 'PEST', 'PAST'];

/** Whether a clause holds words that nobody here understands, more than the sureness of its own words allows. */
export function isUnclear(kind: ObservationKind, event: ReadEvent, piece: Piece, core: number): boolean {
  const { items } = piece;
  if (core < 0) return true;
  const strange = items.map((item) => isStrange(item));
  const before = strange.slice(0, core).filter(Boolean).length;
  const all = strange.filter(Boolean).length;
  if (kind === 'tipped' || kind === 'picked') {
    const sure = items.some((item) => item.classes.has('TIPPED') || item.classes.has('PICKED'));
    if (kind === 'tipped' && onlyBaseForm(items)) return true;
    return before > 0 || all > (sure ? 2 : 0);
  }
  if (kind === 'fruitlets') {
    const sure =
      items.some((item) => item.classes.has('FRUITLET') || FRUIT_BEARING.test(item.text)) ||
      event.count !== undefined;
    return all > (sure ? 1 : 0);
  }
  return all > 1;
}

/** "tip the alma", "tipping …": no word says that it was done. */
function onlyBaseForm(items: readonly Item[]): boolean {
  return items.every(
    (item) =>
      !item.classes.has('TIPPED') &&
      !item.classes.has('SNIPPED') &&
      item.type !== 'date' &&
      !DONE.has(item.text),
  );
}

const DONE = new Set(
  'done did gave given got had has finished spent been was were off out gone removed taken cut clipped lopped after complete completed busy took'.split(
    ' ',
  ),
);

function isStrange(item: Item): boolean {
  if (item.type !== 'word') return false;
  if (isPlainWord(item.text) || item.text === 'oldwood') return false;
  if (item.classes.size === 0) return true;
  return UNSETTLED.some((name) => item.classes.has(name)) && !item.classes.has('HOUSE');
}
