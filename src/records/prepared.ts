import type { DailySeries } from '../engine/climate.ts';
import { type PreparedWarmth, prepareWarmth } from '../engine/past-seasons.ts';
import { toCelsius } from '../engine/record-summary.ts';
import { loadRecord } from '../weather/series.ts';
import type { Database } from './database.ts';
import { hemisphereOf, markOf } from './garden.ts';
import type { Member } from './schema.ts';

/** Preparing takes longer than asking, and members of one station share a series. */
const prepared = new WeakMap<DailySeries, Map<string, PreparedWarmth>>();

/** The member's record made ready for outlooks; null when there is none. */
export async function preparedRecord(db: Database, member: Member): Promise<PreparedWarmth | null> {
  const series = await loadRecord(db, member);
  if (series.length === 0) return null;
  const mark = markOf(member);
  const hemisphere = hemisphereOf(member);
  const key = `${mark.value}${mark.unit}${hemisphere}`;
  const ways = prepared.get(series) ?? new Map<string, PreparedWarmth>();
  prepared.set(series, ways);
  let ready = ways.get(key);
  if (ready === undefined) {
    ready = prepareWarmth(series, { markC: toCelsius(mark.value, mark.unit), hemisphere });
    ways.set(key, ready);
  }
  return ready;
}
