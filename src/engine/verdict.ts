import { type Day, daysBetween } from './day.ts';
import { type Window, windowAfterTip } from './decision.ts';
import type { GardenSeason } from './garden-season.ts';
import { RESPONSE_DAYS } from './ripening.ts';
import { type TreeSeason, treeSeasonOf, type VerdictInput } from './tree-season.ts';

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

/** The answer, with every date and sign it rests on. */
export interface VerdictResult extends TreeSeason {
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

/** Whether to tip a tree today, in the order of the table: the first row that fits. */
export function verdictOf(input: VerdictInput): VerdictResult {
  const { today, garden, tree } = input;
  const state = treeSeasonOf(input);
  const { heatEnd, tippedOn, latestTipDate: latest } = state;

  if (garden.heat.kind === 'unknown') return result('set-up', state);
  if ((tree.needsPollination && !tree.pollinated) || tree.purpose === 'wood') {
    return result('not-for-fruit', state);
  }
  if (state.fruit.present) return result('leave', state, leaveTiming(state, garden));
  if (garden.heat.kind === 'never-ends') return result('no-deadline', state, 'endless-heat');
  if (garden.heat.kind === 'none') return result('no-deadline', state, 'no-heat');
  if (tippedOn && daysBetween(tippedOn, today) <= RESPONSE_DAYS) {
    return result('await', state, undefined, windowAfterTip(tippedOn, tree.span));
  }
  if (state.decisionDate && today < state.decisionDate) return result('watch', state);
  if (heatEnd && latest && today <= latest) {
    const timing = today <= onTimeUntil(heatEnd, tree.span) ? 'on-time' : 'late';
    const shoots = tree.purpose === 'both' || tree.firstYear ? 'side' : 'any';
    return { ...result('tip', state, timing, windowAfterTip(today, tree.span)), shoots };
  }
  return result('let-grow', state);
}

function result(
  verdict: Verdict,
  state: TreeSeason,
  timing?: Timing,
  window: Window | null = state.window,
): VerdictResult {
  return {
    ...state,
    verdict,
    ...(timing ? { timing } : {}),
    ripeFrom: window?.from ?? null,
    ripeTo: window?.to ?? null,
    seen: state.fruit.seen,
    cropQuestion: state.fruit.maybeBrebasOn !== null,
    contradictedOn: state.fruit.contradictedOn,
  };
}

/** Where the ripe window lies against heat end and frost; nothing when neither can tell. */
function leaveTiming({ window, heatEnd, firstFrost }: TreeSeason, garden: GardenSeason): Timing | undefined {
  if (!window) return undefined;
  if (garden.heat.kind === 'never-ends') return 'in-heat';
  if (heatEnd && window.to <= heatEnd) return 'in-heat';
  if (heatEnd && window.from <= heatEnd) return 'edge';
  if (firstFrost) return window.from <= firstFrost ? 'after-heat' : 'after-frost';
  return heatEnd ? 'after-heat' : undefined;
}
