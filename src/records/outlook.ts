import { addDays, type Day } from '../engine/day.ts';
import { type Outlook, outlookOf } from '../engine/outlook.ts';
import type { PreparedWarmth } from '../engine/past-seasons.ts';
import { RESPONSE_DAYS } from '../engine/ripening.ts';
import { previousSeason } from '../engine/season.ts';
import type { Standing } from './standing.ts';

/** An outlook with what it supposes: a tip today, or the fruitlets that are there. */
export interface SupposedOutlook {
  readonly outlook: Outlook;
  readonly supposes: 'tip-today' | 'fruitlets';
  /** Whether its seasons are the last ones without a break, so that they can be called that. */
  readonly unbroken: boolean;
}

/**
 * How past seasons would have ended for this tree: for the fruit it has, else for a tip today. Null where
 * neither makes sense or too few seasons can tell.
 */
export function outlookOfTree(record: PreparedWarmth, standing: Standing): SupposedOutlook | null {
  const { result, input, span, tree, season } = standing;
  const start = startOf(standing);
  if (start === null) return null;
  const question = { start, today: input.today, span, coverDays: tree.coverDays };
  const outlook = outlookOf(record, question);
  if (outlook === null) return null;
  const newest = outlook.outcomes.at(-1)?.season;
  return {
    outlook,
    supposes: result.fruit.present ? 'fruitlets' : 'tip-today',
    unbroken: outlook.leftOut.length === 0 && newest === previousSeason(season).label,
  };
}

function startOf({ result, input }: Standing): Day | null {
  switch (result.verdict) {
    case 'leave':
      // Fruit that is being picked has come to its end.
      return result.fruit.pickedOn === null ? result.seen : null;
    case 'watch':
    case 'tip':
    case 'let-grow':
    case 'no-deadline':
      return addDays(input.today, RESPONSE_DAYS);
    case 'set-up':
    case 'not-for-fruit':
    case 'await':
      return null;
  }
}
