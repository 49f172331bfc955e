import type { Cultivar } from './cultivar-types.ts';
import type { LearnedSpan } from './learning.ts';

/** How long a cultivar takes from a visible fruitlet to a ripe fig. */
export type RipeningGroup = 'early' | 'mid' | 'late' | 'unknown';

/** Days from a tip to a visible fruitlet, for planning. Common practice, no source: 7–10. */
export const RESPONSE_DAYS = 10;

/** The quickest response to a tip that can be hoped for, in days. Common practice, no source. */
export const QUICKEST_RESPONSE_DAYS = 7;

/** Club records a cultivar needs before they count. Ours: fewer says nothing about a spread. */
export const LEARNED_RECORDS_NEEDED = 3;

export interface GroupSpan {
  /** Days from a visible fruitlet to a ripe fig: the quickest and the slowest usual. */
  readonly spanFrom: number;
  readonly spanTo: number;
  /** Days to plan with. */
  readonly planningSpan: number;
}

/**
 * Common practice, no source: "early kinds ripen 60–75 days after the fruitlet shows, long ones about 90,
 * the longest 90–100; not known: allow 90–100".
 */
export const GROUPS: Readonly<Record<RipeningGroup, GroupSpan>> = {
  early: { spanFrom: 60, spanTo: 75, planningSpan: 70 },
  mid: { spanFrom: 75, spanTo: 90, planningSpan: 80 },
  late: { spanFrom: 90, spanTo: 100, planningSpan: 90 },
  unknown: { spanFrom: 60, spanTo: 100, planningSpan: 90 },
};

export const RIPENING_GROUPS = ['early', 'mid', 'late', 'unknown'] as const satisfies RipeningGroup[];

/** Days from a visible fruitlet to a ripe fig, and what they rest on. */
export interface Span {
  readonly from: number;
  readonly to: number;
  /** Days to count back with, before the response to a tip. */
  readonly planning: number;
  readonly basis: 'own' | 'learned' | 'published' | 'group';
  /** Where a published span was printed. */
  readonly source?: string;
  /** Club records in a learned span. */
  readonly records?: number;
  /** The ripening group the span came from, when `basis` is `group`. */
  readonly group?: RipeningGroup;
}

export interface SpanInput {
  /** What the member said of this tree, days. */
  readonly own?: { readonly from: number; readonly to: number } | null;
  readonly cultivar?: Cultivar | null;
  /** What the member said; `unknown` gives way to the cultivar's group. */
  readonly group: RipeningGroup;
  readonly learned?: LearnedSpan | null;
}

/**
 * The span to reckon with: the tree's own, else what the club learned from enough records, else the
 * cultivar's published span, else its ripening group. An own or published span is planned at its upper end,
 * so that the fruit has time even when it takes the longest.
 *
 * `spanOf({ group: 'late' }) //=> { from: 90, to: 100, planning: 90, basis: 'group', group: 'late' }`
 */
export function spanOf({ own, cultivar, group, learned }: SpanInput): Span {
  if (own) return { from: own.from, to: own.to, planning: own.to, basis: 'own' };
  if (learned && learned.records >= LEARNED_RECORDS_NEEDED) {
    const { from, to, planning, records } = learned;
    return { from, to, planning, basis: 'learned', records };
  }
  if (cultivar?.span) {
    const { from, to, source } = cultivar.span;
    return { from, to, planning: to, basis: 'published', source };
  }
  const known = groupOf(group, cultivar ?? null);
  const { spanFrom, spanTo, planningSpan } = GROUPS[known];
  return { from: spanFrom, to: spanTo, planning: planningSpan, basis: 'group', group: known };
}

/** The member's word on the group, or the cultivar's where the member does not know. */
export function groupOf(stated: RipeningGroup, cultivar: Cultivar | null): RipeningGroup {
  return stated === 'unknown' && cultivar ? cultivar.group : stated;
}
