import { setTimeout as wait } from 'node:timers/promises';
import { eq } from 'drizzle-orm';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { silentLog } from '../../src/log.ts';
import { startWorker, type Worker, type WorkerOptions } from '../../src/nudges/worker.ts';
import { openClub, updateClub } from '../../src/records/clubs.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { openPostgres } from '../../src/records/open.ts';
import { nudges } from '../../src/records/schema.ts';
import { type StandIn, startStandIn } from '../support/discord/stand-in.ts';
import { FaultProxy } from '../support/fault-proxy.ts';
import { InstantClock } from '../support/instant-clock.ts';
import { DATABASE_KINDS, freshPostgres, openTestDatabase } from '../support/postgres.ts';
import { RestMessenger } from '../support/rest-messenger.ts';
import { Grower } from './grower.ts';

const POSTS = /^\/channels\/\d+\/messages$/;

let discord: StandIn;
let clock: InstantClock;
let workers: Worker[];
let close: (() => Promise<unknown>)[];

beforeEach(async () => {
  discord = await startStandIn();
  clock = new InstantClock('2026-06-30T12:00Z');
  workers = [];
  close = [];
});
afterEach(async () => {
  await Promise.all(workers.map((worker) => worker.stop()));
  for (const end of close.reverse()) await end();
  await discord.stop();
});

/**
 * `count` members with a tree each, all due on the morning of 7 July, which it then is. Each has a club of
 * their own, since the mornings of one club are spread out; the channel is the same.
 */
async function growersDue(opened: OpenedDatabase, count: number): Promise<void> {
  const channelId = discord.channel(discord.addGuild('Fig club', ['figs'])).id;
  for (let i = 0; i < count; i++) {
    const key = { platform: 'discord' as const, platformId: `${channelId}-${i}` };
    const made = await openClub(opened.db, key, 'Fig club', clock.now());
    const grower = await Grower.join(
      opened.db,
      clock,
      {},
      await updateClub(opened.db, made.id, { channelId }),
    );
    await grower.add(`Tree ${i}`);
  }
  clock.set('2026-07-07T12:00Z');
}

async function start(opened: OpenedDatabase, options: Partial<WorkerOptions> = {}): Promise<Worker> {
  const worker = await startWorker({
    opened,
    clock,
    messenger: new RestMessenger(discord.api, discord.token, 1000),
    log: silentLog,
    leaseSeconds: 3,
    sweepEveryMs: 500,
    pollMs: 100,
    requestsASecond: 1000,
    ...options,
  });
  workers.push(worker);
  return worker;
}

async function untilSent(opened: OpenedDatabase, count: number, withinMs = 25_000): Promise<void> {
  const until = performance.now() + withinMs;
  for (;;) {
    const sent = await opened.db.$count(nudges, eq(nudges.state, 'sent')).catch(() => -1);
    if (sent >= count) return;
    if (performance.now() > until) throw new Error(`${sent} of ${count} sent in ${withinMs} ms`);
    await wait(100);
  }
}

/** Each tree's name stands in exactly one stored message. */
function expectEachOnce(count: number): void {
  const names = discord.posted.flatMap((message) =>
    (JSON.parse(message.api.content) as { tree: string }[]).map(({ tree }) => tree),
  );
  expect(names.sort()).toEqual(Array.from({ length: count }, (_, i) => `Tree ${i}`).sort());
}

describe.each(DATABASE_KINDS)('a worker with its queue (%s)', (kind) => {
  it('sends each morning once', async () => {
    const opened = await openTestDatabase(kind);
    close.push(() => opened.close());
    await growersDue(opened, 5);
    await start(opened);
    await untilSent(opened, 5);
    expectEachOnce(5);
  });
});

describe('a worker on PostgreSQL', () => {
  async function database() {
    const opened = await openTestDatabase('postgres');
    close.push(() => opened.close());
    return opened;
  }

  it('loses and doubles nothing while Discord answers 500, 429, not at all, or stores and then fails', async () => {
    const opened = await database();
    await growersDue(opened, 12);
    discord.faults.serverErrors('POST', POSTS, 3);
    discord.faults.add('POST', POSTS, { kind: 'error-after' }, 2);
    discord.faults.add('POST', POSTS, { kind: 'stall' }, 2);
    discord.faults.add('POST', POSTS, { kind: 'hang' }, 1);
    discord.faults.add('POST', POSTS, { kind: 'reset' }, 2);
    discord.faults.add('POST', POSTS, { kind: 'rate-limit', retryAfterSeconds: 1 }, 2);
    await start(opened);
    await untilSent(opened, 12, 50_000);
    expectEachOnce(12);
  }, 60_000);

  it('two workers share the work', async () => {
    const opened = await database();
    await growersDue(opened, 8);
    await Promise.all([start(opened), start(opened)]);
    await untilSent(opened, 8);
    expectEachOnce(8);
  });

  it('one of all workers runs a periodic task', async () => {
    const opened = await database();
    let runs = 0;
    const run = async () => {
      runs += 1;
    };
    const tasks = [{ name: 'weather', everyMinutes: 600, run }];
    await Promise.all([start(opened, { tasks }), start(opened, { tasks })]);
    await wait(1500);
    expect(runs).toBe(1);
  });

  it('stops sending when Discord refuses the token, and loses nothing', async () => {
    const opened = await database();
    await growersDue(opened, 3);
    const refused: string[] = [];
    await start(opened, {
      messenger: new RestMessenger(discord.api, 'wrong', 1000),
      onRefused: (reason) => refused.push(reason),
    });
    const until = performance.now() + 10_000;
    while (refused.length === 0 && performance.now() < until) await wait(50);
    await wait(500);
    expect(refused).toEqual(['status 401']);
    const rows = await opened.db.select().from(nudges).where(eq(nudges.kind, 'decision'));
    expect(rows.map(({ state }) => state)).toEqual(['pending', 'pending', 'pending']);
    await start(opened);
    await untilSent(opened, 3);
    expectEachOnce(3);
  });

  it.each(['refuse', 'silence'] as const)(
    'comes through a database that is gone for a while (%s) without a restart',
    async (fault) => {
      const fresh = await freshPostgres();
      close.push(fresh.drop);
      const url = new URL(fresh.url);
      const seeded = await openPostgres(fresh.url);
      await growersDue(seeded, 20);
      close.push(() => seeded.close());
      const proxy = await FaultProxy.to('127.0.0.1', Number(url.port));
      close.push(() => proxy.close());
      url.port = String(proxy.port);
      const opened = await openPostgres(url.href, { answerTimeoutMs: 1500, connectTimeoutSeconds: 1 });
      close.push(() => opened.close());
      await start(opened, { requestsASecond: 5 });
      // The first are on their way when the database goes.
      await untilPosted(2);
      proxy[fault]();
      await wait(4000);
      proxy.open();
      await untilSent(seeded, 20, 40_000);
      expectEachOnce(20);
    },
    70_000,
  );
});

async function untilPosted(count: number): Promise<void> {
  const until = performance.now() + 10_000;
  while (discord.posted.length < count && performance.now() < until) await wait(20);
}
