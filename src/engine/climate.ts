import { type Day, dayInYear, dayOfYear, daysInYear, yearOf } from './day.ts';

/** A day without a reading. Real readings, in tenths of °C, are far from it. */
export const MISSING = -32_768;

/** Slots of a year's arrays: one a day, in order from 1 January; a common year leaves the last one MISSING. */
export const SLOTS = 366;

/** One calendar year of daily temperatures, tenths of °C. */
export interface DailyYear {
  readonly year: number;
  /** Length `SLOTS`; slot 0 is 1 January. Daily maximum. */
  readonly tmax: Int16Array;
  /** Daily minimum, laid out as `tmax`. */
  readonly tmin: Int16Array;
}

/** Calendar years in ascending order, each at most once; a year without any reading may be left out. */
export type DailySeries = readonly DailyYear[];

/** One day's readings, °C; null where there is none. */
export interface DailyRow {
  readonly day: Day;
  readonly tmaxC: number | null;
  readonly tminC: number | null;
}

export interface MergeCounts {
  /** Days that gained a reading they did not have. */
  readonly added: number;
  /** Days of which a reading was replaced by another. */
  readonly changed: number;
  /** Days on which both agreed. */
  readonly same: number;
}

/** The daily maximum of `on` in °C, or null. */
export function tmaxOn(series: DailySeries, on: Day): number | null {
  return readingOn(series, on, 'tmax');
}

/** The daily minimum of `on` in °C, or null. */
export function tminOn(series: DailySeries, on: Day): number | null {
  return readingOn(series, on, 'tmin');
}

function readingOn(series: DailySeries, on: Day, which: 'tmax' | 'tmin'): number | null {
  const year = series.find((candidate) => candidate.year === yearOf(on));
  const tenths = year?.[which][dayOfYear(on)] ?? MISSING;
  return tenths === MISSING ? null : tenths / 10;
}

/** A series of these rows, in any order; of two rows for one day the later in the list wins. */
export function fromRows(rows: Iterable<DailyRow>): DailySeries {
  const years = new Map<number, DailyYear>();
  for (const { day, tmaxC, tminC } of rows) {
    const number = yearOf(day);
    let year = years.get(number);
    if (!year) {
      year = emptyYear(number);
      years.set(number, year);
    }
    const slot = dayOfYear(day);
    if (tmaxC !== null) year.tmax[slot] = toTenths(tmaxC);
    if (tminC !== null) year.tmin[slot] = toTenths(tminC);
  }
  return ascending(years);
}

/** °C as whole tenths, as a series keeps them. */
export function toTenths(celsius: number): number {
  return Math.round(celsius * 10);
}

/** `base` with the readings of `own` laid over it: where both have one, `own` wins. Neither is changed. */
export function merge(base: DailySeries, own: DailySeries): { series: DailySeries; counts: MergeCounts } {
  const years = new Map<number, DailyYear>();
  for (const { year, tmax, tmin } of base) {
    years.set(year, { year, tmax: tmax.slice(), tmin: tmin.slice() });
  }
  let added = 0;
  let changed = 0;
  let same = 0;
  for (const theirs of own) {
    const ours = years.get(theirs.year) ?? emptyYear(theirs.year);
    years.set(theirs.year, ours);
    for (let slot = 0; slot < SLOTS; slot++) {
      const high = lay(ours.tmax, theirs.tmax, slot);
      const low = lay(ours.tmin, theirs.tmin, slot);
      if (high === 'changed' || low === 'changed') changed++;
      else if (high === 'added' || low === 'added') added++;
      else if (high === 'same' || low === 'same') same++;
    }
  }
  return { series: ascending(years), counts: { added, changed, same } };
}

function lay(onto: Int16Array, from: Int16Array, slot: number): 'none' | 'added' | 'changed' | 'same' {
  const before = onto[slot] ?? MISSING;
  const after = from[slot] ?? MISSING;
  if (after === MISSING) return 'none';
  onto[slot] = after;
  if (before === MISSING) return 'added';
  return before === after ? 'same' : 'changed';
}

/** Every day with a reading, in order. */
export function* rowsOf(series: DailySeries): Generator<DailyRow> {
  for (const { year, tmax, tmin } of series) {
    for (let slot = 0; slot < daysInYear(year); slot++) {
      const high = tmax[slot] ?? MISSING;
      const low = tmin[slot] ?? MISSING;
      if (high === MISSING && low === MISSING) continue;
      yield {
        day: dayInYear(year, slot),
        tmaxC: high === MISSING ? null : high / 10,
        tminC: low === MISSING ? null : low / 10,
      };
    }
  }
}

/** A year without readings. */
export function emptyYear(year: number): DailyYear {
  return {
    year,
    tmax: new Int16Array(SLOTS).fill(MISSING),
    tmin: new Int16Array(SLOTS).fill(MISSING),
  };
}

function ascending(years: ReadonlyMap<number, DailyYear>): DailySeries {
  return [...years.values()].sort((a, b) => a.year - b.year);
}
