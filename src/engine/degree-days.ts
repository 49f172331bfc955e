/**
 * Degree-days of one day from its lowest and highest temperature.
 *
 * Single methods take one curve through the day's minimum and maximum; double methods one for each half of
 * it, the second falling to the next day's minimum. Sine: Baskerville & Emin 1969; double sine: Allen 1976.
 * Closed form and cutoffs agree with the University of California's Degree Days Validation Challenge.
 */
export type DegreeDayMethod =
  | 'single-sine'
  | 'double-sine'
  | 'single-triangle'
  | 'double-triangle'
  /** max(0, mean − base); knows no upper threshold. McMaster & Wilhelm 1997, method 1. */
  | 'average'
  /** Both ends held within the thresholds before they are averaged. McMaster & Wilhelm 1997, method 2. */
  | 'clamped-average';

/**
 * What warmth above the upper threshold does. Horizontal: counts as the threshold itself. Vertical: stops
 * development. Intermediate: slows it, the excess is taken off again, but never below nothing.
 */
export type CutoffKind = 'horizontal' | 'vertical' | 'intermediate';

export interface DegreeDayModel {
  readonly method: DegreeDayMethod;
  /** Lower threshold, in the unit of the temperatures. */
  readonly base: number;
  /** Upper threshold; null for none. */
  readonly cutoff: { readonly at: number; readonly kind: CutoffKind } | null;
}

/**
 * Degree-days of a day, in the unit of its temperatures. `nextMin` is used by the double methods; on the
 * last day of a record pass that day's own minimum. A minimum above its maximum is taken the other way
 * round, as it comes about in the second half of a day before a warmer night.
 *
 * `degreeDays({ min: 38, max: 55, nextMin: 36 }, { method: 'single-sine', base: 50, cutoff: null }) //≈ 1.19`
 */
export function degreeDays(
  { min, max, nextMin }: { readonly min: number; readonly max: number; readonly nextMin: number },
  model: DegreeDayModel,
): number {
  switch (model.method) {
    case 'single-sine':
      return underCurve(SINE, min, max, model);
    case 'single-triangle':
      return underCurve(TRIANGLE, min, max, model);
    case 'double-sine':
      return (underCurve(SINE, min, max, model) + underCurve(SINE, nextMin, max, model)) / 2;
    case 'double-triangle':
      return (underCurve(TRIANGLE, min, max, model) + underCurve(TRIANGLE, nextMin, max, model)) / 2;
    case 'average':
      return Math.max(0, (min + max) / 2 - model.base);
    case 'clamped-average': {
      const top = model.cutoff?.at ?? Number.POSITIVE_INFINITY;
      const held = (value: number) => Math.min(Math.max(value, model.base), top);
      return (held(min) + held(max)) / 2 - model.base;
    }
  }
}

/** One day's curve between two ends that lie on either side of a threshold. */
interface Curve {
  /** Area above the threshold, degree-days. */
  readonly area: (low: number, high: number, threshold: number) => number;
  /** Part of the day spent above it, 0–1. */
  readonly time: (low: number, high: number, threshold: number) => number;
}

const SINE: Curve = {
  area(low, high, threshold) {
    const mean = (low + high) / 2;
    const swing = (high - low) / 2;
    const angle = Math.asin((threshold - mean) / swing);
    return ((mean - threshold) * (Math.PI / 2 - angle) + swing * Math.cos(angle)) / Math.PI;
  },
  time(low, high, threshold) {
    const angle = Math.asin((threshold - (low + high) / 2) / ((high - low) / 2));
    return 0.5 - angle / Math.PI;
  },
};

const TRIANGLE: Curve = {
  area: (low, high, threshold) => (high - threshold) ** 2 / (2 * (high - low)),
  time: (low, high, threshold) => (high - threshold) / (high - low),
};

function underCurve(curve: Curve, a: number, b: number, { base, cutoff }: DegreeDayModel): number {
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  const above = areaAbove(curve, low, high, base);
  if (cutoff === null) return above;
  const excess = areaAbove(curve, low, high, cutoff.at);
  switch (cutoff.kind) {
    case 'horizontal':
      return above - excess;
    case 'vertical':
      return above - excess - (cutoff.at - base) * timeAbove(curve, low, high, cutoff.at);
    case 'intermediate':
      return Math.max(0, above - 2 * excess);
  }
}

function areaAbove(curve: Curve, low: number, high: number, threshold: number): number {
  if (low >= threshold) return (low + high) / 2 - threshold;
  return high <= threshold ? 0 : curve.area(low, high, threshold);
}

function timeAbove(curve: Curve, low: number, high: number, threshold: number): number {
  if (low >= threshold) return 1;
  return high <= threshold ? 0 : curve.time(low, high, threshold);
}
