import { addDays, type Day, earlier, fromEpochDays, later, monthDayOf } from './day.ts';
import { outlookOf } from './outlook.ts';
import type { PastSeason, PreparedWarmth } from './past-seasons.ts';
import { RESPONSE_DAYS, type Span } from './ripening.ts';
import { inSeason, type Season } from './season.ts';
import { needOf } from './warmth.ts';

/** A decision date by outlook leaves this share of past seasons ripe figs before frost. Ours. */
export const OUTLOOK_SHARE = 0.8;

/** Answers by record, season and planning span: the many trees of a garden share a few of them. */
const answers = new WeakMap<PreparedWarmth, Map<string, Day | null>>();

/**
 * The last day of tipping in `season` from which at least four in five of the other seasons would have
 * ripened the fruit before their first freeze, by the planning span. Null when no day does, or when fewer
 * than three seasons can tell.
 */
export function outlookDecisionDate(prepared: PreparedWarmth, span: Span, season: Season): Day | null {
  const known = answers.get(prepared) ?? new Map<string, Day | null>();
  answers.set(prepared, known);
  const key = `${season.label} ${span.planning}`;
  const answered = known.get(key);
  if (answered !== undefined) return answered;
  const answer = decide(prepared, span, season);
  known.set(key, answer);
  return answer;
}

function decide(prepared: PreparedWarmth, span: Span, season: Season): Day | null {
  const enough = (tip: Day) => {
    const outlook = outlookOf(prepared, { start: addDays(tip, RESPONSE_DAYS), today: tip, span });
    return outlook !== null && outlook.beforeFrost >= OUTLOOK_SHARE * outlook.seasons;
  };
  return turningDays(prepared, span, season).find(enough) ?? null;
}

/**
 * The only days of tipping on which the counts can change, latest first: each season's last day that is
 * still in time, and the last day from which a gap in its record matters. A day to either side allows for
 * 29 February.
 */
function turningDays(prepared: PreparedWarmth, span: Span, season: Season): readonly Day[] {
  const need = needOf(span.planning);
  // A fruitlet of the season's last day at the latest: after that it would be the next season's.
  const latest = addDays(season.to, -RESPONSE_DAYS);
  const days = new Set<Day>();
  for (const past of prepared.seasons) {
    for (const slot of [lastStartInTime(prepared, past, need), lastGap(prepared, past)]) {
      if (slot === null) continue;
      const tip = addDays(fromEpochDays(prepared.warmth.start + slot), -RESPONSE_DAYS);
      const here = inSeason(monthDayOf(tip), season);
      for (const near of [-1, 0, 1]) days.add(later(season.from, earlier(latest, addDays(here, near))));
    }
  }
  return [...days].sort().reverse();
}

/** Last slot from which the warmth up to the freeze suffices. */
function lastStartInTime(
  { warmth: { sumBefore, length } }: PreparedWarmth,
  past: PastSeason,
  need: number,
): number | null {
  const end = Math.min(past.freeze ?? past.last + 1, length);
  const most = (sumBefore[end] ?? 0) - need;
  let low = 0;
  let high = end;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((sumBefore[middle] ?? 0) <= most) low = middle;
    else high = middle - 1;
  }
  return most < 0 ? null : low;
}

/** Last slot before the freeze that lies in a gap. */
function lastGap({ warmth: { gapsBefore } }: PreparedWarmth, past: PastSeason): number | null {
  for (let slot = past.freeze ?? past.last; slot >= past.last - 366; slot--) {
    if ((gapsBefore[slot + 1] ?? 0) > (gapsBefore[slot] ?? 0)) return slot;
  }
  return null;
}
