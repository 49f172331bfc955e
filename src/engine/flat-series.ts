import { type DailySeries, MISSING } from './climate.ts';
import { type Day, dayInYear, daysInYear, toEpochDays } from './day.ts';

/** A series as one run of days, for work that goes day by day. Gaps between years are MISSING. */
export interface FlatSeries {
  /** Day of slot 0, in days since 1970-01-01. */
  readonly start: number;
  /** Tenths of °C; as long as the series has days from its first 1 January to its last 31 December. */
  readonly tmax: Int16Array;
  readonly tmin: Int16Array;
  /** First and last slot with any reading; `last` is -1 for a series without one. */
  readonly first: number;
  readonly last: number;
}

export function flatten(series: DailySeries): FlatSeries {
  const oldest = series[0];
  const newest = series.at(-1);
  if (!oldest || !newest) {
    return { start: 0, tmax: new Int16Array(0), tmin: new Int16Array(0), first: 0, last: -1 };
  }
  const start = toEpochDays(dayInYear(oldest.year, 0));
  const length = toEpochDays(dayInYear(newest.year + 1, 0)) - start;
  const tmax = new Int16Array(length).fill(MISSING);
  const tmin = new Int16Array(length).fill(MISSING);
  for (const year of series) {
    const days = daysInYear(year.year);
    const at = toEpochDays(dayInYear(year.year, 0)) - start;
    tmax.set(year.tmax.subarray(0, days), at);
    tmin.set(year.tmin.subarray(0, days), at);
  }
  const hasReading = (slot: number) => tmax[slot] !== MISSING || tmin[slot] !== MISSING;
  let first = 0;
  let last = length - 1;
  while (first <= last && !hasReading(first)) first++;
  while (last >= first && !hasReading(last)) last--;
  return { start, tmax, tmin, first, last: last < first ? -1 : last };
}

/** Slot of a day, which may lie outside the arrays. */
export function slotOf(flat: FlatSeries, on: Day): number {
  return toEpochDays(on) - flat.start;
}
