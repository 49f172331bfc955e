import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';

describe.each(DATABASE_KINDS)('raw statements (%s)', (kind) => {
  let opened: OpenedDatabase;
  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());

  it('scripts with a transaction of their own run beside single statements, and all come to an end', async () => {
    const script = 'begin; select pg_advisory_xact_lock(7); select 1; commit;';
    const all = Array.from({ length: 300 }, (_, i) =>
      i % 10 === 0 ? opened.raw.query(script) : opened.raw.query('select $1::int as n', [i]),
    );
    const results = await Promise.all(all);
    expect(results[299]?.rows).toEqual([{ n: 299 }]);
    expect(results[11]?.rows).toEqual([{ n: 11 }]);
  });

  it('a script that fails leaves the next one a clean connection', async () => {
    await expect(opened.raw.query('begin; select 1/0; commit;')).rejects.toThrow(/division by zero/);
    await opened.raw.query('begin; select 1; commit;');
    expect((await opened.raw.query('select 2 as two')).rows).toEqual([{ two: 2 }]);
  });

  it('takes JSON as text or as a value, and arrays', async () => {
    const { rows } = await opened.raw.query(
      'select ($1::jsonb)->>$2 as a, ($3::jsonb)->>$2 as b, $4::uuid[] as c',
      ['{"k":"text"}', 'k', { k: 'value' }, ['00000000-0000-4000-8000-000000000001']],
    );
    expect(rows).toEqual([{ a: 'text', b: 'value', c: ['00000000-0000-4000-8000-000000000001'] }]);
  });
});
