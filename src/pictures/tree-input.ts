import type { Day } from '../engine/day.ts';
import type { GardenHeat } from '../engine/garden-season.ts';
import type { Crop, ObservationKind } from '../engine/observation.ts';
import type { Season } from '../engine/season.ts';
import type { DateOrder } from './picture.ts';
import type { FrostDates } from './season-input.ts';

/** One tree's season for `drawTree`. */
export interface TreePictureInput {
  readonly tree: string;
  readonly cultivar: string | null;
  readonly season: Season;
  /** Null leaves today out, as for a past season. */
  readonly today: Day | null;
  readonly dates: DateOrder;
  /** How it stands, in a sentence or two; null leaves it out. */
  readonly state: string | null;
  /** This season's notes on the tree, in any order. */
  readonly notes: readonly TreeNote[];
  /** Heat end and first frost as they hold for this tree, its cover counted. */
  readonly heat: GardenHeat;
  readonly lastFrost: FrostDates | null;
  readonly firstFrost: FrostDates | null;
  readonly decisionDate: Day | null;
  readonly ripe: RipeWindow | null;
}

export interface TreeNote {
  readonly on: Day;
  readonly kind: ObservationKind;
  readonly crop?: Crop | null;
  readonly count?: number | null;
  /** Of the count; figs where there is none. */
  readonly unit?: string | null;
}

/** When the fruit should ripen: what is there, what a tip already made would bring, or one made today. */
export interface RipeWindow {
  readonly from: Day;
  readonly to: Day;
  readonly basis: 'fruitlets' | 'tipped' | 'tip-today';
}
