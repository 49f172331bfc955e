import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import postgres from 'postgres';
import { monthDay } from '../../src/engine/day.ts';
import { openClub, updateClub } from '../../src/records/clubs.ts';
import { openPostgres } from '../../src/records/open.ts';
import { Grower } from '../nudges/grower.ts';
import { InstantClock } from '../support/instant-clock.ts';

/** A morning in New York on which a late tree with heat to 15 October must be decided on. */
const MORNING = '2026-07-07T14:00:00Z';

const STEPS = [
  'begin',
  'commit',
  'committed',
  'take job done',
  'post',
  'answer',
  'end job',
  'end job done',
] as const;

export interface CrashTestOptions {
  readonly databaseUrl: string;
  readonly members: number;
  readonly kills: number;
  readonly workers?: number;
  /** Requests a second; low enough that there is work left for every kill. */
  readonly rate: number;
  readonly say?: (line: string) => void;
}

export interface CrashTestReport {
  readonly nudges: number;
  readonly kills: number;
  readonly seconds: number;
  /** Kills by the step that was the last the worker told of. */
  readonly killedAt: Readonly<Record<string, number>>;
  readonly storedMessages: number;
  readonly storedOnce: number;
  readonly storedTwice: number;
  readonly lost: number;
  readonly states: Readonly<Record<string, number>>;
}

/**
 * Two workers on one database and a Discord stand-in of its own process; one of them is killed with SIGKILL at
 * a random step, a random few milliseconds later, again and again. At the end every nudge must stand in the
 * stand-in exactly once.
 */
export async function crashTest(options: CrashTestOptions): Promise<CrashTestReport> {
  const { databaseUrl, members, kills, workers = 2, rate, say = () => {} } = options;
  const began = performance.now();
  const standIn = await startStandInProcess(20);
  try {
    const nudges = await seed(databaseUrl, members, standIn.channels);
    say(`${nudges} nudges for ${members} members are due; ${workers} workers, ${kills} kills`);
    const killedAt: Record<string, number> = {};
    let left = kills;
    const env = {
      DATABASE_URL: databaseUrl,
      DISCORD_API: standIn.api,
      DISCORD_TOKEN: standIn.token,
      NOW: MORNING,
      RATE: String(rate),
    };
    const lives = Array.from({ length: workers }, async () => {
      while (left > 0) {
        left -= 1;
        const at = await liveAndDie(env);
        killedAt[at] = (killedAt[at] ?? 0) + 1;
        const done = kills - left;
        if (done % 20 === 0) say(`${done} kills`);
      }
    });
    await Promise.all(lives);
    say('the last workers finish the rest');
    const last = Array.from({ length: workers }, () => startWorkerProcess({ ...env, RATE: '50' }, 'ignore'));
    const states = await untilSettled(databaseUrl, nudges);
    for (const child of last) child.kill('SIGKILL');
    return await report(standIn.control, { nudges, kills, killedAt, states, began });
  } finally {
    standIn.stop();
  }
}

/** Lets a worker live until a step picked by chance, kills it a moment later; the last step it told of. */
async function liveAndDie(env: Record<string, string>): Promise<string> {
  const child = startWorkerProcess(env);
  const target = STEPS[Math.floor(Math.random() * STEPS.length)];
  let skip = Math.floor(Math.random() * 3);
  let last = 'start';
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const kill = () => setTimeout(() => child.kill('SIGKILL'), Math.random() * 3);
  // A worker that finds nothing to do never comes to the step; it dies of old age.
  const age = setTimeout(kill, 8000);
  const lines = createInterface({ input: child.stdout as NodeJS.ReadableStream });
  lines.on('line', (line) => {
    last = line;
    if (line !== target) return;
    skip -= 1;
    if (skip === -1) kill();
  });
  await ended;
  clearTimeout(age);
  return last;
}

/** What it tells must be read or thrown away: a full pipe fails every step it wants to tell of. */
function startWorkerProcess(env: Record<string, string>, told: 'pipe' | 'ignore' = 'pipe'): ChildProcess {
  const script = fileURLToPath(new URL('./worker.ts', import.meta.url));
  return spawn(process.execPath, ['--import', 'tsx', script], {
    env: { ...process.env, ...env },
    stdio: ['ignore', told, 'inherit'],
  });
}

async function seed(databaseUrl: string, members: number, channels: readonly string[]): Promise<number> {
  const opened = await openPostgres(databaseUrl);
  const before = new InstantClock('2026-06-01T12:00:00Z');
  const clubs = await Promise.all(
    channels.map(async (channelId, i) => {
      const key = { platform: 'discord' as const, platformId: `crash-${i}` };
      const club = await openClub(opened.db, key, `Club ${i}`, before.now());
      return updateClub(opened.db, club.id, { channelId });
    }),
  );
  let nudges = 0;
  for (let i = 0; i < members; i++) {
    const grower = await Grower.join(
      opened.db,
      before,
      { heatEnd: monthDay('10-15') },
      clubs[i % clubs.length],
    );
    // Some members have several trees, so that a message carries several nudges.
    for (let tree = 0; tree <= (i % 5 === 0 ? 2 : 0); tree++) {
      await grower.add(`Tree ${i}-${tree}`);
      nudges += 1;
    }
  }
  await opened.close();
  return nudges;
}

async function untilSettled(databaseUrl: string, nudges: number): Promise<Record<string, number>> {
  const sql = postgres(databaseUrl, { max: 1, onnotice: () => {} });
  try {
    for (;;) {
      const rows =
        await sql`select state, count(*)::int as n from nudge where kind = 'decision' group by state`;
      const states = Object.fromEntries(rows.map((row) => [String(row.state), Number(row.n)]));
      const open = (states.pending ?? 0) + (states.leased ?? 0);
      const all = Object.values(states).reduce((sum, n) => sum + n, 0);
      if (open === 0 && all >= nudges) return states;
      await wait(500);
    }
  } finally {
    await sql.end();
  }
}

async function report(
  control: string,
  facts: Pick<CrashTestReport, 'nudges' | 'kills' | 'killedAt' | 'states'> & { began: number },
): Promise<CrashTestReport> {
  const answer = (await (await fetch(`${control}/messages`)).json()) as { messages: { content: string }[] };
  const counts = new Map<string, number>();
  for (const { content } of answer.messages) {
    for (const { tree } of JSON.parse(content) as { tree: string }[]) {
      counts.set(tree, (counts.get(tree) ?? 0) + 1);
    }
  }
  const { began, ...rest } = facts;
  const times = [...counts.values()];
  return {
    ...rest,
    seconds: Math.round((performance.now() - began) / 1000),
    storedMessages: answer.messages.length,
    storedOnce: times.filter((n) => n === 1).length,
    storedTwice: times.filter((n) => n > 1).length,
    lost: facts.nudges - counts.size,
  };
}

interface StandInProcess {
  readonly api: string;
  readonly token: string;
  readonly control: string;
  readonly channels: readonly string[];
  stop(): void;
}

async function startStandInProcess(channels: number): Promise<StandInProcess> {
  const script = fileURLToPath(new URL('../support/discord/run.ts', import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', script, '--channels', String(channels)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const lines = createInterface({ input: child.stdout });
  const first = await new Promise<string>((resolve, reject) => {
    lines.once('line', resolve);
    child.once('exit', () => reject(new Error('the stand-in did not start')));
  });
  return { ...JSON.parse(first), stop: () => child.kill('SIGKILL') };
}
