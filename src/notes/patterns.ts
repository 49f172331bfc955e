import type { Item } from './items.ts';

/** One element of a pattern; see `lexicon/predicates/` for the notation. */
interface Element {
  readonly words: ReadonlySet<string>;
  readonly classes: readonly string[];
  readonly optional: boolean;
  /** Most items of anything that it may stand for; 0 for an ordinary element. */
  readonly gap: number;
  readonly edge: '^' | '$' | null;
  /** Any one item. */
  readonly any: boolean;
}

interface Pattern<K extends string> {
  readonly kind: K;
  readonly elements: readonly Element[];
  /** Place in the table, for ties. */
  readonly rank: number;
  /** Fewest items it takes. */
  readonly shortest: number;
}

/** A pattern found in a clause. */
export interface Match<K extends string> {
  readonly kind: K;
  /** Items it spells out, ascending; gaps left out. */
  readonly at: readonly number[];
  readonly rank: number;
}

function compile<K extends string>(source: string, kind: K, rank: number): Pattern<K> {
  const elements = source
    .split(' ')
    .filter((part) => part !== '')
    .map(compileElement);
  const shortest = elements.filter(
    (element) => !element.optional && element.gap === 0 && element.edge === null,
  ).length;
  return { kind, rank, elements, shortest };
}

const NO_ELEMENT: Element = {
  words: new Set(),
  classes: [],
  optional: false,
  gap: 0,
  edge: null,
  any: false,
};

function compileElement(part: string): Element {
  const plain = NO_ELEMENT;
  if (part === '_') return { ...plain, any: true };
  if (part === '~') return { ...plain, gap: 3 };
  if (part === '~~') return { ...plain, gap: 7 };
  if (part === '^' || part === '$') return { ...plain, edge: part };
  const optional = part.endsWith('?');
  const options = (optional ? part.slice(0, -1) : part)
    .split('|')
    .filter((option) => option !== '' && option !== '$');
  return {
    ...plain,
    optional,
    words: new Set(options.filter((option) => !isClass(option))),
    classes: options.filter(isClass),
  };
}

function isClass(option: string): boolean {
  return /^[A-Z][A-Z0-9]*$/.test(option);
}

/** Patterns by a word or a class that they cannot do without. */
interface Shelf<K extends string> {
  readonly byWord: Map<string, Pattern<K>[]>;
  readonly byClass: Map<string, Pattern<K>[]>;
}

/** The patterns that one word or class may begin, filed under what must follow. */
interface Start<K extends string> {
  /** What must stand right behind. */
  readonly next: Shelf<K>;
  /** What must stand somewhere behind. */
  readonly later: Shelf<K>;
  readonly others: Pattern<K>[];
}

/** The patterns of a table, filed under what they may begin with. */
export interface PatternIndex<K extends string> {
  readonly byWord: ReadonlyMap<string, Start<K>>;
  readonly byClass: ReadonlyMap<string, Start<K>>;
  /** `byClass` for each set of classes met: words share few sets, and most of their classes begin nothing. */
  readonly byClasses: WeakMap<ReadonlySet<string>, readonly Start<K>[]>;
}

export function compileTable<K extends string>(
  table: readonly (readonly [kind: K, sources: readonly string[]])[],
): PatternIndex<K> {
  const byWord = new Map<string, Start<K>>();
  const byClass = new Map<string, Start<K>>();
  let rank = 0;
  for (const [kind, sources] of table) {
    for (const source of sources) {
      const pattern = compile(source, kind, rank++);
      for (const e of leading(pattern.elements)) {
        const { words, classes } = pattern.elements[e] ?? NO_ELEMENT;
        for (const word of words) file(startOf(byWord, word), pattern, e);
        for (const name of classes) file(startOf(byClass, name), pattern, e);
      }
    }
  }
  return { byWord, byClass, byClasses: new WeakMap() };
}

function startOf<K extends string>(map: Map<string, Start<K>>, key: string): Start<K> {
  const known = map.get(key);
  if (known) return known;
  const start: Start<K> = {
    next: { byWord: new Map(), byClass: new Map() },
    later: { byWord: new Map(), byClass: new Map() },
    others: [],
  };
  map.set(key, start);
  return start;
}

/** Files a pattern whose element `e` has the first item, under the next element that must have one. */
function file<K extends string>(start: Start<K>, pattern: Pattern<K>, e: number): void {
  const { elements } = pattern;
  const f = elements.findIndex((element, k) => k > e && isFirm(element));
  const needed = elements[f];
  // After a gap the first item may be passed over, and then what follows it tells nothing.
  if (!needed || elements.slice(0, e).some((element) => element.gap > 0)) {
    if (start.others.at(-1) !== pattern) start.others.push(pattern);
    return;
  }
  const { byWord, byClass } = f === e + 1 ? start.next : start.later;
  for (const word of needed.words) push(byWord, word, pattern);
  for (const name of needed.classes) push(byClass, name, pattern);
}

/** It stands for exactly one item of its own words and classes. */
function isFirm({ optional, gap, edge, any }: Element): boolean {
  return !optional && gap === 0 && edge === null && !any;
}

/** Which elements a pattern may begin with: its optional ones up to and with the first that is not. */
function leading(elements: readonly Element[]): number[] {
  const found: number[] = [];
  for (let e = 0; e < elements.length; e++) {
    const element = elements[e];
    if (!element || element.edge !== null || element.gap > 0) continue;
    found.push(e);
    if (!element.optional) break;
  }
  return found;
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const at = map.get(key);
  if (!at) map.set(key, [value]);
  else if (at.at(-1) !== value) at.push(value);
}

/** Every pattern that begins at each item of a clause; the longest first, then in the table's order. */
export function findMatches<K extends string>(items: readonly Item[], index: PatternIndex<K>): Match<K>[] {
  const matches: Match<K>[] = [];
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    const start = index.byWord.get(item.text);
    if (start) tryStart(start, items, i, matches);
    for (const each of startsOfClasses(item.classes, index)) tryStart(each, items, i, matches);
  }
  if (matches.length < 2) return matches;
  return matches.sort(
    (a, b) => b.at.length - a.at.length || a.rank - b.rank || (a.at[0] ?? 0) - (b.at[0] ?? 0),
  );
}

function startsOfClasses<K extends string>(
  classes: ReadonlySet<string>,
  index: PatternIndex<K>,
): readonly Start<K>[] {
  const known = index.byClasses.get(classes);
  if (known) return known;
  const starts = [...classes].flatMap((name) => index.byClass.get(name) ?? []);
  index.byClasses.set(classes, starts);
  return starts;
}

function tryStart<K extends string>(
  start: Start<K>,
  items: readonly Item[],
  i: number,
  into: Match<K>[],
): void {
  tryAll(start.others, items, i, into);
  tryShelf(start.next, items[i + 1], items, i, into);
  if (start.later.byWord.size === 0 && start.later.byClass.size === 0) return;
  for (let j = i + 1; j < items.length; j++) tryShelf(start.later, items[j], items, i, into);
}

function tryShelf<K extends string>(
  shelf: Shelf<K>,
  needed: Item | undefined,
  items: readonly Item[],
  i: number,
  into: Match<K>[],
): void {
  if (!needed) return;
  tryAll(shelf.byWord.get(needed.text), items, i, into);
  if (shelf.byClass.size === 0) return;
  for (const name of needed.classes) tryAll(shelf.byClass.get(name), items, i, into);
}

function tryAll<K extends string>(
  patterns: readonly Pattern<K>[] | undefined,
  items: readonly Item[],
  i: number,
  into: Match<K>[],
): void {
  if (!patterns) return;
  const left = items.length - i;
  // A match that fails leaves nothing behind in it.
  let at: number[] = [];
  for (const pattern of patterns) {
    if (pattern.shortest > left || !matchFrom(pattern.elements, 0, items, i, at)) continue;
    into.push({ kind: pattern.kind, at, rank: pattern.rank });
    at = [];
  }
}

/** Depth is bounded by the pattern's length, and gaps by 7 items, so the work is too. */
function matchFrom(
  elements: readonly Element[],
  e: number,
  items: readonly Item[],
  i: number,
  at: number[],
): boolean {
  const element = elements[e];
  if (!element) return true;
  if (element.edge === '^') return i === 0 && matchFrom(elements, e + 1, items, i, at);
  if (element.edge === '$') return i >= items.length && matchFrom(elements, e + 1, items, i, at);
  if (element.gap > 0) {
    for (let skip = 0; skip <= element.gap && i + skip <= items.length; skip++) {
      if (matchFrom(elements, e + 1, items, i + skip, at)) return true;
    }
    return false;
  }
  const item = items[i];
  if (item && fits(element, item)) {
    at.push(i);
    if (matchFrom(elements, e + 1, items, i + 1, at)) return true;
    at.pop();
  }
  return element.optional && matchFrom(elements, e + 1, items, i, at);
}

function fits(element: Element, item: Item): boolean {
  if (element.any) return true;
  if (element.words.has(item.text)) return true;
  for (const name of element.classes) if (item.classes.has(name)) return true;
  return false;
}
