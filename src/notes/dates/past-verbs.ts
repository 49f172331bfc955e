import { wordSet } from '../lexicon/word-set.ts';
import { type Input, isClauseEnd, textAt } from './input.ts';

const PAST_VERBS = wordSet(
  'pinchd tipd tippd nippd toppd watrd wtred wtrd pickd fedd pchd pnchd fed cut took got ate put had was were did saw gone went lost hit found gave made broke hung dug tore sank spread laid kept bought brought ate',
);

export function isPastVerb(word: string): boolean {
  return (word.length > 3 && word.endsWith('ed')) || PAST_VERBS.has(word);
}

/** A finished verb earlier in the same clause. */
export function hasVerbBefore(input: Input, i: number): boolean {
  for (let k = i - 1; k >= 0 && k > i - 12 && !isClauseEnd(input, k); k--)
    if (isPastVerb(textAt(input, k))) return true;
  return false;
}
