import { onlyAnnounces } from './announcements.ts';
import type { Clause } from './clauses.ts';
import { itemTest } from './filed-rules.ts';
import { findHits, type Hit } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { type Mood, readMood } from './mood.ts';
import type { Quantity } from './quantities.ts';
import type { Mention } from './trees/mentions.ts';

/** A clause with all that was understood of it. Trees and hits change hands while the message is put together. */
export interface Saying {
  readonly clause: Clause;
  readonly items: readonly Item[];
  mood: Mood;
  hits: Hit[];
  mentions: Mention[];
  /** Index of the first mention, or −1. */
  readonly mentionAt: number;
  date: Item | null;
  vague: Item | null;
  /** Nothing but trees, articles, numbers and dates. */
  readonly bare: boolean;
  /** Nothing but words that announce something. */
  readonly empty: boolean;
  /** "it", "they" or a possessive stands for a tree named elsewhere. */
  readonly pronoun: boolean;
  /** Whole message part: "every last one", "the lot". */
  readonly total: boolean;
  breba: boolean;
  readonly main: boolean;
  dropped: boolean;
  /** A number said later for what this clause tells. */
  count: Quantity | null;
}

const isPronoun = itemTest('it its they them their she he her him itself both that this');
const isTotal = itemTest('every all everything lot whole entire everyone both completely totally');
const isLastOrNone = itemTest('last none');
const mayTellMain = itemTest('main new maincrop maincrops mains');
const isBreba = itemTest('BREBA');
const isBare = itemTest(`
  DET ADV NOW TREEWORD GENERIC PREP
  ditto likewise poor dear old each too as well also same both all is
`);
const COMPARING = new Set(['than', 'like', 'unlike']);
const PLACING = new Set(['near', 'beside', 'behind', 'between', 'by']);

/** What a saying tells is told elsewhere, or is no news: it is not even a remark. */
export function silence(saying: Saying): void {
  saying.hits = [];
  saying.dropped = true;
}

export function readSaying(clause: Clause, today: string): Saying {
  const { items } = clause;
  const mentions: Mention[] = [];
  let mentionAt = -1;
  items.forEach((item, i) => {
    if (!item.mention) return;
    const before = items[i - 1]?.text ?? '';
    const lead = before === 'the' || before === 'my' ? (items[i - 2]?.text ?? '') : before;
    if (
      COMPARING.has(lead) &&
      items.filter((each) => each.type === 'tree').length + (clause.asked ? 0 : 1) > 1
    )
      return;
    // "the unknown is a celeste": what it is called.
    if (mentions.length > 0 && isNamedAs(items, i)) return;
    if (
      mentions.length > 0 &&
      (PLACING.has(lead) || (lead === 'to' && items.slice(0, i).some((each) => each.text === 'next')))
    )
      return;
    mentions.push(item.mention);
    if (mentionAt < 0) mentionAt = i;
  });
  const hits = findHits(clause);
  const words = items.filter((item) => item.type === 'word' || item.type === 'number');
  return {
    clause,
    items,
    mood: readMood(clause, today),
    hits,
    mentions,
    mentionAt,
    date: items.find((item) => item.type === 'date') ?? null,
    vague: items.find((item) => item.type === 'vague') ?? null,
    bare: words.every(isBare),
    empty: onlyAnnounces(items),
    // "fed all of them" may mean the garden.
    pronoun: words.some(
      (item, i) => isPronoun(item) && !(item.text === 'them' && words[i - 1]?.text === 'of'),
    ),
    total: words.some(isTotal) || words.some((item, i) => isLastOrNone(item) && closesAll(words, i)),
    breba: items.some(isBreba),
    main: items.some((item, i) => mayTellMain(item) && tellsMain(items, i)),
    dropped: false,
    count: null,
  };
}

/** "every last one", "none left", "bar none" */
function closesAll(words: readonly Item[], i: number): boolean {
  const before = words[i - 1]?.text;
  if (words[i]?.text === 'last') return before === 'every';
  return words[i + 1]?.text === 'left' || before === 'bar';
}

/** "the main crop", "on the new wood", "4 mains" */
function tellsMain(items: readonly Item[], i: number): boolean {
  const next = items[i + 1]?.text ?? '';
  switch (items[i]?.text) {
    case 'main':
      return next === 'crop' || next === 'figs';
    case 'new':
      return next === 'wood' || next === 'growth' || (items[i - 1]?.text === 'on' && i === items.length - 1);
    case 'mains':
      return items[i - 1]?.quantity !== undefined;
    default:
      return true;
  }
}

const NAMING = ['BE', 'HEDGE', 'WILL'];

/** "… is a celeste", "… might be another mission", "… looks like an alma" */
function isNamedAs(items: readonly Item[], at: number): boolean {
  if (!['a', 'an', 'another'].includes(items[at - 1]?.text ?? '')) return false;
  const verb = items[at - 2];
  return (
    verb !== undefined && (isAnyOf(verb, NAMING) || ['like', 'as', 'actually', 'really'].includes(verb.text))
  );
}

function isThatIs({ items, hits }: Saying): boolean {
  return hits.length > 0 && items.length <= 4 && items.at(-2)?.text === 'that' && items.at(-1)?.text === 'is';
}

function onlyLeaves({ items, mentions }: Saying): boolean {
  return (
    mentions.length === 0 &&
    items.length <= 6 &&
    items.some((item) => item.classes.has('LEAF')) &&
    !items.some((item) => item.quantity || item.classes.has('FRUIT'))
  );
}

const STILL = new Set(['still', 'left', 'remain', 'remaining', 'hanging']);

/** "well, the frost did", "the deer did anyway": what was told before was no work of the grower's. */
function whoDid({ items, mentions }: Saying): 'frost' | 'trouble' | null {
  const words = items.filter(
    (item) =>
      !['well', 'ok', 'or', 'rather', 'actually', 'anyway', 'that', 'is', 'it'].includes(item.text) &&
      !item.classes.has('DET'),
  );
  const [who, did] = words;
  if (mentions.length > 0 || words.length !== 2 || did?.text !== 'did' || !who) return null;
  if (who.classes.has('FROST')) return 'frost';
  return who.classes.has('THIEF') || (who.classes.has('FORCE') && !who.classes.has('HOUSE'))
    ? 'trouble'
    : null;
}

/** "no wait, …": what follows takes the place of its like in the clause before. */
export function mendRepairs(sayings: readonly Saying[]): Saying[] {
  const out: Saying[] = [];
  let again = false;
  for (const saying of sayings) {
    const before = out.at(-1);
    const told = out.findLast((each) => each.hits.length > 0);
    const culprit = told ? whoDid(saying) : null;
    // "nipped the celeste. well, the frost did"
    if (told && culprit) {
      told.hits = told.hits.map((hit) => ({ ...hit, kind: culprit }));
      silence(saying);
      out.push(saying);
      continue;
    }
    // "pinched.. eaten that is.. 2 off the ronde": the word before was the wrong one.
    if (before && isThatIs(saying) && before.hits.length > 0 && before.items.length <= 2) out.pop();
    // "no hang on i miscounted, 6": the words of repair went before.
    const repairs = saying.clause.join === 'repair' || again;
    again = false;
    if (!repairs || !before) {
      out.push(saying);
      continue;
    }
    // "dropped its figs. strike that, its just leaves": no fruit was spoken of after all.
    if (onlyLeaves(saying) && before.hits.some((hit) => hit.kind === 'dropped')) {
      before.hits = [];
      continue;
    }
    if (saying.hits.length > 0) {
      if (saying.mentions.length === 0) saying.mentions = before.mentions;
      if (before.hits.length > 0 || before.mentions.length === 0 || saying.mentions.length > 0) out.pop();
      saying.date ??= before.date;
      // "took 3 air layers, no, cuttings": the number stays.
      if (saying.items.length === 1)
        saying.count ??= before.items.find((item) => item.quantity)?.quantity ?? null;
      out.push(saying);
      continue;
    }
    if (saying.mentions.length > 0) before.mentions = saying.mentions;
    if (saying.date) {
      if (before.hits.length === 0 && before.mentions.length === 0) {
        out.pop();
        out.push(saying);
        continue;
      }
      before.date = saying.date;
      before.vague = null;
    }
    const number = saying.items.find((item) => item.quantity)?.quantity;
    // "got 5 off the celeste… i mean i wish"
    if (!number && saying.mentions.length === 0 && !saying.date && saying.mood.unrealFrom !== null) {
      before.hits = [];
      continue;
    }
    // "celeste pinched. no wait, i didnt": what was told is taken back.
    if (!number && saying.mentions.length === 0 && !saying.date && saying.mood.denials.length > 0) {
      before.hits = [];
      continue;
    }
    if (!number && saying.mentions.length === 0 && !saying.date) {
      again = true;
      continue;
    }
    // "dropped all of its.. no actually 2 are still hanging on": not all, then.
    if (number && saying.items.some((item) => STILL.has(item.text))) {
      before.hits = before.hits.filter((hit) => hit.kind !== 'dropped');
      continue;
    }
    if (number && before.hits.length > 0) before.count = number;
    else if (saying.mentions.length === 0 && !saying.date) out.push(saying);
  }
  return out;
}
