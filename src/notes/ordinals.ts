import type { Token } from './tokens.ts';

/** "1st fig off the ronde": digits with their ending as one word; days of the month are read from the text itself. */
export function spellOrdinals(tokens: readonly Token[]): readonly Token[] {
  if (!tokens.some(isFirst)) return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i];
    const next = tokens[i + 1];
    if (!token) continue;
    if (isFirst(token, i, tokens) && next) {
      out.push({ ...token, text: 'first', typed: token.typed + next.typed, end: next.end, type: 'word' });
      i++;
    } else out.push(token);
  }
  return out;
}

function isFirst(token: Token, i: number, tokens: readonly Token[]): boolean {
  const next = tokens[i + 1];
  return token.text === '1' && next?.text === 'st' && next.start === token.end;
}
