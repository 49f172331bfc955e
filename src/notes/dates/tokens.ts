import {
  DAY_WORDS,
  MONTHS,
  mendSlip,
  NUMBERS,
  ORDINALS,
  PARTS,
  type Part,
  SEASONS,
  type SeasonName,
  UNITS,
  type Unit,
  WEEKDAYS,
} from './words.ts';

/** Discord's longest message; what lies beyond is not read. */
export const MAX_TEXT_LENGTH = 4000;

/** One word, number or sign, with every role it may play in a date. */
export interface Token {
  /** Lower case, without apostrophes, typing slips mended. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  /** No space between this token and the one before. */
  readonly glued: boolean;
  readonly number: number | null;
  /** Digits as typed, '' for a number in words. */
  readonly digits: string;
  /** 1–31 for "22nd" and "fifth". */
  readonly ordinal: number | null;
  readonly month: number | null;
  readonly weekday: number | null;
  readonly unit: Unit | null;
  readonly part: Part | null;
  readonly season: SeasonName | null;
  readonly dayWord: number | null;
  readonly isWord: boolean;
}

// Digits with an ordinal ending, plain digits, a word with its apostrophes, or any other sign. No nesting, no
// two parts that can share a character: linear.
const TOKEN =
  /(\d+)(?:(st|nd|rd|th)(?![a-z]))?|[a-z]+(?:['’`][a-z]+)*(?:(?<=s)['’](?![a-z\d]))?|[^\s\da-z]/giu;
const APOSTROPHES = /['’`]/g;
/** Words that start with a digit; read as "tday", "tmoro". */
const TEXT_SPEAK = /\b(?:2day|2moro|2morrow)\b/gi;

export function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  let last = 0;
  let source = text.length > MAX_TEXT_LENGTH ? text.slice(0, MAX_TEXT_LENGTH) : text;
  if (source.includes('2')) source = source.replace(TEXT_SPEAK, (word) => `t${word.slice(1)}`);
  TOKEN.lastIndex = 0;
  for (let match = TOKEN.exec(source); match; match = TOKEN.exec(source)) {
    const start = match.index;
    const end = TOKEN.lastIndex;
    tokens.push(tokenOf(match[0], match[1], match[2], start, end, start === last && start > 0));
    last = end;
  }
  return tokens;
}

const OTHER: Omit<Token, 'text' | 'start' | 'end' | 'glued'> = {
  number: null,
  digits: '',
  ordinal: null,
  month: null,
  weekday: null,
  unit: null,
  part: null,
  season: null,
  dayWord: null,
  isWord: false,
};

function tokenOf(
  raw: string,
  digits: string | undefined,
  ending: string | undefined,
  start: number,
  end: number,
  glued: boolean,
): Token {
  if (digits !== undefined) {
    const value = Number(digits);
    const number = ending === undefined && digits.length <= 9 ? value : null;
    const ordinal = ending !== undefined && value >= 1 && value <= 31 ? value : null;
    return { ...OTHER, text: raw, start, end, glued, number, digits, ordinal };
  }
  const word = raw.toLowerCase();
  if (word.length === 1 && (word < 'a' || word > 'z')) return { ...OTHER, text: word, start, end, glued };
  if (!APOSTROPHES.test(word)) return { ...rolesOf(word), start, end, glued };
  APOSTROPHES.lastIndex = 0;
  return { ...rolesOfPossessive(word), start, end, glued };
}

/** "we'd" is no Wednesday; "yesterday's", "sunday's" and "two weeks'" keep their roles, "mother's" reads "mothers". */
function rolesOfPossessive(word: string): Roles {
  const base = /^([a-z]+)['’`]s$/.exec(word)?.[1];
  const roles = base === undefined ? null : rolesOf(base);
  if (roles && (roles.dayWord !== null || (roles.weekday !== null && roles.text.length > 4))) return roles;
  const plain = word.replace(APOSTROPHES, '');
  return { ...OTHER, text: plain, unit: UNITS.get(plain) ?? null, isWord: true };
}

type Roles = Omit<Token, 'start' | 'end' | 'glued'>;

/** Every spelling met so far; bounded, since members' words are not. */
const known = new Map<string, Roles>();
const MAX_KNOWN = 20_000;

function rolesOf(plain: string): Roles {
  const seen = known.get(plain);
  if (seen) return seen;
  const text = mendSlip(plain);
  const roles: Roles = {
    text,
    number: NUMBERS.get(text) ?? null,
    digits: '',
    ordinal: ORDINALS.get(text) ?? null,
    month: MONTHS.get(text) ?? null,
    weekday: WEEKDAYS.get(text) ?? null,
    unit: UNITS.get(text) ?? null,
    part: PARTS.get(text) ?? null,
    season: SEASONS.get(text) ?? null,
    dayWord: DAY_WORDS.get(text) ?? null,
    isWord: true,
  };
  if (known.size >= MAX_KNOWN) known.clear();
  known.set(plain, roles);
  return roles;
}
