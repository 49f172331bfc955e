import { addDays, type Day, later } from './day.ts';
import {
  decisionDate,
  lastWarmthOf,
  latestTipDate,
  onTimeUntil,
  ripeWindow,
  type Window,
  windowFromSigns,
} from './decision.ts';
import { inOrder, type MainCrop, mainCropFromDay, mainCropOf, type SeasonObservation } from './fruit.ts';
import type { GardenSeason } from './garden-season.ts';
import { QUICKEST_RESPONSE_DAYS, RESPONSE_DAYS, type Span } from './ripening.ts';
import type { Season } from './season.ts';

export type Purpose = 'fruit' | 'wood' | 'both';
export type Kept = 'ground' | 'pot' | 'cover';

/** What the latest note on buds says: two bumps at a node promise a fig, one does not. */
export type BudSign = 'double' | 'single' | 'none';

export interface TreeFacts {
  readonly span: Span;
  /** Whether its main crop drops unless pollinated. */
  readonly needsPollination: boolean;
  readonly pollinated: boolean;
  readonly purpose: Purpose;
  readonly kept: Kept;
  /** Days of heat the tree gains under cover, at the end of the season. */
  readonly coverDays: number;
  /** Whether this is the tree's first season. */
  readonly firstYear: boolean;
  /** False for a cultivar known to bear no brebas. */
  readonly bearsBrebas?: boolean;
}

/** All a verdict or a nudge is reckoned from. */
export interface VerdictInput {
  readonly today: Day;
  readonly season: Season;
  readonly garden: GardenSeason;
  readonly tree: TreeFacts;
  /** This season's notes on the tree and on its whole garden, in any order; those after today are not read. */
  readonly observations: readonly SeasonObservation[];
  /** The decision date by outlook, where the member follows that rule and past seasons can tell one. */
  readonly outlookDate?: Day | null;
}

/** The dates that hang on the end of the heat. */
export interface Deadline {
  /** Last reliable heat for this tree, its cover counted. */
  readonly heatEnd: Day;
  /** Last day that still finishes a fig. */
  readonly lastWarmth: Day;
  readonly decisionDate: Day;
  /** Last day on which a tip leaves the whole planning span within the heat. */
  readonly onTimeUntil: Day;
  /** Last day on which a tip can still lead to ripe figs. */
  readonly latestTipDate: Day;
}

/** A tree in its season: every date and sign a verdict or a nudge may rest on. */
export interface TreeSeason {
  /** Null while the heat has no known end. */
  readonly deadline: Deadline | null;
  /** Median first frost. */
  readonly firstFrost: Day | null;
  readonly fruit: MainCrop;
  /** When the fruit that is there should ripen, narrowed by signs of ripening; null without fruit. */
  readonly window: Window | null;
  /** The same before any sign of ripening narrowed it. */
  readonly expectedWindow: Window | null;
  readonly budSign: BudSign;
  /** Latest tip of this season. */
  readonly tippedOn: Day | null;
  /** Days on which to look for fruitlets after that tip. */
  readonly lookFrom: Day | null;
  readonly lookTo: Day | null;
  /** First day on which a fig of an unnamed crop can be main crop. */
  readonly mainCropFrom: Day;
}

/** Whether a main crop can be hoped for at all: one that holds, on a tree not kept for its wood only. */
export function isForFruit({ needsPollination, pollinated, purpose }: TreeFacts): boolean {
  return purpose !== 'wood' && (!needsPollination || pollinated);
}

/** Every date and sign of a tree as far as `today` knows them. */
export function treeSeasonOf(input: VerdictInput): TreeSeason {
  const { today, season, garden, tree, observations } = input;
  const known = inOrder(observations).filter(({ on }) => on <= today);
  const { span, coverDays } = tree;
  const { firstFrost } = garden;
  const mainCropFrom = mainCropFromDay(known, garden.lastFrost, season);
  const fruit = mainCropOf({
    observations: known,
    mainCropFrom,
    spanFrom: span.from,
    ...(tree.bearsBrebas === undefined ? {} : { bearsBrebas: tree.bearsBrebas }),
  });
  const tippedOn = known.findLast(({ kind }) => kind === 'tipped')?.on ?? null;
  return {
    deadline: garden.heat.kind === 'date' ? deadlineOf(addDays(garden.heat.day, coverDays), input) : null,
    firstFrost,
    fruit,
    window: windowOf(fruit, span),
    expectedWindow: fruit.seen && ripeWindow(fruit.seen, span),
    budSign: budSignOf(known),
    tippedOn,
    lookFrom: tippedOn && addDays(tippedOn, QUICKEST_RESPONSE_DAYS),
    lookTo: tippedOn && addDays(tippedOn, RESPONSE_DAYS),
    mainCropFrom,
  };
}

function deadlineOf(heatEnd: Day, { garden, tree: { span }, outlookDate }: VerdictInput): Deadline {
  const lastWarmth = lastWarmthOf(heatEnd, garden.firstFrost);
  const latest = latestTipDate(lastWarmth, span);
  return {
    heatEnd,
    lastWarmth,
    decisionDate: outlookDate
      ? addDays(outlookDate, -garden.caution)
      : decisionDate(heatEnd, span, garden.caution),
    onTimeUntil: onTimeUntil(heatEnd, span),
    // Past seasons that ripened a tip of that day weigh more than a count of days past the heat.
    latestTipDate: outlookDate ? later(latest, outlookDate) : latest,
  };
}

function windowOf(fruit: MainCrop, span: Span): Window | null {
  if (fruit.ripeningOn) return windowFromSigns(fruit.ripeningOn);
  if (fruit.seen) return ripeWindow(fruit.seen, span);
  return fruit.pickedOn && { from: fruit.pickedOn, to: fruit.pickedOn };
}

/** What the latest note on buds says, of notes in order. */
export function budSignOf(known: readonly SeasonObservation[]): BudSign {
  const latest = known.findLast(({ kind }) => kind === 'buds-double' || kind === 'buds-single');
  if (!latest) return 'none';
  return latest.kind === 'buds-double' ? 'double' : 'single';
}
