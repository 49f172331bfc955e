import { describe, expect, it } from 'vitest';
import { crashTest } from '../crash/crash-test.ts';
import { freshPostgres } from '../support/postgres.ts';

/** The short run of `npm run crash-test`. */
describe('workers killed with SIGKILL at random steps of claim, send and complete', () => {
  it('leave every nudge in the channel exactly once', async () => {
    const { url, drop } = await freshPostgres();
    const report = await crashTest({ databaseUrl: url, members: 30, kills: 6, rate: 8 });
    expect(report).toMatchObject({
      nudges: 42,
      kills: 6,
      storedMessages: 30,
      storedOnce: 42,
      storedTwice: 0,
      lost: 0,
      states: { sent: 42 },
    });
    await drop();
  }, 180_000);
});
