import type { Token } from './tokens.ts';

const MARKS: ReadonlyMap<string, string> = new Map([
  ['comma', ','],
  ['period', '.'],
  ['fullstop', '.'],
  ['colon', ':'],
  ['semicolon', ';'],
]);

/** Marks that were spoken to a phone: "alma has figs period", "full stop", "question mark", "new line". */
export function writeSpokenMarks(tokens: readonly Token[]): readonly Token[] {
  if (!tokens.some(({ text }) => MARKS.has(text) || TAILS.has(text))) return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i];
    if (!token) continue;
    const next = tokens[i + 1];
    const pair = next ? PAIRS.get(`${token.text} ${next.text}`) : undefined;
    const one = MARKS.get(token.text);
    if (pair !== undefined && next) {
      out.push({ ...token, text: pair, end: next.end, type: 'mark' });
      i++;
    } else if (one !== undefined && i > 0 && !BEFORE_A_NOUN.has(tokens[i - 1]?.text ?? '')) {
      out.push({ ...token, text: one, type: 'mark' });
    } else out.push(token);
  }
  return out;
}

const TAILS = new Set(['stop', 'mark', 'point', 'line', 'paragraph', 'colon', 'bracket', 'brackets']);

const PAIRS: ReadonlyMap<string, string> = new Map([
  ['full stop', '.'],
  ['question mark', '?'],
  ['exclamation mark', '!'],
  ['exclamation point', '!'],
  ['new line', '\n'],
  ['new paragraph', '\n'],
  ['next line', '\n'],
  ['semi colon', ';'],
  ['open bracket', '('],
  ['close bracket', ')'],
  ['open brackets', '('],
  ['close brackets', ')'],
]);

/** "a dry period", "the period". */
const BEFORE_A_NOUN = new Set([
  'a',
  'the',
  'this',
  'that',
  'dry',
  'wet',
  'hot',
  'cold',
  'long',
  'short',
  'my',
  'her',
]);
