import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { DATABASE_KINDS, openTestDatabase } from './postgres.ts';

describe.each(DATABASE_KINDS)('a fresh test database (%s)', (kind) => {
  let opened: OpenedDatabase;
  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());

  it('is migrated and speaks UTC, whatever the zone of the server', async () => {
    const { rows } = await opened.raw.query(
      `select current_setting('TimeZone') as zone, to_regclass('tree')::text as tree`,
    );
    expect(rows[0]).toEqual({ zone: 'UTC', tree: 'tree' });
    await opened.db.execute(sql`select 1`);
  });
});
