/** The few functions of jstat used as an independent reference; it ships no types. */
declare module 'jstat' {
  export const jStat: {
    /** Linear interpolation at (n−1)k when `exclusive` is left out. */
    percentile(values: readonly number[], k: number): number;
    studentt: { inv(p: number, degrees: number): number; cdf(t: number, degrees: number): number };
  };
}
