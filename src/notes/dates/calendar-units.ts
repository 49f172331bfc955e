import { shiftDay } from './amounts.ts';
import { countAt, type Input, type Rule, skipThe, textAt } from './input.ts';
import { seasonPhrase, wholeMonths } from './months.ts';
import { addMonths, fixed, latest, type Phrase, type Span, single, spanOf } from './span.ts';
import { mondayOf, weekdayBefore } from './weekdays.ts';
import { LAST, NEXT, OVER, SEASONS, THIS, WEEKDAYS, WEEKENDS } from './words.ts';

/** "this weekend", "over the weekend", "next week", "last year", "the week before last". */
export const readCalendarUnit: Rule = (input, i) => {
  const today = input.today.day;
  let j = i;
  const over = OVER.has(textAt(input, j));
  if (over) j++;
  const the = skipThe(input, j) > j;
  j = skipThe(input, j);
  const how = textAt(input, j);
  let shift = LAST.has(how) ? -1 : NEXT.has(how) ? 1 : THIS.has(how) ? 0 : null;
  let k = shift === null ? j : j + 1;
  if (how === 'this' && (textAt(input, k) === 'past' || textAt(input, k) === 'coming')) {
    shift = textAt(input, k) === 'past' ? -1 : 0;
    k++;
  }
  const what = input.tokens[k];
  if (!what) return null;
  const weekend = WEEKENDS.has(what.text);
  if (!weekend && what.unit !== 'week' && what.unit !== 'year' && what.unit !== 'month') return null;
  let end = k + 1;
  if (shift === null && textAt(input, end) === 'before' && LAST.has(textAt(input, end + 1))) {
    shift = -2;
    end += 2;
  } else if (shift === null && textAt(input, end) === 'after' && NEXT.has(textAt(input, end + 1))) {
    shift = 2;
    end += 2;
  }
  const justGone = shift === null || shift === 0 ? goneAt(input, end) : end;
  if (justGone > end) {
    shift = -1;
    end = justGone;
  }
  if (weekend) {
    if (shift !== null) return { phrase: fixed(weekendBy(today, shift)), end };
    if (!the && (input.prose || input.tokens.length > 1)) return null;
    return { phrase: weekendPhrase(today), end };
  }
  if (shift === null || over) return null;
  // "this week" and "this year" in a note say no more than that it was lately.
  if (shift === 0 && input.prose) return null;
  if (what.unit === 'week') {
    const monday = mondayOf(today) + 7 * shift;
    return { phrase: fixed(spanOf(monday, monday + 6, today + 7 * shift)), end };
  }
  if (what.unit === 'month') {
    const index = input.today.year * 12 + input.today.month - 1 + shift;
    const first = Date.UTC(Math.floor(index / 12), index % 12, 1) / 86_400_000;
    const last = Date.UTC(Math.floor(index / 12), (index % 12) + 1, 1) / 86_400_000 - 1;
    return { phrase: fixed(spanOf(first, last, first + 14)), end };
  }
  // "last year's wood" is wood.
  if (input.prose && what.text === 'years') return null;
  const year = input.today.year + shift;
  return {
    phrase: fixed(spanOf(Date.UTC(year, 0, 1) / 86_400_000, Date.UTC(year, 11, 31) / 86_400_000)),
    end,
  };
};

/** "this time last week", "this time next year". */
export const readThisTime: Rule = (input, i) => {
  const start = textAt(input, i) === 'this' || textAt(input, i) === 'same' ? i + 1 : i;
  if (start === i || textAt(input, start) !== 'time') return null;
  const how = textAt(input, start + 1);
  const unit = input.tokens[start + 2]?.unit;
  const count = LAST.has(how) ? -1 : NEXT.has(how) ? 1 : 0;
  if (!unit || count === 0) return null;
  return { phrase: fixed(single(shiftDay(input.today.day, count, unit))), end: start + 3 };
};

/** "two summers ago": counted like weekdays, the first is the last one that is over. */
export const readSeasonsAgo: Rule = (input, i) => {
  const count = countAt(input, i);
  if (!count || count.value > 100) return null;
  const season = SEASONS.get(textAt(input, count.end).replace(/s$/, ''));
  const word = textAt(input, count.end + 1);
  if (!season || (word !== 'ago' && word !== 'back')) return null;
  const last = latest(
    seasonPhrase(season, input.hemisphere),
    input.today,
    (span) => span.to < input.today.day,
  );
  if (!last) return null;
  const start = new Date(addMonths(last.from, -12 * (count.value - 1)) * 86_400_000);
  return {
    phrase: fixed(wholeMonths(start.getUTCFullYear(), start.getUTCMonth() + 1, 3)),
    end: count.end + 2,
  };
};

/** "two sundays ago": the second before today. */
export const readWeekdaysAgo: Rule = (input, i) => {
  const count = countAt(input, i);
  if (!count) return null;
  const plural = textAt(input, count.end);
  if (!plural.endsWith('s') || textAt(input, count.end + 1) !== 'ago' || count.value > 52) return null;
  const weekday = WEEKDAYS.get(plural.slice(0, -1));
  if (weekday === undefined) return null;
  const day = weekdayBefore(input.today.day, weekday) - 7 * (count.value - 1);
  return { phrase: fixed(single(day)), end: count.end + 2 };
};

/** The last weekend is over: on a Sunday it is the one a week back. */
function weekendBy(today: number, shift: number): Span {
  const monday = mondayOf(today) + 7 * shift;
  return spanOf(monday + 5, monday + 6);
}

function weekendPhrase(today: number): Phrase {
  const saturday = mondayOf(today) + 5;
  return { cycle: 'week', at: (k) => spanOf(saturday + 7 * k, saturday + 7 * k + 1), assumed: [] };
}

/** "just gone", "just past", "gone" after a weekday or weekend. */
export function goneAt(input: Input, i: number): number {
  const word = textAt(input, i);
  if (word === 'just') {
    const next = textAt(input, i + 1);
    return next === 'gone' || next === 'past' || next === 'passed' ? i + 2 : i;
  }
  return word === 'gone' || word === 'past' ? (input.prose && word === 'past' ? i : i + 1) : i;
}
