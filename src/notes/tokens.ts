import { expand } from './lexicon/contractions.ts';

/** A word, number or mark of a message, with its place in it. */
export interface Token {
  /** Lower case, straight quotes, corrected where it was a slip; what the grammar works on. */
  readonly text: string;
  /** As typed, in lower case. */
  readonly typed: string;
  readonly start: number;
  readonly end: number;
  readonly type: 'word' | 'number' | 'mark';
}

/**
 * Number with its ordinal ending, word with inner apostrophes, line break, run of dots, or one other visible
 * character. Each alternative starts with a different kind of character, so there is nothing to backtrack into.
 */
const PIECE =
  /(?<![\p{L}\p{N}])w\/o?(?![\p{L}\p{N}])|'\d\d(?![\p{L}\p{N}])|\d+(?:[.,]\d+)*|[½¼¾⅓⅔]|[\p{L}\p{M}]+(?:'[\p{L}\p{M}]+)*'?|\n+|\.{2,}|…|[^\s\p{L}\p{M}\p{N}]/gu;

/** Longest message that is read; Discord's own limit for a slash option is above what anybody types here. */
export const LONGEST_MESSAGE = 2000;

export function tokenise(text: string): Token[] {
  const plain = straighten(text);
  const tokens: Token[] = [];
  for (const match of plain.matchAll(PIECE)) {
    const typed = match[0];
    const start = match.index;
    const end = start + typed.length;
    if (typed === 'w/' || typed === 'w/o') {
      tokens.push({ text: typed === 'w/' ? 'with' : 'without', typed, start, end, type: 'word' });
    } else if (typed.length === 3 && /^'\d\d$/.test(typed)) {
      // '25: the year.
      tokens.push({ text: `20${typed.slice(1)}`, typed, start, end, type: 'number' });
    } else if (/^[\d½¼¾⅓⅔]/u.test(typed)) {
      tokens.push({ text: typed, typed, start, end, type: 'number' });
    } else if (/^[\p{L}\p{M}]/u.test(typed)) {
      pushWord(tokens, typed, start, end);
    } else if (typed === "'" && plain.slice(start, start + 3) === "'em") {
    } else {
      tokens.push({ text: typed, typed, start, end, type: 'mark' });
    }
  }
  return tokens;
}

function pushWord(tokens: Token[], typed: string, start: number, end: number): void {
  const word = typed.endsWith("'") && typed !== "n'" ? typed.slice(0, -1) : typed;
  const expanded = expand(word);
  if (expanded) {
    for (const text of expanded) tokens.push({ text, typed: word, start, end, type: 'word' });
    return;
  }
  const ending = /^(.+)'(s|d|ll|re|ve|m)$/.exec(word);
  if (ending) {
    const cut = start + (ending[1]?.length ?? 0);
    tokens.push({ text: ending[1] ?? word, typed: ending[1] ?? word, start, end: cut, type: 'word' });
    const tail =
      ending[2] === 's'
        ? "'s"
        : ending[2] === 'll' || ending[2] === 'd'
          ? 'will'
          : ending[2] === 've'
            ? 'have'
            : 'are';
    tokens.push({ text: tail, typed: `'${ending[2]}`, start: cut, end, type: 'word' });
    return;
  }
  const bare = word.replaceAll("'", '');
  tokens.push({ text: bare, typed: word, start, end, type: 'word' });
}

/** Letters whose lower case may be longer, and quotes to straighten. */
const NEEDS_CARE = /[^\p{ASCII}]|`/u;

/** Lower case and straight quotes, keeping every character's place. */
function straighten(text: string): string {
  if (text.length <= LONGEST_MESSAGE && !NEEDS_CARE.test(text)) return text.toLowerCase();
  let out = '';
  for (const ch of text.slice(0, LONGEST_MESSAGE)) {
    if (ch === '’' || ch === '‘' || ch === '`' || ch === '´') {
      out += "'";
      continue;
    }
    const lower = ch.toLowerCase();
    out += lower.length === ch.length ? lower : ch;
  }
  return out;
}
