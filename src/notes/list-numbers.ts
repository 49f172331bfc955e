import type { Token } from './tokens.ts';

/** "1. tipped the alma 2. fed the king": the numbers of a list are no numbers of anything, and part it. */
export function dropListNumbers(tokens: readonly Token[]): readonly Token[] {
  // Most messages have none, and lists of nothing cost as much as the looking.
  if (!tokens.some(({ type }) => type === 'number')) return tokens;
  const at = tokens.flatMap((_, i) => (isListNumber(tokens, i) ? [i] : []));
  const inOrder = at.length > 1 && at.every((i, n) => Number(tokens[i]?.text) === n + 1);
  if (!inOrder) return tokens;
  const out: Token[] = [];
  tokens.forEach((token, i) => {
    if (at.includes(i)) {
      if (i > 0) out.push({ ...token, text: '\n', type: 'mark' });
    } else if (!at.includes(i - 1)) out.push(token);
  });
  return out;
}

/** A small number with a full stop or a bracket behind it and a space behind that. */
function isListNumber(tokens: readonly Token[], i: number): boolean {
  const [number, sign, next] = [tokens[i], tokens[i + 1], tokens[i + 2]];
  if (number?.type !== 'number' || !/^\d$/.test(number.text) || !sign || !next) return false;
  return (
    ['.', ')'].includes(sign.text) &&
    sign.start === number.end &&
    next.start > sign.end &&
    next.type === 'word'
  );
}
