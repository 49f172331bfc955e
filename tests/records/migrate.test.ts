import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { afterEach, describe, expect, it } from 'vitest';
import { StartError } from '../../src/errors.ts';
import { readJournal } from '../../src/records/migrate.ts';
import { openDatabase, openEmbedded, openPostgres } from '../../src/records/open.ts';
import { freshPostgres } from '../support/postgres.ts';

const folders: string[] = [];
const newFolder = () => {
  const folder = mkdtempSync(join(tmpdir(), 'ostiole-migrate-'));
  folders.push(folder);
  return folder;
};
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

describe('migrations', () => {
  it('are numbered without a gap and strictly in the order of their time', () => {
    const entries = readJournal();
    expect(entries.map(({ idx }) => idx)).toEqual(entries.map((_, i) => i));
    const times = entries.map(({ when }) => when);
    expect(times).toEqual([...new Set(times)].sort((a, b) => a - b));
  });

  it('let two that start at once through, one after the other', async () => {
    const { url, drop } = await freshPostgres();
    const client = postgres(url, { max: 1, onnotice: () => {} });
    await client.unsafe('drop schema public cascade; create schema public; drop schema drizzle cascade');
    const both = await Promise.all([openPostgres(url), openPostgres(url)]);
    const [row] = await client`select count(*)::int as count from drizzle.__drizzle_migrations`;
    expect(row?.count).toBe(readJournal().length);
    await Promise.all([...both.map((opened) => opened.close()), client.end()]);
    await drop();
  });

  it('refuse a server’s database that a newer Ostiole wrote', async () => {
    const { url, drop } = await freshPostgres();
    const client = postgres(url, { max: 1, onnotice: () => {} });
    await client`insert into drizzle.__drizzle_migrations (hash, created_at) values ('later', 99999999999999)`;
    await expect(openPostgres(url)).rejects.toThrow(/newer Ostiole/);
    await client.end();
    await drop();
  });

  it('refuse an embedded database that a newer Ostiole wrote', async () => {
    const folder = newFolder();
    const opened = await openEmbedded(folder);
    await opened.raw.query(
      `insert into drizzle.__drizzle_migrations (hash, created_at) values ('later', 99999999999999)`,
    );
    await opened.close();
    await expect(openEmbedded(folder)).rejects.toThrow(/newer Ostiole/);
  });
});

describe('opening a database', () => {
  it('keeps a second opening out of an embedded database, and lets one in after the first has gone', async () => {
    const folder = newFolder();
    const first = await openEmbedded(folder);
    await expect(openEmbedded(folder)).rejects.toThrow(StartError);
    await first.close();
    const second = await openEmbedded(folder);
    await second.close();
  });

  it.each([
    ['postgres://nobody:x@127.0.0.1:1/none', /nothing answers at its host and port/],
    ['mysql://somewhere', /should begin with postgres:\/\//],
  ])('says in one sentence what is wrong with %s', async (databaseUrl, sentence) => {
    const opening = openDatabase({ databaseUrl, dataFolder: 'memory' });
    await expect(opening).rejects.toThrow(sentence);
    await expect(opening).rejects.toThrow(StartError);
  });
});
