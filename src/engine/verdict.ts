import { type Day, daysBetween } from './day.ts';
import { type Window, windowAfterTip } from './decision.ts';
import type { GardenSeason } from './garden-season.ts';
import { RESPONSE_DAYS } from './ripening.ts';
import {
  type Deadline,
  isForFruit,
  type TreeSeason,
  treeSeasonOf,
  type VerdictInput,
} from './tree-season.ts';

export type { BudSign, Kept, Purpose, TreeFacts, VerdictInput } from './tree-season.ts';

export type Verdict =
  | 'set-up'
  | 'not-for-fruit'
  | 'leave'
  | 'no-deadline'
  | 'await'
  | 'watch'
  | 'tip'
  | 'let-grow';

export type Timing =
  | 'in-heat'
  | 'edge'
  | 'after-heat'
  | 'after-frost'
  | 'endless-heat'
  | 'no-heat'
  | 'on-time'
  | 'late';

/** The answer, with every date and sign it rests on; the deadline's dates are null while heat has no known end. */
export interface VerdictResult extends Omit<TreeSeason, 'deadline'>, Nullable<Deadline> {
  readonly verdict: Verdict;
  readonly timing?: Timing;
  /** With `tip`: `side` when the leaders stay, `any` otherwise; side shoots come first either way. */
  readonly shoots?: 'side' | 'any';
  /** When fruit should ripen: what is there, or what the tip just made, or made today, would bring. */
  readonly ripeFrom: Day | null;
  readonly ripeTo: Day | null;
  readonly seen: Day | null;
  /** True while figs of an unnamed crop may be brebas: the member should be asked. */
  readonly cropQuestion: boolean;
  /** Day on which no fruitlets were seen after some had been logged: ask whether all dropped. */
  readonly contradictedOn: Day | null;
}

type Nullable<T> = { readonly [K in keyof T]: T[K] | null };

const NO_DEADLINE: Nullable<Deadline> = {
  heatEnd: null,
  lastWarmth: null,
  decisionDate: null,
  onTimeUntil: null,
  latestTipDate: null,
};

/** Whether to tip a tree today, in the order of the table: the first row that fits. */
export function verdictOf(input: VerdictInput): VerdictResult {
  const { today, garden, tree } = input;
  const state = treeSeasonOf(input);
  const { deadline, window, tippedOn } = state;

  if (garden.heat.kind === 'unknown') return answer('set-up', state);
  if (!isForFruit(tree)) return answer('not-for-fruit', state);
  // There is a ripe window exactly when main-crop fruit is known to be there.
  if (window) return answer('leave', state, leaveTiming(window, state, garden));
  if (!deadline) {
    return answer('no-deadline', state, garden.heat.kind === 'never-ends' ? 'endless-heat' : 'no-heat');
  }
  if (tippedOn && daysBetween(tippedOn, today) <= RESPONSE_DAYS) {
    return answer('await', state, undefined, windowAfterTip(tippedOn, tree.span));
  }
  if (today < deadline.decisionDate) return answer('watch', state);
  if (today <= deadline.latestTipDate) {
    const timing = today <= deadline.onTimeUntil ? 'on-time' : 'late';
    const shoots = tree.purpose === 'both' || tree.firstYear ? 'side' : 'any';
    return { ...answer('tip', state, timing, windowAfterTip(today, tree.span)), shoots };
  }
  return answer('let-grow', state);
}

function answer(
  verdict: Verdict,
  { deadline, ...state }: TreeSeason,
  timing?: Timing,
  window: Window | null = state.window,
): VerdictResult {
  return {
    verdict,
    ...(timing ? { timing } : {}),
    ...(deadline ?? NO_DEADLINE),
    ...state,
    ripeFrom: window?.from ?? null,
    ripeTo: window?.to ?? null,
    seen: state.fruit.seen,
    cropQuestion: state.fruit.maybeBrebasOn !== null,
    contradictedOn: state.fruit.contradictedOn,
  };
}

/** Where the ripe window lies against heat end and frost; nothing when neither can tell. */
function leaveTiming(
  window: Window,
  { deadline, firstFrost }: TreeSeason,
  { heat }: GardenSeason,
): Timing | undefined {
  if (heat.kind === 'never-ends') return 'in-heat';
  if (deadline && window.to <= deadline.heatEnd) return 'in-heat';
  if (deadline && window.from <= deadline.heatEnd) return 'edge';
  if (firstFrost) return window.from <= firstFrost ? 'after-heat' : 'after-frost';
  return deadline ? 'after-heat' : undefined;
}
