import type { Day, MonthDay } from './day.ts';
import type { FrostStat } from './frost.ts';
import type { RecordSummary } from './record-summary.ts';
import { inSeason, midSeason, nextSeason, type Season } from './season.ts';

/** What is known of where the heat of this season ends. */
export type GardenHeat =
  /** Neither stated nor a record. */
  | { readonly kind: 'unknown' }
  | { readonly kind: 'date'; readonly day: Day; readonly basis: 'stated' | 'record' }
  | { readonly kind: 'never-ends' }
  /** The record shows no reliable heat. */
  | { readonly kind: 'none' };

/** A garden in one season. */
export interface GardenSeason {
  readonly heat: GardenHeat;
  /** Median first fall frost, or null when none is known or usual. */
  readonly firstFrost: Day | null;
  /** Median last spring frost, or null. */
  readonly lastFrost: Day | null;
  /** Days the member wants to be early, 0–21. */
  readonly caution: number;
}

/** What the member said and what the record says; a stated date stands before the record's. */
export interface GardenFacts {
  readonly statedHeatEnd: MonthDay | null;
  readonly statedFirstFrost: MonthDay | null;
  readonly statedLastFrost: MonthDay | null;
  readonly caution: number;
  readonly summary: RecordSummary | null;
}

/** A garden's dates as days of `season`. */
export function gardenSeasonOf(facts: GardenFacts, season: Season): GardenSeason {
  const { statedFirstFrost, statedLastFrost, summary, caution } = facts;
  const firstFrost = statedFirstFrost ?? (summary && medianFrost(summary.frost.first));
  const lastFrost = statedLastFrost ?? (summary && medianFrost(summary.frost.last));
  return {
    heat: heatOf(facts, season),
    firstFrost: firstFrost && fallFrostIn(firstFrost, season),
    lastFrost: lastFrost && inSeason(lastFrost, season),
    caution,
  };
}

/** A mild garden's first frost may come after the season's last day; before its middle it is spring's. */
function fallFrostIn(firstFrost: MonthDay, season: Season): Day {
  const within = inSeason(firstFrost, season);
  return within < midSeason(season) ? inSeason(firstFrost, nextSeason(season)) : within;
}

/** The day by which half of all seasons had their frost: null when half of them or more had none. */
export function medianFrost(stat: FrostStat): MonthDay | null {
  return stat.none * 2 >= stat.seasons ? null : stat.p50;
}

function heatOf({ statedHeatEnd, summary }: GardenFacts, season: Season): GardenHeat {
  if (statedHeatEnd) return { kind: 'date', day: inSeason(statedHeatEnd, season), basis: 'stated' };
  if (!summary || summary.heat.greatestShare === null) return { kind: 'unknown' };
  switch (summary.heat.kind) {
    case 'date':
      return { kind: 'date', day: inSeason(summary.heat.heatEnd, season), basis: 'record' };
    case 'never-ends':
    case 'none':
      return { kind: summary.heat.kind };
  }
}
