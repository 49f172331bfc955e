import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';
import type * as schema from './schema.ts';

/**
 * The database, or a transaction on it. Queries take it as their first argument and never reach for another:
 * with one connection (PGlite) an outer handle used inside a transaction waits for ever.
 */
export type Database = PgDatabase<PgQueryResultHKT, typeof schema>;

/** One statement for PostgreSQL as text, for the few places that need it raw (queue, health, migrations). */
export interface RawSql {
  query(text: string, values?: unknown[]): Promise<{ rows: Record<string, unknown>[] }>;
}

export interface OpenedDatabase {
  readonly db: Database;
  readonly raw: RawSql;
  /** Whether several processes may share it (a PostgreSQL server) or not (the embedded database). */
  readonly shared: boolean;
  close(): Promise<void>;
}
