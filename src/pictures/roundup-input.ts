import type { Day } from '../engine/day.ts';
import type { Season } from '../engine/season.ts';
import type { DateOrder } from './picture.ts';

/** A club's week or season for `drawRoundup`. */
export interface RoundupPictureInput {
  readonly club: string;
  /** What it tells of: "Week of July 6", "Season 2026". */
  readonly heading: string;
  readonly season: Season;
  /** The week, marked on the time line; null for a whole season. */
  readonly week: { readonly from: Day; readonly to: Day } | null;
  /** Null leaves today out, as for a past season. */
  readonly today: Day | null;
  readonly dates: DateOrder;
  /** In the order they are to be shown. */
  readonly cultivars: readonly CultivarSeason[];
}

/** All of the club's trees of one cultivar in one season; breba crops left out. */
export interface CultivarSeason {
  readonly cultivar: string;
  readonly trees: number;
  /** First main-crop fruitlets, one day for each tree that has shown them. */
  readonly fruitlets: readonly Day[];
  readonly tips: readonly TipResult[];
  /** Days on which figs were picked. */
  readonly picks: readonly Day[];
  /** Figs picked; null where nobody counted. */
  readonly figs: number | null;
}

export interface TipResult {
  readonly on: Day;
  /** Whether fruitlets came of it; null while that is open. */
  readonly worked: boolean | null;
}
