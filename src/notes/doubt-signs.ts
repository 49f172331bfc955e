import type { ObservationKind } from '../engine/observation.ts';
import type { ReadEvent } from './contract.ts';
import type { Piece } from './doubt-pieces.ts';
import type { Item } from './items.ts';
import { isPlainWord } from './lexicon/plain-words.ts';

interface Sign {
  readonly classes: readonly string[];
  readonly words: ReadonlySet<string>;
}

function sign(classes: string, words: string): Sign {
  return { classes: classes === '' ? [] : classes.split(' '), words: new Set(words.split(' ')) };
}

/** What a clause must hold to be taken as saying a decisive kind, the surest first: classes of words, and words. */
const SIGNS: Partial<Record<ObservationKind, readonly Sign[]>> = {
  tipped: [
    sign('TIPPED TIPPING TIP', 'pinch tip beheaded decapitated stop nip'),
    sign('APEX', 'leaders shoots'),
    sign('', ''),
  ],
  picked: [
    sign('PICKED PICKING PICK HARVEST', 'pick munched yielded gave given'),
    sign(
      'GOT WEIGHT FOODISH',
      'off from taste bite brought came tried breakfast dehydrator freezer fridge handful bowlful punnet colander bucketful',
    ),
    sign('NUM', 'some few'),
  ],
  dropped: [
    sign('DROPPED DROPPING DROP', 'lost'),
    sign('FALLEN', 'came gone floor ground deck fall fell'),
    sign('FRUIT', 'all everything lot'),
  ],
  fruitlets: [
    sign(
      'FRUIT FRUITLET BREBA',
      'fruiting fruited loaded covered laden dripping smothered studded bursting heaving groaning packed full heavy chocka chockers rammed plastered festooned pinhead pinheads peas marbles crop set setting figged',
    ),
    sign('NUM', ''),
    sign('', ''),
  ],
  'no-fruitlets': [
    sign('NEG', 'figless fruitless barren'),
    sign('', 'bare empty blind only just skip skipped skipping clean leaf leaves'),
    sign('', ''),
  ],
  ripening: [sign('RIPEN RIPE', 'turning necks neck bent'), sign('BREBA', ''), sign('', '')],
};
export const LEVELS = [0, 1, 2] as const;

/** Index of the first word of a clause that says the kind at one level of sureness, or −1. */
export function coreAt(kind: ObservationKind, piece: Piece, level: number): number {
  const signs = SIGNS[kind]?.[level];
  if (!signs) return -1;
  return piece.items.findIndex(
    (item) =>
      item.type !== 'tree' &&
      (signs.words.has(item.text) || signs.classes.some((name) => item.classes.has(name))),
  );
}

/** Index of the word that says the kind most surely, or −1. */
export function coreOf(kind: ObservationKind, piece: Piece): number {
  for (const level of LEVELS) {
    const at = coreAt(kind, piece, level);
    if (at >= 0) return at;
  }
  return -1;
}

const FRUIT_BEARING =
  /^(?:fruiting|loaded|laden|dripping|smothered|heaving|groaning|studded|bursting|chocka|chockers|rammed|plastered|festooned)$/;
/** Words that mean something only beside another: they explain nothing by themselves. */
const UNSETTLED = ['OTHERS', 'SAYS', 'HEDGE', 'THIEF', 'PEST', 'PAST'];

/** Whether a clause holds words that nobody here understands, more than the sureness of its own words allows. */
export function isUnclear(kind: ObservationKind, event: ReadEvent, piece: Piece, core: number): boolean {
  const { items } = piece;
  if (core < 0) return true;
  const signs = SIGNS[kind] ?? [];
  const strange = items.map((item) => isStrange(item) && !signs.some(({ words }) => words.has(item.text)));
  const before = strange.slice(0, core).filter(Boolean).length;
  const all = strange.filter(Boolean).length;
  if (kind === 'tipped' || kind === 'picked') {
    const sure = items.some((item) => ['TIPPED', 'PICKED', 'WEIGHT'].some((name) => item.classes.has(name)));
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
