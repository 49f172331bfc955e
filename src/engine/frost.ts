import { type DailySeries, MISSING } from './climate.ts';
import { addDays, type Day, dayOfYear, daysBetween, type MonthDay, monthDayOf, yearOf } from './day.ts';
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
  for (const season of seasonsIn(series, hemisphere)) {
    const fall = firstFrostIn(series, season);
    if (fall !== 'unknown') first.push(fall && daysBetween(midSeason(season), fall));
    const spring = lastFrostIn(series, season);
    if (spring !== 'unknown') last.push(spring && daysBetween(midSeason(season), spring));
  }
  return {
    first: statOf(first, hemisphere, roundHalfDown),
    last: statOf(last, hemisphere, Math.round),
  };
}

/** First day of `season` from its parting day on with a freeze; null when it had none. */
export function firstFrostIn(series: DailySeries, season: Season): Day | null | 'unknown' {
  return scan(series, midSeason(season), season.to, 1);
}

/** Last day of `season` before its parting day with a freeze; null when it had none. */
export function lastFrostIn(series: DailySeries, season: Season): Day | null | 'unknown' {
  return scan(series, addDays(midSeason(season), -1), season.from, -1);
}

function scan(series: DailySeries, from: Day, to: Day, step: 1 | -1): Day | null | 'unknown' {
  const days = Math.abs(daysBetween(from, to)) + 1;
  let missing = 0;
  for (let i = 0; i < days; i++) {
    const on = addDays(from, i * step);
    const low = tenthsOn(series, on);
    if (low === MISSING) missing++;
    else if (low <= FREEZE_C * 10) return missing > MISSING_ALLOWED * (i + 1) ? 'unknown' : on;
  }
  return missing > MISSING_ALLOWED * days ? 'unknown' : null;
}

function tenthsOn(series: DailySeries, on: Day): number {
  const year = yearOf(on);
  return series.find((candidate) => candidate.year === year)?.tmin[dayOfYear(on)] ?? MISSING;
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
