import { Chrono, en, type ParsedResult, type Refiner } from 'chrono-node';
import { fromEpochDays } from '../../engine/day.ts';
import { type Input, type Rule, textAt } from './input.ts';
import { dayNumber, fixed, single } from './span.ts';
import { mendSlip } from './words.ts';

/**
 * What chrono-node reads for us: amounts of several units ("1 week and 3 days ago", "in 2 months and 1 week") and
 * dates with the year first ("2026 august 22"). Its casual parsers stay out, they take prose for dates.
 *
 * chrono ignores IANA zones and falls back on the host's (wanasit/chrono#553), so it is only ever given noon UTC of
 * the member's day with a fixed offset of 0, and only its day, month and year are used.
 */
const PARSERS = new Set([
  'ENTimeUnitWithinFormatParser',
  'ENTimeUnitAgoFormatParser',
  'ENTimeUnitLaterFormatParser',
  'ENYearMonthDayParser',
]);

/** Whole days only, and only when the match starts the text: a rule reads at its own place. */
const wholeDays: Refiner = {
  refine: (_context, results) =>
    results.filter(
      ({ index, start }) => index === 0 && !start.isCertain('hour') && !start.isCertain('minute'),
    ),
};

let chrono: Chrono | null = null;

function chronoOf(): Chrono {
  const { parsers } = en.configuration.createConfiguration(true);
  return new Chrono({
    parsers: parsers.filter((parser) => PARSERS.has(parser.constructor.name)),
    refiners: [wholeDays],
  });
}

/** Longest phrase handed over, in characters; chrono tries each of its patterns at every place. */
const REACH = 60;

export const readByChrono: Rule = (input, i) => {
  if (!isCompound(input, i) && !isYearFirst(input, i)) return null;
  const first = input.tokens[i];
  if (!first) return null;
  // Spellings are mended and words set apart, so that the match's length tells its last token.
  const words: string[] = [];
  const ends: number[] = [];
  let length = 0;
  for (let j = i; input.tokens[j] && length < REACH; j++) {
    const token = input.tokens[j];
    if (!token) break;
    const word = mendSlip(token.text === 'wk' || token.text === 'wks' ? 'weeks' : token.text);
    words.push(word);
    length += word.length + 1;
    ends.push(length - 1);
  }
  chrono ??= chronoOf();
  const instant = new Date(`${fromEpochDays(input.today.day)}T12:00:00Z`);
  const results = chrono.parse(words.join(' '), { instant, timezone: 0 });
  const best = results.toSorted((a, b) => b.text.length - a.text.length)[0];
  const last = best ? ends.indexOf(best.text.length) : -1;
  const day = best && dayOfResult(best);
  return best && last >= 0 && day != null ? { phrase: fixed(single(day)), end: i + last + 1 } : null;
};

function dayOfResult({ start, end }: ParsedResult): number | null {
  const [year, month, day] = [start.get('year'), start.get('month'), start.get('day')];
  if (end || year == null || month == null || day == null || !start.isCertain('month')) return null;
  return dayNumber(year, month, day);
}

const DIRECTIONS = new Set(['ago', 'back', 'before', 'from', 'after', 'later', 'earlier']);

/** "1 week and 3 days ago", "in 2 months 1 week". */
function isCompound(input: Input, i: number): boolean {
  const j = textAt(input, i) === 'in' ? i + 1 : i;
  if (input.tokens[j]?.number == null || input.tokens[j + 1]?.unit == null) return false;
  const k =
    textAt(input, j + 2) === 'and' || textAt(input, j + 2) === ',' || textAt(input, j + 2) === '&'
      ? j + 3
      : j + 2;
  if (input.tokens[k]?.number == null || input.tokens[k + 1]?.unit == null) return false;
  return j > i || DIRECTIONS.has(textAt(input, k + 2));
}

/** "2026 august 22". */
function isYearFirst(input: Input, i: number): boolean {
  return input.tokens[i]?.digits.length === 4 && input.tokens[i + 1]?.month != null;
}
