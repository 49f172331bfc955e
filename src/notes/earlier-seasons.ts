import { addDays, type Day } from '../engine/day.ts';
import { isBroughtIn } from './guesses.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

const SEASONS = wordSet(
  'summer spring autumn fall winter season year drought heatwave back in of since from during july june august september may',
);
/** What is longer ago was another season in either hemisphere. */
const OLDEST_DAYS = 300;
const SUBJECTS = new Set(['i', 'we', 'it', 'they']);
const LONG_AGO = /\b(?:years?|seasons?|summers?|decades?)\b/i;
const LAST_ONE =
  /\b(?:last|previous|prior) (?:time|year|season|summer|autumn|winter|spring|jan|feb|mar|apr|may|june?|july?|aug|sep|oct|nov|dec)/i;

/** A bare number of the last ten years and nothing behind it that it could count; not "1 in 20". */
function isLoneYear(items: readonly Item[], i: number, number: number, year: number): boolean {
  const behind = items[i + 1];
  return (
    number < year % 100 &&
    number >= (year % 100) - 10 &&
    (behind === undefined || behind.type === 'quantity') &&
    items[i - 2]?.quantity?.value !== 1
  );
}

/** Where a year before this one stands ("in 2023", "summer of '24", "drought of 22", "3 seasons ago"). */
export function earlierSeasons(items: readonly Item[], today: Day): number[] {
  const found: number[] = [];
  for (let i = 0; i < items.length; i++) if (isEarlierSeason(items, i, today)) found.push(i);
  return found;
}

function isEarlierSeason(items: readonly Item[], i: number, today: Day): boolean {
  const item = items[i];
  // Most words are in letters, and no phrase of time.
  if (!item || (item.type === 'word' && item.text !== 'measure' && !/^['0-9]/.test(item.typed))) return false;
  const year = Number(today.slice(0, 4));
  const before = items[i - 1]?.text ?? '';
  const next = items[i + 1]?.text ?? '';
  if ((item.type === 'date' || item.type === 'vague') && LAST_ONE.test(item.typed)) return true;
  if (item.date && item.date.on < addDays(today, -OLDEST_DAYS)) return true;
  if (
    LONG_AGO.test(item.typed) &&
    (item.type !== 'word' || item.text === 'measure') &&
    ['ago', 'back', 'before', 'earlier'].includes(next)
  )
    return true;
  const digits = /^'?(\d{2}|\d{4})(?!\d)[^\p{L}]*$/u.exec(item.typed)?.[1];
  if (digits === undefined || item.type === 'date') return false;
  const number = Number(digits);
  if (digits.length === 4) return number >= 1900 && number < year && before !== 'pot';
  if (item.typed.startsWith("'")) return number < year % 100;
  // "this year 12"
  if (before === 'year' && items[i - 2]?.text === 'this') return false;
  if (!(SEASONS.has(before) || items[i - 1]?.type === 'date')) return false;
  const counted = items[i + 1]?.classes.has('FRUIT') || items[i + 1]?.type === 'tree';
  const told = items[i + 1];
  // "in 09 i planted", "in 24 the alma"
  if (
    before === 'in' &&
    !isBroughtIn(items, i) &&
    number < year % 100 &&
    told &&
    (told.classes.has('DET') ||
      (told.type === 'tree' && !isCountedNoun(items[i + 2])) ||
      SUBJECTS.has(told.text))
  )
    return true;
  // "never made it past brebas in 22"
  if (before === 'in' && isLoneYear(items, i, number, year)) return true;
  return (
    number >= 10 &&
    number < year % 100 &&
    (before === 'of' || before === 'in' || !counted) &&
    [
      'summer',
      'spring',
      'season',
      'winter',
      'autumn',
      'fall',
      'drought',
      'heatwave',
      'back',
      'time',
      'year',
      'july',
      'june',
      'august',
    ].some((word) => before === word || items[i - 2]?.text === word)
  );
}

/** "heeled in 10 ronde cuttings": a number of them, no year. */
function isCountedNoun(item: Item | undefined): boolean {
  return isAnyOf(item, ['CUTTING', 'FRUIT', 'SHOOT']);
}
