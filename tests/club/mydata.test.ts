import { getTableName, is, sql } from 'drizzle-orm';
import { PgTable } from 'drizzle-orm/pg-core';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { mydataErase, mydataExport } from '../../src/club/mydata.ts';
import { fromRows } from '../../src/engine/climate.ts';
import { day } from '../../src/engine/day.ts';
import { replanMember } from '../../src/nudges/plan.ts';
import { sweep } from '../../src/nudges/sweep.ts';
import { updateMember } from '../../src/records/clubs.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import * as schema from '../../src/records/schema.ts';
import { saveSeries } from '../../src/weather/series.ts';
import { ClubRecords } from '../support/club-records.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';

const NAME = 'Zephyrine';
const SECRET = 'quixotic-marker';

describe.each(DATABASE_KINDS)('one’s own data, on %s', (kind) => {
  let opened: OpenedDatabase;
  let club: ClubRecords;

  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    await opened.db.delete(schema.clubs);
    await opened.db.delete(schema.weatherSeries);
    club = new ClubRecords(opened.db, '2026-06-20');
  });

  async function fill() {
    const zeph = await club.grower(NAME, { place: `${SECRET} town`, lat: 51.23, lon: 4.56 });
    const tree = await club.tree(zeph, `=${SECRET}()`, {
      cultivar: `${SECRET} fig`,
      origin: `${SECRET} nursery`,
    });
    await club.saw(zeph, tree, 'fruitlets', '2026-06-10', {
      text: `${SECRET} fruitlets`,
      crop: 'main',
      count: 3,
    });
    const readings = fromRows([{ day: day('2025-07-01'), tmaxC: 30.5, tminC: 12 }]);
    const identity = {
      source: 'file' as const,
      stationId: `member-${zeph.id}`,
      name: `${NAME}’s readings`,
      lat: null,
      lon: null,
      elevationM: null,
    };
    const ownSeriesId = await saveSeries(opened.db, identity, readings, null);
    await updateMember(opened.db, zeph.id, { ownSeriesId });
    const ana = await club.grower('Ana');
    const hers = await club.tree(ana, 'Gate', { cultivar: 'Celeste', origin: `cutting from ${NAME}` });
    await club.saw(ana, hers, 'tipped', '2026-06-12');
    await opened.db.transaction(async (tx) => void (await replanMember(tx, zeph.id, club.clock)));
    await sweep(opened.db, club.clock);
    return { zeph, hers };
  }

  /** Every row of every table as text. */
  async function everything(): Promise<string> {
    const tables = Object.values(schema).filter((value) => is(value, PgTable)) as PgTable[];
    const parts: string[] = [];
    for (const table of tables) {
      const rows: unknown = await opened.db.execute(
        sql.raw(`select t::text as row from "${getTableName(table)}" t`),
      );
      parts.push(JSON.stringify(rows));
    }
    return parts.join('\n');
  }

  it('goes out as one ZIP with everything in it, safe to open in a spreadsheet', async () => {
    await fill();
    const { files, visibility } = await mydataExport.handle(await club.context(NAME), {});
    expect(visibility).toBe('only-you');
    const zip = unzipSync(files[0]?.bytes ?? new Uint8Array());
    expect(Object.keys(zip).sort()).toEqual([
      'notes.csv',
      'nudges.csv',
      'observations.csv',
      'records.json',
      'temperatures.csv',
      'trees.csv',
    ]);
    const text = (name: string) => strFromU8(zip[name] ?? new Uint8Array());
    const all = JSON.parse(text('records.json'));
    expect(all.member).toMatchObject({ name: NAME, place: `${SECRET} town` });
    expect(all.trees).toHaveLength(1);
    expect(all.observations).toMatchObject([{ kind: 'fruitlets', count: 3, text: `${SECRET} fruitlets` }]);
    expect(text('trees.csv')).toContain(`,'=${SECRET}(),`);
    expect(text('temperatures.csv')).toContain('2025-07-01,30.5,12');
    expect(text('records.json')).not.toContain('Ana');
  });

  it('is erased only after the words are typed, and then leaves no trace in any column of any table', async () => {
    const { hers } = await fill();
    const context = await club.context(NAME);
    const asked = await mydataErase.handle(context, {});
    expect(asked).toMatchObject({ ok: false, data: { confirm: 'erase my records' } });
    expect(asked.text).toMatch(/cannot recall: messages already posted/);
    await expect(mydataErase.handle(context, { confirm: 'yes' })).rejects.toMatchObject({
      identifier: 'not-confirmed',
    });
    expect(await everything()).toContain(SECRET);

    const done = await mydataErase.handle(context, { confirm: 'Erase my records' });
    expect(done.data).toMatchObject({ erased: { trees: 1, notes: 1 } });
    const left = await everything();
    expect(left).not.toContain(SECRET);
    expect(left.toLowerCase()).not.toContain(NAME.toLowerCase());
    const [kept] = await opened.db.select().from(schema.trees);
    expect(kept).toMatchObject({ id: hers.id, origin: 'cutting from a former member' });
  });

  it('leaves the readings of a public station to the others who use it', async () => {
    const { zeph } = await fill();
    const station = {
      source: 'noaa' as const,
      stationId: 'XX0001',
      name: 'Station',
      lat: 1,
      lon: 2,
      elevationM: 3,
    };
    const seriesId = await saveSeries(
      opened.db,
      station,
      fromRows([{ day: day('2025-07-01'), tmaxC: 30, tminC: 12 }]),
      null,
    );
    await updateMember(opened.db, zeph.id, { seriesId });
    await mydataErase.handle(await club.context(NAME), { confirm: 'erase my records' });
    expect((await opened.db.select().from(schema.weatherSeries)).map(({ stationId }) => stationId)).toEqual([
      'XX0001',
    ]);
  });
});
