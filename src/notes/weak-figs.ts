import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { isPlainWord } from './lexicon/plain-words.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Nothing but a word for figs, perhaps with a number: by itself that says they are there. */
export function isWeak(items: readonly Item[], at: readonly number[]): boolean {
  return at.every((i, k) => {
    const item = items[i];
    if (!item) return false;
    // "9 honest figs", "6 king figs"
    if (k === 1 && at.length === 3 && items[at[0] ?? -1]?.type === 'quantity') return true;
    return item.classes.has('FRUIT') || item.classes.has('SIZE') || item.type === 'quantity';
  });
}

/** Unknown words around make it doubtful what is said of the figs: then it is a remark. */
export function weakFits(items: readonly Item[], at: readonly number[]): boolean {
  const end = (at.at(-1) ?? 0) + 1;
  // "figlets behind them": in the axils.
  const behind = items[end]?.text === 'behind' && items[end + 1] !== undefined;
  // "buds fattening, figs next"
  if (
    !behind &&
    ['next', 'later', 'late', 'behind', 'soon', 'please', 'tomorrow'].includes(
      items[(at.at(-1) ?? 0) + 1]?.text ?? '',
    )
  )
    return false;
  if (isOnGround(items) || items.slice(0, at[0]).some((item) => item.text === 'until')) return false;
  // "figs have not started", "figs are not ripe"
  if (items.slice(end, end + 3).some((item) => item.text === 'not' || item.text === 'never')) return false;
  const counted = at.some((i) => items[i]?.type === 'quantity');
  const place = placeOfTree(items, at[0] ?? 0);
  const strange = items.filter(
    (item, i) =>
      !at.includes(i) &&
      !(place > i && item.classes.has('PLACE')) &&
      item.type === 'word' &&
      !isAnyOf(item, KNOWN_BESIDE) &&
      !PLAIN_BESIDE.has(item.text) &&
      (!isPlainWord(item.text) || TELLING.has(item.text)) &&
      !item.text.endsWith('ly'),
  );
  const figlets = at.some((i) => items[i]?.classes.has('FRUITLET'));
  return strange.length <= (counted ? 2 : figlets ? 1 : 0);
}

/** "the mission next to the greenhouse door has fruit": up to its verb, where the tree stands; 0 without a verb. */
function placeOfTree(items: readonly Item[], figs: number): number {
  const tree = items.findIndex((item) => item.type === 'tree');
  const verb = items.findIndex((item, i) => i > tree && isAnyOf(item, BEARING));
  return tree >= 0 && verb > tree + 2 && verb < figs && items[tree + 1]?.classes.has('PREP') ? verb : 0;
}

const BEARING = ['HAVE', 'BE'];
const KNOWN_BESIDE = [
  'DET',
  'PREP',
  'BE',
  'HAVE',
  'ADV',
  'NOW',
  'SIZE',
  'FRUIT',
  'NODE',
  'SHOOT',
  'WOOD',
  'EMPTY',
  'PRO',
  'MY',
  'OLDWOOD',
  'BREBA',
  'TREEWORD',
  'MEASURE',
  'LEAF',
  'BUD',
  'NEG',
  'WILL',
  'AUX',
  'WH',
  'HEDGE',
  'SAYS',
  'AND',
];

/** "the crop hit the deck", "two more on the ground": figs that do not hang. */
export function isOnGround(items: readonly Item[]): boolean {
  return items.some(
    (item, i) =>
      GROUND.has(item.text) &&
      items[i - 1]?.text === 'the' &&
      ['on', 'hit', 'onto'].includes(items[i - 2]?.text ?? ''),
  );
}

const GROUND = new Set(['deck', 'ground', 'floor', 'dirt', 'lawn', 'grass', 'path']);

/** Plain words that tell something of the figs, or look for them, want them, serve them: no bare sight of figs. */
const TELLING = wordSet(`
  look looks looked looking check checked checking come came comes make made gave give giving take took
  taken taking put puts keep kept keeping went go gone goes going leave left leaving turn turned turning
  feel felt feels think use used using try tried manage managed get gets getting bring brought share
  shared sharing enjoy enjoyed eat ate eaten eating pick picked picking harvest harvested walk walked
  walking wander wandered finish finished finishing do did done doing complete completed sort sorted
  tick ticked job jobs task tasks work worked working help helped helping need watch watched watching
  wait waited waiting rule plan schedule expected promised advice guide book due later half fewer less
  away down visitors family guests swap swapped hunt hunted search searched searching counting what which
  tour inspection inspected water watered feed fed mulch mulched net netted bag bagged cover covered
  nothing nada zilch zip zero nil nowt nope none empty bare blank blind luck joy if because despite
  instead otherwise however than drying dried filled filling final collecting home church raided visit
  sour split bitter hard firm soft neck skin stage earlier like proper real way ways drew drawn sweet
  ripe fresh rain rained wind storm frost cold heat cake pie tart jam chutney salad dinner lunch
  breakfast supper tea season seasons summer year years next
`);

const PLAIN_BESIDE = wordSet(`
  become became turned chockers set bunch load loads lots lot plenty heaps ton tons dozens cluster
  clusters handful couple about roughly around maybe least more than over spotted found counted see
  can first up along look crop start started coming joy sign signs actual real visible honest teeny
  weeny everywhere galore tonnes surprise proper legit count total another extra every so no yes
  success result bingo happy finally there i main second this year morning not and love looking good
  great cute adorable whoop woohoo as of me many much again also far wee inch long like grape marble
  yep yup yeah aye och ah oh um uh er erm so hey right look pea thumbnail size sized big each per off near tip base join right at wow omg baby 's exactly
  precisely approx tree behind hiding hidden under already still hanging holding made gave gives given
  bears bearing since dotted scattered clustered sprinkled throughout honestly promise swear
`);

/** "mystery fig on the fence", "the alma fig by the shed": which tree, and where it stands. */
export function isTreeOfPlace(items: readonly Item[], at: readonly number[]): boolean {
  const fig = at.find((i) => items[i]?.text === 'fig') ?? -1;
  const next = items[fig + 1];
  return (
    fig > 0 &&
    items[fig - 1]?.type === 'tree' &&
    next?.classes.has('PREP') === true &&
    !['of', 'off', 'from', 'for', 'with', 'to'].includes(next.text) &&
    items[fig + 2]?.type === 'word' &&
    !items.some((item) => item.quantity !== undefined || isAnyOf(item, ['HAVE', 'RIPE', 'DROPPED']))
  );
}
