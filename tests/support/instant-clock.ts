import { type Clock, dayAt, instantAt } from '../../src/clock.ts';
import type { Day } from '../../src/engine/day.ts';

/** A clock that stands at an instant until it is set: the host's clock in everything but the ticking. */
export class InstantClock implements Clock {
  #now: Date;

  constructor(now: string) {
    this.#now = new Date(now);
  }

  set(now: string | Date): void {
    this.#now = new Date(now);
  }

  forward(minutes: number): void {
    this.#now = new Date(this.#now.getTime() + minutes * 60_000);
  }

  now(): Date {
    return new Date(this.#now);
  }

  today(zone: string): Day {
    return dayAt(this.#now, zone);
  }

  hasCome(day: Day, hour: number, zone: string): boolean {
    return instantAt(day, hour, zone).getTime() <= this.#now.getTime();
  }
}
