import type { ObservationKind } from '../../../engine/observation.ts';

/**
 * What is said of a tree, by kind: a line a phrase. Capitals are classes of `word-classes.ts` (and TREE, DATE,
 * NUM, WEIGHT for what was recognised before); small letters are words; `a|b` either; `x?` may be missing;
 * `_` any one item; `~` up to three items of anything; `~~` up to seven; `^` the clause begins; `$` it ends.
 *
 * Of overlapping matches the one with most words wins, then the earlier line. `none` marks idioms that only
 * look like something: they take their words out of play.
 */
export type PredicateKind = ObservationKind | 'none' | 'ask-kind';

/** Kinds with their phrases. */
export type PredicateTable = readonly (readonly [kind: PredicateKind, patterns: readonly string[]])[];

/** Every word that some pattern of a table spells out. */
export function patternWords(table: readonly (readonly [string, readonly string[]])[]): Set<string> {
  const words = new Set<string>();
  for (const [, patterns] of table) {
    for (const pattern of patterns) {
      for (const element of pattern.split(' ')) {
        for (const word of element.replace('?', '').split('|')) if (/^[a-z]{3,}$/.test(word)) words.add(word);
      }
    }
  }
  return words;
}
