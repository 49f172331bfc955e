import { addDays, type Day, earlier, fromEpochDays, monthDayOf, toEpochDays } from './day.ts';
import type { PastSeason, PreparedWarmth } from './past-seasons.ts';
import { quantile } from './percentile.ts';
import type { Span } from './ripening.ts';
import { inSeason, type Season, seasonOf } from './season.ts';
import { type DailyWarmth, needOf } from './warmth.ts';

/** Fewer past seasons than this tell nothing. Ours. */
export const FEWEST_SEASONS = 3;

/** How one past season would have ended for the fruit. */
export interface SeasonOutcome {
  readonly season: string;
  /** Null when the warmth did not suffice before the season, or its record, was over. */
  readonly ripeOn: Day | null;
  readonly inHeat: boolean;
  readonly beforeFrost: boolean;
}

export interface Outlook {
  /** Past seasons that could tell. */
  readonly seasons: number;
  /** Of those: ripe within the season's own heat. */
  readonly inHeat: number;
  /** Of those: ripe before its first freeze. */
  readonly beforeFrost: number;
  /** Days from the fruitlet to the ripe fig, the median over the seasons, by each end of the span and by
   * the planning span; null when half of the seasons or more would not have got there. */
  readonly days: {
    readonly from: number | null;
    readonly planning: number | null;
    readonly to: number | null;
  };
  readonly outcomes: readonly SeasonOutcome[];
  /** Seasons left out for gaps. */
  readonly leftOut: readonly string[];
}

export interface OutlookQuestion {
  /** Day the fruitlet shows: seen, or tip + RESPONSE_DAYS. */
  readonly start: Day;
  readonly today: Day;
  readonly span: Span;
  /** Days by which a cover puts off the end of the heat. */
  readonly coverDays?: number;
}

/**
 * How every other season of the record would have ended for fruit that shows on `start`. This season's own
 * days come first, as far as they are known by `today`; then each season's rest, by its calendar days. Null
 * when fewer than three seasons can tell, or when `start` is not in the season of `today`.
 */
export function outlookOf(
  prepared: PreparedWarmth,
  { start, today, span, coverDays = 0 }: OutlookQuestion,
): Outlook | null {
  const season = seasonOf(today, prepared.hemisphere);
  // A tip in the last days of a season brings the next season's fruit, of which these seasons say nothing.
  if (start < season.from || start > season.to) return null;
  const own = ownPartOf(prepared, season, start, today);
  const outcomes: SeasonOutcome[] = [];
  const leftOut: string[] = [];
  const days: Record<SpanEnd, number[]> = { from: [], planning: [], to: [] };
  for (const past of prepared.seasons) {
    if (past.season.startYear === season.startYear) continue;
    const rest = restOf(prepared, past, own, coverDays);
    if (rest === null) {
      leftOut.push(past.season.label);
      continue;
    }
    for (const end of SPAN_ENDS) days[end].push(daysToRipe(prepared, own, rest, needOf(span[end])));
    outcomes.push(outcomeOf(prepared, past, own, rest, needOf(span.planning)));
  }
  if (outcomes.length < FEWEST_SEASONS) return null;
  return {
    seasons: outcomes.length,
    inHeat: outcomes.filter(({ inHeat }) => inHeat).length,
    beforeFrost: outcomes.filter(({ beforeFrost }) => beforeFrost).length,
    days: { from: medianDays(days.from), planning: medianDays(days.planning), to: medianDays(days.to) },
    outcomes,
    leftOut,
  };
}

const SPAN_ENDS = ['from', 'planning', 'to'] as const;
type SpanEnd = (typeof SPAN_ENDS)[number];

/** The part of a season whose own days are known: none when the fruitlet is still to come. */
interface OwnPart {
  /** Slot of the fruitlet's day. */
  readonly start: number;
  readonly days: number;
  /** First day that has to be taken from other seasons. */
  readonly restFrom: Day;
}

function ownPartOf({ warmth }: PreparedWarmth, season: Season, start: Day, today: Day): OwnPart {
  const first = toEpochDays(start) - warmth.start;
  const end = toEpochDays(earlier(today, season.to)) - warmth.start;
  let slot = first;
  while (slot <= end && isKnown(warmth, slot)) slot++;
  const days = slot - first;
  return { start: first, days, restFrom: addDays(start, days) };
}

/** The slots of a past season that stand in for the days to come. */
interface Rest {
  readonly from: number;
  readonly last: number;
  readonly heatEnd: number | null;
  readonly freeze: number | null;
}

/** Null when a day that matters is missing: one before the first freeze, or before the season's end. */
function restOf({ warmth }: PreparedWarmth, past: PastSeason, own: OwnPart, coverDays: number): Rest | null {
  const from = toEpochDays(inSeason(monthDayOf(own.restFrom), past.season)) - warmth.start;
  const until = past.freeze ?? past.last;
  if (from < 0 || until >= warmth.length || missingDays(warmth, from, until) > 0) return null;
  return {
    from,
    last: past.last,
    heatEnd: past.heatEnd === null ? null : past.heatEnd + coverDays,
    freeze: past.freeze,
  };
}

/** Days from the fruitlet's to the first on which the warmth suffices; NEVER when it does not. */
function daysToRipe({ warmth }: PreparedWarmth, own: OwnPart, rest: Rest, need: number): number {
  const ownEnd = own.start + own.days;
  const ownWarmth = own.days === 0 ? 0 : sumOf(warmth, own.start, ownEnd);
  if (ownWarmth >= need) return firstReaching(warmth, own.start, ownEnd - 1, need) - own.start;
  const slot = firstReaching(warmth, rest.from, rest.last, need - ownWarmth);
  // Past a freeze there may be gaps after all: what lies behind one is not known.
  if (slot > rest.last || missingDays(warmth, rest.from, slot) > 0) return NEVER;
  return own.days + slot - rest.from;
}

const NEVER = Number.POSITIVE_INFINITY;

function outcomeOf(
  prepared: PreparedWarmth,
  past: PastSeason,
  own: OwnPart,
  rest: Rest,
  need: number,
): SeasonOutcome {
  const ripe = rest.from - own.days + daysToRipe(prepared, own, rest, need);
  const isRipe = ripe !== NEVER;
  return {
    season: past.season.label,
    ripeOn: isRipe ? fromEpochDays(prepared.warmth.start + ripe) : null,
    inHeat: rest.heatEnd !== null && ripe <= rest.heatEnd,
    beforeFrost: isRipe && (rest.freeze === null || ripe < rest.freeze),
  };
}

/**
 * The first slot from `from` on up to which the warmth sums to `need`; `last + 1` if none does. Sums never
 * fall, so it is searched by halves.
 */
function firstReaching({ sumBefore, length }: DailyWarmth, from: number, last: number, need: number): number {
  const target = (sumBefore[from] ?? 0) + need;
  let low = from;
  let high = Math.min(last, length - 1) + 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sumBefore[middle + 1] ?? 0) >= target) high = middle;
    else low = middle + 1;
  }
  return low > Math.min(last, length - 1) ? last + 1 : low;
}

function sumOf({ sumBefore }: DailyWarmth, from: number, to: number): number {
  return (sumBefore[to] ?? 0) - (sumBefore[from] ?? 0);
}

function missingDays({ gapsBefore }: DailyWarmth, from: number, to: number): number {
  return to < from ? 0 : (gapsBefore[to + 1] ?? 0) - (gapsBefore[from] ?? 0);
}

function isKnown(warmth: DailyWarmth, slot: number): boolean {
  return slot >= 0 && slot < warmth.length && missingDays(warmth, slot, slot) === 0;
}

function medianDays(days: number[]): number | null {
  const median = quantile(
    days.sort((a, b) => a - b),
    0.5,
  );
  return Number.isFinite(median) ? Math.round(median) : null;
}
