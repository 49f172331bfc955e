import type { Token } from './tokens.ts';

/**
 * "1st fig off the ronde": digits with their ending as one word; days of the month are read from the text itself.
 * "the tall 1": the digit for the word.
 */
export function spellOrdinals(tokens: readonly Token[]): readonly Token[] {
  if (!tokens.some(isOne)) return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i];
    const next = tokens[i + 1];
    if (!token) continue;
    if (isFirst(token, i, tokens) && next) {
      out.push({ ...token, text: 'first', typed: token.typed + next.typed, end: next.end, type: 'word' });
      i++;
    } else if (isOne(token) && isTheOne(i, tokens)) out.push({ ...token, text: 'one', type: 'word' });
    else out.push(token);
  }
  return out;
}

function isOne({ text }: Token): boolean {
  return text === '1';
}

const SIZES = new Set([
  'tall',
  'little',
  'small',
  'big',
  'short',
  'large',
  'taller',
  'smaller',
  'other',
  'wee',
]);
const POINTING = new Set(['the', 'my', 'that', 'this', 'our']);

/** "the tall 1", "my other 1". */
function isTheOne(i: number, tokens: readonly Token[]): boolean {
  return SIZES.has(tokens[i - 1]?.text ?? '') && POINTING.has(tokens[i - 2]?.text ?? '');
}

function isFirst(token: Token, i: number, tokens: readonly Token[]): boolean {
  const next = tokens[i + 1];
  return token.text === '1' && next?.text === 'st' && next.start === token.end;
}
