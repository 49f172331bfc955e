import { MISSING } from './climate.ts';
import { fromEpochDays } from './day.ts';
import { type FlatSeries, slotOf } from './flat-series.ts';
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
export function seasonsIn(flat: FlatSeries, hemisphere: Hemisphere): readonly Season[] {
  if (flat.last < 0) return [];
  const to = fromEpochDays(flat.start + flat.last);
  const seasons: Season[] = [];
  let at = seasonOf(fromEpochDays(flat.start + flat.first), hemisphere);
  for (; at.from <= to; at = nextSeason(at)) seasons.push(at);
  return seasons;
}

export function coverOf(flat: FlatSeries, season: Season): SeasonCover {
  const from = slotOf(flat, season.from);
  const to = slotOf(flat, season.to);
  let missingHighs = 0;
  let missingLows = 0;
  for (let slot = from; slot <= to; slot++) {
    if ((flat.tmax[slot] ?? MISSING) === MISSING) missingHighs++;
    if ((flat.tmin[slot] ?? MISSING) === MISSING) missingLows++;
  }
  return { season: season.label, days: to - from + 1, missingHighs, missingLows };
}

export function hasGap({ days, missingHighs, missingLows }: SeasonCover): boolean {
  return Math.max(missingHighs, missingLows) > GAP_SHARE * days;
}
