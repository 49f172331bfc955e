import { type Day, dayInYear, dayOf, daysInYear, MONTH_NAMES } from '../engine/day.ts';
import { type DateOrder, lineProblem, problem, type WeatherFileProblem } from './file-types.ts';

/** A date as written: settled, or two numbers of which either may be the month. */
export type WrittenDate =
  | { readonly kind: 'day'; readonly day: Day; readonly timed: boolean }
  | {
      readonly kind: 'numbers';
      readonly first: number;
      readonly second: number;
      readonly year: number;
      readonly shortYear: boolean;
      readonly timed: boolean;
    };

const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})(?:[T ,]\s*(\S.*)?)?$/;
const COMPACT = /^(\d{4})(\d{2})(\d{2})$/;
const YEAR_LAST = /^(\d{1,2})([-/. ])(\d{1,2})\2(\d{4}|\d{2})(?:[T ,]\s*(\S.*)?)?$/;
const DAY_NAME_YEAR = /^(\d{1,2})[-/. ]+([a-z]{3,9})\.?[-/., ]+(\d{4})(?:[T ,]\s*(\S.*)?)?$/i;
const NAME_DAY_YEAR = /^([a-z]{3,9})\.?[-/. ]+(\d{1,2})(?:,\s*|[-/. ]+)(\d{4})(?:[T ,]\s*(\S.*)?)?$/i;
const MIDNIGHT = /^(0?0[:.]?00([:.]00(\.0+)?)?|12:00(:00)? ?am)?( ?(z|utc|[+-]\d{2}:?\d{2}))?$/i;

/** A date cell as it is written, or null when it is no date. */
export function readDate(text: string): WrittenDate | null {
  const iso = YEAR_FIRST.exec(text);
  if (iso) return settled(Number(iso[1]), Number(iso[3]), Number(iso[4]), iso[5]);
  const compact = COMPACT.exec(text);
  if (compact) return settled(Number(compact[1]), Number(compact[2]), Number(compact[3]), undefined);
  const last = YEAR_LAST.exec(text);
  if (last) {
    const shortYear = last[4]?.length === 2;
    const year = shortYear ? fullYear(Number(last[4])) : Number(last[4]);
    const numbers = { kind: 'numbers', first: Number(last[1]), second: Number(last[3]), year } as const;
    const possible = dayOf(year, numbers.first, numbers.second) ?? dayOf(year, numbers.second, numbers.first);
    return possible && { ...numbers, shortYear, timed: isTimed(last[5]) };
  }
  const dayName = DAY_NAME_YEAR.exec(text);
  if (dayName) return settled(Number(dayName[3]), monthNamed(dayName[2]), Number(dayName[1]), dayName[4]);
  const nameDay = NAME_DAY_YEAR.exec(text);
  if (nameDay) return settled(Number(nameDay[3]), monthNamed(nameDay[1]), Number(nameDay[2]), nameDay[4]);
  return null;
}

/** Day `dayOfYear` (1–366) of a year, or null. */
export function ordinalDay(year: number, dayOfYear: number): Day | null {
  if (!Number.isInteger(year) || year < 1000 || year > 9999 || !Number.isInteger(dayOfYear)) return null;
  return dayOfYear >= 1 && dayOfYear <= daysInYear(year) ? dayInYear(year, dayOfYear - 1) : null;
}

export interface DatedLine {
  readonly line: number;
  readonly written: WrittenDate;
}

/**
 * The order of the numeric dates of a file: what its days above 12 say, else what its header or the caller
 * says. 'any' when there is no such date; a problem when lines contradict each other or nothing tells.
 */
export function settleOrder(
  lines: readonly DatedLine[],
  stated: DateOrder | null,
): DateOrder | 'any' | WeatherFileProblem {
  let monthFirst: DatedLine | null = null;
  let dayFirst: DatedLine | null = null;
  let undecided: DatedLine | null = null;
  let before: DatedLine | null = null;
  for (const at of lines) {
    if (at.written.kind !== 'numbers') continue;
    const { first, second } = at.written;
    if (first > 12) dayFirst ??= at;
    else if (second > 12) monthFirst ??= at;
    else if (first !== second) undecided ??= at;
    if (before && isYearFirst(before.written, at.written)) {
      return lineProblem(at.line, 'the year has two digits and seems to come first; write it with four.');
    }
    before = at;
  }
  if (monthFirst && dayFirst) {
    const [a, b] = monthFirst.line < dayFirst.line ? [monthFirst, dayFirst] : [dayFirst, monthFirst];
    return lineProblem(b.line, `the date has its day and month the other way round than line ${a.line}.`);
  }
  if (monthFirst) return 'MDY';
  if (dayFirst) return 'DMY';
  if (undecided?.written.kind !== 'numbers') return 'any';
  if (stated) return stated;
  const { first, second } = undecided.written;
  return problem(
    'date-order-unknown',
    `Line ${undecided.line} has the date ${first}/${second}, and no date in the file tells whether the ` +
      'month or the day comes first. Say which: month first or day first.',
    undecided.line,
  );
}

/** The day meant under an order, or null when there is none such. */
export function resolveDate(written: WrittenDate, order: DateOrder | 'any'): Day | null {
  if (written.kind === 'day') return written.day;
  const { first, second, year } = written;
  return order === 'DMY' ? dayOf(year, second, first) : dayOf(year, first, second);
}

function settled(
  year: number,
  month: number,
  dayOfMonth: number,
  time: string | undefined,
): WrittenDate | null {
  const day = dayOf(year, month, dayOfMonth);
  return day && { kind: 'day', day, timed: isTimed(time) };
}

function isTimed(time: string | undefined): boolean {
  return time !== undefined && time !== '' && !MIDNIGHT.test(time.trim());
}

/** Two-digit years as POSIX strptime's %y reads them: 69–99 are 1969–1999, 00–68 are 2000–2068. */
function fullYear(short: number): number {
  return short >= 69 ? 1900 + short : 2000 + short;
}

/** From one day to the next only the last number changed: it is the day, and the first is the year. */
function isYearFirst(before: WrittenDate, after: WrittenDate): boolean {
  if (before.kind !== 'numbers' || after.kind !== 'numbers' || !after.shortYear) return false;
  return (
    before.first === after.first && before.second === after.second && Math.abs(after.year - before.year) === 1
  );
}

function monthNamed(name: string | undefined): number {
  const lower = (name ?? '').toLowerCase();
  return MONTH_NAMES.findIndex((month) => month.toLowerCase().startsWith(lower.slice(0, 3))) + 1;
}
