import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { PGlite } from '@electric-sql/pglite';
import type { PgliteDatabase } from 'drizzle-orm/pglite';
import { migrate as runOnPglite } from 'drizzle-orm/pglite/migrator';
import { drizzle } from 'drizzle-orm/postgres-js';
import { migrate as runOnPostgres } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { StartError } from '../errors.ts';
import type * as schema from './schema.ts';

export const MIGRATIONS_FOLDER = fileURLToPath(new URL('../../drizzle', import.meta.url));

/** Any constant will do, so long as nothing else on the server locks the same one. */
const MIGRATION_LOCK = 6_741_932_001;

interface JournalEntry {
  readonly idx: number;
  readonly when: number;
  readonly tag: string;
}

export function readJournal(): JournalEntry[] {
  const text = readFileSync(`${MIGRATIONS_FOLDER}/meta/_journal.json`, 'utf8');
  return (JSON.parse(text) as { entries: JournalEntry[] }).entries;
}

type Query = (text: string) => Promise<Record<string, unknown>[]>;

/** `max` must stay 1: an advisory lock belongs to one session. */
export async function migratePostgres(url: string, options: postgres.Options<Record<string, never>>) {
  const client = postgres(url, {
    ...options,
    max: 1,
    // Another instance may be migrating a large table while this one waits for the lock.
    connection: { ...options.connection, statement_timeout: 0, lock_timeout: 0 },
  });
  const query: Query = async (text) => [...(await client.unsafe(text))];
  try {
    await query(`select pg_advisory_lock(${MIGRATION_LOCK})`);
    await refuseNewer(query);
    await runOnPostgres(drizzle(client), { migrationsFolder: MIGRATIONS_FOLDER });
    await confirmAll(query);
    await query(`select pg_advisory_unlock(${MIGRATION_LOCK})`);
  } catch (error) {
    if (error instanceof StartError) throw error;
    throw new StartError(`The database at DATABASE_URL cannot be used: ${reasonOf(error)}.`, {
      cause: error,
    });
  } finally {
    await client.end({ timeout: 5 });
  }
}

export async function migratePglite(client: PGlite, db: PgliteDatabase<typeof schema>) {
  const query: Query = async (text) => (await client.query<Record<string, unknown>>(text)).rows;
  await refuseNewer(query);
  await runOnPglite(db, { migrationsFolder: MIGRATIONS_FOLDER });
  await confirmAll(query);
}

async function appliedMigrations(query: Query): Promise<number[]> {
  const [table] = await query(`select to_regclass('drizzle.__drizzle_migrations')::text as name`);
  if (table?.name == null) return [];
  const rows = await query('select created_at from drizzle.__drizzle_migrations order by created_at');
  return rows.map((row) => Number(row.created_at));
}

async function refuseNewer(query: Query) {
  const known = new Set(readJournal().map((entry) => entry.when));
  const unknown = (await appliedMigrations(query)).filter((when) => !known.has(when));
  if (unknown.length > 0) {
    throw new StartError(
      'The database was written by a newer Ostiole than this one; start the newer version, or restore a backup from before the update.',
    );
  }
}

/** Drizzle looks only at the newest applied migration and passes over older ones in silence. */
async function confirmAll(query: Query) {
  const applied = new Set(await appliedMigrations(query));
  const missing = readJournal().filter((entry) => !applied.has(entry.when));
  if (missing.length > 0) {
    throw new StartError(`The database lacks the migrations ${missing.map((m) => m.tag).join(', ')}.`);
  }
}

/** What a driver says of a failed connection, without the address or password. */
function reasonOf(error: unknown): string {
  const code = (error as { code?: unknown }).code;
  switch (code) {
    case 'ECONNREFUSED':
      return 'nothing answers at its host and port';
    case 'ENOTFOUND':
    case 'EAI_AGAIN':
      return 'its host name is not known';
    case 'CONNECT_TIMEOUT':
    case 'ETIMEDOUT':
      return 'it does not answer in time';
    case '28P01':
    case '28000':
      return 'user name or password is wrong';
    case '3D000':
      return 'there is no database of that name';
    default:
      return error instanceof Error && error.message !== ''
        ? error.message.replaceAll(/\s+/g, ' ')
        : String(code);
  }
}
