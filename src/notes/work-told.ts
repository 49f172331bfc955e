import {
  allOfThem,
  deadCuttings,
  keptCuttings,
  pottedCuttings,
  rootsOf,
  takenFrom,
  topicOfRoots,
} from './cuttings-told.ts';
import { coveredUp, hitByFrost, isDoom, leavesBlack } from './frost-told.ts';
import { hitBehind, hitOn } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { stuffOf, withWhat } from './list-told.ts';
import { type Saying, silence } from './sayings.ts';
import { backedOut, tipsGone } from './shoots-told.ts';

/** What is told of work and harm only by the company of the clauses around it. */
export function tellWork(sayings: readonly Saying[]): void {
  coverUp(sayings);
  sayings.forEach((saying, s) => {
    const before = sayings[s - 1];
    coveredUp(sayings, s);
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
        stuffOf(before, saying);
      }
      leavesBlack(sayings, s);
      hitByFrost(sayings, s);
      return;
    }
    sameAgain(saying, before);
    deadCuttings(saying, before);
    keptCuttings(saying, before);
    gearOver(saying, before);
    if (saying.clause.join === 'but' && butLeaves(saying, before)) {
      silence(saying);
    }
    andAte(saying, before);
    takenFrom(saying, before);
    lookedSad(saying, before);
    goneToo(saying, before);
    withWhat(saying, before);
    onlyTips(saying, before);
    tipsGone(saying, before);
    backedOut(saying, before);
    notDone(saying, before);
    stillNot(saying, before);
    if (before.hits.some((hit) => hit.kind === 'trouble') && droops(saying)) saying.hits = [];
    figsDroop(saying, before);
    whatTheyAre(saying, before);
    notFigs(saying, before);
    pottedCuttings(saying, before);
    const crop = saying.items.some((item) => item.classes.has('FRUIT'));
    if (saying.clause.join === 'or' && before.mood.asks && !crop)
      saying.mood = { ...saying.mood, asks: true };
    if (saying.clause.join === 'and' && isDoom(before, saying)) {
      silence(before);
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

const COVERS = ['GEAR', 'FROST', 'THIEF'];

/** "nipped out for netting, ronde is now covered": by that, and not with figs. */
function coverUp(sayings: readonly Saying[]): void {
  for (const saying of sayings) {
    const [hit] = saying.hits;
    if (
      hit?.kind !== 'fruitlets' ||
      saying.mentions.length === 0 ||
      !hit.at.some((i) => saying.items[i]?.text === 'covered')
    )
      continue;
    if (saying.items.some((item) => item.classes.has('FRUIT'))) continue;
    if (!sayings.some((each) => each.items.some((item) => isAnyOf(item, COVERS)))) continue;
    saying.hits = [{ ...hit, kind: 'care' }];
  }
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
  saying.hits = [hitBehind(hit.kind, saying.items)];
}

const OF_SHOOTS: ReadonlySet<string> = new Set(['tipped', 'pruned', 'cuttings']);

/** "gave it a trim, just the tips": tipped, not pruned. */
function onlyTips(saying: Saying, before: Saying): void {
  const { items } = saying;
  if (saying.mentions.length > 0 || !['just', 'only'].includes(items[0]?.text ?? '') || items.length > 4)
    return;
  const tips = items.at(-1)?.text ?? '';
  if (!['tips', 'tops', 'leaders', 'ends'].includes(tips)) return;
  if (!before.hits.some((hit) => hit.kind === 'pruned' || hit.kind === 'tipped')) return;
  before.hits = before.hits.map((hit) => (hit.kind === 'pruned' ? { ...hit, kind: 'tipped' as const } : hit));
  silence(saying);
}

/** "stopped at the 6th leaf, all shoots": what was tipped, not what grew. */
function onlyShoots(saying: Saying, before: Saying): void {
  if (saying.hits.length !== 1 || saying.hits[0]?.kind !== 'branched' || saying.mentions.length > 0) return;
  if (!before.hits.some((hit) => OF_SHOOTS.has(hit.kind)) || isBranches(saying, before)) return;
  const plain = saying.items.every(
    (item) =>
      item.classes.has('SHOOT') ||
      item.type === 'quantity' ||
      ['all', 'both', 'every', 'each', 'the', 'side', 'of', 'them'].includes(item.text),
  );
  if (!plain) return;
  const number = saying.items.find((item) => item.quantity)?.quantity;
  if (number && before.count === null) before.count = number;
  silence(saying);
}

/** "picked up a net, it's over the celeste now": what was bought is in use. */
function gearOver(saying: Saying, before: Saying): void {
  if (saying.hits.length > 0 || saying.mentions.length !== 1) return;
  if (!before.items.some((item) => item.classes.has('GEAR') || item.classes.has('FEEDSTUFF'))) return;
  if (!['it', 'its', 'they', 'that'].includes(saying.items[0]?.text ?? '')) return;
  const at = saying.items.findIndex((item) => ['over', 'on', 'round', 'around', 'under'].includes(item.text));
  if (at < 0 || at > 2) return;
  saying.hits = [hitOn('care', at)];
}

/** "are these figs, or shoots coming on the alma?": the tree stands in the second half of the question. */
function whatTheyAre(saying: Saying, before: Saying): void {
  if (saying.clause.join !== 'or' || !before.mood.asks || before.mentions.length > 0) return;
  if (saying.mentions.length === 0) return;
  if (!before.items.some((item) => isAnyOf(item, ['FRUIT', 'LEAF', 'BUD', 'BUMP']))) return;
  before.mentions = saying.mentions;
  before.mood = { ...before.mood, asks: false, unrealFrom: null };
  before.hits = [hitBehind('ask-kind', before.items)];
  silence(saying);
}

/** "buds in twos, not figs yet": what the buds are not. */
function notFigs(saying: Saying, before: Saying): void {
  if (!before.hits.some((hit) => hit.kind === 'buds-double' || hit.kind === 'buds-single')) return;
  if (saying.mentions.length > 0 || saying.items[0]?.text !== 'not' || !saying.items[1]?.classes.has('FRUIT'))
    return;
  silence(saying);
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
  saying.hits = [hitOn('leafed-out', end)];
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

/** "brebas gone soft and droopy": figs that ripen, no thirst. */
function figsDroop(saying: Saying, before: Saying): void {
  if (saying.clause.join !== 'and' || saying.items.length > 2 || saying.hits.length !== 1) return;
  if (saying.hits[0]?.kind !== 'trouble' || !saying.items.some((item) => DROOPY.test(item.text))) return;
  if (!before.hits.some((hit) => hit.kind === 'ripening') || !before.items.some(isFruit)) return;
  silence(saying);
}

const DROOPY = /^(?:droop|limp|floppy|sag|wilt)/;

function isFruit(item: Item): boolean {
  return item.classes.has('FRUIT');
}

/** "fed it cos it looked sad": why it was done. */
function lookedSad(saying: Saying, before: Saying): void {
  if (saying.clause.sub !== 'because' || saying.mentions.length > 0) return;
  if (!before.hits.some((hit) => hit.kind === 'care') || !saying.hits.every((hit) => hit.kind === 'trouble'))
    return;
  if (!saying.items.some((item) => LOOKS.has(item.text))) return;
  silence(saying);
}

const LOOKS = wordSet('look looks looked looking seemed seems felt sad peckish hungry thirsty');

/** "possums been at it, half a dozen gone": what they had. */
function goneToo(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || !before.hits.some((hit) => hit.kind === 'trouble')) return;
  if (!before.items.some((item) => item.classes.has('THIEF'))) return;
  if (!saying.hits.every((hit) => ['picked', 'dropped', 'fruitlets'].includes(hit.kind))) return;
  if (!saying.items.some((item) => item.text === 'gone' || item.text === 'missing')) return;
  silence(saying);
}

/** "topped it on the 12th, 5 branches": what grew since. */
function isBranches(saying: Saying, before: Saying): boolean {
  const noun = saying.items.at(-1)?.text ?? '';
  const side = noun === 'shoots' && saying.items.at(-2)?.text === 'side';
  return (
    before.date !== null &&
    saying.mentions.length === 0 &&
    saying.items.length <= 3 &&
    saying.items[0]?.quantity !== undefined &&
    before.hits.some((hit) => hit.kind === 'tipped') &&
    (side || ['branches', 'laterals', 'sideshoots'].includes(noun))
  );
}

/** "a horse reached over and ate the unknown": the animal's doing goes on. */
function andAte(saying: Saying, before: Saying): void {
  const [hit] = saying.hits;
  if (saying.clause.join !== 'and' || hit === undefined || hit.first !== 0 || saying.hits.length !== 1)
    return;
  if (!['picked', 'care', 'pruned', 'dropped'].includes(hit.kind)) return;
  const who = before.items.slice(0, 2).some((item) => item.classes.has('THIEF') || item.classes.has('FORCE'));
  const own = before.items.some((item) => ['i', 'we', 'my'].includes(item.text));
  const verb = saying.items[0];
  if (!who || own || !verb || !isAnyOf(verb, ['GNAWED', 'WRECKED', 'EATEN'])) return;
  saying.hits = [{ ...hit, kind: 'trouble' }];
}

/** "nothing on the mission but leaves" */
function butLeaves(saying: Saying, before: Saying): boolean {
  return (
    before.hits.some((hit) => hit.kind === 'no-fruitlets') &&
    before.items.some((item) => item.classes.has('NONE')) &&
    saying.items.length <= 3 &&
    saying.items.every((item) => isAnyOf(item, ['LEAF', 'SHOOT', 'DET', 'SIZE']))
  );
}
