/** Whole numbers that come and go, counted by value: far quicker than sorting them anew for every day. */
export interface Pool {
  /** How many there are of each value, from `LOWEST` on. */
  readonly counts: Uint16Array;
  /** How many there are in all. */
  size: number;
}

/** Tenths of °C; no air temperature was ever outside −100 to 100 °C. Values beyond count as the end. */
const LOWEST = -1000;
const HIGHEST = 1000;

export function emptyPool(): Pool {
  return { counts: new Uint16Array(HIGHEST - LOWEST + 1), size: 0 };
}

export function count(pool: Pool, value: number, by: 1 | -1): void {
  const at = Math.min(HIGHEST, Math.max(LOWEST, value)) - LOWEST;
  pool.counts[at] = (pool.counts[at] ?? 0) + by;
  pool.size += by;
}

/**
 * The quantiles `ps` (0–1, ascending) of a pool by the rule of engine/percentile.ts: linear interpolation at
 * (n−1)p. Empty for an empty pool.
 */
export function quantilesOf(pool: Pool, ps: readonly number[]): readonly number[] {
  const found: number[] = [];
  if (pool.size === 0) return found;
  let at = -1;
  let upTo = 0;
  /** The value of that rank, 0 the lowest; ranks are asked for in ascending order. */
  const ranked = (rank: number): number => {
    while (upTo <= rank) upTo += pool.counts[++at] ?? pool.size;
    return at + LOWEST;
  };
  for (const p of ps) {
    const position = (pool.size - 1) * p;
    const low = ranked(Math.floor(position));
    // Looking ahead must not lose the place: the next quantile may begin at this rank again.
    const place = { at, upTo };
    const high = ranked(Math.ceil(position));
    found.push(low + (position - Math.floor(position)) * (high - low));
    at = place.at;
    upTo = place.upTo;
  }
  return found;
}
