import { SMALL_NUMBERS } from '../numbers.ts';

/** "one" to "twelve". */
const PLAIN_NUMBERS = new Map(SMALL_NUMBERS.slice(1, 13).map((word, i) => [word, String(i + 1)]));

/** `three` → `3`; other words as they are. */
export function plainNumber(word: string): string {
  return PLAIN_NUMBERS.get(word) ?? word;
}

/** "pot 3" → "pot three" */
export function inWords(name: string): string {
  const at = name.lastIndexOf(' ') + 1;
  const digits = name.slice(at);
  const word = [...PLAIN_NUMBERS].find(([, number]) => number === digits)?.[0];
  return word === undefined ? name : name.slice(0, at) + word;
}
