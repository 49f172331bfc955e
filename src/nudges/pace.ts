import { setTimeout as wait } from 'node:timers/promises';
import type { RawSql } from '../records/database.ts';
import { STATEMENT_DEADLINE_MS, withDeadline } from './deadline.ts';

/** Requests a second that Discord allows one bot over all routes. Documentation, Rate Limits: Global. */
export const REQUESTS_A_SECOND = 50;

/**
 * What nudges may take of it. The rest is for members who are waiting for an answer, and for requests that
 * arrive a little off their time: a second may hold one or two more than were meant for it. Ours.
 */
const SHARE = 0.96;

/** Requests one process speaks for at once, so that the shared row is not asked for each. */
const MOST_AT_ONCE = 20;

/**
 * A turn that was missed by more than this is lost and another is waited for. As long as requests are late by
 * no more, any second holds at most one or two beyond its share.
 */
const LATEST_MS = 30;

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
        const stretchMs = batch.length * this.#gapMs;
        const from = (await this.#stretch(stretchMs)) + performance.now();
        for (let slot = from; batch.length > 0 && slot < from + stretchMs; slot += this.#gapMs) {
          const ms = slot - performance.now();
          if (ms > 0.5) await wait(ms);
          if (performance.now() <= slot + LATEST_MS) batch.shift()?.resolve();
        }
        this.#waiting.unshift(...batch.splice(0));
      } catch (error) {
        for (const { reject } of batch) reject(error);
      }
    }
    this.#reserving = false;
  }

  /** Reserves `ms` milliseconds of the budget's time; in how many it begins. */
  async #stretch(ms: number): Promise<number> {
    const answer = this.#raw.query(
      `insert into pace as p (name, free_at)
       values ('discord', clock_timestamp() + $1::double precision * interval '1 ms')
       on conflict (name) do update
         set free_at = greatest(p.free_at, clock_timestamp()) + $1::double precision * interval '1 ms'
       returning extract(epoch from free_at - clock_timestamp()) * 1000 as until_ms`,
      [ms],
    );
    const { rows } = await withDeadline(answer, STATEMENT_DEADLINE_MS, 'the reservation of requests');
    return Number(rows[0]?.until_ms) - ms;
  }
}
