import { addDays, type Day } from './day.ts';
import type { SeasonObservation } from './fruit.ts';
import { isForFruit, treeSeasonOf, type VerdictInput } from './tree-season.ts';

export const NUDGE_KINDS = ['heads-up', 'decision', 'second-look', 'ripe-watch', 'frost', 'dormant'] as const;

export type NudgeKind = (typeof NUDGE_KINDS)[number];

/** When each nudge comes, in days from the date it hangs on. Ours. */
export const HEADS_UP_BEFORE_DAYS = 14;
export const SECOND_LOOK_AFTER_DAYS = 8;
export const FROST_BEFORE_DAYS = 14;
export const DORMANT_AFTER_DAYS = 45;

export interface Milestone {
  readonly kind: NudgeKind;
  readonly on: Day;
  /** Whether, by what is known now, it should be sent when its day comes. */
  readonly holds: boolean;
}

/** What comes after a tip and settles the second look. */
const TIP_RESULTS: readonly SeasonObservation['kind'][] = [
  'fruitlets',
  'no-fruitlets',
  'branched',
  'dropped',
  'ripening',
  'picked',
];

/**
 * The dates of a tree's season on which something is worth saying, earliest first, each with whether it
 * still holds. A date that cannot be known (no heat end, no frost, no tip, no fruit) is not in the list.
 */
export function milestonesOf(input: VerdictInput): readonly Milestone[] {
  const { garden, tree, observations, today } = input;
  const state = treeSeasonOf(input);
  const { deadline, tippedOn, fruit } = state;
  const forFruit = isForFruit(tree);
  const found: Milestone[] = [];

  if (deadline && forFruit) {
    const { decisionDate, latestTipDate } = deadline;
    const open = !fruit.present && decisionDate <= latestTipDate;
    found.push({ kind: 'heads-up', on: addDays(decisionDate, -HEADS_UP_BEFORE_DAYS), holds: open });
    found.push({ kind: 'decision', on: decisionDate, holds: open && tippedOn === null });
  }
  if (tippedOn) {
    const lookedAt = observations.some(
      ({ kind, on, crop }) => on > tippedOn && on <= today && crop !== 'breba' && TIP_RESULTS.includes(kind),
    );
    found.push({
      kind: 'second-look',
      on: addDays(tippedOn, SECOND_LOOK_AFTER_DAYS),
      holds: !lookedAt && !fruit.present,
    });
  }
  // The expected window, so that signs of ripening do not move the watch once it was sent.
  const watch = state.expectedWindow ?? state.window;
  if (watch) {
    found.push({ kind: 'ripe-watch', on: watch.from, holds: fruit.pickedOn === null && forFruit });
  }
  if (garden.firstFrost) {
    found.push({
      kind: 'frost',
      on: addDays(garden.firstFrost, -FROST_BEFORE_DAYS),
      holds: tree.kept === 'pot' || (fruit.present && forFruit),
    });
    found.push({ kind: 'dormant', on: addDays(garden.firstFrost, DORMANT_AFTER_DAYS), holds: true });
  }
  return found.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}
