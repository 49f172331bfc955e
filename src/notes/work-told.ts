import type { Hit } from './hits.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';

/** What is told of work and harm only by the company of the clauses around it. */
export function tellWork(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const before = sayings[s - 1];
    if (!before || before.clause.sentence !== saying.clause.sentence) {
      leavesBlack(sayings, s);
      hitByFrost(sayings, s);
      return;
    }
    sameAgain(saying, before);
    deadCuttings(saying, before);
    pottedCuttings(saying, before);
    if (isFrost(before) && isCovered(saying)) saying.hits = [];
    if (saying.clause.join === 'or' && before.mood.asks) saying.mood = { ...saying.mood, asks: true };
    if (saying.clause.join === 'and' && isDoom(before, saying)) {
      before.hits = [];
      before.dropped = true;
      saying.hits = [];
    }
    onlyShoots(saying, before);
    topicOfRoots(before, saying);
    const ahead = sayings[s - 2];
    if (ahead?.clause.sentence === saying.clause.sentence && before.hits.length === 0 && !before.dropped)
      topicOfRoots(ahead, saying);
    leavesBlack(sayings, s);
    hitByFrost(sayings, s);
  });
}

const AGAIN = wordSet(`
  now it is its 's the turn next then too also same on has got been today this time
`);
const TURNS = wordSet('now next turn then too also same');

/** "first it was leaf spot on the alma, now it's the ronde": the news before, of another tree. */
function sameAgain(saying: Saying, before: Saying): void {
  const [hit] = before.hits;
  if (saying.hits.length > 0 || saying.mentions.length !== 1 || !hit || hit.kind !== 'trouble') return;
  const words = saying.items.filter((item) => item.type === 'word');
  if (!words.some((item) => TURNS.has(item.text)) || !words.every((item) => AGAIN.has(item.text))) return;
  const end = saying.items.length;
  saying.hits = [{ kind: hit.kind, at: [], first: end, last: end, core: end }];
}

const OF_SHOOTS: ReadonlySet<string> = new Set(['tipped', 'pruned', 'cuttings']);

/** "stopped at the 6th leaf, all shoots": what was tipped, not what grew. */
function onlyShoots(saying: Saying, before: Saying): void {
  if (saying.hits.length !== 1 || saying.hits[0]?.kind !== 'branched' || saying.mentions.length > 0) return;
  if (!before.hits.some((hit) => OF_SHOOTS.has(hit.kind))) return;
  const plain = saying.items.every(
    (item) =>
      item.classes.has('SHOOT') ||
      item.type === 'quantity' ||
      ['all', 'both', 'every', 'each', 'the', 'side', 'of', 'them'].includes(item.text),
  );
  if (!plain) return;
  const number = saying.items.find((item) => item.quantity)?.quantity;
  if (number && before.count === null) before.count = number;
  saying.hits = [];
  saying.dropped = true;
}

const TAKING = wordSet(`
  took taken cut snipped clipped made struck stuck snagged grabbed potted bagged saved collected pulled
  sliced lopped chopped started popped poked pushed put set planted went going in into from
`);

/** "ronde cuttings: no roots", "alma sticks, 3 have roots": the cuttings are what is spoken of, not news. */
function topicOfRoots(saying: Saying, next: Saying): void {
  if (saying.hits.length !== 1 || saying.hits[0]?.kind !== 'cuttings') return;
  const denied = next.mood.denials.length > 0 && next.items.some((item) => item.classes.has('ROOT'));
  if (!(denied || next.hits.some((hit) => hit.kind === 'rooted')) || next.mentions.length > 0) return;
  if (
    saying.date ||
    saying.items.some((item) => item.quantity !== undefined || TAKING.has(item.text) || item.text === 'new')
  )
    return;
  saying.hits = [];
  saying.dropped = true;
  next.mentions = saying.mentions;
}

const SUFFERED = wordSet(`
  copped caught hit got cooked suffered singed burnt burned browned blackened zapped fried worst brunt
  hammered nipped toasted scorched damage damaged took killed black brown mush mushy limp crispy
  wilted lost it too badly hard
`);

function isFrost(saying: Saying): boolean {
  return saying.hits.length > 0 && saying.hits.every((hit) => hit.kind === 'frost');
}

function suffered(items: readonly Item[]): boolean {
  return items.some((item) => SUFFERED.has(item.text));
}

/** "a late frost, and the alma copped it": the trees of a clause soon after are those that were hit. */
function hitByFrost(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  if (!saying || !isFrost(saying) || saying.mentions.length > 0 || saying.pronoun) return;
  for (let k = s + 1; k <= s + 2; k++) {
    const next = sayings[k];
    if (!next || next.clause.sentence !== saying.clause.sentence) return;
    if (next.mentions.length === 0) {
      if (next.hits.length > 0) return;
      continue;
    }
    if (next.mood.denials.length > 0 || next.mood.unrealFrom !== null || !suffered(next.items)) return;
    if (!next.hits.every((hit) => ['trouble', 'dormant', 'care'].includes(hit.kind))) return;
    saying.mentions = next.mentions;
    next.hits = [];
    next.dropped = true;
    return;
  }
}

/** "frost in the garden, leaves are black": harm of the frost that was told of, to no tree in particular. */
function leavesBlack(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  if (!saying || saying.mentions.length > 0 || saying.hits.length === 0) return;
  if (!saying.hits.every((hit: Hit) => hit.kind === 'trouble')) return;
  const near = [sayings[s - 1], sayings[s + 1]].some(
    (other) => other && isFrost(other) && other.clause.sentence === saying.clause.sentence,
  );
  if (!near || sayings.some((other) => other.mentions.length > 0)) return;
  saying.hits = [];
  saying.dropped = true;
}

/** "mission cuttings 6, all dead": told of the cuttings, not of the tree. */
function deadCuttings(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || saying.hits.length === 0) return;
  if (!before.hits.some((hit) => hit.kind === 'cuttings')) return;
  if (!saying.hits.every((hit) => hit.kind === 'trouble')) return;
  if (!saying.items.some((item) => DEAD.has(item.text))) return;
  saying.hits = saying.hits.slice(0, 1).map((hit) => ({ ...hit, kind: 'remark' as const }));
}

const DEAD = wordSet('dead died rotted rotten failed mouldy moldy dried shrivelled shriveled perished');

/** "another frost and the king's had it": what would be. */
function isDoom(frost: Saying, then: Saying): boolean {
  const opening = frost.items[0]?.text;
  return (
    isFrost(frost) &&
    (opening === 'another' || (opening === 'one' && frost.items[1]?.text === 'more')) &&
    then.items.some((item) =>
      ['had', 'done', 'finished', 'toast', 'goner', 'dead', 'gone'].includes(item.text),
    )
  );
}

/** "dipped 8 cuttings in hormone and potted": more of what was done with the cuttings. */
function pottedCuttings(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || saying.items.length > 3 || saying.clause.join !== 'and') return;
  if (!before.hits.some((hit) => hit.kind === 'cuttings') || before.mentions.length === 0) return;
  if (saying.hits.length === 0 || !saying.hits.every((hit) => hit.kind === 'care')) return;
  if (!/^(?:potted|bagged|watered|wrapped|covered|misted|heeled)$/.test(saying.items[0]?.text ?? '')) return;
  saying.hits = [];
  saying.dropped = true;
}

/** "frost, but the king was covered": with fleece, not with figs. */
function isCovered(saying: Saying): boolean {
  return (
    saying.hits.length === 1 &&
    saying.hits[0]?.kind === 'fruitlets' &&
    saying.items.some((item) => item.text === 'covered') &&
    !saying.items.some((item) => item.classes.has('FRUIT'))
  );
}
