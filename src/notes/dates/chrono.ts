import { Chrono, configuration, type ParsedResult, type Refiner } from 'chrono-node/en';
import { fromEpochDays } from '../../engine/day.ts';
import { type Input, type Rule, textAt } from './input.ts';
import { dayNumber, fixed, single } from './span.ts';

/**
 * What chrono-node reads for us: dates with the year first ("2026 august 22", "2026/Aug/22") and pasted timestamps
 * ("2026-08-22T09:30:00-04:00"), where the words leave nothing to the season or the member.
 *
 * The rest is ours, for measured reasons: its casual parsers take prose for dates (sat, sun, "second"), its sums run
 * over the end of a month (31 May less a month is 1 May) and through the host's zone: "10 days ago" is a day off
 * under Pacific/Apia across 30 December 2011. It is only ever given noon UTC with an offset of 0, since it ignores
 * IANA zones (wanasit/chrono#553), and only its day, month and year are used.
 */
const PARSERS = new Set(['ENYearMonthDayParser', 'ISOFormatParser']);

/** Only a match at the start of the text, and a day that was said: a rule reads at its own place. */
const saidInFull: Refiner = {
  refine: (_context, results) =>
    results.filter(({ index, start }) => index === 0 && start.isCertain('year') && start.isCertain('day')),
};

let chrono: Chrono | null = null;

/** Built at the first need: most notes hold no such date. */
function chronoOf(): Chrono {
  const { parsers } = configuration.createConfiguration(true);
  return new Chrono({
    parsers: parsers.filter((parser) => PARSERS.has(parser.constructor.name)),
    refiners: [saidInFull],
  });
}

/** Longest date handed over, in tokens. */
const REACH = 16;

export const readByChrono: Rule = (input, i) => {
  if (!isYearFirst(input, i)) return null;
  let text = '';
  const ends: number[] = [];
  for (const token of input.tokens.slice(i, i + REACH)) {
    // Rebuilt from the tokens, so that the match's length tells its last one.
    text += token.glued || text === '' ? token.text : ` ${token.text}`;
    ends.push(text.length);
  }
  chrono ??= chronoOf();
  const instant = new Date(`${fromEpochDays(input.today.day)}T12:00:00Z`);
  const results = chrono.parse(text.toUpperCase(), { instant, timezone: 0 });
  const best = results.toSorted((a, b) => b.text.length - a.text.length)[0];
  const last = best ? ends.indexOf(best.text.length) : -1;
  const day = best && dayOfResult(best);
  return last >= 0 && day != null ? { phrase: fixed(single(day)), end: i + last + 1 } : null;
};

function dayOfResult({ start }: ParsedResult): number | null {
  const [year, month, day] = [start.get('year'), start.get('month'), start.get('day')];
  return year == null || month == null || day == null ? null : dayNumber(year, month, day);
}

/** "2026 august 22", "2026-aug-22", "2026-08-22T…". */
function isYearFirst(input: Input, i: number): boolean {
  if (input.tokens[i]?.digits.length !== 4) return false;
  const j = '-/'.includes(textAt(input, i + 1) || ' ') ? i + 2 : i + 1;
  return (
    input.tokens[j]?.month != null || (textAt(input, i + 5) === 't' && input.tokens[i + 5]?.glued === true)
  );
}
