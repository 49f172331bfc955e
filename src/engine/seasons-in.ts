import { type DailySeries, extentOf, MISSING } from './climate.ts';
import { dayOfYear, fromEpochDays, toEpochDays, yearOf } from './day.ts';
import { type Hemisphere, nextSeason, type Season, seasonOf } from './season.ts';

/** How much of one season a record holds. */
export interface SeasonCover {
  readonly season: string;
  readonly days: number;
  /** Days without a high. */
  readonly missingHighs: number;
  /** Days without a low. */
  readonly missingLows: number;
}

/** A season missing more than this share of its highs or lows is named in replies. */
export const GAP_SHARE = 0.1;

/** Every season from that of the first reading to that of the last. */
export function seasonsIn(series: DailySeries, hemisphere: Hemisphere): readonly Season[] {
  const extent = extentOf(series);
  if (!extent) return [];
  const seasons: Season[] = [];
  for (let at = seasonOf(extent.from, hemisphere); at.from <= extent.to; at = nextSeason(at))
    seasons.push(at);
  return seasons;
}

export function coverOf(series: DailySeries, season: Season): SeasonCover {
  const from = toEpochDays(season.from);
  const to = toEpochDays(season.to);
  const years = new Map(series.map((year) => [year.year, year]));
  let missingHighs = 0;
  let missingLows = 0;
  for (let at = from; at <= to; at++) {
    const on = fromEpochDays(at);
    const year = years.get(yearOf(on));
    const slot = dayOfYear(on);
    if ((year?.tmax[slot] ?? MISSING) === MISSING) missingHighs++;
    if ((year?.tmin[slot] ?? MISSING) === MISSING) missingLows++;
  }
  return { season: season.label, days: to - from + 1, missingHighs, missingLows };
}

export function hasGap({ days, missingHighs, missingLows }: SeasonCover): boolean {
  return Math.max(missingHighs, missingLows) > GAP_SHARE * days;
}
