import type { RosterTree } from '../contract.ts';
import { countSlips, slipsAllowed } from '../spelling.ts';
import { CULTIVAR_NAMES, nameWords } from './cultivar-names.ts';
import { plainNumber } from './plain-numbers.ts';
import { canonical } from './roster-index.ts';

export interface TreeMatch {
  readonly id: number;
  /** 1 for the name itself, down to 0. */
  readonly score: number;
}

const FILLERS = new Set([
  'the',
  'my',
  'our',
  'a',
  'fig',
  'tree',
  'one',
  'plant',
  'no',
  'number',
  'that',
  'by',
  'in',
  'at',
  'on',
  'near',
  'of',
]);

/**
 * The roster trees a phrase may mean, best first: whole name, cultivar or synonym or abbreviation, parts of
 * them, misspelt. `matchTrees('p3', roster)[0] //=> { id: 2, score: 0.95 }`
 */
export function matchTrees(phrase: string, roster: readonly RosterTree[]): TreeMatch[] {
  const wanted = phraseWords(phrase);
  if (wanted.length === 0) return [];
  const matches: TreeMatch[] = [];
  for (const tree of roster) {
    const score = scoreTree(wanted, tree);
    if (score > 0) matches.push({ id: tree.id, score });
  }
  return matches.sort((a, b) => b.score - a.score);
}

export type TreeFinding =
  | { readonly kind: 'one'; readonly id: number }
  | { readonly kind: 'several'; readonly ids: readonly number[] }
  | { readonly kind: 'none' };

/** Exactly one tree, or the candidates to ask with (best first, at most five), or none. */
export function findTree(phrase: string, roster: readonly RosterTree[]): TreeFinding {
  const matches = matchTrees(phrase, roster);
  const best = matches[0];
  if (!best) return { kind: 'none' };
  const rivals = matches.filter((match) => match.score > best.score - 0.05);
  if (rivals.length === 1 && best.score >= 0.5) return { kind: 'one', id: best.id };
  return { kind: 'several', ids: matches.slice(0, 5).map((match) => match.id) };
}

function phraseWords(phrase: string): string[] {
  const split = phrase
    .slice(0, 200)
    .replace(/#/g, ' ')
    .replace(/(\p{L})(\d)/gu, '$1 $2');
  const words = nameWords(split)
    .map(plainNumber)
    .map((word) => (word === 'p' ? 'pot' : word));
  const telling = words.filter((word) => !FILLERS.has(word));
  return telling.length > 0 ? telling : words;
}

function scoreTree(wanted: readonly string[], tree: RosterTree): number {
  const name = nameWords(tree.name).map(plainNumber);
  let best = scoreWords(wanted, name, 1);
  if (tree.cultivar === null) {
    if (wanted.some((word) => ['unknown', 'mystery', 'unidentified', 'unk', 'noid'].includes(word)))
      best = Math.max(best, 0.8);
    return best;
  }
  const cultivar = canonical(tree.cultivar);
  best = Math.max(best, scoreWords(wanted, nameWords(tree.cultivar), 0.95));
  for (const each of CULTIVAR_NAMES) {
    if (each.cultivar === cultivar) best = Math.max(best, scoreWords(wanted, each.words, 0.9));
  }
  // "tall kadota" for a tree whose name has one word and whose cultivar has the other.
  return Math.max(best, scoreWords(wanted, [...name, ...nameWords(tree.cultivar)], 0.9));
}

/** Share of wanted words found, weighed by how much of the name they cover. */
function scoreWords(wanted: readonly string[], name: readonly string[], top: number): number {
  const telling = name.filter((word) => !FILLERS.has(word));
  const words = telling.length > 0 ? telling : name;
  let sum = 0;
  for (const word of wanted) {
    const likeness = Math.max(0, ...words.map((each) => alike(word, each)));
    if (likeness === 0) return 0;
    sum += likeness;
  }
  const covered = Math.min(1, wanted.length / new Set(words).size);
  return top * (sum / wanted.length) * (0.75 + 0.25 * covered);
}

function alike(typed: string, word: string): number {
  if (typed === word) return 1;
  if (/^\d+$/.test(typed) || /^\d+$/.test(word)) return 0;
  if (typed === `${word}s` || `${typed}s` === word) return 0.98;
  if (typed.length >= 2 && word.startsWith(typed)) return 0.8;
  const allowed = Math.min(slipsAllowed(typed.length), slipsAllowed(word.length));
  if (allowed === 0) return 0;
  const slips = countSlips(typed, word, allowed);
  return slips <= allowed ? 0.9 - slips * 0.1 : 0;
}
