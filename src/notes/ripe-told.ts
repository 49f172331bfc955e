import { isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

/** "3 figs on the alma, turning purple": what is said of the figs named before, of those very figs. */
export function ripenWhatWasThere(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const [hit] = saying.hits;
    if (hit?.kind !== 'ripening' || saying.hits.length !== 1 || saying.mentions.length > 0) return;
    if (!isFact(saying.mood) || saying.clause.sub !== null) return;
    if (saying.items.some((item) => item.quantity || item.classes.has('FRUIT') || OTHER_FIGS.has(item.text)))
      return;
    for (let k = s - 1; k >= 0; k--) {
      const before = sayings[k];
      if (!before || before.clause.sentence !== saying.clause.sentence) return;
      if (
        before.hits.length === 0 &&
        (before.bare || (before.mentions.length > 0 && before.items.length <= 4))
      )
        continue;
      const [shown] = before.hits;
      if (shown?.kind !== 'fruitlets' || before.hits.length !== 1) return;
      if (before.items.some((item) => item.classes.has('FRUITLET') || item.classes.has('HAVE'))) return;
      if (!isFact(before.mood)) return;
      // A note may name the tree more closely between: "(the short one)".
      const between = sayings.slice(k + 1, s).find((each) => each.mentions.length > 0);
      if (between) before.mentions = between.mentions;
      before.hits = [{ ...shown, kind: 'ripening' }];
      before.date ??= saying.date;
      for (const each of sayings.slice(k + 1, s + 1)) {
        silence(each);
        each.mentions = [];
      }
      return;
    }
  });
}

/** "one adriatic for tea. jammy": how what was eaten tasted. */
export function dropTastes(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    if (s === 0 || saying.mentions.length > 0 || saying.hits.length === 0) return;
    if (saying.hits.some((hit) => hit.kind !== 'ripening')) return;
    if (!sayings[s - 1]?.hits.some((hit) => hit.kind === 'picked')) return;
    const taste = saying.items.every(
      (item) =>
        TASTES.has(item.text) || item.classes.has('ADV') || item.classes.has('PRO') || item.classes.has('BE'),
    );
    if (!taste) return;
    silence(saying);
  });
}

const TASTES = wordSet(`
  jammy sweet honeyed honey nectar sticky syrupy sugary tender mellow juicy soft squishy squidgy mushy ripe perfectly
  so and as like pure sugar syrup candy fragrant anything heck hell ever sin
`);

/** "had 3 figs, all on the ground now": what was told of before has come down. */
export function dropWhatWasThere(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const before = sayings[s - 1];
    if (!before || before.clause.sentence !== saying.clause.sentence) return;
    if (saying.clause.join === 'colon') tellOfHeading(sayings, s, before);
    spoiltAndFell(before, saying);
    offAndEaten(before, saying);
    if (saying.hits.some((hit) => hit.kind !== 'dropped') || saying.mentions.length > 0) return;
    const { items, mood } = saying;
    if (!isFact(mood) || items.some((item) => item.quantity)) return;
    if (!items.some((item) => WHOLE.has(item.text)) || !items.some((item) => DOWN.has(item.text))) return;
    const shown = before.hits.find((hit) => hit.kind === 'fruitlets');
    if (!shown || before.mood.denials.length > 0) return;
    // "first main crop fig on it, its brebas all fell": others.
    if (saying.breba && !before.breba) return;
    // "5 figlets 6/20, all gone today": two days, two events.
    if (before.date && saying.date) return;
    before.hits = [{ ...shown, kind: 'dropped' }];
    before.date = saying.date ?? before.date;
    silence(saying);
  });
}

const NAMING = ['FRUIT', 'DET', 'SIZE', 'BREBA', 'PREP', 'OLDWOOD'];

/** "adriatic's fruit: 2 fell, 9 stayed", "king figs on old wood: gone, none left, dropped": only what is spoken of. */
function tellOfHeading(sayings: readonly Saying[], s: number, heading: Saying): void {
  const [shown] = heading.hits;
  if (shown?.kind !== 'fruitlets' || heading.hits.length > 1 || heading.items.some((item) => item.quantity))
    return;
  const named = heading.items.every(
    (item) => item.type === 'tree' || item.text === "'s" || isAnyOf(item, NAMING),
  );
  const told: Saying[] = [];
  for (const each of sayings.slice(s)) {
    if (each.clause.sentence !== heading.clause.sentence || each.mentions.length > 0) break;
    told.push(each);
  }
  if (!named || !told.some((each) => each.hits.some((hit) => hit.kind === 'dropped'))) return;
  const counted = told.some((each) => each.items.some((item) => item.quantity));
  if (counted || !told.some((each) => each.total)) {
    heading.hits = [];
    return;
  }
  heading.hits = [{ ...shown, kind: 'dropped' }];
  for (const each of told) {
    silence(each);
  }
}

/** "its brebas shrivelled and fell": what was wrong with them is part of their fall, what plagued the tree is not. */
function spoiltAndFell(before: Saying, saying: Saying): void {
  if (saying.mentions.length > 0 || !saying.hits.some((hit) => hit.kind === 'dropped')) return;
  const [harm] = before.hits;
  if (before.hits.length !== 1 || harm?.kind !== 'trouble') return;
  const plague = before.items.some((item) => isAnyOf(item, ['PEST', 'THIEF', 'LEAF']));
  if (plague || !(before.mentions.length === 0 || before.items.some((item) => item.classes.has('FRUIT'))))
    return;
  silence(before);
}

/** "all the brebas are off the king, picked and eaten": how they came off. */
function offAndEaten(off: Saying, eaten: Saying): void {
  const [hit] = off.hits;
  if (hit?.kind !== 'dropped' || off.hits.length > 1 || eaten.items.length > 1) return;
  if (eaten.hits.length !== 1 || eaten.hits[0]?.kind !== 'picked' || eaten.mentions.length > 0) return;
  if (off.items.some((item) => item.classes.has('DROPPED'))) return;
  off.hits = [{ ...hit, kind: 'picked' }];
  silence(eaten);
}

const WHOLE = wordSet('all both every everything lot');
const DOWN = wordSet('ground floor deck grass patio soil dirt fell fallen dropped down gone');
const OTHER_FIGS = wordSet('one some few most half first couple others rest another it tree leaf leaves');
