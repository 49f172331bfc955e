import { CULTIVARS } from '../../engine/cultivars.ts';
import type { RosterTree } from '../contract.ts';
import { isOrdinary } from '../lexicon/ordinary.ts';
import { CULTIVAR_NAMES, nameWords } from './cultivar-names.ts';
import { inWords } from './plain-numbers.ts';

/**
 * What each word can say about which tree. A *strong* word names a tree by itself (its cultivar, a nickname);
 * a *weak* one only helps (size, place, colour) or needs "the … one" around it.
 */
export interface RosterIndex {
  readonly strong: ReadonlyMap<string, ReadonlySet<number>>;
  readonly weak: ReadonlyMap<string, ReadonlySet<number>>;
  /** Trees by any word, strong or weak. */
  readonly any: ReadonlyMap<string, readonly number[]>;
  /** Trees by a whole name, joined with spaces. */
  readonly names: ReadonlyMap<string, ReadonlySet<number>>;
  /** Trees by their cultivar, as `CultivarName.cultivar` has it. */
  readonly cultivars: ReadonlyMap<string, ReadonlySet<number>>;
  /** Trees called "<lead> <number>", by number. */
  readonly numbered: ReadonlyMap<string, ReadonlySet<number>>;
  /** First words of whole names that end in a number. */
  readonly numberedBegin: ReadonlySet<string>;
  /** Trees by a name of several words written as one. */
  readonly glued: ReadonlyMap<string, ReadonlySet<number>>;
  /** Strong words of the member's own names and cultivars. */
  readonly own: ReadonlyMap<string, ReadonlySet<number>>;
  /** Trees by the first letters of a name of two words or more. */
  readonly initials: ReadonlyMap<string, ReadonlySet<number>>;
  /** Words met, by whether a tree may be named from them on; see `mayBeginName`. */
  readonly beginning: Map<string, boolean>;
  /** Words worth mending a typo towards. */
  readonly spelling: readonly string[];
}

/** Words that lead a numbered name: pot 3, p3, #3. */
export const NUMBER_LEADS: ReadonlySet<string> = new Set([
  'pot',
  'p',
  '#',
  'no',
  'number',
  'num',
  'nr',
  'tub',
  'container',
  'bin',
  'bucket',
  'tree',
  'plant',
  'potnumber',
  'pots',
  'bed',
  'row',
  'spot',
]);

/** Words of size and the like that say the same. */
const SAME_SIZE: readonly (readonly string[])[] = [
  ['tall', 'big', 'large', 'taller', 'tallest', 'bigger', 'biggest', 'larger', 'high', 'lanky', 'giant'],
  [
    'little',
    'small',
    'lil',
    'short',
    'smaller',
    'smallest',
    'shorter',
    'shortest',
    'tiny',
    'wee',
    'baby',
    'mini',
    'littlest',
    'littler',
    'dwarf',
    'titchy',
  ],
  ['old', 'older', 'oldest'],
  ['new', 'newer', 'newest', 'young', 'younger'],
  [
    'unknown',
    'mystery',
    'unidentified',
    'noid',
    'nameless',
    'unnamed',
    'unk',
    'anonymous',
    'unlabelled',
    'unlabeled',
  ],
  ['greenhouse', 'glasshouse', 'hothouse', 'polytunnel', 'gh'],
  ['patio', 'terrace', 'deck', 'paved'],
  ['fence', 'fenceline', 'fencing'],
  ['shed', 'outhouse'],
  ['pot', 'potted'],
];
/** Words in a name that say nothing of their own. */
const EMPTY_WORDS: ReadonlySet<string> = new Set([
  'the',
  'de',
  'of',
  'a',
  'fig',
  'tree',
  'my',
  'by',
  'in',
  'at',
  'on',
  'du',
  'la',
  'le',
  'da',
  'di',
  'and',
  'd',
]);
const COLOURS: ReadonlySet<string> = new Set([
  'black',
  'white',
  'brown',
  'green',
  'blue',
  'red',
  'yellow',
  'purple',
  'gold',
  'golden',
  'violet',
  'hardy',
  'improved',
  'fall',
  'big',
  'san',
  'italian',
  'honey',
  'sugar',
  'strawberry',
  'lemon',
  'grosse',
  'early',
  'late',
  'deux',
  'magnolia',
  'clare',
  'hanover',
  'bayswater',
  'malta',
  'desert',
  'verte',
  'violette',
  'celestial',
  'lsu',
  'col',
  'dame',
  'st',
  'texas',
  'brunswick2',
]);

const indexes = new WeakMap<readonly RosterTree[], RosterIndex>();

/** The same by what stands in the roster: each message brings an array of its own. */
const byContent = new Map<string, RosterIndex>();
const MOST_ROSTERS = 200;

/** The index of a roster; built once for each array, and for arrays that say the same. */
export function rosterIndex(roster: readonly RosterTree[]): RosterIndex {
  const known = indexes.get(roster);
  if (known) return known;
  const content = JSON.stringify(roster.map(({ id, name, cultivar }) => [id, name, cultivar]));
  let index = byContent.get(content);
  if (!index) {
    if (byContent.size >= MOST_ROSTERS) byContent.clear();
    index = build(roster);
    byContent.set(content, index);
  }
  indexes.set(roster, index);
  return index;
}

function build(roster: readonly RosterTree[]): RosterIndex {
  const strong = new Map<string, Set<number>>();
  const weak = new Map<string, Set<number>>();
  const names = new Map<string, Set<number>>();
  const cultivars = new Map<string, Set<number>>();
  const numbered = new Map<string, Set<number>>();
  const initials = new Map<string, Set<number>>();
  const own = new Map<string, Set<number>>();
  for (const tree of roster) {
    const words = nameWords(tree.name);
    add(names, words.join(' '), tree.id);
    if (words.length > 1 && words.every((word) => /^[a-z]/.test(word)))
      add(initials, words.map((word) => word[0]).join(''), tree.id);
    const last = words.at(-1);
    if (last !== undefined && /^\d+$/.test(last) && words.length > 1) add(numbered, last, tree.id);
    const cultivar = tree.cultivar === null ? null : canonical(tree.cultivar);
    const cultivarWords = new Set(tree.cultivar === null ? [] : nameWords(tree.cultivar));
    if (cultivar !== null) {
      add(cultivars, cultivar, tree.id);
      for (const name of CULTIVAR_NAMES)
        if (name.cultivar === cultivar) add(names, name.words.join(' '), tree.id);
      add(names, [...cultivarWords].join(' '), tree.id);
    }
    const distinctive = [...words].some((word) => isDistinctive(word) || cultivarWords.has(word));
    for (const word of words) {
      if (EMPTY_WORDS.has(word) || /^\d+$/.test(word) || NUMBER_LEADS.has(word)) continue;
      const own = cultivarWords.has(word) || isDistinctive(word) || (!distinctive && words.length === 1);
      if (own && !COLOURS.has(word)) add(strong, word, tree.id);
      else for (const same of alike(word)) add(weak, same, tree.id);
    }
    if (cultivar === null) {
      for (const word of alike('unknown')) add(strong, word, tree.id);
    }
    for (const word of cultivarWords) {
      if (EMPTY_WORDS.has(word) || /^\d+$/.test(word)) continue;
      add(COLOURS.has(word) ? weak : strong, word, tree.id);
    }
    for (const [word, ids] of strong) if (ids.has(tree.id)) add(own, word, tree.id);
    if (cultivar !== null) {
      for (const name of CULTIVAR_NAMES) {
        if (name.cultivar !== cultivar) continue;
        for (const word of name.words) {
          if (EMPTY_WORDS.has(word) || word.length < 4 || COLOURS.has(word) || isOrdinary(word)) continue;
          if (!strong.has(word)) add(strong, word, tree.id);
        }
      }
    }
  }
  // "the san pedro": whichever tree is of that sort, unless one is called so.
  if (!cultivars.has('san pedro'))
    for (const tree of roster) if (typeOf(tree) === 'san-pedro') add(cultivars, 'san pedro', tree.id);
  // A plural names both: "the kadotas".
  for (const [word, ids] of [...strong]) {
    if (!word.endsWith('s') && word.length > 2) for (const id of ids) add(strong, `${word}s`, id);
  }
  const spelling = [...strong.keys(), ...weak.keys()].filter((word) => word.length >= 4);
  const any = new Map(
    [...strong.keys(), ...weak.keys()].map((word) => [
      word,
      [...new Set([...(strong.get(word) ?? []), ...(weak.get(word) ?? [])])],
    ]),
  );
  const glued = new Map(
    [...names]
      .filter(([name]) => name.includes(' '))
      .flatMap(([name, ids]) =>
        [name, inWords(name)].map((each) => [each.replaceAll(' ', ''), ids] as const),
      ),
  );
  const numberedBegin = new Set(
    [...names.keys()].filter((name) => / \d+$/.test(name)).map((name) => name.split(' ')[0] ?? ''),
  );
  return {
    strong,
    weak,
    any,
    names,
    cultivars,
    numbered,
    numberedBegin,
    initials,
    own,
    glued,
    beginning: new Map(),
    spelling,
  };
}

function typeOf({ cultivar }: RosterTree): string | null {
  if (cultivar === null) return null;
  const name = canonical(cultivar);
  return CULTIVARS.find((each) => nameWords(each.name).join(' ') === name)?.type ?? null;
}

/** The main name of a cultivar as typed, joined words; itself when the catalogue has no such name. */
export function canonical(cultivar: string): string {
  const words = nameWords(cultivar).join(' ');
  return CULTIVAR_NAMES.find((name) => name.words.join(' ') === words)?.cultivar ?? words;
}

/** Not a word of everyday English, so it can only be the name. */
function isDistinctive(word: string): boolean {
  return word.length > 2 && !isOrdinary(word) && !alikeBy.has(word);
}

const alikeBy = new Map<string, readonly string[]>();
for (const group of SAME_SIZE) for (const word of group) alikeBy.set(word, group);

function alike(word: string): readonly string[] {
  return alikeBy.get(word) ?? [word];
}

function add(map: Map<string, Set<number>>, word: string, id: number): void {
  const at = map.get(word);
  if (at) at.add(id);
  else map.set(word, new Set([id]));
}
