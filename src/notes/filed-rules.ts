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
  readonly on: string;
}

/** The rules that a word sets off, in the table's order. */
export function fileRules<R extends Filed>(table: readonly R[]): (word: Word) => readonly R[] {
  const triggers = table.map((rule) => new Set(listed(rule.on)));
  return perWord((word) => {
    const names = namesOf(word);
    const rules = table.filter((_, rank) => names.some((name) => triggers[rank]?.has(name)));
    return rules.length > 0 ? rules : NO_RULES;
  });
}

const NO_RULES: readonly never[] = [];

/** Whether an item is one of the words, or of the classes or types, named as the triggers of a rule are. */
export function itemTest(triggers: string): (item: Item | undefined) => boolean {
  const names = new Set(listed(triggers));
  const fits = perWord((word) => namesOf(word).some((name) => names.has(name)));
  return (item) => item !== undefined && fits(item.word);
}

function listed(triggers: string): string[] {
  return triggers.trim().split(/\s+/);
}

function namesOf({ text, classes, type }: Word): string[] {
  return [text, ...classes, `<${type}>`];
}
