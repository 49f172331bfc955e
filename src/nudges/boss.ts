import { setTimeout as wait } from 'node:timers/promises';
import { sql } from 'drizzle-orm';
import PgBoss from 'pg-boss';
import type { Database, RawSql } from '../records/database.ts';
import { STATEMENT_DEADLINE_MS, withDeadline } from './deadline.ts';

/** One delivery job a member and morning; a task that one process of all runs. */
export const QUEUES = { morning: 'morning', task: 'task' } as const;

export interface MorningJob {
  readonly memberId: number;
}

export interface TaskJob {
  readonly name: string;
}

/** A job whose worker died is given to another after this long; later than the lease, so that it finds it free. */
const MORNING_EXPIRES_SECONDS = 90;
const TASK_EXPIRES_SECONDS = 3600;

/** Attempts at making a queue that another process is making too. */
const QUEUE_ATTEMPTS = 10;

/** How often expired jobs are looked for. */
const MAINTENANCE_SECONDS = 30;

/** How long a done job is remembered; a task is done once in its stretch of time, which is no longer than this. */
const ARCHIVE_SECONDS = 12 * 3600;

/**
 * The queue, on the database that is open already. pg-boss makes and migrates a schema of its own, `pgboss`,
 * and guards that against other processes by an advisory lock.
 */
export async function openBoss(raw: RawSql, onError: (error: Error) => void): Promise<PgBoss> {
  const boss = new PgBoss({
    db: {
      executeSql: (text, values) => {
        const answer = raw.query(
          text,
          values?.map((value) => value ?? null),
        );
        return withDeadline(answer, STATEMENT_DEADLINE_MS, 'a statement of the queue');
      },
    },
    // Its cron gives up a tick that is missed by more than a minute (pg-boss #557), so nothing hangs on it.
    schedule: false,
    maintenanceIntervalSeconds: MAINTENANCE_SECONDS,
    archiveCompletedAfterSeconds: ARCHIVE_SECONDS,
    deleteAfterHours: 24,
  });
  boss.on('error', onError);
  await boss.start();
  // `short`: at most one job waits per key. `stately` would allow one active job per key too, but lets a key
  // whose worker was killed hold up the whole queue until that job expires.
  await makeQueue(boss, QUEUES.morning, {
    name: QUEUES.morning,
    policy: 'short',
    expireInSeconds: MORNING_EXPIRES_SECONDS,
    retryLimit: 20,
    retryDelay: 5,
    retryBackoff: true,
  });
  await makeQueue(boss, QUEUES.task, {
    name: QUEUES.task,
    policy: 'short',
    expireInSeconds: TASK_EXPIRES_SECONDS,
    retryLimit: 0,
  });
  return boss;
}

/** Two processes that make the same queue at the same moment can lock each other out; one of them is let go. */
async function makeQueue(boss: PgBoss, name: string, queue: PgBoss.Queue): Promise<void> {
  for (let attempt = 1; (await boss.getQueue(name)) === null; attempt++) {
    try {
      await boss.createQueue(name, queue);
    } catch (error) {
      if (attempt === QUEUE_ATTEMPTS) throw error;
      await wait(Math.random() * 200);
    }
  }
}

/** pg-boss's statements inside a transaction of drizzle's: `$1` in its text becomes a parameter of ours. */
export function inTransaction(tx: Database): PgBoss.Db {
  return {
    executeSql: async (text: string, values: unknown[] = []) => {
      const chunks = text
        .split(/\$(\d+)/)
        .map((part, i) =>
          i % 2 === 0 ? sql.raw(part) : sql`${sql.param(values[Number(part) - 1] ?? null)}`,
        );
      const result: unknown = await tx.execute(sql.join(chunks));
      return { rows: rowsOf(result) };
    },
  };
}

/** postgres.js gives the rows themselves, PGlite an object that has them. */
function rowsOf(result: unknown): Record<string, unknown>[] {
  if (Array.isArray(result)) return result;
  return (result as { rows: Record<string, unknown>[] }).rows;
}
