import type { Item } from './item.ts';
import { perWord, type Word } from './word.ts';

/** One element of a pattern; see `lexicon/predicates/` for the notation. */
interface Element {
  /** Number of its words and classes among those of the table; −1 if it has none of its own. */
  readonly slot: number;
  readonly optional: boolean;
  /** Most items of anything that it may stand for; 0 for an ordinary element. */
  readonly gap: number;
  readonly code: number;
}

/*
 * Compiled patterns lie one behind the other in one array of small numbers, since following pointers through some ten
 * thousand objects costs more than the matching itself. A pattern is its rank, how far before the item it is filed
 * under it may begin (at least and at most), and its elements: the slot of one that must stand there, the slot with
 * OPTIONAL added, or one of these.
 */
const RANK = 0;
const NEAR = 1;
const FAR = 2;
const FIRST_ELEMENT = 3;
const END = -1;
const ANY = -2;
const CLAUSE_START = -3;
const CLAUSE_END = -4;
/** And below: a gap of at most `GAP − code` items. */
const GAP = -8;
const OPTIONAL = 0x4000;

/** A pattern found in a clause. */
export interface Match<K extends string> {
  readonly kind: K;
  /** Items it spells out, ascending; gaps left out. */
  readonly at: readonly number[];
  readonly rank: number;
}

/** What one word is to a table. */
interface Role {
  /** A bit for each slot the word fits. */
  readonly slots: Uint32Array;
  /** Where the patterns filed under it begin. */
  readonly patterns: readonly number[];
}

/**
 * The patterns of a table. Each is filed under one element that it cannot do without, the one whose words the fewest
 * patterns ask for; only where an item fits that element the pattern is tried. Whether an item fits an element is one
 * bit, looked up once for each word met.
 */
export interface PatternIndex<K extends string> {
  readonly code: Int16Array;
  /** By rank. */
  readonly kinds: readonly K[];
  /** What a word is to the table. */
  readonly roleOf: (word: Word) => Role;
}

const NO_SLOT = -1;

export function compileTable<K extends string>(
  table: readonly (readonly [kind: K, sources: readonly string[]])[],
): PatternIndex<K> {
  const slots = new Map<string, number>();
  const sources = table.flatMap(([kind, lines]) => lines.map((source) => ({ kind, source })));
  const parsed = sources.map(({ source }) => parse(source, slots));
  const demand = countDemand([...slots.keys()], parsed);
  const code: number[] = [];
  const filed = new Map<number, number[]>();
  parsed.forEach((elements, rank) => {
    const key = rarest(elements, demand);
    if (!key) throw new Error(`a pattern needs a word it cannot do without: ${sources[rank]?.source}`);
    push(filed, key.slot, code.length);
    code.push(rank, ...distanceTo(elements, key), ...elements.map((element) => element.code), END);
  });
  const slotsOf = new Map<string, number[]>();
  for (const [options, slot] of slots) for (const option of options.split('|')) push(slotsOf, option, slot);
  return {
    code: Int16Array.from(code),
    kinds: sources.map(({ kind }) => kind),
    roleOf: perWord((word) => makeRole(word, slots.size, slotsOf, filed)),
  };
}

function parse(source: string, slots: Map<string, number>): Element[] {
  return source
    .split(' ')
    .filter((part) => part !== '')
    .map((part) => parseElement(part, slots));
}

function parseElement(part: string, slots: Map<string, number>): Element {
  if (part === '_') return { slot: NO_SLOT, optional: false, gap: 0, code: ANY };
  if (part === '~' || part === '~~') {
    const gap = part === '~' ? 3 : 7;
    return { slot: NO_SLOT, optional: true, gap, code: GAP - gap };
  }
  if (part === '^' || part === '$')
    return { slot: NO_SLOT, optional: true, gap: 0, code: part === '^' ? CLAUSE_START : CLAUSE_END };
  const optional = part.endsWith('?');
  const options = (optional ? part.slice(0, -1) : part)
    .split('|')
    .filter((option) => option !== '' && option !== '$')
    .join('|');
  const slot = slots.get(options) ?? slots.size;
  slots.set(options, slot);
  return { slot, optional, gap: 0, code: optional ? slot + OPTIONAL : slot };
}

/** For each slot, how many elements ask for the most asked of its words and classes. */
function countDemand(slots: readonly string[], patterns: readonly (readonly Element[])[]): number[] {
  const asked = new Map<string, number>();
  for (const { slot } of patterns.flat())
    for (const option of slots[slot]?.split('|') ?? []) asked.set(option, (asked.get(option) ?? 0) + 1);
  return slots.map((options) => Math.max(...options.split('|').map((option) => asked.get(option) ?? 0)));
}

/** The least asked for of the elements that stand for exactly one item of their own words and classes. */
function rarest(elements: readonly Element[], demand: readonly number[]): Element | undefined {
  const askedFor = ({ slot }: Element): number => demand[slot] ?? 0;
  return elements
    .filter(({ slot, optional }) => slot !== NO_SLOT && !optional)
    .sort((a, b) => askedFor(a) - askedFor(b))[0];
}

/** How many items may stand before an element: at least and at most. */
function distanceTo(elements: readonly Element[], key: Element): [near: number, far: number] {
  const before = elements.slice(0, elements.indexOf(key));
  const near = before.filter(({ optional }) => !optional).length;
  const far = before.reduce((sum, { slot, gap, code }) => sum + (slot >= 0 || code === ANY ? 1 : gap), 0);
  return [near, far];
}

function push<A, T>(map: Map<A, T[]>, key: A, value: T): void {
  const at = map.get(key);
  if (at) at.push(value);
  else map.set(key, [value]);
}

function makeRole(
  { text, classes }: Word,
  slots: number,
  slotsOf: ReadonlyMap<string, readonly number[]>,
  filed: ReadonlyMap<number, readonly number[]>,
): Role {
  const fitting = new Set([text, ...classes].flatMap((option) => slotsOf.get(option) ?? []));
  const bits = new Uint32Array(Math.ceil(slots / 32));
  for (const slot of fitting) bits[slot >>> 5] = (bits[slot >>> 5] ?? 0) | (1 << (slot & 31));
  return { slots: bits, patterns: [...fitting].flatMap((slot) => filed.get(slot) ?? []) };
}

/** Every pattern that stands in a clause; the longest first, then in the table's order. */
export function findMatches<K extends string>(items: readonly Item[], index: PatternIndex<K>): Match<K>[] {
  const { code, kinds, roleOf } = index;
  const roles = items.map((item) => roleOf(item.word));
  const matches: Match<K>[] = [];
  // A match that fails leaves nothing behind in it.
  let at: number[] = [];
  for (let j = 0; j < roles.length; j++) {
    const patterns = roles[j]?.patterns ?? [];
    for (let k = 0; k < patterns.length; k++) {
      const start = patterns[k] ?? 0;
      const last = j - (code[start + NEAR] ?? 0);
      for (let i = Math.max(0, j - (code[start + FAR] ?? 0)); i <= last; i++) {
        if (!matchFrom(code, start + FIRST_ELEMENT, roles, i, at)) continue;
        const rank = code[start + RANK] ?? 0;
        const kind = kinds[rank];
        if (kind !== undefined) matches.push({ kind, at, rank });
        at = [];
      }
    }
  }
  if (matches.length < 2) return matches;
  return matches.sort(
    (a, b) => b.at.length - a.at.length || a.rank - b.rank || (a.at[0] ?? 0) - (b.at[0] ?? 0),
  );
}

/** Depth is bounded by the pattern's length, and gaps by 7 items, so the work is too. */
function matchFrom(code: Int16Array, e: number, roles: readonly Role[], i: number, at: number[]): boolean {
  const element = code[e] ?? END;
  if (element < 0) return matchMark(element, code, e, roles, i, at);
  const role = roles[i];
  if (role && fits(role, element & ~OPTIONAL)) {
    at.push(i);
    if (matchFrom(code, e + 1, roles, i + 1, at)) return true;
    at.pop();
  }
  return element >= OPTIONAL && matchFrom(code, e + 1, roles, i, at);
}

function matchMark(
  mark: number,
  code: Int16Array,
  e: number,
  roles: readonly Role[],
  i: number,
  at: number[],
): boolean {
  switch (mark) {
    case END:
      return true;
    case CLAUSE_START:
      return i === 0 && matchFrom(code, e + 1, roles, i, at);
    case CLAUSE_END:
      return i >= roles.length && matchFrom(code, e + 1, roles, i, at);
    case ANY:
      if (i >= roles.length) return false;
      at.push(i);
      if (matchFrom(code, e + 1, roles, i + 1, at)) return true;
      at.pop();
      return false;
    default:
      for (let skip = 0; skip <= GAP - mark && i + skip <= roles.length; skip++) {
        if (matchFrom(code, e + 1, roles, i + skip, at)) return true;
      }
      return false;
  }
}

function fits({ slots }: Role, slot: number): boolean {
  return (((slots[slot >>> 5] ?? 0) >>> (slot & 31)) & 1) === 1;
}
