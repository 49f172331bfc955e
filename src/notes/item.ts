import type { PlacedHit } from './dates/index.ts';
import type { Quantity } from './quantities.ts';
import type { Mention } from './trees/mentions.ts';

/** What clauses are made of: a word, a mark, or a phrase already understood (tree, date, quantity). */
export interface Item {
  readonly text: string;
  readonly typed: string;
  readonly classes: ReadonlySet<string>;
  readonly start: number;
  readonly end: number;
  readonly type: 'word' | 'number' | 'mark' | 'tree' | 'date' | 'vague' | 'quantity';
  readonly mention: Mention | undefined;
  readonly date: PlacedHit | undefined;
  readonly quantity: Quantity | undefined;
  /** How many places a list of nodes names. */
  readonly places: number | undefined;
}

/** All items are made here, with one set of fields in one order: objects of one shape are several times as fast to read. */
export function makeItem(
  type: Item['type'],
  text: string,
  typed: string,
  classes: ReadonlySet<string>,
  start: number,
  end: number,
  sense: Partial<Pick<Item, 'mention' | 'date' | 'quantity'>> = NO_SENSE,
): Item {
  const { mention, date, quantity } = sense;
  return { text, typed, classes, start, end, type, mention, date, quantity, places: undefined };
}

const NO_SENSE = {};

/** Whether an item belongs to one of the word classes named. */
export function isAnyOf(item: Item | undefined, classes: readonly string[]): boolean {
  return item !== undefined && classes.some((name) => item.classes.has(name));
}
