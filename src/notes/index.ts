/**
 * The language of notes and questions. Pure: text and a `Setting` in, plain data out.
 *
 * How a message is read, step by step, a file each:
 *
 * 1. `tokens.ts` cuts it into words, numbers and marks; `lexicon/contractions.ts` spells short forms out;
 *    `spelling.ts` mends slips towards the lexicon and the member's own tree names, never a word that is right.
 * 2. `items.ts` joins what is understood as a whole: dates (`dates/`), trees (`trees/mentions.ts`), numbers
 *    and weights (`quantities.ts`).
 * 3. `mend-items.ts` puts right what is corrected in passing ("monday, no, sunday"); `clauses.ts` cuts at marks,
 *    conjunctions and words of repair (`repairs.ts`); `runs.ts` cuts lists of several trees, and `gapping.ts` and
 *    `repeat-days.ts` hand on what a list leaves out ("3 tips off the alma, 4 off the king").
 * 4. `hits.ts` finds what each clause says (`patterns.ts`): the patterns of `lexicon/predicates/` over the word classes of
 *    `lexicon/word-classes.ts`. The longest match wins; idioms take their words out of play; the doings that
 *    decide something must have a subject and an object that fit ("tipped the alma", not "tipped the can").
 *    `sense.ts` and `sift-hits.ts` see to both.
 * 5. `mood.ts` tells how a clause is meant: denied, planned, supposed, asked, of another season, hearsay, or
 *    of somebody else's tree. Only what is meant as a fact becomes an event, all else a remark.
 * 6. `subjects.ts` gives every clause its trees, `spread-dates.ts` and `events.ts` its day, `counts.ts` its
 *    number; `read-hits.ts` and `push-events.ts` make the events.
 * 7. `settle.ts` lets the greater kind stand for the lesser and leaves at most one question.
 *
 * Most rules cannot apply to most words. So what hangs on a word alone is worked out once for each word met and kept
 * with it (`word.ts`): the patterns it may stand in, and the rules that it sets off (`filed-rules.ts`). A table of rules
 * (`mood-rules.ts`, `owners.ts`, `garden-wide.ts`, `harmless.ts`) names with each rule the words and classes it cannot
 * do without; no other rule is run. `trees/named-at.ts` does the same for the words a tree's name may begin with.
 *
 * A new phrase is one line in `lexicon/predicates/` and one in `tests/notes/phrases.test.ts`.
 */
export { type Answer, answerAsk, readAnswer } from './asking.ts';
export type * from './contract.ts';
export { correctEvents } from './correct-events.ts';
export { readCorrection } from './correcting.ts';
export { readMessage } from './questions/index.ts';
export { readNote } from './read-note.ts';
export { findTree, matchTrees, type TreeFinding, type TreeMatch } from './trees/match-trees.ts';
