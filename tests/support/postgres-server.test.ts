import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';

describe('a PostgreSQL server for tests', () => {
  it('leaves the status of its process alone, so that a failed run fails', () => {
    const script = `
      import { startPostgresServer } from './tests/support/postgres-server.ts';
      const server = await startPostgresServer();
      await server.stop();
      process.exitCode = 3;
    `;
    const child = spawnSync('node', ['--import', 'tsx', '--input-type=module', '-e', script], {
      encoding: 'utf8',
    });
    expect(child.stderr).toBe('');
    expect(child.status).toBe(3);
  }, 60_000);
});
