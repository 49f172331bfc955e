import { OTHER_SENSE } from './doubt-words-figure.ts';
import { FRAMES } from './doubt-words-frames.ts';
import { NOT_MEANT } from './doubt-words-meant.ts';
import { DONE_TO_OTHER_THINGS } from './doubt-words-things.ts';
import { NOT_ONES_OWN } from './doubt-words-told.ts';

/**
 * Words that make a decisive record doubtful: a line a phrase, in the notation of `predicates/`.
 *
 * Why it is doubtful: `denied`, `plan` (planned, wished, ordered), `if` (supposed), `past` (another season or a
 * habit), `told` (somebody else says so), `other` (somebody else's tree), `asked`, `figure` (another sense).
 *
 * How far it reaches: `before` only what comes after it in its clause; `on` that, and the clauses joined to it;
 * `here` its whole clause; `sentence`; `text` the whole note.
 */
export type DoubtWhy = 'denied' | 'plan' | 'if' | 'past' | 'told' | 'other' | 'asked' | 'figure';
/** One kind of doubt with the phrases that raise it. */
export type DoubtLine = readonly [doubt: `${DoubtWhy} ${DoubtReach}`, patterns: readonly string[]];
export type DoubtReach = 'before' | 'on' | 'here' | 'sentence' | 'text';

export const DOUBTS: readonly DoubtLine[] = [
  ...NOT_MEANT,
  ...NOT_ONES_OWN,
  ...OTHER_SENSE,
  ...DONE_TO_OTHER_THINGS,
  ...FRAMES,
];
