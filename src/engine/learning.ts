/** A span the club's own complete records support. */
export interface LearnedSpan {
  /** Middle of the predictive distribution's 80 %, days. */
  readonly from: number;
  readonly to: number;
  /** Its 80th percentile, days: what to plan with. */
  readonly planning: number;
  readonly records: number;
}
