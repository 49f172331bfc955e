import { type DailySeries, MISSING } from './climate.ts';
import { addDays, type Day, daysBetween, fromEpochDays, type MonthDay, monthDayOf } from './day.ts';
import { type FlatSeries, flatten, slotOf } from './flat-series.ts';
import { quantile } from './percentile.ts';
import { type Hemisphere, midSeason, type Season, seasonStarting } from './season.ts';
import { seasonsIn } from './seasons-in.ts';

/** A freeze is a daily minimum at or below this many °C: 32 °F at 2 m, NC State Climate Office. */
export const FREEZE_C = 0;

/** A part of a season tells of its frosts only when at most this share of its days is missing. Ours. */
const MISSING_ALLOWED = 0.1;

/** First fall or last spring frosts of a record's seasons. */
export interface FrostStat {
  /** Days of the year by which one season in ten, one in two, nine in ten had theirs; null without any. */
  readonly p10: MonthDay | null;
  readonly p50: MonthDay | null;
  readonly p90: MonthDay | null;
  /** Seasons that could tell. */
  readonly seasons: number;
  /** Of those, seasons without a frost in that part. */
  readonly none: number;
}

export interface Frosts {
  readonly first: FrostStat;
  readonly last: FrostStat;
}

/**
 * First fall and last spring frost over all seasons of a record. Spring and fall part on 24 July, in the
 * south on 24 January (Utah Climate Center); that day itself is fall. A season is left out of a part in
 * which more than a tenth of the days that matter are missing: those between the frost and the parting day,
 * or all of them when no frost was seen.
 *
 * Percentiles are taken over the seasons that had a frost, by days from the parting day, and rounded to the
 * nearest day; half a day goes to the careful side: earlier for the first frost, later for the last.
 */
export function frostsOf(series: DailySeries, hemisphere: Hemisphere): Frosts {
  const first: (number | null)[] = [];
  const last: (number | null)[] = [];
  const flat = flatten(series);
  for (const season of seasonsIn(flat, hemisphere)) {
    const fall = firstFrostIn(flat, season);
    if (fall !== 'unknown') first.push(fall && daysBetween(midSeason(season), fall));
    const spring = lastFrostIn(flat, season);
    if (spring !== 'unknown') last.push(spring && daysBetween(midSeason(season), spring));
  }
  return {
    first: statOf(first, hemisphere, roundHalfDown),
    last: statOf(last, hemisphere, Math.round),
  };
}

/** First day of `season` from its parting day on with a freeze; null when it had none. */
export function firstFrostIn(flat: FlatSeries, season: Season): Day | null | 'unknown' {
  return scan(flat, slotOf(flat, midSeason(season)), slotOf(flat, season.to), 1);
}

/** Last day of `season` before its parting day with a freeze; null when it had none. */
export function lastFrostIn(flat: FlatSeries, season: Season): Day | null | 'unknown' {
  return scan(flat, slotOf(flat, midSeason(season)) - 1, slotOf(flat, season.from), -1);
}

function scan(flat: FlatSeries, from: number, to: number, step: 1 | -1): Day | null | 'unknown' {
  const days = Math.abs(to - from) + 1;
  let missing = 0;
  for (let i = 0; i < days; i++) {
    const slot = from + i * step;
    const low = flat.tmin[slot] ?? MISSING;
    if (low === MISSING) missing++;
    else if (low <= FREEZE_C * 10) {
      return missing > MISSING_ALLOWED * (i + 1) ? 'unknown' : fromEpochDays(flat.start + slot);
    }
  }
  return missing > MISSING_ALLOWED * days ? 'unknown' : null;
}

function statOf(
  offsets: readonly (number | null)[],
  hemisphere: Hemisphere,
  round: (days: number) => number,
): FrostStat {
  const seen = offsets.filter((offset) => offset !== null).sort((a, b) => a - b);
  // A common year on both sides of the turn, so that no 29 February shifts the answer.
  const parting = midSeason(seasonStarting(hemisphere === 'N' ? 2001 : 2000, hemisphere));
  const at = (p: number) =>
    seen.length === 0 ? null : monthDayOf(addDays(parting, round(quantile(seen, p))));
  return {
    p10: at(0.1),
    p50: at(0.5),
    p90: at(0.9),
    seasons: offsets.length,
    none: offsets.length - seen.length,
  };
}

function roundHalfDown(value: number): number {
  return Math.ceil(value - 0.5);
}
