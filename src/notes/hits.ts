import type { Clause } from './clauses.ts';
import type { Item } from './items.ts';
import { PREDICATES, type PredicateKind } from './lexicon/predicates/index.ts';
import { compileTable, findMatches, type Match } from './patterns.ts';
import { makesSense } from './sense.ts';
import { isMisread } from './sense-misread.ts';
import { sift } from './sift-hits.ts';

const PREDICATE_INDEX = compileTable(PREDICATES);

/** Something said in a clause, with the items that say it. */
export interface Hit {
  readonly kind: Exclude<PredicateKind, 'none'>;
  readonly at: readonly number[];
  readonly first: number;
  readonly last: number;
  /** The first item that says it, trees, numbers and small words left aside: what a denial or a wish has to stand before. */
  readonly core: number;
}

/** What is told by the company of other clauses: no word of the clause itself says it. */
export function hitBehind(kind: Hit['kind'], { length }: readonly Item[]): Hit {
  return { kind, at: [], first: length, last: length, core: length };
}

/** What one word of a clause says. */
export function hitOn(kind: Hit['kind'], i: number): Hit {
  return { kind, at: [i], first: i, last: i, core: i };
}

/** What a clause says, homonyms and asides taken out. */
export function findHits(clause: Clause): Hit[] {
  return sift(rawHits(clause), clause.items);
}

/** The clauses searched last, and what they said, in turn: those of one message are asked for more than once. */
const searched: Clause[] = [];
const found: (readonly Hit[])[] = [];
const MOST_KEPT = 16;
let turn = 0;

export function rawHits(clause: Clause): readonly Hit[] {
  const before = found[searched.indexOf(clause)];
  if (before) return before;
  const hits = searchHits(clause);
  searched[turn] = clause;
  found[turn] = hits;
  turn = (turn + 1) % MOST_KEPT;
  return hits;
}

function searchHits(clause: Clause): Hit[] {
  const { items } = clause;
  const used: boolean[] = [];
  const chosen: Match<PredicateKind>[] = [];
  for (const match of findMatches(items, PREDICATE_INDEX)) {
    if (match.at.some((i) => used[i]) || isMisread(match.kind, items, match.at)) continue;
    for (const i of match.at) used[i] = true;
    chosen.push(match);
  }
  const hits: Hit[] = [];
  for (const { kind, at } of chosen) {
    const first = at[0] ?? 0;
    const last = at.at(-1) ?? 0;
    if (kind === 'none' || !makesSense(kind, clause, first, last, at)) continue;
    // "the celeste had its first figlet" bears, "had my first fig" eats.
    const bears =
      kind === 'picked' &&
      ['had', 'got', 'has'].includes(items[first]?.text ?? '') &&
      items[first - 1]?.type === 'tree' &&
      !at.some((i) => ['off', 'from'].includes(items[i]?.text ?? ''));
    // "a handful of figs set on the ronde" hang there, "a handful of figs" is a harvest.
    const shows = kind === 'picked' && isAmountThere(items, at, last);
    hits.push({ kind: bears || shows ? 'fruitlets' : kind, at, first, last, core: coreOf(items, at) });
  }
  return hits.sort((a, b) => a.first - b.first);
}

const THERE = new Set([
  'on',
  'set',
  'setting',
  'forming',
  'showing',
  'visible',
  'starting',
  'growing',
  'hanging',
]);

function isThere(items: readonly Item[], i: number): boolean {
  const words = items.slice(i, i + 2);
  if (words.some((item) => item.text !== 'on' && THERE.has(item.text))) return true;
  return (
    items[i]?.text === 'on' &&
    items.slice(i + 1, i + 3).some((item) => item.type === 'tree' || item.text === 'it')
  );
}

function isAmountThere(items: readonly Item[], at: readonly number[], last: number): boolean {
  return (
    at.every((i) => {
      const item = items[i];
      return (
        item?.classes.has('CONTAINER') ||
        item?.classes.has('FRUIT') ||
        item?.classes.has('DET') ||
        item?.text === 'of'
      );
    }) && isThere(items, last + 1)
  );
}

function coreOf(items: readonly Item[], at: readonly number[]): number {
  const telling = at.find((i) => {
    const item = items[i];
    return (
      item !== undefined &&
      item.type === 'word' &&
      !item.classes.has('DET') &&
      !item.classes.has('PREP') &&
      !item.classes.has('BE')
    );
  });
  return telling ?? at[0] ?? 0;
}
