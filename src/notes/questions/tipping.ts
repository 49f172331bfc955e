import type { Clause } from '../clauses.ts';
import { wordSet } from '../lexicon/word-set.ts';

const TIP_VERBS = wordSet('tip pinch nip snip stop top pinches');
/** With the tip of a shoot they name what is done to it. */
const TAKING_OFF = wordSet('secateurs snips take cut snip remove come off lop chop clip out back lose');
/** "should be tipped", "needs tipped", "tipped again": still to be done. */
const TO_BE = wordSet('should get be need needs want wants do again does');

/** It speaks of tipping as of something to do: "pinch", "tipping", "take the tips off", "tipped again". */
export function namesTip({ items }: Clause): boolean {
  const says = (words: ReadonlySet<string>): boolean => items.some((item) => words.has(item.text));
  const speaksOf = (name: string): boolean => items.some((item) => item.classes.has(name));
  return (
    says(TIP_VERBS) ||
    speaksOf('TIPPING') ||
    (speaksOf('APEX') && says(TAKING_OFF)) ||
    (speaksOf('TIPPED') && says(TO_BE))
  );
}
