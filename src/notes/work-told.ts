import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';

/** What is told of work and harm only by the company of the clauses around it. */
export function tellWork(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const before = sayings[s - 1];
    if (!before || before.clause.sentence !== saying.clause.sentence) {
      if (
        saying.items.length === 2 &&
        saying.items[0]?.text === 'branched' &&
        saying.items[1]?.text === 'out'
      )
        saying.hits = [];
      if (before) {
        allOfThem(saying, before);
        rootsOf(saying, before);
      }
      leavesBlack(sayings, s);
      hitByFrost(sayings, s);
      return;
    }
    sameAgain(saying, before);
    deadCuttings(saying, before);
    gearOver(saying, before);
    notDone(saying, before);
    stillNot(saying, before);
    if (before.hits.some((hit) => hit.kind === 'trouble') && droops(saying)) saying.hits = [];
    whatTheyAre(saying, before);
    notFigs(saying, before);
    pottedCuttings(saying, before);
    if (isFrost(before) && isCovered(saying)) saying.hits = [];
    const crop = saying.items.some((item) => item.classes.has('FRUIT'));
    if (saying.clause.join === 'or' && before.mood.asks && !crop)
      saying.mood = { ...saying.mood, asks: true };
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
  wilted lost it too badly hard nipped pinched clipped wiped knocked singed ruined
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

/** "frost in the garden, leaves are black": harm of the frost that was told of. */
function leavesBlack(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  if (!saying || saying.mentions.length > 0 || saying.hits.length === 0) return;
  if (!saying.hits.every((hit) => ['trouble', 'tipped', 'dormant'].includes(hit.kind))) return;
  const before = sayings[s - 1];
  const after = sayings[s + 1];
  const sentence = saying.clause.sentence;
  const told = before !== undefined && before.clause.sentence === sentence && isFrost(before);
  const ahead = after !== undefined && after.clause.sentence === sentence && isFrost(after);
  if (
    !(told && suffered(saying.items)) &&
    !((told || ahead) && sayings.every((each) => each.mentions.length === 0))
  )
    return;
  saying.hits = [];
  saying.dropped = true;
}

/** "cuttings struck! all five": how many there were. */
function allOfThem(saying: Saying, before: Saying): void {
  const counted = before.hits.some((hit) => ['rooted', 'cuttings', 'tipped'].includes(hit.kind));
  const number = saying.items.find((item) => item.quantity)?.quantity;
  if (!counted || !number || number.unit || before.count || before.items.some((item) => item.quantity))
    return;
  if (!saying.items.every((item) => item.quantity || ['all', 'of', 'them', 'the'].includes(item.text)))
    return;
  before.count = number;
  saying.hits = [];
  saying.dropped = true;
}

/** "picked up a net, it's over the celeste now": what was bought is in use. */
function gearOver(saying: Saying, before: Saying): void {
  if (saying.hits.length > 0 || saying.mentions.length !== 1) return;
  if (!before.items.some((item) => item.classes.has('GEAR') || item.classes.has('FEEDSTUFF'))) return;
  if (!['it', 'its', 'they', 'that'].includes(saying.items[0]?.text ?? '')) return;
  const at = saying.items.findIndex((item) => ['over', 'on', 'round', 'around', 'under'].includes(item.text));
  if (at < 0 || at > 2) return;
  saying.hits = [{ kind: 'care', at: [at], first: at, last: at, core: at }];
}

/** "are these figs, or shoots coming on the alma?": the tree stands in the second half of the question. */
function whatTheyAre(saying: Saying, before: Saying): void {
  if (saying.clause.join !== 'or' || !before.mood.asks || before.mentions.length > 0) return;
  if (saying.mentions.length === 0) return;
  if (!before.items.some((item) => ['FRUIT', 'LEAF', 'BUD', 'BUMP'].some((name) => item.classes.has(name))))
    return;
  const end = before.items.length;
  before.mentions = saying.mentions;
  before.mood = { ...before.mood, asks: false, unrealFrom: null };
  before.hits = [{ kind: 'ask-kind', at: [], first: end, last: end, core: end }];
  saying.hits = [];
  saying.dropped = true;
}

/** "buds in twos, not figs yet": what the buds are not. */
function notFigs(saying: Saying, before: Saying): void {
  if (!before.hits.some((hit) => hit.kind === 'buds-double' || hit.kind === 'buds-single')) return;
  if (saying.mentions.length > 0 || saying.items[0]?.text !== 'not' || !saying.items[1]?.classes.has('FRUIT'))
    return;
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

/** "not fed: king": the tree that was passed over. */
function notDone(saying: Saying, before: Saying): void {
  if (saying.clause.join !== 'colon' || saying.hits.length > 0 || before.mentions.length > 0) return;
  if (before.hits.length === 0 || before.mood.denials.length === 0) return;
  before.mentions = saying.mentions;
  saying.dropped = true;
}

/** "the tall one is not in leaf, the little one is out": what the one is not yet, the other is. */
function stillNot(saying: Saying, before: Saying): void {
  const [hit] = before.hits;
  if (hit?.kind !== 'leafed-out' || saying.hits.length > 0 || saying.mentions.length !== 1) return;
  const last = saying.items.at(-1)?.text ?? '';
  if (!['out', 'in', 'awake', 'up', 'there'].includes(last) || saying.items.length > 6) return;
  if (saying.mood.denials.length > 0 || saying.mood.asks) return;
  const end = saying.items.length - 1;
  saying.hits = [{ kind: 'leafed-out', at: [end], first: end, last: end, core: end }];
}

/** "sulking, droopy as heck": the tree that droops, not its figs. */
function droops(saying: Saying): boolean {
  return (
    saying.mentions.length === 0 &&
    saying.hits.length > 0 &&
    saying.hits.every((hit) => hit.kind === 'ripening') &&
    saying.items.some((item) => /^(?:droop|droopy|drooping|limp|floppy|sagging|wilt)/.test(item.text)) &&
    !saying.items.some((item) => item.classes.has('FRUIT'))
  );
}

/** "we have roots! 3 of the 8 ronde sticks": which cuttings the roots are on. */
function rootsOf(saying: Saying, before: Saying): void {
  if (before.mentions.length > 0 || saying.hits.length !== 1 || saying.hits[0]?.kind !== 'cuttings') return;
  if (before.hits.length === 0 || !before.hits.every((hit) => hit.kind === 'rooted')) return;
  if (saying.items.some((item) => TAKING.has(item.text))) return;
  saying.hits = saying.hits.map((hit) => ({ ...hit, kind: 'rooted' as const }));
  before.hits = [];
  before.dropped = true;
}
