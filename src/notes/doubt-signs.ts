import type { ObservationKind } from '../engine/observation.ts';
import type { ReadEvent } from './contract.ts';
import { isGuess, type Piece } from './doubt-pieces.ts';
import { itemTest } from './filed-rules.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { isPlainWord } from './lexicon/plain-words.ts';
import { wordSet } from './lexicon/word-set.ts';
import { perWord } from './word.ts';

interface Sign {
  /** Whether an item says it. */
  readonly fits: (item: Item) => boolean;
  readonly words: ReadonlySet<string>;
}

function sign(classes: string, words: string): Sign {
  return { fits: itemTest(`${classes} ${words}`), words: new Set(words.split(' ')) };
}

/** What a clause must hold to be taken as saying a decisive kind, the surest first: classes of words, and words. */
const SIGNS: Partial<Record<ObservationKind, readonly Sign[]>> = {
  tipped: [
    sign('TIPPED TIPPING TIP', 'pinch tip beheaded decapitated stop nip treatment'),
    sign('APEX', 'leaders shoots above'),
    sign('', 'shoot stem stems bud'),
  ],
  picked: [
    sign('PICKED PICKING PICK HARVEST', 'pick munched yielded gave given relieved helped treated'),
    sign(
      'EATEN TAKEN YIELDS GOT WEIGHT FOODISH CONTAINER',
      'off from taste bit bite bitten teeth brought came tried passed handed dished doled breakfast dehydrator freezer fridge handful bowlful punnet colander bucketful',
    ),
    sign('NUM', 'some few first'),
  ],
  dropped: [
    sign('DROPPED DROPPING DROP', 'lost let'),
    sign('FALLEN', 'came gone floor ground deck fall fell'),
    sign('FRUIT', 'all everything lot'),
  ],
  fruitlets: [
    sign(
      'FRUIT FRUITLET BREBA',
      'fruiting fruited figging loaded covered laden dripping smothered studded bursting heaving groaning packed full heavy chocka chockers rammed stacked stuffed brimming decked heaps plastered festooned pinhead pinheads peas marbles crop set setting figged mains maincrop maincrops',
    ),
    sign('NUM', ''),
    sign('', ''),
  ],
  'no-fruitlets': [
    sign('NEG', 'figless fruitless barren'),
    sign(
      '',
      'bald devoid shorn bereft bare empty blind only just skip skipped skipping clean leaf leaves bugger sod naff jack sweet diddly squat blank joy luck dice what yet free',
    ),
    sign('', ''),
  ],
  ripening: [sign('RIPEN RIPE', 'turning necks neck bent'), sign('BREBA', ''), sign('', '')],
};
export const LEVELS = [0, 1, 2] as const;

/** Index of the first word of a clause that says the kind at one level of sureness, or −1. */
export function coreAt(kind: ObservationKind, piece: Piece, level: number): number {
  const signs = SIGNS[kind]?.[level];
  if (!signs) return -1;
  return piece.items.findIndex((item) => item.type !== 'tree' && signs.fits(item));
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
  /^(?:fruiting|figging|loaded|laden|dripping|smothered|heaving|groaning|studded|bursting|chocka|chockers|rammed|plastered|festooned)$/;
/** Words that mean something only beside another: they explain nothing by themselves. */
const UNSETTLED = ['OTHERS', 'SAYS', 'HEDGE', 'THIEF', 'PEST', 'PAST'];

/** Whether a clause holds words that nobody here understands, more than the sureness of its own words allows. */
export function isUnclear(
  kind: ObservationKind,
  event: ReadEvent,
  piece: Piece,
  core: number,
  before?: Piece,
): boolean {
  const { items } = piece;
  if (core < 0) return true;
  if ((kind === 'picked' || kind === 'fruitlets') && isMissed(items)) return true;
  const signs = SIGNS[kind] ?? [];
  const strange = items.map(
    (item, i) => isStrange(item) && !signs.some(({ words }) => words.has(item.text)) && !isBeaten(items, i),
  );
  // "gave 6 to the postie": who got them.
  const given = kind === 'picked' && GIVEN_TO.has(items[core]?.text ?? '');
  const all = strange.filter((odd, i) => odd && !(given && items[i]?.classes.has('OTHERS'))).length;
  if (kind === 'tipped' || kind === 'picked') {
    if (
      kind === 'tipped'
        ? piece.lead?.text !== 'while' && onlyBaseForm(items)
        : event.count === undefined && onlyPicking(items)
    )
      return true;
    if (strange.slice(0, core).some(Boolean) || hasStrangeObject(items, strange, core)) return true;
    const sure =
      items.some((item) => isAnyOf(item, ['TIPPED', 'PICKED', 'WEIGHT'])) ||
      (event.count !== undefined &&
        items.some((item) => item.classes.has('EATEN') || item.classes.has('TAKEN')));
    // "6 off the alma" says much by itself.
    const off = kind === 'picked' && event.count !== undefined && isOffTree(items);
    const tipsOff =
      kind === 'tipped' &&
      items.some((item) => item.classes.has('APEX')) &&
      items.some((item) => item.classes.has('SNIPPED'));
    return all > (sure ? 2 : tipsOff || off ? 1 : 0);
  }
  if (kind === 'fruitlets') {
    const sure =
      event.count !== undefined ||
      items.some(
        (item) => item.classes.has('FRUITLET') || item.classes.has('BREBA') || FRUIT_BEARING.test(item.text),
      );
    if (!sure && !showsFruit(items, piece.join) && !goesOnBearing(piece, before)) return true;
    return all > (sure ? 1 : 0);
  }
  const named = items.some(
    (item) => item.classes.has('FRUIT') || /^(?:(?:fig|fruit)less|barren)$/.test(item.text),
  );
  // "barren as a car park"
  const simile = named && items.filter((item) => item.text === 'as').length > 0;
  return all > (simile ? 3 : kind === 'dropped' || named ? 1 : 0);
}

function isOffTree(items: readonly Item[]): boolean {
  return items.some(
    (item, i) =>
      (item.text === 'off' || item.text === 'from') &&
      items.slice(i + 1, i + 3).some((each) => each.type === 'tree'),
  );
}

const MISSED = new Set(['missing', 'lighter', 'vanished', 'disappeared']);
const BEHIND_GONE = new Set(['overnight', 'from', 'off', 'since', 'again']);
const BY_US = ['PICKED', 'EATEN', 'TAKEN', 'FOODISH'];

/** "6 figs gone overnight", "3 missing off the alma": they are not there any more, and nobody says who has them. */
function isMissed(items: readonly Item[]): boolean {
  return (
    items.some(
      (item, i) =>
        MISSED.has(item.text) || (item.text === 'gone' && BEHIND_GONE.has(items[i + 1]?.text ?? '')),
    ) &&
    !items.some(
      (item) =>
        item.text === 'i' ||
        item.text === 'we' ||
        item.text === 'in' ||
        item.text === 'into' ||
        item.text === 'by' ||
        isAnyOf(item, BY_US),
    )
  );
}

/** "ahead of the birds": who did not get them. */
function isBeaten(items: readonly Item[], i: number): boolean {
  return (
    items[i]?.classes.has('THIEF') === true &&
    items
      .slice(Math.max(0, i - 3), i)
      .some((item) => ['ahead', 'before', 'beat', 'beating'].includes(item.text))
  );
}

/** "picking the alma can wait": nothing says that any was picked. */
function onlyPicking(items: readonly Item[]): boolean {
  return (
    items.some((item) => item.classes.has('PICKING')) &&
    !items.some(
      (item) =>
        item.type === 'quantity' ||
        item.classes.has('PICKED') ||
        (item.classes.has('HARVEST') && !item.classes.has('PICKING')) ||
        DONE.has(item.text) ||
        item.text === 'tally' ||
        item.text === 'total',
    )
  );
}

/** "ate a kebab": the first thing after the verb is nothing that grows on a fig. */
function hasStrangeObject(items: readonly Item[], strange: readonly boolean[], core: number): boolean {
  if (items.slice(0, core).some((item) => item.type === 'tree' || item.type === 'quantity')) return false;
  // "gave the newlyweds 10 figs": who got them.
  if (GIVEN_TO.has(items[core]?.text ?? '') && items.some((item) => item.quantity)) return false;
  for (let i = core + 1; i < items.length; i++) {
    const item = items[i];
    if (item?.type !== 'word' || item.classes.has('FRUIT') || item.classes.has('SHOOT')) return false;
    if (strange[i]) return true;
  }
  return false;
}

const GIVEN_TO = new Set(['gave', 'given', 'handed', 'passed', 'sold', 'sent']);
const SHOWING = wordSet(
  'with there found find see seeing seen spotted noticed counted got set setting sets have has had having making made produced producing pushing pushed showing shows putting forming carrying holding bearing grew growing developed developing gives gave popping popped is are',
);
const AFTER_FRUIT = wordSet(
  'on at in up all along everywhere galore forming formed showing coming emerging popping appearing appeared growing developing popped started starting visible set swelling swelled sizing hanging looks looking look finally now already since today down elsewhere too higher lower below above further farther underneath',
);
const SOME = wordSet('few some actual real proper baby couple tiny');
const THE_TREE = wordSet('the this that our my new old oldest which said same your youngest latest');

/** Whether a bare "figs" is told of as being there, and is no name for the tree ("this fig needs water"). */
function showsFruit(items: readonly Item[], join: Piece['join']): boolean {
  const at = items.flatMap((item, i) =>
    item.classes.has('FRUIT') && !(item.text === 'fig' && THE_TREE.has(items[i - 1]?.text ?? '')) ? [i] : [],
  );
  if (at.length === 0) return !items.some((item) => item.classes.has('FRUIT'));
  const bare = items.every(
    (item) => item.type !== 'word' || item.classes.has('FRUIT') || isPlainWord(item.text),
  );
  if (bare && (['start', 'comma', 'colon'].includes(join) || items.some((item) => item.type === 'tree')))
    return true;
  // "buds in pairs and a few baby figs too"
  if (
    bare &&
    join === 'and' &&
    at.some((i) => items[i - 1]?.classes.has('SIZE') || SOME.has(items[i - 1]?.text ?? ''))
  )
    return true;
  return at.some(
    (i) =>
      AFTER_FRUIT.has(items[i + 1]?.text ?? '') ||
      items.slice(Math.max(0, i - 5), i).some((item) => SHOWING.has(item.text) || item.classes.has('HAVE')),
  );
}

/** "has double buds and figs": what else it has. */
function goesOnBearing({ items, join }: Piece, before: Piece | undefined): boolean {
  return (
    join === 'and' &&
    items.every((item) => item.classes.has('FRUIT')) &&
    before?.items.some((item) => item.classes.has('HAVE')) === true &&
    before.items.some((item) => item.classes.has('BUD'))
  );
}

/** "tip the alma", "tipping …": no word says that it was done. */
function onlyBaseForm(items: readonly Item[]): boolean {
  // "gave it a trim, just the tips"
  if (
    ['just', 'only'].includes(items[0]?.text ?? '') &&
    items.length <= 4 &&
    items.at(-1)?.classes.has('APEX')
  )
    return false;
  // "8 tips", "just the wee top inch": what was tipped, after the verb.
  if (
    items.some((item) => item.type === 'quantity' || item.text === 'inch') &&
    items.every(
      (item) =>
        item.type !== 'word' ||
        isAnyOf(item, ['SHOOT', 'DET', 'SIZE', 'ADV']) ||
        ['in', 'all', 'total', 'of', 'inch', 'them'].includes(item.text),
    )
  )
    return false;
  return items.every(
    (item, i) =>
      !item.classes.has('TIPPED') &&
      !item.classes.has('SNIPPED') &&
      (item.type !== 'date' || items.some((each) => GOING_ON.has(each.text))) &&
      !DONE.has(item.text) &&
      !(item.text === 'did' && !items[i + 1]?.classes.has('TIPPING')),
  );
}

const GOING_ON = new Set(['am', 'is', 'are']);
const DONE = wordSet(
  'relieved robbed deprived divested stripped done gave given got had has finished spent been was were off out gone removed taken cut clipped lopped after complete completed busy took snapped broke popped managed remembered bothered dared treatment',
);

/** A word that nobody here understands, or that means something only beside another. */
export function isStrange(item: Item): boolean {
  if (item.type !== 'word') return false;
  // Two letters mended are a guess: "thrush" became "though".
  if (isGuess(item)) return true;
  return isStrangeWord(item.word);
}

const isStrangeWord = perWord(({ text, classes }) => {
  if (isPlainWord(text) || text === 'oldwood') return false;
  const isUnsettled = UNSETTLED.some((name) => classes.has(name));
  return classes.size === 0 || (isUnsettled && !classes.has('HOUSE') && !classes.has('KIN'));
});
