import { type DailySeries, toTenths } from './climate.ts';
import type { DegreeDayModel } from './degree-days.ts';
import { flatten, slotOf } from './flat-series.ts';
import { FREEZE_C } from './frost.ts';
import { type Hemisphere, midSeason, type Season } from './season.ts';
import { seasonsIn } from './seasons-in.ts';
import { type DailyWarmth, FIG_WARMTH, warmthOf } from './warmth.ts';

/** A season ends its heat on the last day on which this many of the last seven days reached the mark. Ours. */
const HEAT_DAYS_NEEDED = 4;
const HEAT_WINDOW_DAYS = 7;

/** One season of a record, in slots of its warmth. */
export interface PastSeason {
  readonly season: Season;
  /** Last slot of the season. */
  readonly last: number;
  /** Last slot of its own heat; null when it had none. */
  readonly heatEnd: number | null;
  /** Slot of its first fall freeze; null when none was seen. */
  readonly freeze: number | null;
}

/** A record prepared for outlooks: made once, asked many times. */
export interface PreparedWarmth {
  readonly hemisphere: Hemisphere;
  readonly warmth: DailyWarmth;
  readonly seasons: readonly PastSeason[];
}

export interface PrepareOptions {
  /** Heat mark, °C. */
  readonly markC: number;
  readonly hemisphere: Hemisphere;
  readonly model?: DegreeDayModel;
}

/** Sums the warmth of a record and finds each season's own heat end and first freeze. */
export function prepareWarmth(
  series: DailySeries,
  { markC, hemisphere, model = FIG_WARMTH }: PrepareOptions,
): PreparedWarmth {
  const warmth = warmthOf(series, model);
  const flat = flatten(series);
  const mark = toTenths(markC);
  const seasons = seasonsIn(flat, hemisphere).map((season): PastSeason => {
    const first = slotOf(flat, season.from);
    const last = slotOf(flat, season.to);
    return {
      season,
      last,
      heatEnd: ownHeatEnd(warmth.tmax, first, last, mark),
      freeze: firstFreeze(warmth.tmin, slotOf(flat, midSeason(season)), last),
    };
  });
  return { hemisphere, warmth, seasons };
}

function ownHeatEnd(tmax: Float64Array, first: number, last: number, mark: number): number | null {
  for (let slot = last; slot >= first; slot--) {
    let reached = 0;
    for (let back = 0; back < HEAT_WINDOW_DAYS; back++) {
      if ((tmax[slot - back] ?? Number.NaN) >= mark) reached++;
    }
    if (reached >= HEAT_DAYS_NEEDED) return slot;
  }
  return null;
}

function firstFreeze(tmin: Float64Array, from: number, last: number): number | null {
  for (let slot = from; slot <= last; slot++) {
    if ((tmin[slot] ?? Number.NaN) <= FREEZE_C * 10) return slot;
  }
  return null;
}
