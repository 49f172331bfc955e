import type { Clause } from './clauses.ts';
import { type Hit, hitBehind } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

/** "alma has 4 figs, the king, two": a tree and its number that a mark set apart are one clause. */
export function joinFragments(clauses: readonly Clause[]): readonly Clause[] {
  if (clauses.length < 2) return clauses;
  const out: Clause[] = [];
  for (let c = 0; c < clauses.length; c++) {
    const clause = clauses[c];
    if (!clause) continue;
    const next = clauses[c + 1];
    const before = out.at(-1);
    // "tips off ronde (monday), king (tuesday)": the day of what stands before it.
    if (
      next?.aside &&
      next.sentence === clause.sentence &&
      next.items.length === 1 &&
      next.items[0]?.type === 'date' &&
      clause.items.at(-1)?.type === 'tree' &&
      !clause.items.some((item) => item.type === 'date')
    ) {
      out.push({ ...clause, items: [...clause.items, ...next.items] });
      c++;
    } else if (
      before &&
      next &&
      next.sentence === clause.sentence &&
      (next.join === 'colon' || next.aside) &&
      clause.items.length === 1 &&
      clause.items[0]?.type === 'date' &&
      isNumberOnly({ ...next, items: next.items.filter((item) => item.text !== 'more') })
    ) {
      // "7/1: 2 off the alma, 7/2: 3", "6/28 (2), 6/29 (3)"
      out.push({ ...clause, items: [...clause.items, ...next.items] });
      c++;
    } else if (
      next &&
      next.sentence === clause.sentence &&
      (next.join === 'comma' || next.join === 'colon') &&
      isTreeOnly(clause) &&
      isNumberOnly(next) &&
      // "4, alma, 3, king": there the number comes first.
      !(before && before.sentence === clause.sentence && isNumberOnly(before))
    ) {
      out.push({ ...clause, items: [...clause.items, ...next.items], asked: clause.asked || next.asked });
      c++;
    } else out.push(clause);
  }
  return out;
}

function isTreeOnly({ items }: Clause): boolean {
  return (
    items.at(-1)?.type === 'tree' && items.every((item) => item.type === 'tree' || item.classes.has('DET'))
  );
}

function isNumberOnly({ items }: Clause): boolean {
  const [item] = items;
  return (
    items.length === 1 &&
    (item?.type === 'quantity' || item?.classes.has('NONE') === true || item?.text === 'zero')
  );
}

/** "6 figs sunday, 2 figs monday off the alma": what the last says of its tree holds for those before. */
export function carryBack(sayings: readonly Saying[]): void {
  for (let s = sayings.length - 2; s >= 0; s--) {
    const saying = sayings[s];
    const next = sayings[s + 1];
    const hit = next?.hits[0];
    if (!saying || !next || !hit || next.clause.sentence !== saying.clause.sentence) continue;
    if (hit.kind !== 'picked' || next.mentions.length === 0 || !['comma', 'and'].includes(next.clause.join))
      continue;
    if (saying.mentions.length > 0 || saying.date === null || next.date === null) continue;
    if (saying.hits.length === 0 || saying.hits.some((each) => each.kind !== 'fruitlets')) continue;
    if (
      !saying.items.every(
        (item) => item.type !== 'word' || item.classes.has('FRUIT') || item.classes.has('PREP'),
      )
    )
      continue;
    saying.mentions = next.mentions;
    saying.hits = saying.hits.slice(0, 1).map((each) => ({ ...each, kind: hit.kind }));
  }
}

/** Kinds whose name may be left out the second time: "3 tips off the mission, 4 off the king". */
const CARRIED: ReadonlySet<Hit['kind']> = new Set([
  'tipped',
  'cuttings',
  'rooted',
  'ripening',
  'picked',
  'buds-double',
]);
/** What a tree with a bare number or "none" is read as by itself. */
const WEAK: ReadonlySet<Hit['kind']> = new Set(['fruitlets', 'picked', 'no-fruitlets']);
const BESIDE = wordSet(`
  of them in each too also as well only just about with and then em more so far
`);
const TAKEN = new Set(['off', 'from', 'outta']);

/** The kind of a list goes on where a member only gives its tree and its number. */
export function carryKinds(sayings: readonly Saying[]): void {
  let told: Saying | null = null;
  for (const saying of sayings) {
    if (told && budsGoOn(saying, told)) told = null;
    else if (told && continues(saying, told)) carry(saying, told);
    if (saying.hits.length > 0 && saying.items.some(isCount)) told = saying;
    else if (saying.hits.length > 0) told = null;
  }
}

/** "one bump per node on the little kadota, the tall has two": of buds still, not of figs. */
function budsGoOn(saying: Saying, told: Saying): boolean {
  if (!told.hits.some((hit) => hit.kind === 'buds-single' || hit.kind === 'buds-double')) return false;
  if (saying.mentions.length === 0 || saying.hits.some((hit) => !OF_BUDS.has(hit.kind))) return false;
  if (saying.clause.sentence !== told.clause.sentence || !isFact(told.mood) || !isFact(saying.mood))
    return false;
  const plain = saying.items.every(
    (item) =>
      item.type !== 'word' ||
      isAnyOf(item, ['DET', 'PREP', 'HAVE', 'ADV']) ||
      BESIDE.has(item.text) ||
      PAIRED.has(item.text),
  );
  if (!plain) return false;
  const number = saying.items.find(isCount)?.quantity?.value;
  const paired = number === 2 || saying.items.some((item) => PAIRED.has(item.text));
  if (!paired && number !== 1) return false;
  saying.hits = [hitBehind(paired ? 'buds-double' : 'buds-single', saying.items)];
  return true;
}

const OF_BUDS: ReadonlySet<Hit['kind']> = new Set(['fruitlets', 'buds-single', 'buds-double']);
const PAIRED = wordSet('pairs twins doubles couples twos pair couple');

function isCount(item: Item): boolean {
  return item.quantity !== undefined;
}

function continues(saying: Saying, told: Saying): boolean {
  const { clause, items } = saying;
  if (clause.sentence - told.clause.sentence > 1 || clause.join === 'sub' || clause.join === 'or')
    return false;
  if (saying.mentions.length === 0 || saying.hits.some((hit) => !WEAK.has(hit.kind))) return false;
  if (!items.some((item) => isCount(item) || item.classes.has('NONE'))) return false;
  return items.every(
    (item) =>
      item.type !== 'word' ||
      item.classes.has('DET') ||
      item.classes.has('PREP') ||
      item.classes.has('NONE') ||
      BESIDE.has(item.text),
  );
}

/** "alma nil, all fig counts": a word for figs at the end tells nothing new. */
export function dropEchoes(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const before = sayings[s - 1];
    if (!before || before.clause.sentence !== saying.clause.sentence) return;
    const none = saying.hits.some((hit) => hit.kind === 'no-fruitlets');
    // "zip, zilch on the alma"
    if (none && before.items.length === 1 && before.items[0]?.classes.has('NONE')) {
      silence(before);
    }
    // "no brebas on the celeste, none on the ronde": of brebas still.
    if (
      none &&
      before.breba &&
      (before.mood.denials.length > 0 || saying.items.some((item) => item.text === 'none')) &&
      !saying.items.some((item) => item.classes.has('FRUIT'))
    )
      saying.breba = true;
    const nil =
      before.hits.length === 0 &&
      before.mentions.length > 0 &&
      before.items.some((item) => item.classes.has('NONE'));
    if (saying.mentions.length > 0 || !(nil || before.hits.some((hit) => hit.kind === 'no-fruitlets')))
      return;
    const echo =
      saying.hits.length > 0 &&
      saying.hits.every((hit) => hit.kind === 'fruitlets') &&
      saying.items.every(
        (item) =>
          item.type === 'word' &&
          (item.classes.has('FRUIT') || item.classes.has('DET') || ECHO.has(item.text)),
      );
    if (!echo) return;
    silence(saying);
  });
}

const ECHO = new Set(['all', 'count', 'counts', 'counted', 'that', 'is', 'i', 'mean', 'wise', 'for', 'as']);

function carry(saying: Saying, told: Saying): void {
  const { mood } = told;
  if (mood.unrealFrom !== null || mood.denials.length > 0 || mood.past || mood.hearsay || mood.others)
    saying.mood = { ...mood, unrealFrom: mood.unrealFrom === null ? null : 0 };
  const hit = told.hits.find((each) => CARRIED.has(each.kind));
  if (!hit || told.hits.some((each) => each.kind === 'fruitlets')) return;
  const unit = told.items.find(isCount)?.quantity?.unit ?? null;
  const own = saying.items.find(isCount)?.quantity;
  // "2 lb off the alma, 1.5 off the king"
  if (unit !== null && own && own.unit === null && !Number.isInteger(own.value))
    saying.count = { ...own, unit };
  const taken = saying.items.some((item) => TAKEN.has(item.text));
  if (hit.kind === 'ripening' && taken) return;
  // "picked 3 off the alma, 5 on the ronde" hang there.
  if (hit.kind === 'picked' && (taken || saying.items.some((item) => item.text === 'on'))) return;
  const number = saying.items.find(isCount)?.quantity ?? null;
  if (number === null) {
    // "…, none off the king": nothing was done; only of figs it would say that there are none.
    if (!saying.items.some((item) => item.text === 'on'))
      saying.hits = saying.hits.filter((each) => each.kind === 'remark');
    return;
  }
  saying.hits = [hitBehind(hit.kind, saying.items)];
  saying.count = number;
  saying.date ??= told.date;
}
