/** First pause after a failed attempt, and the longest. Ours: quick, so that the nonce still covers a retry. */
const FIRST_SECONDS = 5;
const LONGEST_SECONDS = 300;

/** Pause before the attempt after this one: doubling, or as long as the platform asks where that is longer. */
export function retryAfterSeconds(attempt: number, askedMs = 0): number {
  const doubling = Math.min(FIRST_SECONDS * 2 ** Math.min(attempt - 1, 10), LONGEST_SECONDS);
  return Math.max(doubling, Math.ceil(askedMs / 1000));
}
