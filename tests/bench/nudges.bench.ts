import { type ChildProcess, spawn } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { bench, describe } from 'vitest';
import { REQUESTS_A_SECOND } from '../../src/nudges/pace.ts';
import { sweep } from '../../src/nudges/sweep.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { openPostgres } from '../../src/records/open.ts';
import { startStandIn } from '../support/discord/stand-in.ts';
import { InstantClock } from '../support/instant-clock.ts';
import { type FreshPostgres, freshPostgres } from '../support/postgres.ts';

const MORNING = '2026-07-07T14:00:00Z';
const DUE = 1000;
const TREES_A_MEMBER = 10;
const MEMBERS_A_CLUB = 50;

interface Seeded {
  readonly fresh: FreshPostgres;
  readonly opened: OpenedDatabase;
}

/**
 * `members` growers in clubs of fifty. Late trees with heat to 15 October: their decision date is 7 July for
 * one tree of `due` of the members, and known to lie ahead for all others.
 */
async function seed(members: number, treesEach: number, due: number, clubs: number): Promise<Seeded> {
  const fresh = await freshPostgres();
  const opened = await openPostgres(fresh.url);
  const every = Math.floor(members / due);
  for (const statement of [
    `insert into club (platform, platform_id, name, created_at)
       select 'discord', 'bench-' || i, 'Club ' || i, now() from generate_series(1, ${clubs}) i`,
    `insert into member (club_id, platform_user_id, name, zone, heat_end, season_known_on, created_at)
       select (i % ${clubs}) + 1, 'user-' || i, 'Grower ' || i, 'America/New_York', '10-15', '2026-05-01', now()
       from generate_series(1, ${members}) i`,
    `insert into tree (member_id, name, name_key, ripening, added_on, look_on, decision_on, created_at)
       select m, 'Tree ' || m || '-' || t, 'tree ' || m || '-' || t, 'late', '2026-05-01',
              case when t = 1 and m % ${every} = 0 then date '2026-07-07' else date '2026-07-20' + (m % 90) end,
              '2026-07-07', now()
       from generate_series(1, ${members}) m, generate_series(1, ${treesEach}) t`,
    'analyze',
  ]) {
    await opened.raw.query(statement);
  }
  return { fresh, opened };
}

describe('a sweep with 1,000 due trees', () => {
  const clock = new InstantClock(MORNING);
  // Hooks of vitest do not run in benches; the server ends with the run, and these databases with it.
  const databases = new Map<number, Promise<Seeded>>();
  const databaseOf = (trees: number) => {
    const members = trees / TREES_A_MEMBER;
    const seeded = databases.get(trees) ?? seed(members, TREES_A_MEMBER, DUE, members / MEMBERS_A_CLUB);
    databases.set(trees, seeded);
    return seeded;
  };

  /** Rolled back, so that every run finds the same. */
  async function sweepOnce(trees: number) {
    const { opened } = await databaseOf(trees);
    await opened.db
      .transaction(async (tx) => {
        const planned = await sweep(tx, clock);
        if (planned !== DUE) throw new Error(`${planned} trees were planned`);
        tx.rollback();
      })
      .catch((error: Error) => {
        if (error.constructor.name !== 'TransactionRollbackError') throw error;
      });
  }

  async function timed(trees: number): Promise<number> {
    const began = performance.now();
    await sweepOnce(trees);
    return performance.now() - began;
  }

  // Turn and turn about, so that whatever else the machine does strikes both alike.
  bench(
    'among 10,000 trees and among 1,000,000',
    async () => {
      await Promise.all([databaseOf(10_000), databaseOf(1_000_000)]);
      const few: number[] = [];
      const many: number[] = [];
      await timed(10_000);
      await timed(1_000_000);
      for (let turn = 0; turn < 5; turn++) {
        few.push(await timed(10_000));
        many.push(await timed(1_000_000));
      }
      const ratio = median(many) / median(few);
      console.log(
        `medians of 5: ${median(few).toFixed(0)} ms and ${median(many).toFixed(0)} ms, ratio ${ratio.toFixed(2)}`,
      );
      if (ratio > 1.3) throw new Error('a sweep costs what exists, not what is due');
    },
    { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0, throws: true },
  );
});

function median(values: readonly number[]): number {
  return [...values].sort((x, y) => x - y)[Math.floor(values.length / 2)] ?? Number.NaN;
}

const DELIVERIES = 10_000;

// In real time, some four minutes: scaled up, a pause of the process would weigh more than it does.
describe('delivery of 10,000 nudges by two workers', () => {
  bench(
    'at the rate Discord allows',
    async () => {
      const discord = await startStandIn({ globalPerSecond: REQUESTS_A_SECOND });
      const names = Array.from({ length: 20 }, (_, i) => `figs-${i}`);
      const guild = discord.addGuild('Fig club', names);
      const { fresh, opened } = await seed(DELIVERIES, 1, DELIVERIES, DELIVERIES);
      const channels = guild.channelIds.map((id, i) => `when ${i} then '${id}'`).join(' ');
      await opened.raw.query(`update club set channel_id = case id % 20 ${channels} end`);
      // Planned when the day began, hours before.
      await sweep(opened.db, new InstantClock(MORNING));
      const workers = [0, 1].map(() => startWorkerProcess(fresh.url, discord.api, discord.token));
      try {
        while (discord.posted.length < DELIVERIES) await wait(100);
      } finally {
        for (const worker of workers) worker.kill('SIGKILL');
        await opened.close();
        await discord.stop();
      }
      const posts = discord.requests.filter(({ method }) => method === 'POST');
      const seconds = ((posts.at(-1)?.at ?? 0) - (posts[0]?.at ?? 0)) / 1000;
      const refused = posts.filter(({ status }) => status === 429).length;
      const rate = (posts.length - 1) / seconds;
      const share = (100 * rate) / REQUESTS_A_SECOND;
      console.log(
        `${posts.length} requests in ${seconds.toFixed(1)} s: ${rate.toFixed(1)} a second, ` +
          `${share.toFixed(1)} % of what is allowed; answered 429: ${refused}`,
      );
      if (refused > 0 || share < 95) throw new Error('too slow, or refused');
    },
    { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0, throws: true },
  );
});

function startWorkerProcess(url: string, api: string, token: string): ChildProcess {
  const script = fileURLToPath(new URL('../crash/worker.ts', import.meta.url));
  return spawn(process.execPath, ['--import', 'tsx', script], {
    env: {
      ...process.env,
      ...{ DATABASE_URL: url, DISCORD_API: api, DISCORD_TOKEN: token, NOW: MORNING },
      ...{ RATE: String(REQUESTS_A_SECOND), LEASE_SECONDS: '60', SWEEP_EVERY_MS: '45000' },
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}
