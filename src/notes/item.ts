import type { PlacedHit } from './dates/index.ts';
import type { Quantity } from './quantities.ts';
import type { Mention } from './trees/mentions.ts';
import { type Word, wordOf } from './word.ts';

/** What clauses are made of: a word, a mark, or a phrase already understood (tree, date, quantity). */
export interface Item {
  readonly text: string;
  readonly typed: string;
  readonly classes: ReadonlySet<string>;
  readonly start: number;
  readonly end: number;
  /** Its spelling, classes and type, with what follows from them. */
  readonly word: Word;
  readonly type: 'word' | 'number' | 'mark' | 'tree' | 'date' | 'vague' | 'quantity';
  readonly mention: Mention | undefined;
  readonly date: PlacedHit | undefined;
  readonly quantity: Quantity | undefined;
  /** How many places a list of nodes names. */
  readonly places: number | undefined;
}

type Sense = Partial<Pick<Item, 'mention' | 'date' | 'quantity'>>;

export function makeItem(
  type: Item['type'],
  text: string,
  typed: string,
  classes: ReadonlySet<string>,
  start: number,
  end: number,
  sense: Sense = NO_SENSE,
): Item {
  return itemOf(wordOf(type, text, classes), typed, start, end, sense);
}

/** All items are made here, with one set of fields in one order: objects of one shape are several times as fast to read. */
export function itemOf(word: Word, typed: string, start: number, end: number, sense: Sense = NO_SENSE): Item {
  const { text, classes, type } = word;
  const { mention, date, quantity } = sense;
  return { text, typed, classes, start, end, word, type, mention, date, quantity, places: undefined };
}

/** The item read as another word. */
export function reword({ typed, start, end }: Item, text: string, classes: ReadonlySet<string>): Item {
  return makeItem('word', text, typed, classes, start, end);
}

const NO_SENSE = {};

/** Whether an item belongs to one of the word classes named. */
export function isAnyOf(item: Item | undefined, classes: readonly string[]): boolean {
  if (item === undefined) return false;
  for (const name of classes) if (item.classes.has(name)) return true;
  return false;
}

/** The word at an index, or the empty text beyond the clause. */
export function textAt(items: readonly Item[], i: number): string {
  return items[i]?.text ?? '';
}
