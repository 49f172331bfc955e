import { type Day, daysBetween } from './day.ts';
import { GROUPS, type RipeningGroup } from './ripening.ts';
import { studentTQuantile } from './student-t.ts';

/** A club record counts when it took this many days; anything else is a slip. Ours. */
export const FEWEST_SPAN_DAYS = 35;
export const MOST_SPAN_DAYS = 160;

/** How many records the group's span weighs, in the mean and in the spread alike. Ours. */
export const PRIOR_RECORDS = 4;

/** Standard normal quantile that leaves 10 % above it: half of an 80 % interval. */
const Z_80 = 1.2815515655446004;

/** A span the club's own records support, days. */
export interface LearnedSpan {
  /** The records' mean, shrunk towards the middle of the group's span. */
  readonly mean: number;
  /** 80 % interval of that mean. */
  readonly meanFrom: number;
  readonly meanTo: number;
  /** 10th and 90th percentile of the predictive distribution: what the next tree should take. */
  readonly from: number;
  readonly to: number;
  /** Its 80th percentile, rounded up: what to plan with. */
  readonly planning: number;
  readonly records: number;
}

/** Days from the first main-crop fruitlet to the first ripe pick of one tree in one season, if they count. */
export function recordedSpan(seen: Day, picked: Day): number | null {
  const days = daysBetween(seen, picked);
  return days >= FEWEST_SPAN_DAYS && days <= MOST_SPAN_DAYS ? days : null;
}

/**
 * What a cultivar's records teach, with its ripening group as the prior.
 *
 * The model: days are normal with unknown mean and variance, under the conjugate normal-inverse-χ² prior.
 * Its mean is the middle of the group's span, weighing 4 records; its variance, weighing 4 records too, is
 * the one for which the group's span holds the middle 80 % (ours: no published spread was found). The
 * predictive distribution is then Student's t with 4 + n degrees of freedom, around
 * (4·m₀ + n·ȳ) / (4 + n), of squared scale s² (1 + 1/(4 + n)), where
 * s² = (4·s₀² + Σ(y − ȳ)² + 4n/(4 + n)·(ȳ − m₀)²) / (4 + n).
 *
 * Days out of range are passed over; null when none is left.
 */
export function learnSpan(days: readonly number[], group: RipeningGroup): LearnedSpan | null {
  const valid = days.filter((value) => value >= FEWEST_SPAN_DAYS && value <= MOST_SPAN_DAYS);
  const n = valid.length;
  if (n === 0) return null;
  const { spanFrom, spanTo } = GROUPS[group];
  const priorMean = (spanFrom + spanTo) / 2;
  const priorVariance = ((spanTo - spanFrom) / 2 / Z_80) ** 2;
  const weight = PRIOR_RECORDS + n;
  const average = valid.reduce((sum, value) => sum + value, 0) / n;
  const mean = (PRIOR_RECORDS * priorMean + n * average) / weight;
  const scatter = valid.reduce((sum, value) => sum + (value - average) ** 2, 0);
  const pull = ((PRIOR_RECORDS * n) / weight) * (average - priorMean) ** 2;
  const variance = (PRIOR_RECORDS * priorVariance + scatter + pull) / weight;
  const predictive = Math.sqrt(variance * (1 + 1 / weight));
  const ofMean = Math.sqrt(variance / weight);
  const t90 = studentTQuantile(0.9, weight);
  return {
    mean,
    meanFrom: mean - t90 * ofMean,
    meanTo: mean + t90 * ofMean,
    from: Math.round(mean - t90 * predictive),
    to: Math.round(mean + t90 * predictive),
    planning: Math.ceil(mean + studentTQuantile(0.8, weight) * predictive),
    records: n,
  };
}

/** A share of so many cases, with its 80 % interval, all 0–1. */
export interface Share {
  readonly count: number;
  readonly of: number;
  readonly low: number;
  readonly high: number;
}

/**
 * `count` of `of` cases (at least one) with Wilson's score interval at 80 %: Wilson 1927, recommended by
 * Brown, Cai & DasGupta 2001, Statistical Science 16:101–133.
 */
export function shareOf(count: number, of: number): Share {
  const share = count / of;
  const spread = Z_80 ** 2 / of;
  const centre = (share + spread / 2) / (1 + spread);
  const half = Math.sqrt(spread * (share * (1 - share) + spread / 4)) / (1 + spread);
  return { count, of, low: Math.max(0, centre - half), high: Math.min(1, centre + half) };
}
