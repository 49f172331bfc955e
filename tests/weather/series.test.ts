import { readFileSync } from 'node:fs';
import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DailySeries, fromRows, rowsOf, tmaxOn } from '../../src/engine/climate.ts';
import { addDays, day } from '../../src/engine/day.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, type Member, members, weatherSeries, weatherYears } from '../../src/records/schema.ts';
import { readWeatherFile } from '../../src/weather/files.ts';
import { deleteOwnReadings, importOwnReadings } from '../../src/weather/own-readings.ts';
import { packTenths, unpackTenths } from '../../src/weather/packing.ts';
import { extendSeries, findSeries, loadRecord, loadSeries, saveSeries } from '../../src/weather/series.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';

const NOW = new Date('2026-03-01T12:00:00Z');
const STATION = {
  source: 'noaa' as const,
  stationId: 'USW00094728',
  name: 'Central Park',
  lat: 40.78,
  lon: -73.97,
  elevationM: 42.7,
};

const days = (from: string, highs: readonly (number | null)[], low: number | null = 1) =>
  fromRows(highs.map((tmaxC, i) => ({ day: addDays(day(from), i), tmaxC, tminC: low })));

/** Derived data of the US Government, from the npm package vega-datasets (weather.csv). */
const vega = readFileSync('node_modules/vega-datasets/data/weather.csv');

describe('packing', () => {
  it('writes little-endian int16 and reads it back at any address', () => {
    const tenths = new Int16Array(366).fill(-32_768);
    tenths[0] = 258;
    tenths[365] = -1;
    const packed = packTenths(tenths);
    expect([...packed.subarray(0, 2)]).toEqual([2, 1]);
    const odd = new Uint8Array(733);
    odd.set(packed, 1);
    expect(unpackTenths(odd.subarray(1))).toEqual(tenths);
  });

  it('reads a row that was cut short as missing days', () => {
    expect([...unpackTenths(new Uint8Array([2, 1, 9])).subarray(0, 2)]).toEqual([258, -32_768]);
  });
});

describe.each(DATABASE_KINDS)('weather series on %s', (kind) => {
  let opened: OpenedDatabase;
  let member: Member;

  beforeAll(async () => {
    opened = await openTestDatabase(kind);
    const [club] = await opened.db
      .insert(clubs)
      .values({ platform: 'terminal', platformId: 'terminal', name: 'Club', createdAt: NOW })
      .returning();
    const [row] = await opened.db
      .insert(members)
      .values({ clubId: club!.id, platformUserId: 'maria', name: 'Maria', createdAt: NOW })
      .returning();
    member = row!;
  });
  afterAll(() => opened.close());

  const reload = async () => {
    const [row] = await opened.db.select().from(members).where(eq(members.id, member.id));
    return row!;
  };

  it('gives back what was stored, whole years and gaps', async () => {
    const series = days('2019-12-30', [5, null, 7.5, -0.1]);
    const id = await saveSeries(opened.db, STATION, series, NOW);
    expect(await loadSeries(opened.db, id)).toEqual(series);
    expect(await findSeries(opened.db, 'noaa', STATION.stationId)).toMatchObject({ id, fetchedAt: NOW });
    expect(await loadSeries(opened.db, 999_999)).toEqual([]);
  });

  it('stores one series an identity, and a new copy replaces the old one', async () => {
    const first = await saveSeries(opened.db, STATION, days('2018-01-01', [1, 2]), NOW);
    await loadSeries(opened.db, first);
    const second = await saveSeries(opened.db, STATION, days('2020-05-01', [20]), NOW);
    expect(second).toBe(first);
    expect((await loadSeries(opened.db, first)).map(({ year }) => year)).toEqual([2020]);
  });

  it('lays fresh days over a stored series and keeps the others', async () => {
    const id = await saveSeries(opened.db, STATION, days('2020-05-01', [20, 21, 22]), NOW);
    await loadSeries(opened.db, id);
    await extendSeries(opened.db, id, days('2020-05-02', [30, null, 31]), NOW);
    const series = await loadSeries(opened.db, id);
    expect([...rowsOf(series)].map(({ tmaxC }) => tmaxC)).toEqual([20, 30, 22, 31]);
  });

  it('never serves days of a transaction that was rolled back', async () => {
    const id = await saveSeries(opened.db, STATION, days('2020-05-01', [20]), NOW);
    await loadSeries(opened.db, id);
    const gone = opened.db.transaction(async (tx) => {
      await extendSeries(tx, id, days('2020-05-01', [40]), NOW);
      expect(tmaxOn(await loadSeries(tx, id), day('2020-05-01'))).toBe(40);
      throw new Error('undone');
    });
    await expect(gone).rejects.toThrow('undone');
    expect(tmaxOn(await loadSeries(opened.db, id), day('2020-05-01'))).toBe(20);
  });

  it('lets own readings win over the station and says what changed', async () => {
    const shared = await saveSeries(opened.db, STATION, days('2020-05-01', [20, 21, 22]), NOW);
    await opened.db.update(members).set({ seriesId: shared }).where(eq(members.id, member.id));
    const text = 'date,high (°C),low (°C)\n2020-05-02,21,1\n2020-05-03,25,\n2020-05-04,26,2\n';
    const file = await readWeatherFile(new TextEncoder().encode(text));
    if (file.kind !== 'file') throw new Error(file.message);
    const before = await reload();
    const report = await opened.db.transaction((tx) => importOwnReadings(tx, before, file, 'N'));
    expect(report).toMatchObject({ added: 1, replaced: 1, unchanged: 1, seasons: ['2020'] });
    const record = await loadRecord(opened.db, await reload());
    expect(record).toEqual(report.record);
    expect([...rowsOf(record)].map(({ tmaxC, tminC }) => [tmaxC, tminC])).toEqual([
      [20, 1],
      [21, 1],
      [25, 1],
      [26, 2],
    ]);
    // The shared series belongs to everybody at that station and stays as it was.
    expect([...rowsOf(await loadSeries(opened.db, shared))]).toHaveLength(3);
  });

  it('adds a second file to the first', async () => {
    const take = async (text: string) => {
      const file = await readWeatherFile(new TextEncoder().encode(text), { unit: 'C' });
      if (file.kind !== 'file') throw new Error(file.message);
      return importOwnReadings(opened.db, await reload(), file, 'S');
    };
    await take('date,max,min\n2021-01-05,30,15\n');
    const again = await take('date,max,min\n2021-01-05,31,15\n2021-08-01,10,2\n');
    expect(again).toMatchObject({ added: 1, replaced: 1, seasons: ['2020/21', '2021/22'] });
    const record: DailySeries = await loadRecord(opened.db, await reload());
    expect(tmaxOn(record, day('2021-01-05'))).toBe(31);
    expect(tmaxOn(record, day('2020-05-04'))).toBe(26);
  });

  it('takes in four years of New York in one go', async () => {
    const file = await readWeatherFile(vega, { unit: 'C', place: 'New York' });
    if (file.kind !== 'file') throw new Error(file.message);
    const report = await importOwnReadings(opened.db, await reload(), file, 'N');
    expect(report).toMatchObject({ added: 1461, replaced: 0, unchanged: 0 });
    expect(report.seasons).toEqual(['2012', '2013', '2014', '2015']);
    const repeated = await importOwnReadings(opened.db, await reload(), file, 'N');
    expect(repeated).toMatchObject({ added: 0, replaced: 0, unchanged: 1461 });
  });

  it('takes the readings out again, and nothing else', async () => {
    const before = await reload();
    await deleteOwnReadings(opened.db, before);
    expect((await reload()).ownSeriesId).toBeNull();
    expect(await opened.db.select().from(weatherSeries)).toHaveLength(1);
    const years = await opened.db.select().from(weatherYears);
    expect(new Set(years.map(({ seriesId }) => seriesId))).toEqual(new Set([before.seriesId]));
  });
});
