import type { Item } from './item.ts';
import { perWord, type Word } from './word.ts';

/**
 * Rules filed under what they cannot do without.
 *
 * Dozens of rules are asked of each item of a message, and hardly one can apply to it. So a rule names its triggers:
 * the words, the classes in CAPITALS and the types as `<date>`, one of which the item it is asked of must be or have.
 * Which rules a word sets off is looked up once for each word met, and nothing else is run. The triggers are the
 * first condition of the rule, not a copy of it: what they say the rule itself does not ask again.
 */
export interface Filed {
  /** The triggers, parted by spaces, or what tells them where they are too many to list. */
  readonly on: string | ((word: Word) => boolean);
}

/** The rules that a word sets off, in the table's order. */
export function fileRules<R extends Filed>(table: readonly R[]): (word: Word) => readonly R[] {
  const tests = table.map(({ on }) => (typeof on === 'string' ? wordTest(on) : on));
  return perWord((word) => {
    const rules = table.filter((_, rank) => tests[rank]?.(word));
    return rules.length > 0 ? rules : NO_RULES;
  });
}

const NO_RULES: readonly never[] = [];

/** Whether an item is one of the words, or of the classes or types, named as the triggers of a rule are. */
export function itemTest(triggers: string): (item: Item | undefined) => boolean {
  const fits = perWord(wordTest(triggers));
  return (item) => item !== undefined && fits(item.word);
}

function wordTest(triggers: string): (word: Word) => boolean {
  const names = new Set(triggers.trim().split(/\s+/));
  return ({ text, classes, type }) =>
    names.has(text) || names.has(`<${type}>`) || [...classes].some((name) => names.has(name));
}
