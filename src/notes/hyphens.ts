import { isOrdinary } from './lexicon/ordinary.ts';
import { classesOf } from './lexicon/word-classes.ts';
import type { Token } from './tokens.ts';

/** "dec-ent", "side-shoots", "re-potted": one word where the halves together are one that is known. */
export function joinHyphens(tokens: readonly Token[]): readonly Token[] {
  if (!tokens.some(({ text }) => text === '-')) return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const [token, dash, next] = [tokens[i], tokens[i + 1], tokens[i + 2]];
    if (!token) continue;
    const whole = token.type === 'word' && next?.type === 'word' ? `${token.text}${next.text}` : '';
    if (
      next &&
      dash?.text === '-' &&
      dash.start === token.end &&
      next.start === dash.end &&
      whole.length > 4 &&
      next.text.length > 1 &&
      (isOrdinary(whole) || classesOf(whole).size > 0 || token.text === 'un' || token.text === 'non')
    ) {
      out.push({ ...token, text: whole, typed: `${token.typed}${next.typed}`, end: next.end });
      i += 2;
    } else out.push(token);
  }
  return out;
}
