import { hitBehind } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { type Saying, silence } from './sayings.ts';

const ANSWERS = wordSet(`
  none nil zero nada zilch zip nope no nothing nought naught what which 0 zippo bupkis nary
`);

/** "figs on the ronde: none", "celeste figs? what figs": what is named first is not there. */
export function answerNone(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const next = sayings[s + 1];
    // "jobs done: nowt. to do: stop the alma"
    if (next?.clause.join === 'colon' && next.mentions.length === 0 && isNothing(next) && isOfJobs(saying))
      silence(next);
    if (!next || next.mentions.length > 0 || !isNothing(next)) return;
    const [deed] = saying.hits;
    // "picked: none. king"
    if (next.clause.join === 'colon' && deed && NONE_DONE.has(deed.kind) && saying.items.length <= 4) {
      saying.hits = [{ ...deed, kind: 'remark' }];
      silence(next);
      return;
    }
    if (!saying.hits.every((hit) => hit.kind === 'fruitlets') || saying.items.some((item) => item.quantity))
      return;
    if (!saying.items.some((item) => item.classes.has('FRUIT'))) return;
    if (saying.items.length > 7 || saying.mood.denials.length > 0) return;
    saying.hits = [hitBehind('no-fruitlets', saying.items)];
    saying.mood = { ...saying.mood, asks: false };
    silence(next);
  });
}

const JOBS = wordSet(
  'job jobs done did task tasks chore chores todo progress achieved work worked tipping pinching picking feeding watering pruning losses drops dropped fallers pests damage plan plans shopping',
);

/** "done today", "progress": a heading of work. */
function isOfJobs({ items, mentions }: Saying): boolean {
  return (
    mentions.length === 0 &&
    items.length <= 5 &&
    items.some((item) => JOBS.has(item.text)) &&
    !items.some((item) => item.classes.has('FRUIT'))
  );
}

const OTHER_NEWS: ReadonlySet<string> = new Set(['trouble', 'rooted', 'cuttings', 'frost']);

const NONE_DONE: ReadonlySet<string> = new Set(['picked', 'tipped', 'dropped']);

/** "rust on the ronde, none on my alma": none of what was told of before, which was no fruit. */
export function denyOtherNews(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const [hit] = saying.hits;
    if (hit?.kind !== 'no-fruitlets' || saying.hits.length > 1) return;
    if (saying.items.some((item) => item.classes.has('FRUIT') || item.classes.has('BREBA'))) return;
    if (
      !hit.at.every(
        (i) =>
          saying.items[i]?.type !== 'word' ||
          saying.items[i]?.classes.has('NONE') ||
          isAnyOf(saying.items[i], ['PREP', 'DET', 'HAVE', 'PRO']),
      )
    )
      return;
    const before = sayings.slice(0, s).findLast((each) => each.hits.length > 0);
    if (before && isLeftOut(saying, before)) saying.hits = [];
    // "anything ripe on the king? nope"
    // "checked for ripe ones on the king, none"
    if (
      before?.hits.every((each) => each.kind === 'ripening') &&
      before.items.some(
        (item, i) =>
          item.classes.has('RIPE') &&
          ['for', 'any', 'anything', 'no'].includes(before.items[i - 1]?.text ?? ''),
      )
    ) {
      before.hits = [];
      saying.hits = [];
    }
    if (
      before?.mood.asks &&
      before.hits.every((each) => each.kind !== 'fruitlets' && each.kind !== 'ask-kind')
    )
      saying.hits = [];
    if (
      before?.hits.every((each) => OTHER_NEWS.has(each.kind)) &&
      !before.items.some((item) => item.classes.has('FRUIT'))
    )
      saying.hits = [];
  });
}

const CARED: ReadonlySet<string> = new Set(['care', 'pruned', 'tipped']);

/** "3 off the alma tuesday, none today", "ronde got fed, celeste got nothing": no more of what was done. */
function isLeftOut(saying: Saying, before: Saying): boolean {
  if (before.clause.sentence !== saying.clause.sentence) return false;
  const words = saying.items.filter((item) => item.type === 'word');
  if (saying.mentions.length === 0)
    return (
      before.hits.some((hit) => hit.kind === 'picked') &&
      saying.date !== null &&
      words.every((item) => item.classes.has('NONE') || item.classes.has('PREP'))
    );
  return (
    before.hits.every((hit) => CARED.has(hit.kind)) &&
    words.every((item) => item.classes.has('NONE') || item.classes.has('DET') || item.text === 'got') &&
    words.some((item) => item.text === 'got')
  );
}

/** "no new figs on the king, old 4 still hanging": none but those that were there. */
export function keepOldFigs(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const next = sayings[s + 1];
    if (!next || next.mentions.length > 0 || next.clause.sentence !== saying.clause.sentence) return;
    const denied = saying.mood.denials.length > 0;
    const none = saying.hits.every(
      (hit) => hit.kind === 'no-fruitlets' || (denied && hit.kind === 'fruitlets'),
    );
    if (!none || saying.hits.length === 0) return;
    if (!saying.items.some((item) => FURTHER.has(item.text)) || next.mood.denials.length > 0) return;
    if (!next.items.some((item) => item.quantity) || !next.items.some((item) => OF_BEFORE.has(item.text)))
      return;
    if (next.hits.some((hit) => hit.kind !== 'fruitlets')) return;
    saying.hits = [];
    next.hits = [hitBehind('fruitlets', next.items)];
  });
}

const FURTHER = wordSet('new more further other extra additional');
const OF_BEFORE = wordSet('old same still original existing earlier first remaining');

const isNow = (item: Item) => item.text === 'now';
const ONCE = wordSet('had was were held bore carried used');
const NONE_NOW = wordSet(
  "now but and is are there it its they i see find left any more currently presently today then all just only has have had got 's still sadly alas unfortunately sorry though",
);
const LOST = wordSet('gone vanished disappeared fallen fell dropped missing off');

/** "the alma had 8 figs, none now", "there were 4 on the ronde, gone now": what was there once counts no more. */
export function noneAnyMore(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const next = sayings[s + 1];
    if (!next || next.mentions.length > 0 || next.date || saying.date) return;
    if (saying.hits.length === 0 || !saying.hits.every((hit) => hit.kind === 'fruitlets')) return;
    const isPast = saying.items.some((item) => ONCE.has(item.text)) || next.items.some(isNow);
    if (!isPast || saying.mood.denials.length > 0) return;
    // "not any more"
    const isOver = next.items.some((item) => item.text === 'more');
    const isNone = (item: Item) =>
      (isOver && item.text === 'not') ||
      ANSWERS.has(item.text) ||
      item.classes.has('NONE') ||
      item.text === 'bare';
    const isLost = (item: Item) => LOST.has(item.text);
    if (!next.items.some((item) => isNone(item) || isLost(item))) return;
    if (!next.items.every((item) => isNone(item) || isLost(item) || NONE_NOW.has(item.text))) return;
    silence(saying);
    next.hits = [hitBehind(next.items.some(isLost) ? 'dropped' : 'no-fruitlets', next.items)];
  });
}

const LAUGHTER = /^(?:(?:ha)+h?|l+o+l+|lmao|er+m*|u+h*m*|well|sadly|sorry|alas|hm+)$/;

/** "none", "what figs": nothing but a word for nothing. */
function isNothing(saying: Saying): boolean {
  const items = saying.items.slice(saying.items.findIndex((item) => !LAUGHTER.test(item.text)));
  const [first] = items;
  return (
    first !== undefined &&
    ANSWERS.has(first.text) &&
    items.length <= 3 &&
    items.every(
      (item) =>
        ANSWERS.has(item.text) ||
        item.classes.has('FRUIT') ||
        item.classes.has('ADV') ||
        item.classes.has('NONE') ||
        item.text === 'all' ||
        item.text === 'points',
    )
  );
}
