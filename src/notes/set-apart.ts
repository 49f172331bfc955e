import { hitOn } from './hits.ts';
import { type Item, isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

/** What commas and stops set apart from the clause that it counts, tastes or explains. */
export function tellSetApart(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const next = sayings[s + 1];
    if (!next || next.mood.asks || saying.mood.asks) return;
    figsThatIs(saying, sayings[s - 1], next);
    weightFirst(saying, next);
    gotOneSweet(saying, next);
    stillThere(saying, next, sayings[s + 2]);
  });
}

/** "alma is drooping, figs that is": what droops, not that there are figs. */
function figsThatIs(saying: Saying, before: Saying | undefined, next: Saying): void {
  if (!before || before.hits.length === 0 || before.clause.sentence !== saying.clause.sentence) return;
  if (next.clause.join !== 'sub' || next.items.length !== 1 || next.items[0]?.text !== 'is') return;
  if (!saying.items.every((item) => isAnyOf(item, ['FRUIT', 'DET', 'BREBA']))) return;
  silence(saying);
  silence(next);
}

/** "300 grams, little kadota harvest": the number before what it counts. */
function weightFirst(saying: Saying, next: Saying): void {
  const [number] = saying.items;
  if (!number?.quantity || saying.items.length > 1 || saying.mentions.length > 0) return;
  if (!['comma', 'colon'].includes(next.clause.join) || next.mentions.length !== 1 || next.count) return;
  if (next.hits.length !== 1 || next.hits[0]?.kind !== 'picked' || !isFact(next.mood)) return;
  if (!next.items.every((item) => item.type === 'tree' || item.type === 'date' || isAnyOf(item, HARVESTED)))
    return;
  next.count = number.quantity;
  silence(saying);
}

const HARVESTED = ['HARVEST', 'DET', 'MY', 'SIZE', 'PICKED', 'ADV'];
const GOT = wordSet('got had ate tried tasted');
const TASTES = wordSet(`
  sweet delicious yum yummy tasty scrumptious heaven heavenly divine honey jammy juicy syrupy luscious gorgeous
  amazing sticky melting
`);

/** "finally got one! so sweet": by its taste it was a fig, and not a tree that was bought. */
function gotOneSweet(saying: Saying, next: Saying): void {
  if (saying.hits.length > 0 || saying.mentions.length > 0 || next.mentions.length > 0) return;
  const verb = saying.items.findIndex(
    (item) => !isAnyOf(item, ['ADV', 'PRO', 'MY']) && item.text !== 'finally',
  );
  if (!GOT.has(saying.items[verb]?.text ?? '') || saying.items[verb + 1]?.text !== 'one') return;
  if (saying.items.length > verb + 2 || !isFact(saying.mood) || next.hits.length > 0) return;
  if (next.items.length > 5 || !next.items.some((item) => TASTES.has(item.text))) return;
  saying.hits = [hitOn('picked', verb)];
  silence(next);
}

const LEFT = wordSet(
  'still left remain remaining remains hanging on there stayed survive survived surviving',
);

const FALLEN = wordSet('fell fallen dropped shed aborted came lost gone shrivelled');

/** "had 8, 2 dropped, 6 still there": what there is now. */
function stillThere(had: Saying, lost: Saying, left: Saying | undefined): void {
  if (!left || left.clause.sentence !== had.clause.sentence || left.mentions.length > 0 || left.mood.asks)
    return;
  if (
    lost.mentions.length > 0 ||
    !lost.items.some((item) => isAnyOf(item, ['DROPPED', 'DROP']) || FALLEN.has(item.text))
  )
    return;
  if (!had.items.some((item) => item.text === 'had') || !had.items.some((item) => item.quantity)) return;
  if (had.hits.some((hit) => hit.kind !== 'fruitlets' && hit.kind !== 'picked')) return;
  if (!isFact(had.mood) || !isFact(left.mood)) return;
  const at = left.items.findIndex((item) => item.quantity);
  const plain = left.items.every(
    (item) => item.quantity || LEFT.has(item.text) || isAnyOf(item, ['FRUIT', 'DET', 'ADV', 'BE']),
  );
  if (at < 0 || !plain || !left.items.some((item) => LEFT.has(item.text))) return;
  left.hits = [hitOn('fruitlets', at)];
  left.count = left.items[at]?.quantity ?? null;
  left.mentions = had.mentions;
  silence(had);
  silence(lost);
}

/** "Alma. Tips. Gone.": full stops for want of breath are none. */
export function joinTelegram(items: readonly Item[]): readonly Item[] {
  if (items.length > 10 || items.length < 5 || items[0]?.type !== 'tree') return items;
  const alternating = items.every((item, i) =>
    i % 2 === 1
      ? item.type === 'mark' && item.text === '.'
      : i === 0 || (item.type !== 'mark' && item.type !== 'tree'),
  );
  const told = items.some((item) => isAnyOf(item, ['SHOOT', 'FRUIT', 'LEAF', 'BUD', 'APEX', 'CUTTING']));
  return alternating && told ? items.filter((item) => item.type !== 'mark') : items;
}

/** What a clause that only names its tree is made of. */
export function isNaming(item: Item): boolean {
  return item.type === 'tree' || isAnyOf(item, ['DET', 'MY', 'SIZE']);
}
