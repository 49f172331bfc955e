import { randomBytes } from 'node:crypto';
import postgres from 'postgres';
import { inject } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { openEmbedded, openPostgres, type PostgresOptions } from '../../src/records/open.ts';
import { TEMPLATE } from './postgres-server.ts';

export type DatabaseKind = 'embedded' | 'postgres';

/** For `describe.each(DATABASE_KINDS)`: the same suite on the embedded database and on a server. */
export const DATABASE_KINDS: readonly DatabaseKind[] = ['embedded', 'postgres'];

/**
 * A fresh, migrated database. For one test file, in `beforeAll`; call `close` in `afterAll`.
 *
 *     describe.each(DATABASE_KINDS)('records on %s', (kind) => {
 *       let opened: OpenedDatabase;
 *       beforeAll(async () => { opened = await openTestDatabase(kind); });
 *       afterAll(() => opened.close());
 */
export async function openTestDatabase(
  kind: DatabaseKind,
  options: PostgresOptions = {},
): Promise<OpenedDatabase> {
  if (kind === 'embedded') return openEmbedded('memory');
  const { url, drop } = await freshPostgres();
  const opened = await openPostgres(url, options);
  return {
    ...opened,
    close: async () => {
      await opened.close();
      await drop();
    },
  };
}

export interface FreshPostgres {
  readonly url: string;
  readonly drop: () => Promise<void>;
}

/** A fresh, migrated database on this run's PostgreSQL server, for whoever opens it. */
export async function freshPostgres(server?: { url(database: string): string }): Promise<FreshPostgres> {
  const base = server === undefined ? await serverUrl() : server.url('');
  const name = `test_${randomBytes(6).toString('hex')}`;
  await administer(base, `create database ${name} template ${TEMPLATE}`);
  return { url: base + name, drop: () => administer(base, `drop database if exists ${name} with (force)`) };
}

async function serverUrl(): Promise<string> {
  const answer = await fetch(inject('postgresBroker'));
  const text = await answer.text();
  if (!answer.ok) throw new Error(`no PostgreSQL server for the tests: ${text}`);
  return text;
}

async function administer(base: string, statement: string) {
  const admin = postgres(`${base}postgres`, { max: 1, onnotice: () => {} });
  try {
    // Two files may copy the template at the same moment; the copy takes a lock and waits its turn.
    await admin.unsafe(statement);
  } finally {
    await admin.end();
  }
}
