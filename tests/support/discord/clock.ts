/** The stand-in's time, moved by the test: what the 3 s and 15 min limits and the nonce window go by. */
export class StandInClock {
  #offsetMs = 0;

  now(): number {
    return Date.now() + this.#offsetMs;
  }

  advance(ms: number): void {
    this.#offsetMs += ms;
  }
}

const DISCORD_EPOCH_MS = 1_420_070_400_000n;
let increment = 0n;

/** A new id: milliseconds since 2015 shifted left by 22, as Discord's reference on snowflakes describes. */
export function snowflake(nowMs: number): string {
  increment = (increment + 1n) % (1n << 22n);
  return String(((BigInt(Math.floor(nowMs)) - DISCORD_EPOCH_MS) << 22n) | increment);
}
