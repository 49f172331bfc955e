import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

/** What a clause tells only together with the one beside it: whose number, whose harm, whose picking it is. */
export function tellBehind(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const before = sayings[s - 1];
    if (!before || before.clause.sentence !== saying.clause.sentence || before.dropped) return;
    ofTheRest(saying, before);
    harmOfWeather(saying, before);
    doneByWeather(saying, before);
    countBehind(saying, before);
    againstWhom(saying, before);
    pickedTogether(before, saying);
    bareSince(saying, before);
  });
}

/** "rest: nothing", "others: nothing yet": of trees that are not named. */
function ofTheRest(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || before.mentions.length > 0 || before.hits.length > 0) return;
  if (!before.items.some(({ text }) => REST.has(text)) || before.items.length > 4) return;
  if (saying.clause.join === 'colon' || saying.clause.join === 'comma') saying.hits = [];
}

const REST = wordSet('rest others remainder else');

/** "tipped ronde + alma + king, 3 shoots apiece": the number for each tree of the row. */
export function countOfEach(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    if (saying.mentions.length > 0 || saying.hits.length > 0 || saying.items.length > 5) return;
    const number = saying.items.find((item) => item.quantity)?.quantity;
    if (!number || !saying.items.some(({ text }) => EACH.has(text))) return;
    if (
      !saying.items.every(
        (item) => item.quantity || EACH.has(item.text) || isAnyOf(item, ['SHOOT', 'DET', 'TREEWORD', 'SIZE']),
      )
    )
      return;
    const row = sayings.slice(0, s).filter((each) => each.clause.sentence === saying.clause.sentence);
    if (!row.some((each) => each.hits.length === 1 && each.hits[0]?.kind === 'tipped')) return;
    if (!row.every((each) => each.bare || each.hits[0]?.kind === 'tipped')) return;
    for (const each of row) each.count = number;
    silence(saying);
  });
}

const EACH = wordSet('each apiece per both every');

/** "hail last night, shredded the alma": the weather, and what it did on that day. */
function harmOfWeather(saying: Saying, before: Saying): void {
  if (before.mentions.length > 0 || saying.mentions.length === 0 || before.mood.wide) return;
  if (!['comma', 'and'].includes(saying.clause.join) || !isFact(saying.mood) || !isFact(before.mood)) return;
  if (!isHarm(before) || !isHarm(saying) || !before.items.some((item) => item.classes.has('FORCE'))) return;
  saying.date ??= before.date;
  silence(before);
}

const BY_FROST: ReadonlySet<string> = new Set(['tipped', 'pruned', 'care', 'picked', 'dropped', 'cuttings']);

/** "frost on the 3rd, took the tips off pot 3": no doing of the grower's. */
function doneByWeather(saying: Saying, before: Saying): void {
  const [told] = before.hits;
  const [hit] = saying.hits;
  if (!told || !hit || hit.first !== 0 || !['comma', 'and'].includes(saying.clause.join)) return;
  if (told.kind !== 'frost' && told.kind !== 'trouble') return;
  if (saying.date !== null || !BY_FROST.has(hit.kind) || before.mentions.length > 0 || !isFact(before.mood))
    return;
  if (!before.items.every((item) => item.type !== 'word' || isAnyOf(item, OF_WEATHER) || item.text === 'and'))
    return;
  const eats =
    before.items.some((item) => item.classes.has('THIEF')) &&
    (isAnyOf(saying.items[0], ['GNAWED', 'EATEN']) ||
      saying.items.some(({ text }) => text === 'clean' || text === 'bare'));
  if (!eats && !TAKING.has(saying.items[0]?.text ?? '')) return;
  saying.hits = [{ ...hit, kind: told.kind }];
  saying.date ??= before.date;
  silence(before);
}

const OF_WEATHER = ['FROST', 'FORCE', 'WEATHER', 'THIEF', 'DET', 'SIZE', 'ADV', 'PREP', 'AND'];
const TAKING = wordSet(`
  took taken nipped tipped topped pinched stopped killed got had stripped snapped broke ripped tore knocked blew cut
  pruned chopped burnt burned zapped dropped lopped finished cleaned shook brought sent
`);

function isHarm({ hits }: Saying): boolean {
  return hits.length > 0 && hits.every((hit) => hit.kind === 'trouble');
}

const COUNTED: ReadonlySet<string> = new Set(['ripening', 'dropped', 'picked']);
const OF_A_COUNT = ['FRUIT', 'RIPE', 'SIZE', 'DET', 'ADV', 'BREBA'];

function isBareCount(items: readonly Item[], others: readonly string[]): boolean {
  return (
    items.filter((item) => item.quantity).length === 1 &&
    items.every(
      (item) => item.quantity !== undefined || isAnyOf(item, OF_A_COUNT) || others.includes(item.text),
    )
  );
}

/** "king has its first blush, one fig": how many blush. */
function countBehind(saying: Saying, before: Saying): void {
  const [hit] = before.hits;
  if (saying.clause.join !== 'comma' || saying.mentions.length > 0 || before.hits.length !== 1) return;
  if (!hit || !COUNTED.has(hit.kind) || before.count !== null || before.mood.asks) return;
  if (!isFact(before.mood) || before.items.some((item) => item.quantity)) return;
  if (saying.breba || saying.main || before.date !== null) return;
  if (saying.items.some((item) => item.classes.has('NOW') || item.text === 'new')) return;
  const weighs = hit.kind === 'picked' && saying.items.some((item) => item.classes.has('WEIGHT'));
  if (!weighs && !saying.items.some((item) => item.classes.has('FRUIT'))) return;
  if (
    !saying.hits.every((each) => each.kind === (weighs ? 'picked' : 'fruitlets')) ||
    !isBareCount(saying.items, COUNT_WORDS)
  )
    return;
  before.count = saying.items.find((item) => item.quantity)?.quantity ?? null;
  silence(saying);
}

/** "up on bricks so the ants quit climbing": what it was done against. */
function againstWhom(saying: Saying, before: Saying): void {
  if (saying.clause.sub !== 'so' || saying.mentions.length > 0 || saying.hits.length === 0) return;
  if (!before.hits.some((hit) => hit.kind === 'care') || !isHarm(saying)) return;
  if (saying.items.some((item) => isAnyOf(item, ['THIEF', 'PEST', 'FORCE']))) silence(saying);
}

const COUNT_WORDS = [
  'in',
  'total',
  'so',
  'far',
  'prolly',
  'probably',
  'maybe',
  'roughly',
  'approx',
  'or',
  'thereabouts',
  'i',
  'say',
  'would',
  'them',
  'of',
  'it',
];

/** "two brebas and one proper fig off the king": both were picked from it. */
function pickedTogether(saying: Saying, next: Saying): void {
  const [hit] = saying.hits;
  const [off] = next.hits;
  if (next.clause.join !== 'and' || next.mentions.length === 0 || saying.mentions.length > 0) return;
  if (saying.hits.length !== 1 || !hit || !['fruitlets', 'ripening'].includes(hit.kind)) return;
  if (off?.kind !== 'picked' || off.first !== 0 || !next.items[0]?.quantity) return;
  if (!off.at.some((i) => ['off', 'from'].includes(next.items[i]?.text ?? ''))) return;
  if (!isBareCount(saying.items, COUNT_WORDS) || !isFact(next.mood) || next.mood.asks) return;
  saying.hits = [{ ...hit, kind: 'picked' }];
  saying.mentions = next.mentions;
  saying.date ??= next.date;
}

/** "all came down overnight, bare as you like": of fruit, in full leaf. */
function bareSince(saying: Saying, before: Saying): void {
  if (!before.hits.some((hit) => hit.kind === 'dropped') || saying.mentions.length > 0) return;
  if (
    !saying.items.some(({ text }) => BARE.has(text)) ||
    saying.items.some((item) => item.classes.has('LEAF'))
  )
    return;
  if (saying.hits.every((hit) => ['dormant', 'no-fruitlets', 'remark'].includes(hit.kind))) silence(saying);
}

const BARE = wordSet('bare naked stripped bald');
