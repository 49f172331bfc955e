import { randomUUID } from 'node:crypto';
import { and, eq, inArray, sql } from 'drizzle-orm';
import { type DailySeries, merge } from '../engine/climate.ts';
import type { Database } from '../records/database.ts';
import { type Member, type WeatherSeries, weatherSeries, weatherYears } from '../records/schema.ts';
import { packYears, unpackYears } from './packing.ts';

/** What names a series, and where it was taken. */
export interface SeriesIdentity {
  readonly source: WeatherSeries['source'];
  /** The service's station or grid id; for a file, the member it belongs to. */
  readonly stationId: string;
  readonly name: string;
  readonly lat: number | null;
  readonly lon: number | null;
  readonly elevationM: number | null;
}

/**
 * Series by revision, least recently used first. A revision is never given twice, so an entry is never
 * stale: not after a rollback, nor when another process wrote. 30 years take 44 kB.
 */
const kept = new Map<string, DailySeries>();
const KEEP = 200;

/** A stored series; empty when there is none such. Treat it as read-only: others hold the same one. */
export async function loadSeries(db: Database, seriesId: number): Promise<DailySeries> {
  const [stored] = await loadMany(db, [seriesId]);
  return stored?.series ?? [];
}

/** The member's record: the station's or grid's days with the member's own readings laid over them. */
export async function loadRecord(
  db: Database,
  member: Pick<Member, 'seriesId' | 'ownSeriesId'>,
): Promise<DailySeries> {
  const ids = [member.seriesId, member.ownSeriesId].filter((id) => id !== null);
  if (ids.length === 0) return [];
  const stored = await loadMany(db, ids);
  const shared = stored.find(({ id }) => id === member.seriesId);
  const own = stored.find(({ id }) => id === member.ownSeriesId);
  if (!shared || !own) return (shared ?? own)?.series ?? [];
  const key = `${shared.revision}+${own.revision}`;
  return recall(key) ?? keep(key, merge(shared.series, own.series).series);
}

/** Stores a series whole, in place of what was there under the same identity. Returns its id. */
export async function saveSeries(
  tx: Database,
  identity: SeriesIdentity,
  series: DailySeries,
  fetchedAt: Date | null,
): Promise<number> {
  const revision = randomUUID();
  const changes = { ...identity, revision, ...(fetchedAt && { fetchedAt, triedAt: fetchedAt }) };
  const [row] = await tx
    .insert(weatherSeries)
    .values(changes)
    .onConflictDoUpdate({ target: [weatherSeries.source, weatherSeries.stationId], set: changes })
    .returning({ id: weatherSeries.id });
  if (!row) throw new Error('the database returned no series');
  await tx.delete(weatherYears).where(eq(weatherYears.seriesId, row.id));
  await insertYears(tx, row.id, series);
  return row.id;
}

/** Lays newly fetched days over a stored series and marks it as fetched. Days it does not have stay. */
export async function extendSeries(
  tx: Database,
  seriesId: number,
  fresh: DailySeries,
  fetchedAt: Date,
): Promise<void> {
  const years = fresh.map(({ year }) => year);
  const rows =
    years.length === 0
      ? []
      : await tx
          .select({ year: weatherYears.year, tmax: weatherYears.tmax, tmin: weatherYears.tmin })
          .from(weatherYears)
          .where(and(eq(weatherYears.seriesId, seriesId), inArray(weatherYears.year, years)))
          .for('update');
  await insertYears(tx, seriesId, merge(unpackYears(rows), fresh).series);
  await tx
    .update(weatherSeries)
    .set({ revision: randomUUID(), fetchedAt, triedAt: fetchedAt })
    .where(eq(weatherSeries.id, seriesId));
}

/** A series by the id its service gives it, or null. */
export async function findSeries(
  db: Database,
  source: WeatherSeries['source'],
  stationId: string,
): Promise<WeatherSeries | null> {
  const [row] = await db
    .select()
    .from(weatherSeries)
    .where(and(eq(weatherSeries.source, source), eq(weatherSeries.stationId, stationId)));
  return row ?? null;
}

interface Stored {
  readonly id: number;
  readonly revision: string;
  readonly series: DailySeries;
}

async function loadMany(db: Database, ids: readonly number[]): Promise<Stored[]> {
  const heads = await db
    .select({ id: weatherSeries.id, revision: weatherSeries.revision })
    .from(weatherSeries)
    .where(inArray(weatherSeries.id, [...ids]));
  const stored: Stored[] = [];
  for (const { id, revision } of heads) {
    stored.push({ id, revision, series: recall(revision) ?? keep(revision, await readYears(db, id)) });
  }
  return stored;
}

async function readYears(db: Database, seriesId: number): Promise<DailySeries> {
  const rows = await db
    .select({ year: weatherYears.year, tmax: weatherYears.tmax, tmin: weatherYears.tmin })
    .from(weatherYears)
    .where(eq(weatherYears.seriesId, seriesId));
  return unpackYears(rows);
}

async function insertYears(tx: Database, seriesId: number, series: DailySeries): Promise<void> {
  if (series.length === 0) return;
  await tx
    .insert(weatherYears)
    .values(packYears(series).map((year) => ({ seriesId, ...year })))
    .onConflictDoUpdate({
      target: [weatherYears.seriesId, weatherYears.year],
      set: { tmax: sql`excluded.tmax`, tmin: sql`excluded.tmin` },
    });
}

function recall(key: string): DailySeries | undefined {
  const series = kept.get(key);
  if (series) keep(key, series);
  return series;
}

function keep(key: string, series: DailySeries): DailySeries {
  kept.delete(key);
  kept.set(key, series);
  for (const oldest of kept.keys()) {
    if (kept.size <= KEEP) break;
    kept.delete(oldest);
  }
  return series;
}
