import { TZDate, tzOffset } from '@date-fns/tz';
import { type Day, fromEpochDays, toEpochDays } from './engine/day.ts';

const MS_PER_HOUR = 3_600_000;
const MS_PER_DAY = 24 * MS_PER_HOUR;

/** Where the time comes from. Everything that asks for "now" is given one of these. */
export interface Clock {
  now(): Date;
  /** The calendar day in this IANA zone. */
  today(zone: string): Day;
  /** Whether `hour` o'clock on `day` has come in `zone`. */
  hasCome(day: Day, hour: number, zone: string): boolean;
}

/** The host's clock. The one place that reads it. */
export const systemClock: Clock = {
  now: () => new Date(),
  today: (zone) => dayAt(new Date(), zone),
  hasCome: (day, hour, zone) => instantAt(day, hour, zone).getTime() <= Date.now(),
};

/**
 * A clock that stands on a day until it is moved, the same day everywhere and late enough for any hour:
 * what the terminal's `@2026-07-05` sets.
 */
export class SteppedClock implements Clock {
  #day: Day;

  constructor(day: Day) {
    this.#day = day;
  }

  moveTo(day: Day): void {
    this.#day = day;
  }

  now(): Date {
    return new Date(`${this.#day}T23:59:59Z`);
  }

  today(): Day {
    return this.#day;
  }

  hasCome(day: Day): boolean {
    return day <= this.#day;
  }
}

/** The calendar day of an instant in an IANA zone. Throws RangeError on an unknown zone. */
export function dayAt(instant: Date, zone: string): Day {
  const local = new TZDate(instant.getTime(), zone);
  return fromEpochDays(Date.UTC(local.getFullYear(), local.getMonth(), local.getDate()) / 86_400_000);
}

/**
 * The instant of `hour` o'clock on `day` in `zone`. In the gap of a change to summer time the clock's next
 * valid time; in the overlap of the change back, the first of the two.
 */
export function instantAt(day: Day, hour: number, zone: string): Date {
  const wall = toEpochDays(day) * MS_PER_DAY + hour * MS_PER_HOUR;
  // Not `new TZDate(…parts, zone)`: which of two equal clock times that gives hangs on the host's zone.
  const before = wall - offsetMs(zone, wall - MS_PER_DAY);
  const after = wall - offsetMs(zone, wall + MS_PER_DAY);
  const shown = [before, after].filter((at) => at + offsetMs(zone, at) === wall);
  // In a gap neither shows that time, and the offset before it carries on past the gap.
  return new Date(shown.length === 0 ? before : Math.min(...shown));
}

function offsetMs(zone: string, at: number): number {
  return tzOffset(zone, new Date(at)) * 60_000;
}

export function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return /^[A-Za-z]/.test(zone);
  } catch {
    return false;
  }
}
