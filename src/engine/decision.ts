import { addDays, type Day, earlier } from './day.ts';
import { QUICKEST_RESPONSE_DAYS, RESPONSE_DAYS, type Span } from './ripening.ts';

/**
 * Warmth for ripening is still hoped for this many days past the last reliable heat: figs finish, less
 * sweet. Ours; first frost ends it sooner.
 */
export const WARMTH_AFTER_HEAT_DAYS = 21;

/** Most days of caution a member may choose. */
export const MOST_CAUTION_DAYS = 21;

/** How long ripening takes from the first signs, days. Phase III, Çelikel et al. 1997, Acta Hort. 441:145–151. */
export const RIPENING_DAYS = 13;

/** From the first signs at the quickest, days. One New Jersey grower's log: common practice, no source. */
export const QUICKEST_RIPENING_DAYS = 5;

export interface Window {
  readonly from: Day;
  readonly to: Day;
}

/**
 * The last day to act on a tree without fruitlets: time for the response to a tip and the planning span,
 * and `caution` days more, before the heat ends.
 *
 * `decisionDate(day('2026-10-15'), spanOf({ group: 'late' }), 0) //=> '2026-07-07'`
 */
export function decisionDate(heatEnd: Day, span: Span, caution: number): Day {
  return addDays(onTimeUntil(heatEnd, span), -caution);
}

/** The last day on which a tip leaves the whole planning span within the heat. */
export function onTimeUntil(heatEnd: Day, span: Span): Day {
  return addDays(heatEnd, -(span.planning + RESPONSE_DAYS));
}

/**
 * When main-crop fruitlets first seen on `seen` should ripen.
 *
 * `ripeWindow(day('2026-06-08'), spanOf({ group: 'late' })) //=> { from: '2026-09-06', to: '2026-09-16' }`
 */
export function ripeWindow(seen: Day, span: Pick<Span, 'from' | 'to'>): Window {
  return { from: addDays(seen, span.from), to: addDays(seen, span.to) };
}

/** When fruit could ripen after a tip on `tipped`: a quick response and a quick fig to a slow one of each. */
export function windowAfterTip(tipped: Day, span: Pick<Span, 'from' | 'to'>): Window {
  return {
    from: addDays(tipped, QUICKEST_RESPONSE_DAYS + span.from),
    to: addDays(tipped, RESPONSE_DAYS + span.to),
  };
}

/** What is left of a ripe window once swelling, colour or a drooping neck were seen on `seen`. */
export function windowFromSigns(seen: Day): Window {
  return { from: addDays(seen, QUICKEST_RIPENING_DAYS), to: addDays(seen, RIPENING_DAYS) };
}

/** The last day that still has warmth enough to finish a fig: three weeks past the heat, but before frost. */
export function lastWarmthOf(heatEnd: Day, firstFrost: Day | null): Day {
  const finish = addDays(heatEnd, WARMTH_AFTER_HEAT_DAYS);
  return firstFrost ? earlier(finish, firstFrost) : finish;
}

/** The last day on which a tip can still lead to ripe figs, with a quick response and a quick fig. */
export function latestTipDate(lastWarmth: Day, span: Pick<Span, 'from'>): Day {
  return addDays(lastWarmth, -(QUICKEST_RESPONSE_DAYS + span.from));
}
