import type { DailySeries } from '../engine/climate.ts';
import type { Day, MonthDay } from '../engine/day.ts';
import type { GardenHeat } from '../engine/garden-season.ts';
import type { HeatMark } from '../engine/record-summary.ts';
import type { Season } from '../engine/season.ts';
import type { DateOrder, Units } from './picture.ts';

/** A garden's season for `drawSeason`. */
export interface SeasonPictureInput {
  /** What the garden is called: a place, or whose it is. */
  readonly garden: string;
  readonly season: Season;
  /** Null leaves today out, as for a past season. */
  readonly today: Day | null;
  readonly units: Units;
  readonly dates: DateOrder;
  readonly mark: HeatMark;
  /** Daily temperatures of this and past seasons; null when only stated dates are known. */
  readonly series: DailySeries | null;
  readonly heat: GardenHeat;
  readonly lastFrost: FrostDates | null;
  readonly firstFrost: FrostDates | null;
  readonly trees: readonly TreeDate[];
}

/** A stated frost, or a record's median with its 10th and 90th percentile. */
export interface FrostDates {
  readonly on: MonthDay;
  readonly from: MonthDay | null;
  readonly to: MonthDay | null;
}

export interface TreeDate {
  readonly name: string;
  readonly decisionDate: Day | null;
  /** Nothing is left to decide: fruitlets were seen, or it was tipped. */
  readonly settled: boolean;
}
