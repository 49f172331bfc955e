import { wordSet } from './lexicon/word-set.ts';

/** A message that may put the last note right, its words of correction taken off. */
export interface MarkedText {
  /** What it should have been. */
  readonly right: string;
  /** What it was not, where that is said: "alma, not king". */
  readonly wrong: string | null;
  /** How plainly it says that something is put right: "sorry, …" does, "it was …" may, "monday" does not. */
  readonly mark: 'plain' | 'faint' | 'none';
  /** Such a word opens the message. */
  readonly leads: boolean;
}

/** A word or a sign of the message, with its place. */
interface Piece {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly isSign: boolean;
}

type Phrase = readonly string[];

/** One phrase a row, the longest first, so that "that should be" comes before "that". */
function phrases(rows: string): readonly Phrase[] {
  return rows
    .split('|')
    .map((row) => row.trim().split(/\s+/))
    .sort((a, b) => b.length - a.length);
}

const PLAIN = phrases(`
  nope|nah|sorry|oops|oop|whoops|ugh|argh|damn|wait|correction|typo|autocorrect|i mean|i meant|mean|meant|meaning
  |i meant to say|i meant to put|i meant to write|i meant to type|make|make it|make that|change it to|change that to
  |call it|scratch that|strike that|scrub that|scrap that|that should be|that should have been|that should say|should be|should have been
  |should say|my bad|my mistake|rather|edit|hang on|hold on|i lied|tell a lie|miscounted|recounted|misremembered
  |wrong tree|wrong one|wrong day|wrong date|wrong number|wrong count|wrong pot|wrong variety|wrong way round
  |the wrong tree|the wrong one|the wrong day|the wrong date|got the wrong tree|got the wrong day|*
`);
const FAINT = phrases(`
  actually|that was|that were|that is|it was|it is|it's|its|those were|those are|these were|these are|they were|they are
  |they're|theyre|that's|thats|ah|oh|that|was|er|um|of course
`);
/** The same behind what is put right; "actually" alone is a way of talking. */
const PLAIN_BEHIND = phrases(`
  i mean|i meant|sorry|oops|whoops|instead|that was|it should be|that should be|that should have been|my bad
  |my mistake|typo|autocorrect|rather|duh|doh|correction
`);
const FAINT_BEHIND = phrases('actually|of course|come to think of it|now i think of it');
/** Between what is right and what is wrong. */
const CONTRASTS = phrases('not|and not|rather than|instead of');
/** Behind "no" without a comma: "no figs" denies, "no it was 4" puts right. */
const BEHIND_NO = wordSet('the it that i wait sorry those these they my make');
/** "the tall one was not tipped" denies. */
const AUXILIARY = wordSet(`
  is are was were am has have had do does did been be will would could should might must may can cannot probably maybe
  still just only why if
`);

/** Takes the words of correction off; null where nothing is left. Linear in the text. */
export function readMarks(text: string): MarkedText | null {
  const pieces = piecesOf(text);
  let mark: MarkedText['mark'] = 'none';
  let first = skipSigns(pieces, 0);
  for (;;) {
    if (pieces[first]?.text === 'not') {
      const said = notFirst(text, pieces, first + 1);
      return said && { ...said, mark: mark === 'none' && said.right === '' ? 'faint' : 'plain', leads: true };
    }
    const plain = isNo(pieces, first) ? 1 : lengthAt(pieces, first, PLAIN);
    const length = plain || lengthAt(pieces, first, FAINT);
    if (length === 0 || isAsked(pieces, first)) break;
    if (plain > 0) mark = 'plain';
    else if (mark === 'none') mark = 'faint';
    first = skipSigns(pieces, first + length);
  }
  const leads = mark === 'plain';
  let last = lastWord(pieces, pieces.length);
  for (;;) {
    const plain = lengthBefore(pieces, first, last, PLAIN_BEHIND);
    const length = plain || lengthBefore(pieces, first, last, FAINT_BEHIND);
    if (length === 0) break;
    last = lastWord(pieces, last - length);
    if (plain > 0) mark = 'plain';
    else if (mark === 'none') mark = 'faint';
  }
  const right = textOf(text, pieces, first, last);
  if (right === '') return null;
  const said = contrast(text, pieces, first, last);
  return said ? { ...said, mark: 'plain', leads } : { right, wrong: null, mark, leads };
}

function piecesOf(text: string): Piece[] {
  return [...text.matchAll(/[\p{L}\p{N}'#.]*[\p{L}\p{N}']|[^\s\p{L}\p{N}']/gu)].map(
    ({ 0: found, index }) => ({
      text: found,
      start: index,
      end: index + found.length,
      isSign: /^[^\p{L}\p{N}'*]/u.test(found),
    }),
  );
}

function skipSigns(pieces: readonly Piece[], from: number): number {
  let at = from;
  while (pieces[at]?.isSign) at++;
  return at;
}

/** Behind the last word before `end`. */
function lastWord(pieces: readonly Piece[], end: number): number {
  let at = end;
  while (at > 0 && pieces[at - 1]?.isSign) at--;
  return at;
}

function textOf(text: string, pieces: readonly Piece[], first: number, last: number): string {
  const [from, to] = [pieces[first], pieces[last - 1]];
  return from && to && first < last ? text.slice(from.start, to.end) : '';
}

function isAt(pieces: readonly Piece[], at: number, phrase: Phrase): boolean {
  return at >= 0 && phrase.every((word, k) => pieces[at + k]?.text === word);
}

function lengthAt(pieces: readonly Piece[], at: number, all: readonly Phrase[]): number {
  return all.find((phrase) => isAt(pieces, at, phrase))?.length ?? 0;
}

/** Something must be left before it. */
function lengthBefore(pieces: readonly Piece[], first: number, last: number, all: readonly Phrase[]): number {
  return (
    all.find((phrase) => last - phrase.length > first && isAt(pieces, last - phrase.length, phrase))
      ?.length ?? 0
  );
}

function isNo(pieces: readonly Piece[], at: number): boolean {
  const [no, next] = [pieces[at], pieces[at + 1]];
  if (no?.text !== 'no' || !next) return false;
  // "no-name fig"
  if (next.isSign) return next.text !== '-' || next.start > no.end;
  return BEHIND_NO.has(next.text) || /^\d+$/.test(next.text);
}

/** "was it monday" */
function isAsked(pieces: readonly Piece[], at: number): boolean {
  return pieces[at]?.text === 'was' && ['it', 'that'].includes(pieces[at + 1]?.text ?? '');
}

type Contrast = Pick<MarkedText, 'right' | 'wrong'>;

/** Behind "not": "king, alma", "king but the alma", "king, it was the alma", "the tall one the little one". */
function notFirst(text: string, pieces: readonly Piece[], first: number): Contrast | null {
  const last = lastWord(pieces, pieces.length);
  const parts = pieces.slice(first, last);
  const isTwoOnes =
    parts.length === 6 && [0, 3].every((k) => parts[k]?.text === 'the' && parts[k + 2]?.text === 'one');
  const cut = isTwoOnes
    ? first + 3
    : first + parts.findIndex((_, k) => k > 0 && endsWrong(pieces, first + k));
  if (cut <= first) {
    const wrong = textOf(text, pieces, first, last);
    return wrong === '' ? null : { right: '', wrong };
  }
  let from = isTwoOnes ? cut : skipSigns(pieces, cut);
  from = skipSigns(pieces, from + lengthAt(pieces, from, BUT));
  from += lengthAt(pieces, from, IT_WAS);
  const right = textOf(text, pieces, from, last);
  return right === '' ? null : { right, wrong: textOf(text, pieces, first, lastWord(pieces, cut)) };
}

const BUT = phrases('but');
const IT_WAS = phrases("it was|that was|it's|its");

function endsWrong(pieces: readonly Piece[], at: number): boolean {
  const piece = pieces[at];
  if (!piece) return false;
  if (piece.text === '-') return piece.start > (pieces[at - 1]?.end ?? 0);
  return piece.isSign || piece.text === 'but' || isAt(pieces, at, ['it', 'was']);
}

/** "alma, not king", "monday rather than sunday"; "the tall one was not tipped" denies. */
function contrast(text: string, pieces: readonly Piece[], first: number, last: number): Contrast | null {
  for (let at = first + 1; at < last; at++) {
    const length = lengthAt(pieces, at, CONTRASTS);
    if (length === 0 || at + length >= last) continue;
    const end = lastWord(pieces, at);
    if (AUXILIARY.has(pieces[end - 1]?.text ?? '')) return null;
    if (pieces.slice(at + length, last).some(({ text: sign }) => sign === ',' || sign === ';')) return null;
    return { right: textOf(text, pieces, first, end), wrong: textOf(text, pieces, at + length, last) };
  }
  return null;
}
