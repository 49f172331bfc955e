import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { drizzle as drizzlePglite } from 'drizzle-orm/pglite';
import { drizzle as drizzlePostgres } from 'drizzle-orm/postgres-js';
import postgres from 'postgres';
import { StartError } from '../errors.ts';
import type { OpenedDatabase } from './database.ts';
import { lockFolder, makeFolder } from './folder-lock.ts';
import { migratePglite, migratePostgres } from './migrate.ts';
import * as schema from './schema.ts';
import { socketsThatGiveUp } from './socket.ts';

/** A statement that takes longer than this is broken or blocked; better an error than a silent wait. */
const STATEMENT_TIMEOUT_MS = 30_000;
const LOCK_TIMEOUT_MS = 10_000;

/** Longer than any statement may take: whoever is silent for this long is gone. */
const ANSWER_TIMEOUT_MS = STATEMENT_TIMEOUT_MS + 10_000;

/** Longest pause between attempts to reach a database that is down, seconds. */
const LONGEST_RECONNECT_SECONDS = 3;

export interface PostgresOptions {
  readonly maxConnections?: number;
  /** After this long without an answer a connection is given up; ANSWER_TIMEOUT_MS unless set. */
  readonly answerTimeoutMs?: number;
  readonly connectTimeoutSeconds?: number;
}

/**
 * Opens the embedded database in `folder`, or in memory when `folder` is 'memory', and migrates it.
 * Throws StartError when another process has the folder open or the data is newer than this code.
 */
export async function openEmbedded(folder: string): Promise<OpenedDatabase> {
  let release = () => {};
  let dataDir: string | undefined;
  if (folder !== 'memory') {
    makeFolder(folder);
    release = lockFolder(folder);
    dataDir = join(folder, 'pg');
  }
  try {
    const client = await startEmbedded(dataDir);
    await client.exec(`set timezone = 'UTC'`);
    const db = drizzlePglite(client, { schema });
    await migratePglite(client, db);
    return {
      db,
      raw: {
        query: async (text, values) => ({
          rows:
            values === undefined || values.length === 0
              ? await runEmbeddedScript(client, text)
              : (await client.query<Record<string, unknown>>(text, values)).rows,
        }),
      },
      shared: false,
      close: async () => {
        await client.close();
        release();
      },
    };
  } catch (error) {
    release();
    throw error;
  }
}

async function startEmbedded(dataDir: string | undefined): Promise<PGlite> {
  try {
    return dataDir === undefined ? await PGlite.create() : await PGlite.create({ dataDir });
  } catch (error) {
    const [why] = (error instanceof Error ? error.message : String(error)).split('\n');
    throw new StartError(
      `The embedded database${dataDir === undefined ? '' : ` in ${dataDir}`} does not start (${why}); put back a copy of its folder, or use --data with another one.`,
    );
  }
}

/** A script that fails in a transaction of its own must not leave that open for everybody. */
async function runEmbeddedScript(client: PGlite, text: string): Promise<Record<string, unknown>[]> {
  try {
    return (await client.exec(text)).at(-1)?.rows ?? [];
  } catch (error) {
    await client.exec('rollback');
    throw error;
  }
}

/** Text is taken for JSON already, as node-postgres does and pg-boss counts on. */
const JSON_AS_IT_STANDS = {
  to: 114,
  from: [114, 3802],
  serialize: (value: unknown) => (typeof value === 'string' ? value : JSON.stringify(value)),
  parse: (text: string): unknown => JSON.parse(text),
};

/** Opens a PostgreSQL server and migrates it. Throws StartError when it cannot be reached or is newer. */
export async function openPostgres(url: string, options: PostgresOptions = {}): Promise<OpenedDatabase> {
  const connection = {
    TimeZone: 'UTC',
    statement_timeout: STATEMENT_TIMEOUT_MS,
    lock_timeout: LOCK_TIMEOUT_MS,
    idle_in_transaction_session_timeout: STATEMENT_TIMEOUT_MS,
    application_name: 'ostiole',
  };
  const base = {
    connect_timeout: options.connectTimeoutSeconds ?? 10,
    onnotice: () => {},
    connection,
  } satisfies postgres.Options<Record<string, never>>;

  await migratePostgres(url, base);
  const lasting = {
    ...base,
    idle_timeout: 60,
    backoff: (attempt: number) => Math.min(0.1 * 2 ** attempt, LONGEST_RECONNECT_SECONDS),
    socket: socketsThatGiveUp(options.answerTimeoutMs ?? ANSWER_TIMEOUT_MS),
  };
  const client = postgres(url, { ...lasting, max: options.maxConnections ?? 10 });
  // drizzle() changes the client's parsers, so raw statements get one of their own.
  const rawClient = postgres(url, { ...lasting, max: 2, types: { json: JSON_AS_IT_STANDS } });
  const scriptClient = postgres(url, { ...lasting, max: 1 });
  const runScript = scriptRunner(scriptClient);
  return {
    db: drizzlePostgres(client, { schema }),
    raw: {
      query: async (text, values = []) => ({
        rows:
          values.length === 0
            ? await runScript(text)
            : [...(await rawClient.unsafe(text, values as never[]))],
      }),
    },
    shared: true,
    close: async () => {
      await Promise.all([client, rawClient, scriptClient].map((one) => one.end({ timeout: 5 })));
    },
  };
}

/**
 * Runs scripts, which may begin and end a transaction of their own, one after the other on a connection of
 * theirs: the driver refuses `begin` on a pool.
 */
function scriptRunner(client: postgres.Sql): (text: string) => Promise<Record<string, unknown>[]> {
  let before: Promise<unknown> = Promise.resolve();
  return (text) => {
    const run = before.then(async () => {
      try {
        return [...(await client.unsafe(text))];
      } catch (error) {
        await client.unsafe('rollback').catch(() => {});
        throw error;
      }
    });
    before = run.catch(() => {});
    return run;
  };
}

/** PostgreSQL where a URL is given, else the embedded database in `folder`. */
export async function openDatabase(settings: {
  databaseUrl: string | undefined;
  dataFolder: string;
}): Promise<OpenedDatabase> {
  if (settings.databaseUrl === undefined) return openEmbedded(settings.dataFolder);
  if (!/^postgres(ql)?:\/\//.test(settings.databaseUrl)) {
    throw new StartError('DATABASE_URL is not a PostgreSQL address; it should begin with postgres://');
  }
  return openPostgres(settings.databaseUrl);
}
