import { intern } from '../lexicon/intern.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { holidayCores, startsHoliday } from './holidays.ts';
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
  STARTS,
  TIMES_OF_DAY,
  UNITS,
  type Unit,
  WEEKDAYS,
  WEEKENDS,
} from './words.ts';

/** Discord's longest message; what lies beyond is not read. */
export const MAX_TEXT_LENGTH = 4000;

/** What a spelling may be in a date. */
interface Roles {
  /** Lower case, without apostrophes, typing slips mended. */
  readonly text: string;
  readonly number: number | null;
  /** 1–31 for "22nd" and "fifth". */
  readonly ordinal: number | null;
  readonly month: number | null;
  readonly weekday: number | null;
  readonly unit: Unit | null;
  readonly part: Part | null;
  readonly season: SeasonName | null;
  readonly dayWord: number | null;
  readonly isWord: boolean;
  /** No date is without at least one such word; the cheap test whether a text is worth reading. */
  readonly isCore: boolean;
  /** A phrase may begin here. */
  readonly isStart: boolean;
}

/** One word, number or sign, with every role it may play in a date. */
export interface Token extends Roles {
  readonly start: number;
  readonly end: number;
  /** No space between this token and the one before. */
  readonly glued: boolean;
  /** Digits as typed, '' for a number in words. */
  readonly digits: string;
}

const APOSTROPHES = /['’`]/g;
/** Words with a digit, read as "tday", "tmoro", "bf". */
const TEXT_SPEAK = /\b(?:2day|2moro|2morrow|b4)\b/g;

/** Lower case in the same number of characters, so that places in the one are places in the other. */
function lowerCase(text: string): string {
  const lower = text.toLowerCase();
  return lower.length === text.length ? lower : text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
}

function isLetter(code: number): boolean {
  return code >= 97 && code <= 122;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

function isSpace(code: number): boolean {
  return code === 32 || (code >= 9 && code <= 13) || code === 0xa0 || code === 0x2009 || code === 0x202f;
}

function isApostrophe(code: number): boolean {
  return code === 39 || code === 0x2019 || code === 96;
}

/** Digits with their ordinal ending, words with their apostrophes, every other sign alone; one pass. */
export function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  let source = lowerCase(text.length > MAX_TEXT_LENGTH ? text.slice(0, MAX_TEXT_LENGTH) : text);
  if (source.includes('2') || source.includes('b4')) {
    source = source.replace(TEXT_SPEAK, (word) => (word === 'b4' ? 'bf' : `t${word.slice(1)}`));
  }
  let last = -1;
  for (let i = 0; i < source.length; ) {
    const code = source.charCodeAt(i);
    if (isSpace(code)) {
      i++;
      continue;
    }
    const token = isLetter(code)
      ? wordAt(source, i, last)
      : isDigit(code)
        ? numberAt(source, i, last)
        : signAt(source, i, last);
    tokens.push(token);
    last = token.end;
    i = token.end;
  }
  return tokens;
}

function wordAt(source: string, start: number, last: number): Token {
  let end = start + 1;
  let apostrophe = false;
  for (; end < source.length; end++) {
    const code = source.charCodeAt(end);
    if (isLetter(code)) continue;
    if (!isApostrophe(code)) break;
    const next = source.charCodeAt(end + 1);
    // Inside a word, or after the s of a plural: "weeks'".
    if (!isLetter(next) && (isDigit(next) || source[end - 1] !== 's')) break;
    apostrophe = true;
  }
  const raw = source.slice(start, end);
  const roles = apostrophe
    ? rolesOfPossessive(raw)
    : rolesOf(raw.endsWith('days') && happensAfter(source, end) ? raw.slice(0, -1) : raw);
  return tokenOf(roles, start, end, start === last, '');
}

/** "sundays hail": of that day, the apostrophe left out. */
function happensAfter(source: string, end: number): boolean {
  if (source[end] !== ' ') return false;
  let to = end + 1;
  while (isLetter(source.charCodeAt(to))) to++;
  return HAPPENINGS.has(source.slice(end + 1, to).toLowerCase());
}

const HAPPENINGS = wordSet(
  'hail hailstorm storm storms wind winds gale gales rain downpour heat heatwave frost freeze haul harvest pick picking pickings tally count',
);

const ENDINGS = new Set(['st', 'nd', 'rd', 'th']);

function numberAt(source: string, start: number, last: number): Token {
  let end = start + 1;
  while (isDigit(source.charCodeAt(end))) end++;
  const digits = source.slice(start, end);
  const hasEnding = ENDINGS.has(source.slice(end, end + 2)) && !isLetter(source.charCodeAt(end + 2));
  if (hasEnding) end += 2;
  return tokenOf(
    numberRoles(source.slice(start, end), digits, hasEnding),
    start,
    end,
    start === last,
    digits,
  );
}

function numberRoles(text: string, digits: string, hasEnding: boolean): Roles {
  const seen = known.get(text);
  if (seen) return seen;
  const value = Number(digits);
  const number = hasEnding || digits.length > 9 ? null : value;
  const ordinal = hasEnding && value >= 1 && value <= 31 ? value : null;
  return remember(
    text,
    makeRoles(text, {
      number,
      ordinal,
      isCore: (hasEnding && value >= 1 && value <= 99) || digits.length === 4,
      isStart: true,
    }),
  );
}

function signAt(source: string, start: number, last: number): Token {
  return tokenOf(signOf(source.charAt(start)), start, start + 1, start === last, '');
}

function tokenOf(roles: Roles, start: number, end: number, glued: boolean, digits: string): Token {
  const { text, number, ordinal, month, weekday, unit, part, season, dayWord, isWord, isCore, isStart } =
    roles;
  // Spelled out and not spread: one shape for all tokens, and several times as fast.
  return {
    text,
    number,
    ordinal,
    month,
    weekday,
    unit,
    part,
    season,
    dayWord,
    isWord,
    isCore,
    isStart,
    start,
    end,
    glued,
    digits,
  };
}

/** All roles in one order: objects of one shape are several times as fast to read. */
function makeRoles(text: string, some: Partial<Roles>): Roles {
  return {
    text: intern(text),
    number: some.number ?? null,
    ordinal: some.ordinal ?? null,
    month: some.month ?? null,
    weekday: some.weekday ?? null,
    unit: some.unit ?? null,
    part: some.part ?? null,
    season: some.season ?? null,
    dayWord: some.dayWord ?? null,
    isWord: some.isWord ?? false,
    isCore: some.isCore ?? false,
    isStart: some.isStart ?? false,
  };
}

/** Every spelling met so far; bounded, since members' words are not. */
const known = new Map<string, Roles>();
const MAX_KNOWN = 20_000;

function remember(spelling: string, roles: Roles): Roles {
  if (known.size >= MAX_KNOWN) known.clear();
  known.set(intern(spelling), roles);
  return roles;
}

function signOf(sign: string): Roles {
  // Slashes and dots between digits make dates without any word.
  return (
    known.get(sign) ??
    remember(sign, makeRoles(sign, { isCore: '/.-'.includes(sign), isStart: sign === '~' }))
  );
}

function rolesOf(plain: string): Roles {
  const seen = known.get(plain);
  if (seen) return seen;
  const text = mendSlip(plain);
  const roles = {
    number: NUMBERS.get(text) ?? null,
    ordinal: ORDINALS.get(text) ?? null,
    month: MONTHS.get(text) ?? null,
    weekday: WEEKDAYS.get(text) ?? null,
    unit: UNITS.get(text) ?? null,
    part: PARTS.get(text) ?? null,
    season: SEASONS.get(text) ?? null,
    dayWord: DAY_WORDS.get(text) ?? null,
    isWord: true,
  };
  const { month, weekday, unit, season, dayWord, ordinal, number, part } = roles;
  const isNamed = month !== null || weekday !== null || unit !== null || season !== null || dayWord !== null;
  const isOther = WEEKENDS.has(text) || TIMES_OF_DAY.has(text) || holidayCores.has(text) || text === 'ago';
  const isCore = isNamed || isOther || (ordinal !== null && ordinal > 3);
  const isStart = isNamed || STARTS.has(text) || part !== null || number !== null || ordinal !== null;
  return remember(
    plain,
    makeRoles(text, { ...roles, isCore, isStart: isStart || WEEKENDS.has(text) || startsHoliday(text) }),
  );
}

/** "we'd" is no Wednesday; "yesterday's", "sunday's" and "two weeks'" keep their roles, "mother's" reads "mothers". */
function rolesOfPossessive(word: string): Roles {
  const seen = known.get(word);
  if (seen) return seen;
  const base = word.slice(0, -2);
  const roles = /['’`]s$/.test(word) && !APOSTROPHES.test(base) ? rolesOf(base) : null;
  APOSTROPHES.lastIndex = 0;
  if (roles && (roles.dayWord !== null || (roles.weekday !== null && roles.text.length > 4)))
    return remember(word, roles);
  const text = word.replace(APOSTROPHES, '');
  const unit = UNITS.get(text) ?? null;
  const isCore = unit !== null || TIMES_OF_DAY.has(text) || holidayCores.has(text);
  return remember(word, makeRoles(text, { unit, isWord: true, isCore, isStart: true }));
}
