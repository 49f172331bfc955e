import { expand } from './lexicon/contractions.ts';
import { intern } from './lexicon/intern.ts';

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

/** Longest message that is read; Discord's own limit for a slash option is above what anybody types here. */
export const LONGEST_MESSAGE = 2000;

/** Words, numbers, runs of line breaks or of dots, and any other visible character alone; one pass, letter by letter. */
export function tokenise(text: string): Token[] {
  const plain = mendZeros(straighten(text));
  const tokens: Token[] = [];
  for (let start = 0; start < plain.length; ) {
    const kind = kindAt(plain, start);
    const end = endOf(plain, start, kind);
    if (kind !== SPACE) pushPiece(tokens, plain, start, end, kind);
    start = end;
  }
  return tokens;
}

/** "0ff the alma", "0n it": the digit for the letter. */
function mendZeros(plain: string): string {
  return plain.includes('0ff') || plain.includes('0n')
    ? plain.replace(/(?<![\p{L}\p{N}.])0(?=(?:ff|n)(?!\p{L}))/gu, 'o')
    : plain;
}

type CharKind = typeof SPACE | typeof LETTER | typeof DIGIT | typeof FRACTION | typeof SIGN;
const SPACE = 0;
const LETTER = 1;
const DIGIT = 2;
/** ½ and its like, each a number by itself. */
const FRACTION = 3;
const SIGN = 4;

/** Kinds of the ASCII characters by their code. */
const ASCII_KINDS: readonly CharKind[] = Array.from({ length: 128 }, (_, code) =>
  kindOfChar(String.fromCharCode(code)),
);

function kindOfChar(char: string): CharKind {
  if (/[\p{L}\p{M}]/u.test(char) && char !== '\uFE0F') return LETTER;
  if (/[0-9]/.test(char)) return DIGIT;
  if (/[½¼¾⅓⅔]/.test(char)) return FRACTION;
  // What only makes a picture of the sign before it.
  if (char === '\uFE0F' || char === '\u200D') return SPACE;
  // Numbers of other kinds ("²", "Ⅷ") are passed over like spaces.
  return /[\s\p{N}]/u.test(char) && char !== '\n' ? SPACE : SIGN;
}

function kindAt(plain: string, at: number): CharKind {
  const code = plain.codePointAt(at);
  if (code === undefined) return SPACE;
  return ASCII_KINDS[code] ?? kindOfChar(String.fromCodePoint(code));
}

/** Where the piece ends that begins at `start` with a character of `kind`. */
function endOf(plain: string, start: number, kind: CharKind): number {
  switch (kind) {
    case LETTER:
      return isWith(plain, start) ? endOfWith(plain, start) : endOfWord(plain, start);
    case DIGIT:
      return endOfNumber(plain, start);
    case SIGN:
      return endOfSign(plain, start);
    default:
      return nextChar(plain, start);
  }
}

function nextChar(plain: string, at: number): number {
  return (plain.codePointAt(at) ?? 0) > 0xffff ? at + 2 : at + 1;
}

/** Letters, with apostrophes between them and perhaps one behind. */
function endOfWord(plain: string, start: number): number {
  let end = start;
  for (;;) {
    while (kindAt(plain, end) === LETTER) end = nextChar(plain, end);
    if (plain[end] !== "'") return end;
    end++;
    if (kindAt(plain, end) !== LETTER) return end;
  }
}

/** Digits, with dots and commas between them. */
function endOfNumber(plain: string, start: number): number {
  let end = start + 1;
  for (;;) {
    while (kindAt(plain, end) === DIGIT) end++;
    const sign = plain[end];
    if ((sign !== '.' && sign !== ',') || kindAt(plain, end + 1) !== DIGIT) return end;
    end++;
  }
}

function endOfSign(plain: string, start: number): number {
  const sign = plain[start];
  if (sign === "'") return isShortYear(plain, start) ? start + 3 : start + 1;
  if (sign !== '\n' && sign !== '.') return nextChar(plain, start);
  let end = start + 1;
  while (plain[end] === sign) end++;
  return end;
}

/** '25. */
function isShortYear(plain: string, start: number): boolean {
  return (
    kindAt(plain, start + 1) === DIGIT &&
    kindAt(plain, start + 2) === DIGIT &&
    !isAlphanumeric(plain, start + 3)
  );
}

/** "w/" and "w/o". */
function isWith(plain: string, start: number): boolean {
  if (plain[start] !== 'w' || plain[start + 1] !== '/' || isAlphanumericBefore(plain, start)) return false;
  return !isAlphanumeric(plain, endOfWith(plain, start));
}

function endOfWith(plain: string, start: number): number {
  return plain[start + 2] === 'o' ? start + 3 : start + 2;
}

const ALPHANUMERIC = /[\p{L}\p{N}]/u;

function isAlphanumeric(plain: string, at: number): boolean {
  const code = plain.codePointAt(at);
  return code !== undefined && ALPHANUMERIC.test(String.fromCodePoint(code));
}

function isAlphanumericBefore(plain: string, at: number): boolean {
  const code = plain.charCodeAt(at - 1);
  return isAlphanumeric(plain, code >= 0xdc00 && code < 0xe000 ? at - 2 : at - 1);
}

/** Behind "id": not the identity of anything. */
const WOULD_AFTER = /^ (?:have|love|like|rather|never|be|prefer|hate|not|say)(?: |$)/;

function pushPiece(tokens: Token[], plain: string, start: number, end: number, kind: CharKind): void {
  const piece = plain.slice(start, end);
  // "id have pinched it"
  if (piece === 'id' && WOULD_AFTER.test(plain.slice(end, end + 8))) {
    tokens.push({ text: 'i', typed: 'i', start, end: start + 1, type: 'word' });
    tokens.push({ text: 'would', typed: 'd', start: start + 1, end, type: 'word' });
    return;
  }
  if (piece === "'" && plain.startsWith("'em", start)) return;
  for (const { text, typed, type, start: from, end: to } of known.get(piece) ?? remember(piece, kind))
    tokens.push({ text, typed, start: start + from, end: start + to, type });
}

/** Pieces met, with the tokens each stands for, as if it stood at the start; bounded, since members' words are not. */
const known = new Map<string, readonly Token[]>();
const MOST_KNOWN = 5000;

function remember(piece: string, kind: CharKind): readonly Token[] {
  const tokens = tokensFor(piece, kind).map(({ text, typed, start, end, type }) => ({
    text: intern(text),
    typed: intern(typed),
    start,
    end,
    type,
  }));
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(intern(piece), tokens);
  return tokens;
}

function tokensFor(piece: string, kind: CharKind): Token[] {
  const whole = { typed: piece, start: 0, end: piece.length };
  if (piece === 'w/') return [{ ...whole, text: 'with', type: 'word' }];
  if (piece === 'w/o') return [{ ...whole, text: 'without', type: 'word' }];
  if (kind === LETTER) return tokensOfWord(piece);
  // '25: the year.
  if (piece.startsWith("'") && piece.length === 3)
    return [{ ...whole, text: `20${piece.slice(1)}`, type: 'number' }];
  return [{ ...whole, text: piece, type: kind === SIGN ? 'mark' : 'number' }];
}

function tokensOfWord(piece: string): Token[] {
  const word = piece.endsWith("'") && piece !== "n'" ? piece.slice(0, -1) : piece;
  const whole = { typed: word, start: 0, end: piece.length, type: 'word' } as const;
  const expanded = expand(word);
  if (expanded) return expanded.map((text) => ({ ...whole, text }));
  // "t'mission": the north of England's "the".
  if (/^t'[a-z]{3,}/.test(word))
    return [
      { ...whole, text: 'the', typed: "t'", end: 2 },
      ...tokensOfWord(word.slice(2)).map((token) => ({
        ...token,
        start: token.start + 2,
        end: token.end + 2,
      })),
    ];
  const ending = /^(.+)'(s|d|ll|re|ve|m)$/.exec(word);
  const [, stem = '', short = ''] = ending ?? [];
  if (!ending) return [{ ...whole, text: word.replaceAll("'", '') }];
  const tail =
    short === 's' ? "'s" : short === 'll' || short === 'd' ? 'will' : short === 've' ? 'have' : 'are';
  return [
    { ...whole, text: stem, typed: stem, end: stem.length },
    { ...whole, text: tail, typed: `'${short}`, start: stem.length },
  ];
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
