import type { Item } from './item.ts';

/**
 * A word as the grammar sees it, one object for all its uses: what is worked out of a spelling, its classes and its
 * type alone is worked out once and kept with it.
 */
export interface Word {
  readonly text: string;
  readonly classes: ReadonlySet<string>;
  readonly type: Item['type'];
  /** What was worked out of it, by the number of the working-out; see `perWord`. */
  readonly known: unknown[];
  /** The same spelling with other classes or of another type: a number is one or many. */
  readonly other: Word | undefined;
}

/** Words met; bounded, since members' words are not. */
const words = new Map<string, Word>();
const MOST_WORDS = 5000;

export function wordOf(type: Item['type'], text: string, classes: ReadonlySet<string>): Word {
  const first = words.get(text);
  for (let word = first; word; word = word.other)
    if (word.classes === classes && word.type === type) return word;
  if (words.size >= MOST_WORDS) words.clear();
  const word = { text, classes, type, known: [], other: words.get(text) };
  words.set(text, word);
  return word;
}

let workings = 0;

/** The same function of a word, run once for each word met. */
export function perWord<T>(work: (word: Word) => T): (word: Word) => T {
  const number = workings++;
  return (word) => {
    const before = word.known[number];
    if (before !== undefined) return before as T;
    const found = work(word);
    word.known[number] = found;
    return found;
  };
}
