import { fellWhenAsked, goneDownTheHatch, goneOrBinned, gotTheRest, restIsFine } from './gone-told.ts';
import { type Hit, hitOn } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { isPlainWord } from './lexicon/plain-words.ts';
import { wordSet } from './lexicon/word-set.ts';
import { partOfMeal } from './meal-told.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';
import { isNaming, tellSetApart } from './set-apart.ts';

/** What of a message is a harvest only by the company it keeps: figs counted beside what became of them. */
export function tellHarvests(sayings: readonly Saying[]): void {
  treesGave(sayings);
  tellSetApart(sayings);
  sayings.forEach((saying, s) => {
    fellWhenAsked(sayings, s);
    goesOnOff(saying, sayings[s - 1]);
    gotTheRest(saying, sayings[s - 1]);
    everyRipeOne(saying, sayings[s - 1]);
    restIsFine(saying, sayings[s + 1]);
    goneOrBinned(saying, sayings[s - 1]);
    goneDownTheHatch(saying, sayings[s + 1]);
    clearedOut(saying, sayings[s + 1]);
    partOfMeal(sayings, s);
    if (saying.hits.length > 1) return;
    const sentence = sayings.filter((each) => each.clause.sentence === saying.clause.sentence);
    if (!isCountOfFigs(saying, sentence)) return;
    const near = sentence.filter((each) => each !== saying);
    const served = saying.clause.sub === null && near.some(isServing);
    const next = sayings[s + 1];
    const before = sayings[s - 1];
    const joined =
      (next !== undefined && near.includes(next) && isFrom(next)) ||
      (before !== undefined && near.includes(before) && isFrom(before) && saying.clause.join === 'and');
    if (
      !served &&
      !joined &&
      !isOff(saying) &&
      !endsInPicking(sayings, s) &&
      !isFruitByName(saying, sentence) &&
      !isWhatWasEaten(before)
    )
      return;
    saying.hits = [pickedHit(saying)];
    for (const each of near) if (isHeading(each)) each.dropped = true;
  });
  for (const saying of sayings) if (saying.dropped && isHeading(saying)) saying.hits = [];
  // "figs for pudding again, six from the alma"
  sayings.forEach((saying, s) => {
    const next = sayings[s + 1];
    if (!next || next.clause.sentence !== saying.clause.sentence || next.mentions.length === 0) return;
    if (saying.mentions.length > 0 || saying.items.some((item) => item.quantity) || saying.hits.length !== 1)
      return;
    if (saying.hits[0]?.kind !== 'picked' || !saying.items.some((item) => item.classes.has('FOODISH')))
      return;
    if (next.hits.some((hit) => hit.kind === 'picked')) {
      silence(saying);
    }
  });
}

/** "picked 9, no 7, brebas": a word for the crop behind what was told of it. */
export function nameCrops(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const before = sayings
      .slice(0, s)
      .findLast((each) => !each.dropped && !(each.bare && each.hits.length === 0));
    if (!before || before.clause.sentence !== saying.clause.sentence || saying.mentions.length > 0) return;
    if (saying.hits.length !== 1 || saying.hits[0]?.kind !== 'fruitlets' || !saying.breba) return;
    if (saying.items.length > 5 || !['comma', 'colon', 'repair'].includes(saying.clause.join)) return;
    const plain = saying.items.every(
      (item) =>
        isAnyOf(item, ['BREBA', 'FRUIT', 'DET', 'OLDWOOD', 'ADV', 'PRO', 'BE', 'HEDGE']) ||
        ['of', 'every', 'one', 'them', 'i'].includes(item.text),
    );
    if (plain && before.hits.some((hit) => ['picked', 'dropped', 'ripening', 'fruitlets'].includes(hit.kind)))
      saying.hits = [];
  });
}

/** "harvest today", "all eaten": of no tree or number of its own. */
function isHeading(saying: Saying): boolean {
  return (
    saying.mentions.length === 0 &&
    saying.hits.length === 1 &&
    saying.hits[0]?.kind === 'picked' &&
    !saying.items.some((item) => item.quantity || item.classes.has('FRUIT') || item.text === 'one')
  );
}

const BEARING = wordSet('on at showing set forming visible here there still now already');

/** "ten alma figs", "3 celestes": a number, a tree, perhaps figs, and nothing that says that they hang there. */
function isCountOfFigs(saying: Saying, sentence: readonly Saying[] = []): boolean {
  const [hit] = saying.hits;
  if (hit && hit.kind !== 'fruitlets') return false;
  if (!isFact(saying.mood) || saying.mood.asks) return false;
  // "20 figs, brunswick, straight to jam": the tree stands by itself.
  const apart =
    saying.mentions.length === 0 &&
    sentence.some(({ items }) => items.at(-1)?.type === 'tree' && items.every(isNaming));
  if (saying.mentions.length !== 1 && !apart) return false;
  let counted = false;
  for (const item of saying.items) {
    if (item.quantity || item.text === 'first') counted = true;
    else if (item.type === 'tree' || item.type === 'date') continue;
    else if (BEARING.has(item.text) || item.classes.has('FRUITLET') || item.classes.has('HAVE')) return false;
    else if (!isAnyOf(item, BESIDE_COUNT) && !PLAIN.has(item.text)) return false;
  }
  return counted;
}

const BESIDE_COUNT = ['FRUIT', 'DET', 'SIZE', 'ADV', 'MY', 'RIPE', 'FOODISH', 'HOUSE', 'EATEN'];
const PLAIN = wordSet(`
  so far of for the with straight fresh warm tree exactly about around roughly more another off from goats cheese cream each me us so
  today total altogether
`);

/** A clause that only tells what figs became: "salad sorted", "jam's on", "sunday lunch". */
function isServing(saying: Saying): boolean {
  if (saying.mentions.length > 0 || saying.hits.some((hit) => hit.kind !== 'picked')) return false;
  if (!isFact(saying.mood) || saying.mood.asks) return false;
  const { items } = saying;
  const food = items.some((item) => item.classes.has('FOODISH') || SERVED.has(item.text));
  const all = items.some((item) => item.text === 'both' || item.text === 'all') || items.length <= 3;
  const picked = saying.hits.length === 1 && all && !items.some((item) => item.quantity);
  return (food && items.length <= 6) || picked;
}

const SERVED = wordSet(`
  delicious yum yummy yumm nom noms scrumptious tasty delish jammy divine scoffed devoured
`);

/** "one from the mission": fruit from a tree, by that alone. */
function isFrom(saying: Saying): boolean {
  const [hit] = saying.hits;
  return (
    hit?.kind === 'picked' &&
    saying.hits.length === 1 &&
    hit.at.some((i) => ['off', 'from'].includes(saying.items[i]?.text ?? '')) &&
    saying.items.every((item) => item.text !== 'picked')
  );
}

/** "alma 4 ronde 2 celeste 9 picked today": the verb at the end is for the whole row. */
function endsInPicking(sayings: readonly Saying[], s: number): boolean {
  const [first] = sayings[s]?.items ?? [];
  if (first?.type !== 'tree') return false;
  for (const each of sayings.slice(s + 1)) {
    if (each.clause.sentence !== sayings[s]?.clause.sentence || each.items[0]?.type !== 'tree') return false;
    if (!each.items[1]?.quantity) return false;
    if (each.hits.some((hit) => hit.kind === 'picked' && hit.last > 1)) return true;
  }
  return false;
}

/** "total so far off the mission 112" */
function isOff({ items }: Saying): boolean {
  const at = items.findIndex((item) => item.type === 'tree');
  const lead = items.slice(0, at).findLast((item) => !item.classes.has('DET'));
  return lead?.text === 'off' || lead?.text === 'from';
}

/** "ate it. first alma fig." */
function isWhatWasEaten(before: Saying | undefined): boolean {
  const eaten =
    before !== undefined &&
    before.mentions.length === 0 &&
    before.items.length <= 3 &&
    before.hits.length === 1 &&
    before.hits[0]?.kind === 'picked' &&
    before.items.some((item) => item.text === 'it' || item.text === 'them');
  if (eaten) {
    silence(before);
  }
  return eaten;
}

/** "7 celestes today", "another couple of brunswicks": a tree's name in the plural is its fruit, and nothing else is told of it. */
function isFruitByName(saying: Saying, sentence: readonly Saying[]): boolean {
  if (saying.hits.length > 0 || saying.clause.sub !== null) return false;
  const at = saying.items.findIndex((item) => item.type === 'tree');
  const tree = saying.items[at];
  const before = saying.items.slice(0, at).findLast((item) => !item.classes.has('SIZE'));
  if (!tree?.mention || !before?.quantity) return false;
  if (tree.mention.all && before.quantity.value === tree.mention.ids.length) return false;
  if (!/s$/i.test(tree.typed) || /ss$/i.test(tree.typed)) return false;
  return sentence.every(
    (each) =>
      each === saying ||
      (each.hits.every((hit) => hit.kind === 'picked' || hit.kind === 'remark') &&
        each.items.every((item) => item.type !== 'word' || item.classes.size > 0 || isPlainWord(item.text))),
  );
}

function pickedHit(saying: Saying): Hit {
  const [hit] = saying.hits;
  if (hit) return { ...hit, kind: 'picked' };
  const at = saying.items.findIndex((item) => item.quantity !== undefined);
  return hitOn('picked', at);
}

const WHO = ['MY', 'DET', 'HOUSE', 'KIN', 'ADV'];
const AMOUNTS = wordSet('loads heaps tons lots plenty masses full buckets bucketloads armfuls stacks piles');
const CLEARED = wordSet('cleared emptied stripped raided cleaned hit plundered did off from');

/** "cleared the tall kadota, 2 dozen exactly": the number tells that it was figs. */
function clearedOut(saying: Saying, next: Saying | undefined): void {
  const from = saying.items.findIndex((item) => !isAnyOf(item, WHO));
  const verb = saying.items[from];
  if (!verb || !CLEARED.has(verb.text) || saying.mentions.length !== 1 || !next) return;
  if (saying.items.length - from > 4 || next.clause.sentence !== saying.clause.sentence) return;
  if (
    next.mentions.length > 0 ||
    next.hits.some((hit) => !['fruitlets', 'picked'].includes(hit.kind) && !isVessels(next))
  )
    return;
  const number = next.items.find((item) => item.quantity)?.quantity;
  const amount = next.items.some((item) => AMOUNTS.has(item.text) || item.classes.has('CONTAINER'));
  const vessels = next.items.some((item) => item.classes.has('CONTAINER'));
  if (
    (!number && !amount) ||
    !next.items.every(
      (item) => isBesideNumber(item) || AMOUNTS.has(item.text) || item.classes.has('CONTAINER'),
    )
  )
    return;
  saying.hits = [hitOn('picked', from)];
  // "two bowls" are no two figs.
  saying.count = vessels ? null : (number ?? null);
  silence(next);
}

function isVessels({ items }: Saying): boolean {
  return items.every((item) => item.quantity !== undefined || item.classes.has('CONTAINER'));
}

function isBesideNumber(item: Item): boolean {
  return (
    item.quantity !== undefined || item.type === 'mark' || isAnyOf(item, BESIDE_COUNT) || PLAIN.has(item.text)
  );
}

/** "two trees gave today: ronde 5, celeste 8": a heading of giving for the numbers behind it. */
function treesGave(sayings: readonly Saying[]): void {
  sayings.forEach((heading, h) => {
    if (sayings[h + 1]?.clause.join !== 'colon' || heading.hits.length > 0 || heading.mentions.length > 0)
      return;
    if (!isFact(heading.mood)) return;
    const row = sayings.slice(h + 1).filter((saying) => saying.clause.sentence === heading.clause.sentence);
    // "fig tally: alma zero, ronde 2": counted on the tree.
    const counted =
      heading.items.some((item) => item.classes.has('FRUIT')) ||
      row.some((saying) => saying.items.some((item) => item.classes.has('NONE')));
    if (
      !heading.items.some((item) => GAVE.has(item.text) && !(counted && item.text === 'tally')) ||
      heading.items.some((item) => item.text === 'to')
    )
      return;
    for (const saying of row) if (isCountOfFigs(saying)) saying.hits = [pickedHit(saying)];
  });
}

const GAVE = wordSet(
  'pick picks pickings tally gave delivered yielded produced cropped picked eaten harvested harvest haul',
);

/** "demolished the lot, every ripe one": which ones were picked. */
function everyRipeOne(saying: Saying, before: Saying | undefined): void {
  if (!before || before.clause.sentence !== saying.clause.sentence || saying.mentions.length > 0) return;
  if (saying.hits.length !== 1 || saying.hits[0]?.kind !== 'ripening' || saying.items.length > 5) return;
  if (!before.hits.some((hit) => hit.kind === 'picked')) return;
  if (!saying.items.some((item) => ['every', 'all', 'each', 'only', 'just'].includes(item.text))) return;
  silence(saying);
}

const TAKEN_OFF: ReadonlySet<string> = new Set(['tipped', 'cuttings', 'pruned']);

/** "3 tips off the mission, 4 off the king": more of what was taken off before. */
function goesOnOff(saying: Saying, before: Saying | undefined): void {
  const told = before?.hits.find((hit) => TAKEN_OFF.has(hit.kind));
  const [hit] = saying.hits;
  // "pinched 2 on the alma, 3 on the ronde"
  const counted =
    told?.kind === 'tipped' &&
    hit?.kind === 'fruitlets' &&
    before?.items.some((item) => item.quantity) === true;
  if (
    !told ||
    !hit ||
    (hit.kind !== 'picked' && !counted) ||
    before?.clause.sentence !== saying.clause.sentence
  )
    return;
  const heading = before.mentions.length === 0 && !before.items.some((item) => item.quantity);
  const places = counted ? ['on'] : ['off', 'from'];
  if (!heading && !before.items.some((item) => places.includes(item.text))) return;
  const bare = saying.items.every(
    (item) =>
      item.type !== 'word' ||
      places.includes(item.text) ||
      item.classes.has('DET') ||
      item.classes.has('ADV') ||
      (counted && ['all', 'of'].includes(item.text)) ||
      item.text === 'more',
  );
  if (!bare) return;
  saying.hits = [{ ...hit, kind: told.kind }];
  if (heading) {
    silence(before);
  }
}
