import type { ReadEvent } from './contract.ts';
import type { Piece } from './doubt-pieces.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

const ORDERS = wordSet(
  'pick take eat grab gather collect remove harvest get pull pluck cut snip lop chop clip trim nip pinch stop top tip',
);
/** Verbs whose past looks the same. */
const SAME_IN_PAST = new Set(['cut']);
const GONE_BY = /^(?:yes|last|ydy|y'day|\d)|ago$/i;
const BEFORE_ORDER = wordSet('please better also next now first just go i can could to then always so');

/** "pick 6 off the alma", "better take the tips off": the plain verb orders or plans, it does not tell. */
export function isOrder({ items }: Piece): boolean {
  const at = items.findIndex(({ text }) => !BEFORE_ORDER.has(text));
  const verb = items[at];
  if (
    !verb ||
    !ORDERS.has(verb.text) ||
    SAME_IN_PAST.has(verb.text) ||
    verb.typed.toLowerCase() !== verb.text
  )
    return false;
  const object = items[at + 1];
  if (!object) return false;
  // "harvest 6 off the alma" tells of a harvest.
  if (isAnyOf(verb, ['HARVEST', 'SHOOT']) && object.quantity) return false;
  if (items.some(({ type, typed }) => type === 'date' && GONE_BY.test(typed))) return false;
  return (
    object.classes.has('DET') ||
    object.quantity !== undefined ||
    object.type === 'tree' ||
    object.classes.has('PRO') ||
    object.classes.has('FRUIT') ||
    object.text === 'some'
  );
}

export const FULL_OF = wordSet(
  'loaded laden dripping smothered heaving groaning studded bursting chocka chockers rammed plastered festooned covered packed stuffed full heavy brimming decked bedecked crawling',
);

const FILLING = new Set(['with', 'in', 'of', 'by']);

/** "smothered in bindweed", "laden with buds", "dripping": full of something that is no fruit. */
export function isFullOfOther(piece: Piece, next: Piece | undefined): boolean {
  // "king loaded - with leaves"
  const items =
    next?.join === 'comma' &&
    next.sentence === piece.sentence &&
    FILLING.has(next.items[0]?.text ?? '') &&
    FULL_OF.has(piece.items.at(-1)?.text ?? '')
      ? [...piece.items, ...next.items]
      : piece.items;
  const at = items.findIndex(({ text }) => FULL_OF.has(text));
  if (at < 0 || items.some((item) => item.classes.has('FRUIT'))) return false;
  const by = items[at + 1];
  if (items[at]?.text === 'dripping' && by?.text !== 'with' && !items[at - 1]?.classes.has('BE')) return true;
  if (!by || !FILLING.has(by.text)) return false;
  const what = items.slice(at + 2).find((item) => !isAnyOf(item, ['DET', 'SIZE', 'ADV', 'PRO']));
  return what?.type === 'word' && !['em', 'goodies', 'promise'].includes(what.text);
}

const LOOSE = new Set([
  'brought',
  'knocked',
  'blew',
  'blown',
  'shook',
  'shaken',
  'came',
  'come',
  'coming',
  'fell',
  'fallen',
]);
const AWAY = new Set(['down', 'off', 'away', 'loose', 'adrift']);

/** "bought a net, the ronde is covered": a tree under its cover. */
export function isUnderCover(piece: Piece, pieces: readonly Piece[]): boolean {
  return (
    piece.items.some(({ text }) => text === 'covered') &&
    !piece.items.some((item) => item.classes.has('FRUIT') || item.text === 'in') &&
    pieces.some(
      (each) => each.sentence === piece.sentence && each.items.some((item) => COVERS.has(item.text)),
    )
  );
}

const COVERS = wordSet(
  'net nets netting fleece mesh fabric cloth sheet sheets blanket tarp plastic bubblewrap shadecloth',
);

/** "the gale brought down a dozen figs", "half the figlets came off": fruit that hangs no more. */
export function isBroughtDown(items: readonly Item[]): boolean {
  return items.some(
    (item, i) =>
      (LOOSE.has(item.text) && items.slice(i + 1, i + 5).some(({ text }) => AWAY.has(text))) ||
      (GROUND.has(item.text) && liesOn(items, items[i - 1]?.classes.has('DET') ? i - 2 : i - 1)),
  );
}

/** "6 figs on the grass", not "6 figs on the alma on the deck", which says where the tree stands. */
function liesOn(items: readonly Item[], on: number): boolean {
  return ON.has(items[on]?.text ?? '') && items[on - 1]?.type !== 'tree';
}

const ON = new Set(['on', 'over', 'across']);
/** Where fallen fruit lies. */
const GROUND = wordSet(
  'soil ground floor grass lawn dirt path paving gravel mulch earth concrete pavement slabs flags deck decking turf carpet',
);

const TAG = wordSet('right no yes yeah yep or not did really correct');

/** "tipped the alma, right?": whether it was done is what is asked. */
export function isAskedAfter(piece: Piece, next: Piece | undefined): boolean {
  return (
    next?.asked === true &&
    next.sentence === piece.sentence &&
    next.items.length <= 2 &&
    next.items.every(({ text }) => TAG.has(text))
  );
}

/** More than any tree in a garden gives or takes: a slip of the finger, or a joke. */
export function isUnlikely({ kind, count, unit }: ReadEvent): boolean {
  if (count === undefined) return false;
  if (unit === 'kg' || unit === 'lb') return count > 150;
  if (unit === 'g' || unit === 'oz') return count > 20_000;
  return count > (kind === 'tipped' ? 300 : 2000);
}

const NO = wordSet('no nope nah not never naah nay');
const LAUGH = wordSet(
  'ok okay hmm hm mm eh ah well haha lol lmao hahaha ha oh well actually sorry um er obviously alas sadly as if',
);

/** "tipped the alma, haha no", "… lol no": taken back by the last word. */
export function isTakenBack({ items, sentence }: Piece, pieces: readonly Piece[], p: number): boolean {
  const next = pieces[p + 1];
  // "tipped the alma, april fools"
  if (next?.items.length === 1 && /fool/i.test(next.items[0]?.typed ?? '')) return true;
  if (NO.has(items.at(-1)?.text ?? '') && LAUGH.has(items.at(-2)?.text ?? '')) return true;
  if (next !== undefined && isFlatNo(next) && !isPutRight(next, pieces)) return true;
  return (
    next !== undefined &&
    p === pieces.length - 2 &&
    next.sentence === sentence &&
    next.items.some(({ text }) => NO.has(text)) &&
    next.items.every(({ text }) => NO.has(text) || LAUGH.has(text))
  );
}

const MISCOUNTED = wordSet('counted miscounted recounted counting typo autocorrect');

/** "nah", "lol nope": a sentence of its own, or what opens one. */
function isFlatNo({ items, join, lead }: Piece): boolean {
  return (
    join === 'start' &&
    lead === null &&
    items.some(({ text }) => NO.has(text)) &&
    items.every(({ text }) => NO.has(text) || LAUGH.has(text))
  );
}

/** "nope, the ronde", "no, 3": what it was instead. */
function isPutRight(no: Piece, pieces: readonly Piece[]): boolean {
  return pieces.some(
    (each) =>
      each !== no &&
      each.sentence === no.sentence &&
      (each.own.length > 0 ||
        each.numbers.length > 0 ||
        each.items.some((item) => item.type === 'date' || MISCOUNTED.has(item.text))),
  );
}

/** "tipped the alma? nope": no answer about figs. */
export function answersDeed(piece: Piece, before: Piece | undefined): boolean {
  const { items, join } = piece;
  if (!before || items.some((item) => item.classes.has('FRUIT'))) return false;
  const none = join === 'colon' && items[0]?.classes.has('NONE') === true;
  // "jobs done: none"
  if (
    none &&
    items.length === 1 &&
    before.own.length === 0 &&
    before.items.some(({ text }) => TASKS.has(text))
  )
    return true;
  return (
    ((before.asked && items.length <= 2) || isFlatNo(piece) || (none && before.items.length === 1)) &&
    before.items.some((item) => isAnyOf(item, DEEDS)) &&
    !before.items.some((item) => item.classes.has('FRUIT'))
  );
}

const TASKS = wordSet('job jobs task tasks chore chores work todo done news jobs losses deaths casualties');
const DEEDS = ['TIPPED', 'TIPPING', 'TIP', 'PICKED', 'PICKING', 'PICK', 'SNIPPED', 'DROPPED'];

const GERUNDS = wordSet(
  'picking taking eating harvesting removing pulling grabbing gathering collecting tipping pinching nipping stopping topping',
);
/** With one of these before it, a doing goes on or is over. */
const BUSY = wordSet(
  'sat stood sitting standing lay spent busy finished done been am was were enjoyed enjoying started kept after just here currently still now today finally managed got had did end ended home back out i we by from love fun after while',
);

/** "picking 6 off the king makes it sulk", "good at taking the tops off": a doing spoken of, not told. */
export function isDoingNamed({ items }: Piece): boolean {
  const at = items.findIndex(({ text }) => GERUNDS.has(text));
  if (at < 0) return false;
  const before = items.slice(0, at);
  if (
    before.some(({ text }) => OF_OTHERS.has(text)) &&
    !before.some(({ text }) => text === 'i' || text === 'we')
  )
    return true;
  if (before.some((item) => BUSY.has(item.text) || isAnyOf(item, ['PICKED', 'TIPPED', 'SNIPPED', 'TAKEN'])))
    return false;
  if (before.some((item) => item.type === 'word' && !item.classes.has('ADV'))) return true;
  return items
    .slice(at + 1)
    .some((item) => item.type === 'word' && (isAnyOf(item, ['BE', 'WILL', 'AUX']) || MAKES.has(item.text)));
}

const OF_OTHERS = new Set(['he', 'she', 'they', 'kids', 'you', 'people', 'birds']);
const MAKES = wordSet(
  'makes make starts begins stops helps hurts kills causes encourages means takes needs never season party class course day time guide beginners',
);
