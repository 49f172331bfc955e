import type { Item } from './item.ts';

/** One element of a pattern; see `lexicon/predicates/` for the notation. */
interface Element {
  /** Number of its words and classes among those of the table. */
  readonly slot: number;
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
  /** How far before the item it is filed under it may begin: at least and at most, in items. */
  readonly near: number;
  readonly far: number;
}

/** A pattern found in a clause. */
export interface Match<K extends string> {
  readonly kind: K;
  /** Items it spells out, ascending; gaps left out. */
  readonly at: readonly number[];
  readonly rank: number;
}

/** What one word is to a table. */
interface Role<K extends string> {
  /** A bit for each slot the word fits. */
  readonly slots: Uint32Array;
  /** The patterns filed under it. */
  readonly patterns: readonly Pattern<K>[];
}

/**
 * The patterns of a table. Each is filed under one element that it cannot do without, the one whose words the fewest
 * patterns ask for; only where an item fits that element the pattern is tried. Whether an item fits an element is one
 * bit, looked up once for each word met.
 */
export interface PatternIndex<K extends string> {
  readonly slots: number;
  /** Slots by a word or the name of a class. */
  readonly slotsOf: ReadonlyMap<string, readonly number[]>;
  readonly filed: ReadonlyMap<number, readonly Pattern<K>[]>;
  /** Roles of the words met. */
  readonly roles: WeakMap<ReadonlySet<string>, Map<string, Role<K>>>;
}

const NO_SLOT = -1;
const PLAIN: Element = { slot: NO_SLOT, optional: false, gap: 0, edge: null, any: false };

export function compileTable<K extends string>(
  table: readonly (readonly [kind: K, sources: readonly string[]])[],
): PatternIndex<K> {
  const slots = new Map<string, number>();
  const sources = table.flatMap(([kind, lines]) => lines.map((source) => ({ kind, source })));
  const parsed = sources.map(({ kind, source }) => ({ kind, source, elements: parse(source, slots) }));
  const demand = countDemand([...slots.keys()], parsed);
  const filed = new Map<number, Pattern<K>[]>();
  parsed.forEach(({ kind, source, elements }, rank) => {
    const key = rarest(elements, demand);
    if (!key) throw new Error(`a pattern needs a word it cannot do without: ${source}`);
    push(filed, key.slot, { kind, elements, rank, ...distanceTo(elements, key) });
  });
  const slotsOf = new Map<string, number[]>();
  for (const [options, slot] of slots) for (const option of options.split('|')) push(slotsOf, option, slot);
  return { slots: slots.size, slotsOf, filed, roles: new WeakMap() };
}

function parse(source: string, slots: Map<string, number>): Element[] {
  return source
    .split(' ')
    .filter((part) => part !== '')
    .map((part) => parseElement(part, slots));
}

function parseElement(part: string, slots: Map<string, number>): Element {
  if (part === '_') return { ...PLAIN, any: true };
  if (part === '~') return { ...PLAIN, gap: 3 };
  if (part === '~~') return { ...PLAIN, gap: 7 };
  if (part === '^' || part === '$') return { ...PLAIN, edge: part };
  const optional = part.endsWith('?');
  const options = (optional ? part.slice(0, -1) : part)
    .split('|')
    .filter((option) => option !== '' && option !== '$')
    .join('|');
  const slot = slots.get(options) ?? slots.size;
  slots.set(options, slot);
  return { ...PLAIN, slot, optional };
}

/** For each slot, how many elements ask for the most asked of its words and classes. */
function countDemand(
  slots: readonly string[],
  patterns: readonly { readonly elements: readonly Element[] }[],
): number[] {
  const asked = new Map<string, number>();
  for (const { elements } of patterns) {
    for (const { slot } of elements)
      for (const option of slots[slot]?.split('|') ?? []) asked.set(option, (asked.get(option) ?? 0) + 1);
  }
  return slots.map((options) => Math.max(...options.split('|').map((option) => asked.get(option) ?? 0)));
}

/** The least asked for of the elements that stand for exactly one item of their own words and classes. */
function rarest(elements: readonly Element[], demand: readonly number[]): Element | undefined {
  const askedFor = ({ slot }: Element): number => demand[slot] ?? 0;
  return elements
    .filter(({ slot, optional }) => slot !== NO_SLOT && !optional)
    .sort((a, b) => askedFor(a) - askedFor(b))[0];
}

function distanceTo(elements: readonly Element[], key: Element): { near: number; far: number } {
  let near = 0;
  let far = 0;
  for (const { gap, edge, optional } of elements.slice(0, elements.indexOf(key))) {
    if (edge !== null) continue;
    if (gap === 0 && !optional) near++;
    far += gap === 0 ? 1 : gap;
  }
  return { near, far };
}

function push<A, T>(map: Map<A, T[]>, key: A, value: T): void {
  const at = map.get(key);
  if (at) at.push(value);
  else map.set(key, [value]);
}

/** Words are bounded, since members' are not. */
const MOST_ROLES = 2000;

function roleOf<K extends string>({ text, classes }: Item, index: PatternIndex<K>): Role<K> {
  let known = index.roles.get(classes);
  if (!known) {
    known = new Map();
    index.roles.set(classes, known);
  }
  const before = known.get(text);
  if (before) return before;
  const role = findRole(text, classes, index);
  if (known.size >= MOST_ROLES) known.clear();
  known.set(text, role);
  return role;
}

function findRole<K extends string>(
  text: string,
  classes: ReadonlySet<string>,
  { slots, slotsOf, filed }: PatternIndex<K>,
): Role<K> {
  const fitting = new Set([text, ...classes].flatMap((option) => slotsOf.get(option) ?? []));
  const bits = new Uint32Array(Math.ceil(slots / 32));
  for (const slot of fitting) bits[slot >>> 5] = (bits[slot >>> 5] ?? 0) | (1 << (slot & 31));
  return { slots: bits, patterns: [...fitting].flatMap((slot) => filed.get(slot) ?? []) };
}

/** Every pattern that stands in a clause; the longest first, then in the table's order. */
export function findMatches<K extends string>(items: readonly Item[], index: PatternIndex<K>): Match<K>[] {
  const roles = items.map((item) => roleOf(item, index));
  const matches: Match<K>[] = [];
  for (let j = 0; j < roles.length; j++) {
    for (const pattern of roles[j]?.patterns ?? []) {
      for (let i = Math.max(0, j - pattern.far); i <= j - pattern.near; i++)
        tryAt(pattern, roles, i, matches);
    }
  }
  if (matches.length < 2) return matches;
  return matches.sort(
    (a, b) => b.at.length - a.at.length || a.rank - b.rank || (a.at[0] ?? 0) - (b.at[0] ?? 0),
  );
}

/** What a match that fails has left behind is nothing, so that the next may use it. */
let spare: number[] = [];

function tryAt<K extends string>(
  { kind, elements, rank }: Pattern<K>,
  roles: readonly Role<K>[],
  i: number,
  into: Match<K>[],
): void {
  if (!matchFrom(elements, 0, roles, i, spare)) return;
  into.push({ kind, at: spare, rank });
  spare = [];
}

/** Depth is bounded by the pattern's length, and gaps by 7 items, so the work is too. */
function matchFrom<K extends string>(
  elements: readonly Element[],
  e: number,
  roles: readonly Role<K>[],
  i: number,
  at: number[],
): boolean {
  const element = elements[e];
  if (!element) return true;
  if (element.edge === '^') return i === 0 && matchFrom(elements, e + 1, roles, i, at);
  if (element.edge === '$') return i >= roles.length && matchFrom(elements, e + 1, roles, i, at);
  if (element.gap > 0) {
    for (let skip = 0; skip <= element.gap && i + skip <= roles.length; skip++) {
      if (matchFrom(elements, e + 1, roles, i + skip, at)) return true;
    }
    return false;
  }
  const role = roles[i];
  if (role && (element.any || fits(role, element.slot))) {
    at.push(i);
    if (matchFrom(elements, e + 1, roles, i + 1, at)) return true;
    at.pop();
  }
  return element.optional && matchFrom(elements, e + 1, roles, i, at);
}

function fits({ slots }: Role<string>, slot: number): boolean {
  return (((slots[slot >>> 5] ?? 0) >>> (slot & 31)) & 1) === 1;
}
