import { setTimeout as wait } from 'node:timers/promises';
import type { RawSql } from '../records/database.ts';
import { STATEMENT_DEADLINE_MS, withDeadline } from './deadline.ts';

/** Requests a second that Discord allows one bot over all routes. Documentation, Rate Limits: Global. */
export const REQUESTS_A_SECOND = 50;

/** What nudges may take of it; the rest is for members who are waiting for an answer. Ours. */
const SHARE = 0.97;

/** Requests one process speaks for at once, so that the shared row is not asked for each. */
const MOST_AT_ONCE = 20;

/** How far requests may bunch up after a hiccup of this process: as long as two are apart. */
const BUNCHING = 2;

/**
 * The budget of requests, shared by every process on the database: each reserves the next stretch of time in
 * one row, by the database's clock, and sends at its own times within it. No process needs to know of the
 * others, and together they never exceed the rate.
 */
export class Pace {
  readonly #raw: RawSql;
  readonly #gapMs: number;
  readonly #waiting: { resolve: () => void; reject: (error: unknown) => void }[] = [];
  #reserving = false;
  /** When the next request of this process may go, by the monotonic clock. */
  #freeAt = 0;

  constructor(raw: RawSql, requestsASecond = REQUESTS_A_SECOND) {
    this.#raw = raw;
    this.#gapMs = 1000 / (requestsASecond * SHARE);
  }

  /** Waits for the turn of one request. Rejects when the database cannot be asked. */
  turn(): Promise<void> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ resolve, reject });
      if (!this.#reserving) void this.#reserve();
    });
  }

  async #reserve(): Promise<void> {
    this.#reserving = true;
    while (this.#waiting.length > 0) {
      const batch = this.#waiting.splice(0, MOST_AT_ONCE);
      try {
        const from = performance.now() + (await this.#stretch(batch.length));
        for (const [i, { resolve }] of batch.entries()) {
          await this.#until(from + i * this.#gapMs);
          resolve();
        }
      } catch (error) {
        for (const { reject } of batch) reject(error);
      }
    }
    this.#reserving = false;
  }

  /** Until `slot`, or as much later as this process is behind its own rate. */
  async #until(slot: number): Promise<void> {
    const at = Math.max(slot, this.#freeAt - BUNCHING * this.#gapMs);
    const ms = at - performance.now();
    if (ms > 0.5) await wait(ms);
    this.#freeAt = Math.max(this.#freeAt, performance.now()) + this.#gapMs;
  }

  /** Reserves time for `count` requests; in how many milliseconds it begins. */
  async #stretch(count: number): Promise<number> {
    const answer = this.#raw.query(
      `insert into pace as p (name, free_at)
       values ('discord', clock_timestamp() + $1::double precision * interval '1 ms')
       on conflict (name) do update
         set free_at = greatest(p.free_at, clock_timestamp()) + $1::double precision * interval '1 ms'
       returning extract(epoch from free_at - clock_timestamp()) * 1000 as until_ms`,
      [count * this.#gapMs],
    );
    const { rows } = await withDeadline(answer, STATEMENT_DEADLINE_MS, 'the reservation of requests');
    return Number(rows[0]?.until_ms) - count * this.#gapMs;
  }
}
