export { type Answer, answerAsk, readAnswer, readCorrection } from './asking.ts';
export type * from './contract.ts';
export { readMessage } from './questions.ts';
export { readNote } from './read-note.ts';
export { findTree, matchTrees, type TreeFinding, type TreeMatch } from './trees/match-trees.ts';
