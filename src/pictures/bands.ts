import { type DailySeries, MISSING } from '../engine/climate.ts';
import { toEpochDays } from '../engine/day.ts';
import { type FlatSeries, flatten, slotOf } from '../engine/flat-series.ts';
import { daysOf, type Season } from '../engine/season.ts';
import { coverOf, seasonsIn } from '../engine/seasons-in.ts';
import { count, emptyPool, quantilesOf } from './pool.ts';

/** Daily highs of one day of the season over the past seasons, °C; null without a reading. */
export interface Band {
  readonly p10: number;
  readonly p25: number;
  readonly p50: number;
  readonly p75: number;
  readonly p90: number;
}

/** Daily highs in a record, laid along the days of one season. */
export interface Highs {
  /** One a day of the season, °C. */
  readonly thisSeason: readonly (number | null)[];
  /** One a day of the season; empty when there are fewer than `BANDS_NEED` past seasons. */
  readonly bands: readonly (Band | null)[];
  /** Past seasons behind the bands, oldest first. */
  readonly past: readonly Season[];
  /** The single past seasons, when they are too few for bands: °C, one a day of the season. */
  readonly single: readonly { readonly season: Season; readonly highs: readonly (number | null)[] }[];
}

/** Past seasons that a band needs. Ours: with fewer, the seasons themselves are drawn. */
export const BANDS_NEED = 3;

/** A band takes in the highs this many days to either side, as the share of hot days does (engine/heat.ts). */
const HALF_WINDOW_DAYS = 7;

/**
 * The highs of `season` and, pooled within a week to either side of each day, those of all earlier seasons.
 * A season without any high counts neither way.
 */
export function highsOf(series: DailySeries, season: Season): Highs {
  const flat = flatten(series);
  const past = seasonsIn(flat, season.hemisphere).filter((other) => {
    if (other.from >= season.from) return false;
    const { days, missingHighs } = coverOf(flat, other);
    return missingHighs < days;
  });
  const days = daysOf(season).length;
  const few = past.length < BANDS_NEED;
  return {
    thisSeason: along(flat, season, days),
    bands: few ? [] : bandsOf(flat, past, season, days),
    past,
    single: few ? past.map((other) => ({ season: other, highs: along(flat, other, days) })) : [],
  };
}

/** The highs of `season` on the `days` days from its first on. */
function along(flat: FlatSeries, season: Season, days: number): (number | null)[] {
  const from = slotOf(flat, season.from);
  const last = toEpochDays(season.to) - toEpochDays(season.from);
  return Array.from({ length: days }, (_, i) => {
    const tenths = i > last ? MISSING : (flat.tmax[from + i] ?? MISSING);
    return tenths === MISSING ? null : tenths / 10;
  });
}

/** The window slides along the season, and with it the counts of each tenth of a degree in it. */
function bandsOf(flat: FlatSeries, past: readonly Season[], season: Season, days: number): (Band | null)[] {
  // Leap days shift a day of the year by one among the seasons; within a window of 15 days that is nothing.
  const starts = past.map((other) => slotOf(flat, other.from));
  // The window of the season's last days reaches into this season, which is not past.
  const end = slotOf(flat, season.from);
  const pool = emptyPool();
  const shift = (day: number, by: 1 | -1) => {
    for (const start of starts) {
      const tenths = start + day < end ? (flat.tmax[start + day] ?? MISSING) : MISSING;
      if (tenths !== MISSING) count(pool, tenths, by);
    }
  };
  for (let day = -HALF_WINDOW_DAYS; day < HALF_WINDOW_DAYS; day++) shift(day, 1);
  return Array.from({ length: days }, (_, i) => {
    shift(i + HALF_WINDOW_DAYS, 1);
    const [p10, p25, p50, p75, p90] = quantilesOf(pool, [0.1, 0.25, 0.5, 0.75, 0.9]);
    shift(i - HALF_WINDOW_DAYS, -1);
    if (p10 === undefined || p25 === undefined || p50 === undefined) return null;
    if (p75 === undefined || p90 === undefined) return null;
    return { p10: p10 / 10, p25: p25 / 10, p50: p50 / 10, p75: p75 / 10, p90: p90 / 10 };
  });
}
