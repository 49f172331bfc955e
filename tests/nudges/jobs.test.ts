import { describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import { type MorningJob, openBoss, QUEUES } from '../../src/nudges/boss.ts';
import { insertMissingJobs, spreadMs } from '../../src/nudges/jobs.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';

const due = (memberId: number, heldMs: number) => ({
  memberId,
  clubId: memberId,
  rank: 0,
  crowd: 1,
  today: day('2026-07-07'),
  heldMs,
});

describe.each(DATABASE_KINDS)('jobs of mornings (%s)', (kind) => {
  it('one whose worker died goes before all that wait, one that is held is left alone, and none is doubled', async () => {
    const opened = await openTestDatabase(kind);
    const boss = await openBoss(opened.raw, (error) => {
      throw error;
    });
    const waiting = [1, 2, 3, 4].map((memberId) => due(memberId, 0));
    await insertMissingJobs(boss, waiting);
    await insertMissingJobs(boss, [...waiting, due(5, 20_000), due(6, -1)]);
    await new Promise((resolve) => setTimeout(resolve, 50));
    const [first] = await boss.fetch<MorningJob>(QUEUES.morning, { batchSize: 1 });
    expect(first?.data).toEqual({ memberId: 6 });
    const rest = await boss.fetch<MorningJob>(QUEUES.morning, { batchSize: 10 });
    expect(rest.map(({ data }) => data.memberId).sort()).toEqual([1, 2, 3, 4]);
    await boss.stop({ graceful: false });
    await opened.close();
  });
});

describe("a club's eight o'clock", () => {
  it('is spread two seconds apart, and over ten minutes at most', () => {
    expect([0, 1, 9].map((rank) => spreadMs(rank, 10))).toEqual([0, 2000, 18_000]);
    expect(spreadMs(0, 1)).toBe(0);
    expect(spreadMs(9999, 10_000)).toBeLessThanOrEqual(600_000);
  });
});
