import type { Hemisphere } from '../../engine/season.ts';
import type { DateOrder, Lean } from '../contract.ts';
import type { Phrase, Today } from './span.ts';
import type { Token } from './tokens.ts';
import type { Unit } from './words.ts';

/** What every rule reads from. `prose` demands proof that an ambiguous word is a date. */
export interface Input {
  readonly tokens: readonly Token[];
  readonly today: Today;
  readonly hemisphere: Hemisphere;
  readonly order: DateOrder;
  readonly lean: Lean;
  readonly prose: boolean;
  /** Anchors read so far, by token and depth: several rules ask for the same, and that at every depth. */
  readonly anchors: Map<number, Read | null>;
}

/** No such day, weekday and date that disagree, or "3 days later" with nothing to count from. */
export type Problem = 'impossible' | 'weekday' | 'unanchored';

/** A rule's find: the phrase and the token after it. */
export interface Read {
  readonly phrase: Phrase;
  readonly end: number;
  readonly problem?: Problem;
  /** Days are counted from an event told before ("3 days later"). */
  readonly relative?: { readonly count: number; readonly unit: Unit };
}

export type Rule = (input: Input, i: number, depth: number) => Read | null;

export function textAt(input: Input, i: number): string {
  return input.tokens[i]?.text ?? '';
}

/** The index after `texts` if they stand at `i` in a row, else −1. */
export function after(input: Input, i: number, ...texts: readonly string[]): number {
  for (let k = 0; k < texts.length; k++) {
    if (textAt(input, i + k) !== texts[k]) return -1;
  }
  return i + texts.length;
}

export function skip(input: Input, i: number, words: ReadonlySet<string>): number {
  let j = i;
  while (words.has(textAt(input, j))) j++;
  return j;
}

const ARTICLE = new Set(['the', 'teh']);

export function skipThe(input: Input, i: number): number {
  return ARTICLE.has(textAt(input, i)) ? i + 1 : i;
}

/** A count of units in digits or words ("3", "twenty five", "a couple of"), and the token after it. */
export function countAt(input: Input, i: number): { readonly value: number; readonly end: number } | null {
  const token = input.tokens[i];
  if (!token || token.number === null) return null;
  if (token.digits !== '') return token.digits.length <= 4 ? { value: token.number, end: i + 1 } : null;
  const next = input.tokens[i + 1];
  if (
    (token.text === 'a' || token.text === 'an') &&
    next?.number != null &&
    next.digits === '' &&
    next.number > 1
  ) {
    return countAt(input, i + 1);
  }
  if (token.text === 'couple' || token.text === 'dozen') {
    return { value: token.number, end: textAt(input, i + 1) === 'of' ? i + 2 : i + 1 };
  }
  if (token.number >= 20 && token.number < 100) {
    const j = textAt(input, i + 1) === '-' ? i + 2 : i + 1;
    const ones = input.tokens[j];
    if (ones?.number != null && ones.digits === '' && ones.number < 10 && ones.text.length > 2) {
      return { value: token.number + ones.number, end: j + 1 };
    }
  }
  if (token.text === 'one' && next?.text === 'hundred') return { value: 100, end: i + 2 };
  return { value: token.number, end: i + 1 };
}

export interface DayOfMonth {
  readonly value: number;
  readonly end: number;
  /** "5th" and "fifth", not "5". */
  readonly isOrdinal: boolean;
}

/** A day of the month as "5", "5th", "fifth", "twenty-first". */
export function dayOfMonthAt(input: Input, i: number): DayOfMonth | null {
  const token = input.tokens[i];
  if (!token) return null;
  if (token.ordinal !== null) return { value: token.ordinal, end: i + 1, isOrdinal: true };
  if (token.number === null) return null;
  if (token.digits === '') {
    if (token.number !== 20 && token.number !== 30) return null;
    const j = textAt(input, i + 1) === '-' ? i + 2 : i + 1;
    const ones = input.tokens[j];
    if (ones?.ordinal == null || ones.digits !== '' || ones.ordinal > 9) return null;
    return token.number + ones.ordinal <= 31
      ? { value: token.number + ones.ordinal, end: j + 1, isOrdinal: true }
      : null;
  }
  if (token.digits.length > 2 || token.number < 1 || token.number > 31) return null;
  return { value: token.number, end: i + 1, isOrdinal: false };
}

export interface YearRead {
  readonly year: number;
  readonly end: number;
}

const YEAR_WORDS = new Map([
  ['last', -1],
  ['next', 1],
  ['this', 0],
]);

/** "2026", ", 2026", "'26", "of 2026", "last year"; a bare "26" only where `short` is asked for. */
export function yearAt(input: Input, i: number, short = false): YearRead | null {
  let j = i;
  if (textAt(input, j) === ',' || textAt(input, j) === 'of' || textAt(input, j) === 'in') j++;
  const token = input.tokens[j];
  if (!token) return null;
  const shift = YEAR_WORDS.get(token.text);
  if (shift !== undefined && textAt(input, j + 1) === 'year') {
    return { year: input.today.year + shift, end: j + 2 };
  }
  if (/^['’]$/.test(token.text)) {
    const digits = input.tokens[j + 1];
    return digits?.glued && digits.digits.length === 2 && digits.number !== null
      ? { year: 2000 + digits.number, end: j + 2 }
      : null;
  }
  if (token.number === null) return null;
  if (token.digits.length === 4 && token.number >= 1900 && token.number <= 2199) {
    return { year: token.number, end: j + 1 };
  }
  if (short && token.digits.length === 2 && j === i) {
    const year = 2000 + token.number;
    const near = Math.abs(year - input.today.year) <= 5;
    return near && (!input.prose || isClauseEnd(input, j + 1)) ? { year, end: j + 1 } : null;
  }
  return null;
}

/** End of the text, or a sign that ends a clause. */
export function isClauseEnd(input: Input, i: number): boolean {
  const token = input.tokens[i];
  return (
    !token ||
    (!token.isWord && token.number === null && token.ordinal === null && !"-/'".includes(token.text))
  );
}

export function isClauseStart(input: Input, i: number): boolean {
  return i === 0 || isClauseEnd(input, i - 1);
}
