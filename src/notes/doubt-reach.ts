import type { ObservationKind } from '../engine/observation.ts';
import type { FoundDoubt } from './doubt-finding.ts';
import type { Piece } from './doubt-pieces.ts';
import { wordSet } from './lexicon/word-set.ts';

const NEW_SUBJECT = new Set([
  'well',
  'turns',
  'saw',
  'noticed',
  'found',
  'spotted',
  'i',
  'we',
  'it',
  'they',
  'now',
  'today',
  'there',
  'mine',
  'this',
]);
const HERE_AND_NOW = new Set(['now', 'today', 'currently', 'this']);

/** Whether a phrase of doubt bears on what a clause says at `coreStart`. */
export function reaches(
  doubt: FoundDoubt,
  piece: Piece,
  p: number,
  coreStart: number,
  pieces: readonly Piece[],
  kind: ObservationKind,
): boolean {
  if (doubt.reach === 'text') return true;
  const from = pieces[doubt.piece];
  if (!from || from.sentence !== piece.sentence) return false;
  if (doubt.piece === p)
    return doubt.reach === 'here' || doubt.reach === 'sentence' || doubt.first <= coreStart;
  if (doubt.reach === 'here' || doubt.reach === 'before') return false;
  if (doubt.piece > p) {
    // "figs, celeste, soon i hope"
    if (
      kind === 'fruitlets' &&
      doubt.why === 'plan' &&
      from.own.length === 0 &&
      from.items.length <= 4 &&
      from.items.some((item) => HOPES.has(item.text)) &&
      from.items.some((item) => item.text === 'soon')
    )
      return true;
    // "the king has figs, he says": a short clause that follows; "it drops its figs if …": one joined on.
    if (doubt.why === 'figure' && doubt.reach === 'sentence' && from.items.length <= 3) return true;
    if (doubt.why === 'past' && isPastTail(doubt, from, piece, doubt.piece - p)) return true;
    if (isNextTold(pieces, p, doubt.piece) && takesBack(doubt, from, piece)) return true;
    if (doubt.reach !== 'sentence' || doubt.piece !== p + 1) return false;
    // "had figs and cheese at the restaurant near the alma": the tree stands only behind the doubt.
    if (from.join === 'and' && piece.own.length === 0 && from.own.length > 0 && doubt.why === 'other')
      return true;
    // "tipped the alma, too soon?" doubts the day, "…, right?" whether it was.
    if (doubt.why === 'asked' && FINISHED.has(kind) && from.join !== 'or')
      return from.items.length <= 3 && from.items.some((item) => WHETHER.has(item.text));
    if (doubt.why === 'asked')
      // "…, maybe next year" asks nothing of today.
      return from.join === 'or' || (from.items.length <= 3 && !from.items.some((item) => item.date));
    if (doubt.why !== 'told' && (kind === 'tipped' || kind === 'picked')) return false;
    return (
      from.join === 'sub' ||
      (doubt.why === 'told' && from.items.length <= (IN_PRINT.has(from.items[0]?.text ?? '') ? 5 : 3))
    );
  }
  // "the plan: ronde tipped, king fed": a heading holds for all that follows.
  if (pieces[doubt.piece + 1]?.join === 'colon' && from.own.length === 0) return true;
  // "quick q, …"
  if (doubt.why === 'asked' && from.items.length <= 3 && from.items.some(({ text }) => QUERY.has(text)))
    return true;
  for (let k = doubt.piece + 1; k <= p; k++) {
    const step = pieces[k];
    // "almost pinched it then saw a fig"
    if (kind === 'fruitlets' && SEEING.has(step?.items[0]?.text ?? '')) return false;
    if (!step || !carriesOn(doubt, step)) return false;
  }
  return true;
}

/** "scoffed 2 before anyone woke up last year": the time stands behind both halves. */
function isPastTail(
  { first }: FoundDoubt,
  { items, join, own }: Piece,
  piece: Piece,
  steps: number,
): boolean {
  return (
    steps === 1 &&
    (join === 'and' || join === 'sub') &&
    own.length === 0 &&
    items.filter(({ start }) => start >= first).length <= 2 &&
    !ITS_OWN.has(items[0]?.text ?? '') &&
    !piece.items.some(({ type, text }) => type === 'date' || HERE_AND_NOW.has(text))
  );
}

const ITS_OWN = wordSet('it they he she this that those these what which who i we none nothing no not never');

/** Whether a clause is the next but for a bare name: "4 figs, the alma, two years ago". */
function isNextTold(pieces: readonly Piece[], p: number, next: number): boolean {
  return pieces
    .slice(p + 1, next)
    .every(({ items }) => items.every((item) => item.type === 'tree' || item.classes.has('DET')));
}

/** "…, if only", "… (2024)", "…, or so my wife says": a few words behind a clause that take it back. */
function takesBack({ why }: FoundDoubt, { own, items, lead }: Piece, piece: Piece): boolean {
  if (own.length > 0) return false;
  // "tipped it friday, i think" doubts the day.
  if (items.length <= 2 && items.every(({ text }) => HEDGES.has(text)))
    return !piece.items.some(({ date }) => date);
  if (why === 'past' && items.some(({ text }) => YOUNG.has(text))) return true;
  if (why === 'past')
    return items.every(({ type, text }) =>
      type !== 'word' && type !== 'quantity' ? true : PAST_TAIL.has(text),
    );
  if (why === 'told')
    return (
      items.length <= 6 &&
      (TOLD_BY.has(items[0]?.text ?? '') || (lead?.text === 'or' && items[0]?.text === 'so'))
    );
  return why === 'if' && items.length <= 2 && (lead === null || items[0]?.text === 'only');
}

const HEDGES = wordSet(
  'i we think thought hope hopefully guess reckon suppose believe maybe perhaps possibly probably presumably supposedly',
);
const YOUNG = wordSet('young younger little kid child boy girl lad student teenager living single');
const PAST_TAIL = new Set([
  'years',
  'decades',
  'ages',
  'seasons',
  'summers',
  'back',
  'in',
  'of',
  'that',
  'was',
  'the',
  'all',
  'this',
  'ago',
]);
const TOLD_BY = new Set([
  'according',
  'at',
  'says',
  'said',
  'apparently',
  'supposedly',
  'allegedly',
  'reportedly',
]);
const FINISHED: ReadonlySet<ObservationKind> = new Set(['tipped', 'picked', 'dropped']);
const WHETHER = new Set([
  'right',
  'did',
  'have',
  'has',
  'really',
  'not',
  'no',
  'yes',
  'or',
  'was',
  'were',
  'maybe',
  'eh',
  'huh',
]);
/** "…, in the catalogue photo" */
const IN_PRINT = new Set(['in', 'on', 'from']);
const WHOEVER = new Set(['who', 'whether', 'if']);
const QUERY = new Set(['q', 'question', 'query']);
const HOPES = new Set(['hope', 'hopefully', 'fingers', 'pray', 'praying', 'hoping']);
const SEEING = new Set(['saw', 'spotted', 'noticed', 'found', 'clocked', 'seen']);

function carriesOn(doubt: FoundDoubt, step: Piece): boolean {
  if (step.join === 'but') return false;
  const first = step.items[0]?.text ?? '';
  const fresh = NEW_SUBJECT.has(first);
  switch (doubt.why) {
    case 'if':
      // "if it has figs i'll net it, the alma has 5 already", "should have done that, did this instead"
      if (first === 'well' || first === 'turns') return false;
      return !(
        step.own.length > 0 && step.items.some((item) => ['already', 'now', 'instead'].includes(item.text))
      );
    case 'past':
    case 'told':
      return (
        !step.items.some((item) => HERE_AND_NOW.has(item.text)) &&
        !(fresh && first !== 'it' && first !== 'they')
      );
    case 'other':
      return step.own.length === 0 && !['i', 'we', 'mine', 'my'].includes(first);
    case 'asked':
      // "wondering who tipped the alma"
      return step.join === 'or' || (step.join === 'sub' && WHOEVER.has(step.lead?.text ?? ''));
    default:
      // "almost binned it then the king fruited"
      if (step.lead?.text === 'then' && step.own.length > 0 && !step.baseForm) return false;
      return (
        step.join === 'colon' || (!fresh && (step.join === 'and' || step.join === 'or' || step.baseForm))
      );
  }
}
