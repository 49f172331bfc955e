import { hitBehind } from './hits.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import type { Saying } from './sayings.ts';

const BESIDE_A_DAY = wordSet(`
  and as well again on then also too once more both of the twice finally lastly in at from
`);
/** Words that say a day again, and better. */
const EXACTLY = wordSet(`
  exact precise exactly precisely specifically actually
`);
/** What may be done again on another day; what is seen once is only seen. */
const REPEATED: ReadonlySet<string> = new Set(['care', 'tipped', 'picked', 'pruned', 'cuttings', 'frost']);

/** "watered it mon, tues, wed": the same deed on every day; "easter weekend, easter sunday to be exact": the same day. */
export function repeatDays(sayings: readonly Saying[]): void {
  let told: Saying | null = null;
  sayings.forEach((saying, s) => {
    if (doneAlso(saying, sayings[s - 1])) return;
    if (told && told.clause.sentence !== saying.clause.sentence) told = null;
    if (told && doneThisYear(saying, told)) return;
    if (told && isDayOnly(saying) && !leads(sayings, s)) {
      repeat(saying, told);
      return;
    }
    if (saying.hits.length > 0) told = saying;
    else if (!isDayOnly(saying)) told = null;
  });
}

/** "watered the ronde. alma was yesterday": the same deed, on another tree and another day. */
function doneAlso(saying: Saying, before: Saying | undefined): boolean {
  const { items, date, hits, mentions, clause } = saying;
  if (!before || !date?.date || hits.length > 0 || mentions.length !== 1 || clause.asked) return false;
  if (clause.sentence - before.clause.sentence > 1 || before.mentions.length === 0) return false;
  if (!before.hits.some((hit) => REPEATED.has(hit.kind)) || !isFact(before.mood) || before.mood.asks)
    return false;
  if (!items.some((item) => item.text === 'was') || !items.every((item) => isOfDay(item))) return false;
  if (!isFact(saying.mood) || date.date.problem) return false;
  saying.hits = before.hits.filter((hit) => REPEATED.has(hit.kind)).map((hit) => hitBehind(hit.kind, items));
  return true;
}

function isOfDay(item: Item): boolean {
  return (
    item.type === 'tree' ||
    item.type === 'date' ||
    item.classes.has('DET') ||
    ['was', 'on', 'back', 'already'].includes(item.text)
  );
}

const THIS_YEAR = wordSet('this year season time summer on it was');

/** "pruned in march 2025, this year march 2": done again; what decides something is left to the guard. */
function doneThisYear(saying: Saying, told: Saying): boolean {
  const { items, date, hits, mentions } = saying;
  if (date?.date === undefined || hits.length > 0 || mentions.length > 0) return false;
  const before = told.date?.date;
  const earlier = before !== undefined && before.on.slice(0, 4) < date.date.on.slice(0, 4);
  if (!told.mood.past && !earlier) return false;
  const named =
    items[0]?.text === 'this' ||
    (items.length === 1 && /^this (?:year|season|summer|time)/i.test(date.typed));
  if (!named || !items.every((item) => item === date || THIS_YEAR.has(item.text))) return false;
  if (!isFact(told.mood) || told.mood.hearsay || told.mood.others) return false;
  saying.hits = told.hits.filter((hit) => REPEATED.has(hit.kind)).map((hit) => hitBehind(hit.kind, items));
  saying.mentions = told.mentions;
  return true;
}

function repeat(saying: Saying, told: Saying): void {
  const day = saying.date?.date;
  const before = told.date?.date;
  if (!day || day.problem) return;
  const within =
    before !== undefined && before.from <= day.on && day.on <= before.to && before.from !== before.to;
  if (within || saying.items.some((item) => EXACTLY.has(item.text))) {
    told.date = saying.date;
    saying.date = null;
    saying.dropped = true;
    return;
  }
  if (!before || before.on === day.on || !told.hits.every((hit) => REPEATED.has(hit.kind))) return;
  saying.hits = told.hits.map((hit) => hitBehind(hit.kind, saying.items));
  saying.mentions = told.mentions;
  saying.mood = told.mood;
}

function isDayOnly({ items, date, hits, mentions }: Saying): boolean {
  if (date === null || hits.length > 0 || mentions.length > 0) return false;
  return items.every((item) => item === date || isBeside(item));
}

function isBeside(item: Item): boolean {
  return (
    item.type === 'word' &&
    (BESIDE_A_DAY.has(item.text) || EXACTLY.has(item.text) || ['to', 'be'].includes(item.text))
  );
}

/** "…, monday pinched the ronde": the day belongs to what follows. */
function leads(sayings: readonly Saying[], s: number): boolean {
  const here = sayings[s];
  for (let k = s + 1; k < sayings.length; k++) {
    const next = sayings[k];
    if (!next || !here || next.clause.sentence !== here.clause.sentence) return false;
    if (isDayOnly(next)) continue;
    return next.date === null && here.clause.join !== 'and';
  }
  return false;
}
