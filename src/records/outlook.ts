import { addDays, type Day } from '../engine/day.ts';
import { type Outlook, outlookOf } from '../engine/outlook.ts';
import type { PreparedWarmth } from '../engine/past-seasons.ts';
import { RESPONSE_DAYS } from '../engine/ripening.ts';
import type { Standing } from './standing.ts';

/** An outlook with what it supposes: a tip today, or the fruitlets that are there. */
export interface SupposedOutlook {
  readonly outlook: Outlook;
  readonly supposes: 'tip-today' | 'fruitlets';
}

/**
 * How past seasons would have ended for this tree: for the fruit it has, else for a tip today. Null where
 * neither makes sense or too few seasons can tell.
 */
export function outlookOfTree(record: PreparedWarmth, standing: Standing): SupposedOutlook | null {
  const { result, input, span, tree } = standing;
  const start = startOf(standing);
  if (start === null) return null;
  const question = { start, today: input.today, span, coverDays: tree.coverDays };
  const outlook = outlookOf(record, question);
  return outlook === null ? null : { outlook, supposes: result.fruit.present ? 'fruitlets' : 'tip-today' };
}

function startOf({ result, input }: Standing): Day | null {
  switch (result.verdict) {
    case 'leave':
      return result.seen;
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
