import type { DailySeries } from './climate.ts';
import { type Day, fromEpochDays } from './day.ts';
import { flatten } from './flat-series.ts';
import { type Frosts, frostsOf } from './frost.ts';
import { type HeatEnd, heatEndOf } from './heat.ts';
import type { Hemisphere } from './season.ts';
import { coverOf, hasGap, type SeasonCover, seasonsIn } from './seasons-in.ts';
import { BREBA_KILL_C, type ColdStat, coldStatOf, WOOD_KILL_C } from './winter-cold.ts';

/** A temperature above which a daily high counts as heat, in the member's unit. */
export interface HeatMark {
  readonly value: number;
  readonly unit: 'F' | 'C';
}

/** What a record of daily temperatures says of a garden's season. Plain data, kept as JSON. */
export interface RecordSummary {
  readonly mark: HeatMark;
  readonly hemisphere: Hemisphere;
  readonly from: Day | null;
  readonly to: Day | null;
  readonly heat: HeatEnd;
  readonly frost: Frosts;
  /** Seasons with at least one reading. */
  readonly seasons: number;
  /** Seasons that miss more than a tenth of their highs or lows, oldest first. */
  readonly gaps: readonly SeasonCover[];
  /** When winters got cold enough to hurt; missing in summaries made by older versions. */
  readonly cold?: { readonly brebas: ColdStat; readonly wood: ColdStat };
}

/** Under this many seasons a reply says how few there are. */
export const FEW_SEASONS = 3;

export interface SummaryOptions {
  readonly mark: HeatMark;
  readonly hemisphere: Hemisphere;
}

/** Heat end, frosts and completeness of a record. An empty one gives `heat.kind: 'none'` and 0 seasons. */
export function summariseRecord(series: DailySeries, { mark, hemisphere }: SummaryOptions): RecordSummary {
  const flat = flatten(series);
  const covers = seasonsIn(flat, hemisphere).map((season) => coverOf(flat, season));
  return {
    mark,
    hemisphere,
    from: flat.last < 0 ? null : fromEpochDays(flat.start + flat.first),
    to: flat.last < 0 ? null : fromEpochDays(flat.start + flat.last),
    heat: heatEndOf(series, { markC: toCelsius(mark.value, mark.unit), hemisphere }),
    frost: frostsOf(series, hemisphere),
    seasons: covers.filter(({ days, missingHighs, missingLows }) => missingHighs < days || missingLows < days)
      .length,
    gaps: covers.filter(hasGap),
    cold: {
      brebas: coldStatOf(flat, hemisphere, BREBA_KILL_C),
      wood: coldStatOf(flat, hemisphere, WOOD_KILL_C),
    },
  };
}

/** `toCelsius(212, 'F') //=> 100` */
export function toCelsius(value: number, unit: 'F' | 'C'): number {
  return unit === 'C' ? value : ((value - 32) * 5) / 9;
}

/** `toFahrenheit(100) //=> 212` */
export function toFahrenheit(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}
