import { after, type Input, type Read, type Rule, skipThe, textAt, yearAt } from './input.ts';
import { isMonthInProse, isSeasonInProse, isYearInProse } from './prose.ts';
import { fixed, type Phrase, type Span, single, spanOf, yearly } from './span.ts';
import { nthWeekday } from './weekdays.ts';
import { LAST, NEXT, type Part, type SeasonName, THIS } from './words.ts';

/** A stretch of whole months, by year or one for good: what parts, weeks and weekdays are taken of. */
interface Stretch {
  readonly phrase: Phrase;
  readonly end: number;
  readonly isMonth: boolean;
}

const MONTHS_OF: Readonly<Record<SeasonName, number>> = { spring: 3, summer: 6, autumn: 9, winter: 12 };

/** First month of a season, RULES §8: three whole months, half a year apart in the south. */
function firstMonthOf(season: SeasonName, hemisphere: Input['hemisphere']): number {
  const north = MONTHS_OF[season];
  return hemisphere === 'N' ? north : north > 6 ? north - 6 : north + 6;
}

export function wholeMonths(year: number, month: number, count: number): Span {
  const first = Date.UTC(year, month - 1, 1) / 86_400_000;
  const end = Date.UTC(year, month - 1 + count, 1) / 86_400_000 - 1;
  return spanOf(first, end, count === 1 ? first + 14 : first + Math.floor((end - first) / 2));
}

export function seasonPhrase(season: SeasonName, hemisphere: Input['hemisphere']): Phrase {
  const month = firstMonthOf(season, hemisphere);
  return yearly((year) => wholeMonths(year, month, 3));
}

function fixedMonth(input: Input, shift: number): Phrase {
  const index = input.today.year * 12 + input.today.month - 1 + shift;
  const span = wholeMonths(Math.floor(index / 12), (index % 12) + 1, 1);
  return { cycle: 'fixed', at: () => span, assumed: [] };
}

/** "june", "june 2025", "last june", "this month", "the month", "autumn", "next summer", with `proof` against prose. */
function stretchAt(input: Input, i: number, proven: boolean): Stretch | null {
  let j = skipThe(input, i);
  // "this past winter".
  if (textAt(input, j) === 'this' && LAST.has(textAt(input, j + 1))) j++;
  const word = textAt(input, j);
  const shift = LAST.has(word) ? -1 : NEXT.has(word) ? 1 : THIS.has(word) ? 0 : null;
  if (textAt(input, j + 1) === 'month' && shift !== null) {
    return { phrase: fixedMonth(input, shift), end: j + 2, isMonth: true };
  }
  if (word === 'month' && proven) return { phrase: fixedMonth(input, 0), end: j + 1, isMonth: true };
  const at = shift === null ? j : j + 1;
  const token = input.tokens[at];
  if (!token) return null;
  const sure = proven || shift !== null;
  if (token.month !== null) {
    // "the march" is no month by itself, "the fall" is a season.
    const hasYear = input.tokens[at + 1]?.digits.length === 4 && yearAt(input, at + 1) !== null;
    if (!sure && !hasYear && (j > i || (input.prose && !isMonthInProse(input, at)))) return null;
    const month = token.month;
    return dated(input, at, shift, (year) => wholeMonths(year, month, 1), true);
  }
  if (token.season !== null) {
    if (!sure && input.prose && !isSeasonInProse(input, at)) return null;
    const month = firstMonthOf(token.season, input.hemisphere);
    return dated(input, at, shift, (year) => wholeMonths(year, month, 3), false);
  }
  return null;
}

/** Adds the year said after the name, or settles "last", "next" and "this". */
function dated(
  input: Input,
  at: number,
  shift: number | null,
  spanIn: (year: number) => Span,
  isMonth: boolean,
): Stretch {
  const afterDot = textAt(input, at + 1) === '.' && input.tokens[at + 1]?.glued ? at + 2 : at + 1;
  const year = yearAt(input, afterDot);
  if (year) {
    const end = isMonth ? year.end : secondYear(input, year.end);
    return { phrase: { cycle: 'fixed', at: () => spanIn(year.year), assumed: [] }, end, isMonth };
  }
  const end = year ? afterDot : isMonth && afterDot === at + 2 && !input.tokens[at + 2] ? at + 2 : at + 1;
  if (shift === null) return { phrase: { cycle: 'year', at: spanIn, assumed: ['year'] }, end, isMonth };
  const span = settle(input, shift, spanIn);
  return { phrase: { cycle: 'fixed', at: () => span, assumed: [] }, end, isMonth };
}

/** "2025/26" and "2025-26" after a winter. */
function secondYear(input: Input, i: number): number {
  const sign = textAt(input, i);
  return (sign === '/' || sign === '-') && input.tokens[i + 1]?.digits.length === 2 ? i + 2 : i;
}

function settle(input: Input, shift: number, spanIn: (year: number) => Span): Span {
  const { day, year } = input.today;
  const spans = [-2, -1, 0, 1, 2].map((k) => spanIn(year + k));
  if (shift < 0) return spans.findLast((span) => span.to < day) ?? spanIn(year - 1);
  if (shift > 0) return spans.find((span) => span.from > day) ?? spanIn(year + 1);
  const now = spans.find((span) => span.from <= day && span.to >= day);
  return now ?? spanIn(year);
}

/** RULES §8 for months; a season's thirds are its months, its start and end the same five days. */
function partOf(span: Span, part: Part, isMonth: boolean): Span {
  const { from, to } = span;
  switch (part) {
    case 'early':
      return isMonth ? spanOf(from, from + 9, from + 4) : thirdOf(span, 0);
    case 'mid':
      return isMonth ? spanOf(from + 10, from + 19, from + 14) : thirdOf(span, 1);
    case 'late':
      return isMonth ? spanOf(from + 20, to, from + 24) : thirdOf(span, 2);
    case 'start':
      return spanOf(from, from + 4, from);
    case 'end':
      return spanOf(to - 4, to, to);
  }
}

function thirdOf(span: Span, third: number): Span {
  const start = new Date(span.from * 86_400_000);
  return wholeMonths(start.getUTCFullYear(), start.getUTCMonth() + 1 + third, 1);
}

function mapStretch(stretch: Stretch, change: (span: Span) => Span | null): Read {
  const { phrase, end } = stretch;
  const at = (k: number): Span | null => {
    const span = phrase.at(k);
    return span && change(span);
  };
  return { phrase: { cycle: phrase.cycle, at, assumed: [...phrase.assumed, 'part'] }, end };
}

const JOIN = new Set(['to', '-', '–', '/', 'or', 'and', 'through', '&']);

/** "early may", "mid to late november", "end of next month", "beginning of spring". */
export const readPart: Rule = (input, i) => {
  const start = skipThe(input, i);
  const first = input.tokens[start]?.part;
  if (!first) return null;
  // "mid to late", "mid-to-late", "early/mid".
  const glue = after(input, start + 1, '-', 'to') > 0 ? start + 2 : start + 1;
  const other = skipThe(input, after(input, glue + 1, '-') > 0 ? glue + 2 : glue + 1);
  const second = JOIN.has(textAt(input, glue)) ? (input.tokens[other]?.part ?? null) : null;
  let j = second ? other + 1 : start + 1;
  if (textAt(input, j) === '-' || textAt(input, j) === 'of' || textAt(input, j) === 'in') j++;
  const yearEnd = after(input, skipThe(input, j), 'year');
  if (yearEnd > 0 && first !== 'mid') return { phrase: partOfYear(input, first), end: yearEnd };
  const stretch = stretchAt(input, j, true);
  if (!stretch) return null;
  if (!second) return mapStretch(stretch, (span) => partOf(span, first, stretch.isMonth));
  return mapStretch(stretch, (span) => {
    const from = partOf(span, first, stretch.isMonth);
    const to = partOf(span, second, stretch.isMonth);
    return from.from <= to.from ? spanOf(from.from, to.to, Math.floor((from.from + to.to) / 2)) : null;
  });
};

function partOfYear(input: Input, part: Part): Phrase {
  const { year } = input.today;
  const whole = spanOf(Date.UTC(year, 0, 1) / 86_400_000, Date.UTC(year, 11, 31) / 86_400_000);
  const span = partOf(whole, part, false);
  return { cycle: 'fixed', at: () => span, assumed: ['part'] };
}

const LAST_OF = new Set(['last', 'final', 'lst']);

/** "first week of june", "third saturday in september", "last day of may", "second half of august". */
export const readNthOfMonth: Rule = (input, i) => {
  const start = skipThe(input, i);
  const token = input.tokens[start];
  if (token?.unit === 'week') return weekByNumber(input, start);
  const n = token && LAST_OF.has(token.text) ? -1 : (token?.ordinal ?? 0);
  if (n === 0 || n > 5) return null;
  const few =
    textAt(input, start + 1) === 'few' || textAt(input, start + 1) === 'couple' ? start + 2 : start + 1;
  const what = input.tokens[few];
  if (!what) return null;
  let j = few + 1;
  const joined = textAt(input, j) === 'of' || textAt(input, j) === 'in';
  if (joined) j++;
  const change = nthOf(n, what.text, what.weekday, what.unit);
  if (!change) return null;
  const stretch = stretchAt(input, j, joined);
  return stretch?.isMonth ? mapStretch(stretch, change) : null;
};

/** "week 2 of june". */
function weekByNumber(input: Input, i: number): Read | null {
  const n = input.tokens[i + 1]?.number ?? 0;
  if (n < 1 || n > 5) return null;
  const stretch = stretchAt(input, textAt(input, i + 2) === 'of' ? i + 3 : i + 2, true);
  return stretch?.isMonth ? mapStretch(stretch, (span) => weekOf(span, n)) : null;
}

function nthOf(
  n: number,
  what: string,
  weekday: number | null,
  unit: string | null,
): ((span: Span) => Span | null) | null {
  if (weekday !== null) return (span) => dayOrNull(weekdayOf(span, weekday, n));
  if (what === 'weekend' || what === 'wkend' || what === 'wknd') {
    return (span) => {
      const saturday = weekdayOf(span, 6, n);
      return saturday === null ? null : spanOf(saturday, saturday + 1);
    };
  }
  if (unit === 'week') return (span) => weekOf(span, n);
  // "last few days" is the end, "first days" the beginning.
  if (what === 'days')
    return n < 0 ? (span) => partOf(span, 'end', true) : (span) => partOf(span, 'start', true);
  if (unit === 'day') return (span) => single(n < 0 ? span.to : span.from + n - 1);
  if (what === 'half' && n <= 2) {
    return (span) =>
      n === 1
        ? spanOf(span.from, span.from + 14, span.from + 7)
        : spanOf(span.from + 15, span.to, span.from + 22);
  }
  return null;
}

function dayOrNull(day: number | null): Span | null {
  return day === null ? null : single(day);
}

function weekdayOf(span: Span, weekday: number, n: number): number | null {
  const start = new Date(span.from * 86_400_000);
  return nthWeekday(start.getUTCFullYear(), start.getUTCMonth() + 1, weekday, n);
}

/** RULES §8: 1–7, 8–14, 15–21, then 22–28; the last is the last seven days. §7: the first is logged on the 4th. */
function weekOf(span: Span, n: number): Span | null {
  if (n < 0) return spanOf(span.to - 6, span.to, span.to - 3);
  const from = span.from + (n - 1) * 7;
  return from + 6 <= span.to
    ? spanOf(from, from + 6, from + 3)
    : from <= span.to
      ? spanOf(from, span.to)
      : null;
}

/** "february", "last month", "this summer". */
export const readStretch: Rule = (input, i) => {
  const stretch = stretchAt(input, i, false);
  // "this summer" in a note says no more than that it was lately.
  if (!stretch || (input.prose && THIS.has(textAt(input, i)))) return null;
  return { phrase: stretch.phrase, end: stretch.end };
};

/** "in 2023" in a note: past seasons are told so. A year alone is too vague for a text that is to be a date. */
export const readYear: Rule = (input, i) => {
  const token = input.tokens[i];
  if (!input.prose || token?.digits.length !== 4 || token.number === null) return null;
  if (Math.abs(token.number - input.today.year) > 60 || !isYearInProse(input, i)) return null;
  return {
    phrase: fixed(
      spanOf(Date.UTC(token.number, 0, 1) / 86_400_000, Date.UTC(token.number, 11, 31) / 86_400_000),
    ),
    end: i + 1,
  };
};
