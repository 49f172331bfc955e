import { eq } from 'drizzle-orm';
import { type DailySeries, merge } from '../engine/climate.ts';
import type { Day } from '../engine/day.ts';
import { flatten } from '../engine/flat-series.ts';
import type { Hemisphere } from '../engine/season.ts';
import { seasonsIn } from '../engine/seasons-in.ts';
import type { Database } from '../records/database.ts';
import { type Member, members, weatherSeries } from '../records/schema.ts';
import type { WeatherFile } from './files.ts';
import { loadRecord, loadSeries, saveSeries } from './series.ts';

/** What a file of one's own readings changed in the member's record. */
export interface ImportReport {
  readonly seriesId: number;
  /** Days that gained a reading they did not have. */
  readonly added: number;
  /** Days of which a reading was replaced by another. */
  readonly replaced: number;
  /** Days that read the same before. */
  readonly unchanged: number;
  readonly from: Day;
  readonly to: Day;
  /** Labels of the seasons the file has readings of. */
  readonly seasons: readonly string[];
  /** The member's whole record afterwards. */
  readonly record: DailySeries;
}

/**
 * Lays a file over the member's record: its readings win over the station's and over the member's earlier
 * ones, and a day or half of a day the file lacks keeps what it had. For a transaction; the caller works out
 * the season from `record`.
 */
export async function importOwnReadings(
  tx: Database,
  member: Pick<Member, 'id' | 'name' | 'seriesId' | 'ownSeriesId'>,
  file: Pick<WeatherFile, 'series' | 'from' | 'to' | 'station'>,
  hemisphere: Hemisphere,
): Promise<ImportReport> {
  const { series: record, counts } = merge(await loadRecord(tx, member), file.series);
  const before = member.ownSeriesId === null ? [] : await loadSeries(tx, member.ownSeriesId);
  const identity = {
    source: 'file' as const,
    stationId: ownStationId(member.id),
    name: file.station?.name ?? `${member.name}’s readings`,
    lat: file.station?.lat ?? null,
    lon: file.station?.lon ?? null,
    elevationM: file.station?.elevationM ?? null,
  };
  const seriesId = await saveSeries(tx, identity, merge(before, file.series).series, null);
  if (member.ownSeriesId !== seriesId) {
    await tx.update(members).set({ ownSeriesId: seriesId }).where(eq(members.id, member.id));
  }
  return {
    seriesId,
    added: counts.added,
    replaced: counts.changed,
    unchanged: counts.same,
    from: file.from,
    to: file.to,
    seasons: seasonsIn(flatten(file.series), hemisphere).map(({ label }) => label),
    record,
  };
}

/** Takes a member's own readings out of the database, as erasing one's data must. */
export async function deleteOwnReadings(tx: Database, member: Pick<Member, 'ownSeriesId'>): Promise<void> {
  if (member.ownSeriesId === null) return;
  await tx.delete(weatherSeries).where(eq(weatherSeries.id, member.ownSeriesId));
}

function ownStationId(memberId: number): string {
  return `member:${memberId}`;
}
