/** The few functions of jstat used as an independent reference; it ships no types. */
declare module 'jstat' {
  export const jStat: {
    /** Sample quantiles by plotting positions; alpha = beta = 1 interpolates at (n−1)p. */
    quantiles(values: readonly number[], ps: readonly number[], alpha: number, beta: number): number[];
    studentt: { inv(p: number, degrees: number): number; cdf(t: number, degrees: number): number };
  };
}
