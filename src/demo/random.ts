/** Numbers from 0 up to 1, the same for the same seed on every machine. */
export type Random = () => number;

/** A 32-bit counter mixed by multiply and shift; good enough for an invented season. */
export function randomOf(seed: string): Random {
  let state = 0x9e3779b9;
  for (const sign of seed) state = Math.imul(state ^ (sign.codePointAt(0) ?? 0), 0x01000193);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A whole number from `low` to `high`, both included. */
export function between(random: Random, low: number, high: number): number {
  return low + Math.floor(random() * (high - low + 1));
}

/** About normal around 0 with standard deviation 1: the sum of twelve even ones (Irwin–Hall). */
export function spread(random: Random): number {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += random();
  return sum;
}

export function oneOf<Item>(random: Random, items: readonly [Item, ...Item[]]): Item {
  return items[Math.floor(random() * items.length)] ?? items[0];
}
