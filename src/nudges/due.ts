import { addDays, type Day, daysBetween, later, monthDayOf } from '../engine/day.ts';
import { type GardenFacts, type GardenSeason, gardenSeasonOf } from '../engine/garden-season.ts';
import { DORMANT_AFTER_DAYS, type Milestone, milestonesOf, type NudgeKind } from '../engine/milestones.ts';
import { inSeason, nextSeason, previousSeason, type Season } from '../engine/season.ts';
import type { VerdictInput, VerdictResult } from '../engine/verdict.ts';

/** A second look this long after the tip finds a tree that has long answered by itself. Ours, days. */
const SECOND_LOOK_WORTH_DAYS = 30;

/** Winter work that was not spoken of for this long is done or does not matter any more. Ours, days. */
const DORMANT_WORTH_DAYS = 45;

/** One thing to say about one tree in one season. Each is said once. */
export interface DueItem {
  readonly kind: NudgeKind;
  readonly season: string;
  /** Which tip a second look is about; 0 for all else. */
  readonly occurrence: number;
  readonly on: Day;
  /** Whether, by what is known today, it is worth saying: for a day ahead, when it comes; else now. */
  readonly holds: boolean;
}

/** A tip as it was put on record, taken back or not. */
export interface TipRecord {
  readonly day: Day;
  /** The day on which the member told of it. */
  readonly toldOn: Day;
}

export interface DueInput {
  readonly input: VerdictInput;
  readonly result: VerdictResult;
  readonly gardenFacts: GardenFacts;
  /** All tips of this season, taken back or not, in the order of entry: an undo must not renumber them. */
  readonly tips: readonly TipRecord[];
  /** Whether the member chose to leave this tree as it is this season. */
  readonly leftAlone: boolean;
}

/**
 * Everything there is to say about a tree from the winter of last season to the first dates of the next, in
 * no particular order. Pure: the same input gives the same items.
 */
export function dueItems(due: DueInput): DueItem[] {
  const { input, gardenFacts } = due;
  const items = milestonesOf(input).map((milestone) => itemOf(milestone, due));
  const last = previousSeason(input.season);
  const lastFrost = gardenSeasonOf(gardenFacts, last).firstFrost;
  if (lastFrost) {
    // Winter work of a season that ended with a late frost falls into the next one's first days.
    const on = addDays(lastFrost, DORMANT_AFTER_DAYS);
    const holds = input.today <= addDays(on, DORMANT_WORTH_DAYS);
    items.push({ kind: 'dormant', season: last.label, occurrence: 0, on, holds });
  }
  const next = nextSeason(input.season);
  const ahead = milestonesOf(nextYear(input, gardenSeasonOf(gardenFacts, next), next));
  items.push(...ahead.map((one) => ({ ...one, season: next.label, occurrence: 0 })));
  return items;
}

/** Next season as far as it can be told: nothing seen yet, the outlook's date on the same day of the year. */
function nextYear(input: VerdictInput, garden: GardenSeason, season: Season): VerdictInput {
  const { outlookDate } = input;
  const moved = outlookDate ? { outlookDate: inSeason(monthDayOf(outlookDate), season) } : {};
  return { ...input, ...moved, season, garden, observations: [] };
}

function itemOf(milestone: Milestone, due: DueInput): DueItem {
  const { kind } = milestone;
  const { season, today } = due.input;
  const on = kind === 'second-look' ? secondLookOn(milestone, due) : milestone.on;
  const holds = milestone.holds && staysOpen(kind, due) && (on > today || isWorthSaying(kind, on, due));
  return { kind, season: season.label, occurrence: kind === 'second-look' ? tipOf(due) : 0, on, holds };
}

/** Leaving a tree as it is closes the question of tipping it, not its ripening, frost or winter. */
function staysOpen(kind: NudgeKind, { leftAlone, result }: DueInput): boolean {
  switch (kind) {
    case 'heads-up':
    case 'decision':
      return !leftAlone && result.tippedOn === null;
    case 'second-look':
      return !leftAlone;
    case 'ripe-watch':
    case 'frost':
    case 'dormant':
      return true;
  }
}

/** Whether something whose day has come is still true and still of use today. */
function isWorthSaying(kind: NudgeKind, on: Day, { input, result }: DueInput): boolean {
  const { today } = input;
  switch (kind) {
    case 'heads-up':
      return result.verdict === 'watch';
    case 'decision':
      return result.verdict === 'tip';
    case 'second-look':
      return result.tippedOn !== null && daysBetween(result.tippedOn, today) <= SECOND_LOOK_WORTH_DAYS;
    case 'ripe-watch': {
      const window = result.expectedWindow ?? result.window;
      return window !== null && today <= window.to;
    }
    case 'frost':
      return input.garden.firstFrost !== null && today <= input.garden.firstFrost;
    case 'dormant':
      return today <= addDays(on, DORMANT_WORTH_DAYS);
  }
}

/** A tip told of late is looked at again the day after it was told, so that the telling is not answered by it. */
function secondLookOn(milestone: Milestone, { tips, result }: DueInput): Day {
  const tip = tips.findLast(({ day }) => day === result.tippedOn);
  return tip ? later(milestone.on, addDays(tip.toldOn, 1)) : milestone.on;
}

function tipOf({ tips, result }: DueInput): number {
  const index = tips.findLastIndex(({ day }) => day === result.tippedOn);
  return Math.max(index, 0);
}
