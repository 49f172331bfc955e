import { type Rule, skipThe, textAt } from './input.ts';
import { countFrom, mapPhrase, type Span, single, spanOf, weekdayNumber } from './span.ts';
import { weekdayAfter, weekdayBefore } from './weekdays.ts';
import { type Unit, WEEKENDS } from './words.ts';

/** Saturday and Sunday nearest to `day`. */
function weekendNear(day: number): Span {
  const weekday = weekdayNumber(day);
  const saturday = weekday === 6 ? day : weekday <= 2 ? day - weekday - 1 : weekdayAfter(day, 6);
  return spanOf(saturday, saturday + 1);
}

/** "the day before thanksgiving", "weekend after labor day", "the week before christmas", "monday after easter". */
export function readBesideAnchor(readAnchor: Rule): Rule {
  return (input, i, depth) => {
    const j = skipThe(input, i);
    const token = input.tokens[j];
    if (!token) return null;
    const n = token.ordinal !== null && token.ordinal <= 5 ? token.ordinal : null;
    const at = n === null ? j : j + 1;
    const what = input.tokens[at];
    const word = textAt(input, at + 1);
    const later = word === 'after' || word === 'following';
    if (!what || !(later || word === 'before' || word === 'bf')) return null;
    const change = beside(what.weekday, what.text, what.unit, later, n ?? 1);
    if (!change) return null;
    const anchor = readAnchor(input, at + 2, depth + 1);
    if (!anchor || anchor.problem || anchor.relative) return null;
    return { phrase: countFrom(anchor.phrase, change), end: anchor.end };
  };
}

function beside(
  weekday: number | null,
  what: string,
  unit: Unit | null,
  later: boolean,
  n: number,
): ((span: Span) => Span) | null {
  const steps = (n - 1) * 7;
  if (weekday !== null) {
    return (span) =>
      single(later ? weekdayAfter(span.to, weekday) + steps : weekdayBefore(span.from, weekday) - steps);
  }
  if (WEEKENDS.has(what)) {
    return (span) => {
      const saturday = later ? weekdayAfter(span.to, 6) + steps : weekdayBefore(span.from - 1, 6) - steps;
      return spanOf(saturday, saturday + 1);
    };
  }
  if (what === 'day' && n === 1) return (span) => single(later ? span.to + 1 : span.from - 1);
  if (what === 'week' && n === 1 && unit === 'week') {
    return (span) => (later ? spanOf(span.to + 1, span.to + 7) : spanOf(span.from - 7, span.from - 1));
  }
  return null;
}

const OF = new Set(['of', 'beginning', 'commencing', 'starting', 'from', 'ending']);

/** "week of june 15", "week commencing 3 may", "weekend of the 13th". */
export function readWeekOf(readAnchor: Rule): Rule {
  return (input, i, depth) => {
    const j = skipThe(input, i);
    const token = input.tokens[j];
    if (!token) return null;
    const weekend = WEEKENDS.has(token.text);
    if (token.unit !== 'week' && !weekend) return null;
    const how = textAt(input, j + 1);
    if (!OF.has(how) || (weekend && how !== 'of')) return null;
    const anchor = readAnchor(input, j + 2, depth + 1);
    if (!anchor || anchor.problem || anchor.relative) return null;
    if (weekend)
      return { phrase: mapPhrase(anchor.phrase, (span) => weekendNear(span.from)), end: anchor.end };
    if (how === 'from') return null;
    const ending = how === 'ending';
    const change = (span: Span): Span =>
      ending ? spanOf(span.to - 6, span.to, span.to) : spanOf(span.from, span.from + 6);
    return { phrase: mapPhrase(anchor.phrase, change), end: anchor.end };
  };
}
