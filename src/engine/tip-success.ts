import { addDays, type Day } from './day.ts';
import { inOrder, type SeasonObservation } from './fruit.ts';
import { type Share, shareOf } from './learning.ts';
import { LEARNED_RECORDS_NEEDED, QUICKEST_RESPONSE_DAYS } from './ripening.ts';
import { type BudSign, budSignOf } from './tree-season.ts';

/** Fruitlets that show later than this after a tip are not put down to it. Ours: twice the usual 10 days. */
export const RESULT_WITHIN_DAYS = 20;

/** One tip whose result is known. */
export interface TipResult {
  readonly on: Day;
  /** Latest note on buds before it. */
  readonly budSign: BudSign;
  readonly broughtFruitlets: boolean;
}

/**
 * The tips of one tree in one season whose results are known. A tip brought fruitlets when main-crop ones
 * were noted after it, within 20 days and before the next tip; it did not when from day 7 on "no fruitlets"
 * or "only branched" was noted instead. A tip on a tree that had fruitlets already is not counted.
 */
export function tipResultsOf(observations: readonly SeasonObservation[]): readonly TipResult[] {
  const notes = inOrder(observations).filter(({ crop }) => crop !== 'breba');
  const results: TipResult[] = [];
  let hasFruit = false;
  for (const [i, note] of notes.entries()) {
    if (note.kind === 'tipped' && !hasFruit) {
      const brought = resultOf(note.on, notes.slice(i + 1));
      if (brought !== null) {
        results.push({ on: note.on, budSign: budSignOf(notes.slice(0, i)), broughtFruitlets: brought });
      }
    }
    if (note.kind === 'fruitlets') hasFruit = true;
    if (note.kind === 'dropped') hasFruit = false;
  }
  return results;
}

function resultOf(tipped: Day, after: readonly SeasonObservation[]): boolean | null {
  const until = addDays(tipped, RESULT_WITHIN_DAYS);
  const lookFrom = addDays(tipped, QUICKEST_RESPONSE_DAYS);
  let result: boolean | null = null;
  for (const { kind, on } of after) {
    if (kind === 'tipped') return result;
    if (kind === 'fruitlets' && on <= until) return true;
    if ((kind === 'no-fruitlets' || kind === 'branched') && on >= lookFrom) result = false;
  }
  return result;
}

/** How often tips brought fruitlets, by what the buds had shown; a sign with fewer than three tips is left out. */
export function tipSuccess(results: readonly TipResult[]): Partial<Record<BudSign, Share>> {
  const shares: Partial<Record<BudSign, Share>> = {};
  for (const sign of ['double', 'single', 'none'] as const) {
    const tips = results.filter(({ budSign }) => budSign === sign);
    if (tips.length < LEARNED_RECORDS_NEEDED) continue;
    shares[sign] = shareOf(tips.filter(({ broughtFruitlets }) => broughtFruitlets).length, tips.length);
  }
  return shares;
}
