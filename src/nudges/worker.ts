import { setTimeout as wait } from 'node:timers/promises';
import type PgBoss from 'pg-boss';
import type { Clock } from '../clock.ts';
import { describeError, type Log } from '../log.ts';
import type { OpenedDatabase } from '../records/database.ts';
import { type MorningJob, openBoss, QUEUES, type TaskJob } from './boss.ts';
import { deliverMorning, type MorningOutcome } from './deliver.ts';
import { againJob, insertMissingJobs, insertMorningJobs } from './jobs.ts';
import type { Messenger } from './messenger.ts';
import { Pace } from './pace.ts';
import { dueMornings, sweep } from './sweep.ts';

/**
 * Often enough that a message whose worker died is taken up while Discord still knows its nonce: the lease,
 * and then at most this long.
 */
const SWEEP_EVERY_MS = 45_000;

/** How long a lane that found nothing waits before it looks again. */
const POLL_MS = 2_000;

/** After a failure, so that a database that is down is not hammered. */
const AFTER_FAILURE_MS = 1_000;

/**
 * Deliveries one process has in hand: lanes, each with a batch. A stalled one holds up its own lane only. Few,
 * since what is in hand waits for its turn under its lease: twenty processes have 320, which is seven seconds.
 */
const LANES = 4;
const BATCH = 4;

/** Work that one of all processes does every so often. */
export interface PeriodicTask {
  readonly name: string;
  /** At most 12 hours, which is how long pg-boss remembers that it was done. */
  readonly everyMinutes: number;
  readonly run: () => Promise<void>;
}

export interface WorkerOptions {
  readonly opened: OpenedDatabase;
  readonly clock: Clock;
  readonly messenger: Messenger;
  readonly log: Log;
  readonly tasks?: readonly PeriodicTask[];
  /** Called once when Discord refuses the assistant itself; nothing is sent any more. */
  readonly onRefused?: (reason: string) => void;
  /** For tests and benches; the defaults suit Discord. */
  readonly leaseSeconds?: number;
  readonly sweepEveryMs?: number;
  readonly pollMs?: number;
  readonly requestsASecond?: number;
}

export interface Worker {
  /** Ends all loops after what is in hand is done. */
  stop(): Promise<void>;
  /** Sweeps now; the loops do so by themselves. */
  sweep(): Promise<void>;
}

/** Starts sending what falls due. Any number of processes may do so on one PostgreSQL server. */
export async function startWorker(options: WorkerOptions): Promise<Worker> {
  const { opened, log } = options;
  const boss = await openBoss(opened.raw, (error) => log.warn({ error: describeError(error) }, 'queue'));
  const running = new RunningWorker(options, boss);
  running.start();
  return running;
}

class RunningWorker implements Worker {
  readonly #options: WorkerOptions;
  readonly #boss: PgBoss;
  readonly #pace: Pace;
  readonly #stopping = new AbortController();
  readonly #loops: Promise<void>[] = [];

  constructor(options: WorkerOptions, boss: PgBoss) {
    this.#options = options;
    this.#boss = boss;
    this.#pace = new Pace(options.opened.raw, options.requestsASecond);
  }

  start(): void {
    const { pollMs = POLL_MS, sweepEveryMs = SWEEP_EVERY_MS, tasks = [] } = this.#options;
    // pg-boss's own work() ends jobs without waiting for the database's answer, so that an outage at that
    // moment is an unhandled rejection and ends the process; and its poll takes one batch per half second.
    for (let lane = 0; lane < LANES; lane++) this.#loop('lane', pollMs, () => this.#takeMornings());
    this.#loop('sweep', sweepEveryMs, async () => {
      await this.sweep();
      return 0;
    });
    if (tasks.length > 0) {
      this.#loop('tasks', pollMs, () => this.#takeTask());
      this.#loop('task times', 30_000, () => this.#offerTasks());
    }
  }

  async stop(): Promise<void> {
    this.#stopping.abort();
    await Promise.all(this.#loops);
    await this.#boss.stop({ graceful: false, close: false });
  }

  async sweep(): Promise<void> {
    const { opened, clock, log } = this.#options;
    await sweep(opened.db, clock, {
      onPlanned: (tx, due) => insertMorningJobs(this.#boss, tx, clock, due),
      onError: (memberId, error) => log.error({ memberId, error: describeError(error) }, 'not planned'),
    });
    await insertMissingJobs(this.#boss, await dueMornings(opened.db, clock));
  }

  /** Runs `work` again and again; straight away while it finds something to do. */
  #loop(name: string, idleMs: number, work: () => Promise<number>): void {
    const { signal } = this.#stopping;
    const pause = (ms: number) => wait(ms, undefined, { signal }).catch(() => {});
    const run = async () => {
      while (!signal.aborted) {
        try {
          if ((await work()) === 0) await pause(idleMs);
        } catch (error) {
          this.#options.log.warn({ loop: name, error: describeError(error) }, 'failed, tried again');
          await pause(AFTER_FAILURE_MS);
        }
      }
    };
    this.#loops.push(run());
  }

  async #takeMornings(): Promise<number> {
    const jobs = await this.#boss.fetch<MorningJob>(QUEUES.morning, { batchSize: BATCH });
    if (jobs.length === 0) return 0;
    const outcomes = await Promise.allSettled(jobs.map((job) => this.#deliver(job.data.memberId)));
    const again: PgBoss.JobInsert[] = [];
    const failed: string[] = [];
    for (const [i, job] of jobs.entries()) {
      const outcome = outcomes[i];
      if (outcome?.status === 'rejected') failed.push(job.id);
      else if (outcome?.value.kind === 'retry')
        again.push(againJob(job.data.memberId, outcome.value.afterMs));
    }
    // A job's own delay is fixed when it is made; Discord says how long to wait, so another job is made.
    if (again.length > 0) await this.#boss.insert(again);
    if (failed.length > 0) await this.#boss.fail(QUEUES.morning, failed);
    const done = jobs.map((job) => job.id).filter((id) => !failed.includes(id));
    if (done.length > 0) await this.#boss.complete(QUEUES.morning, done);
    return jobs.length;
  }

  async #deliver(memberId: number): Promise<MorningOutcome> {
    const { opened, clock, messenger, log, leaseSeconds } = this.#options;
    const outcome = await deliverMorning(
      {
        db: opened.db,
        clock,
        messenger,
        pace: () => this.#pace.turn(),
        signal: this.#stopping.signal,
        ...(leaseSeconds === undefined ? {} : { leaseSeconds }),
      },
      memberId,
    );
    if (outcome.kind === 'retry' || outcome.kind === 'dead')
      log.info({ memberId, ...outcome }, 'nudge not sent');
    if (outcome.kind === 'stop') this.#refused(outcome.reason);
    return outcome;
  }

  #refused(reason: string): void {
    if (this.#stopping.signal.aborted) return;
    this.#options.log.error({ reason }, 'Discord refuses the assistant; nothing is sent any more');
    this.#stopping.abort();
    this.#options.onRefused?.(reason);
  }

  /** One job a task and stretch of time, whichever process asks first. */
  async #offerTasks(): Promise<number> {
    for (const { name, everyMinutes } of this.#options.tasks ?? []) {
      const once = { singletonKey: name, singletonSeconds: everyMinutes * 60 };
      await this.#boss.send(QUEUES.task, { name }, once);
    }
    return 0;
  }

  async #takeTask(): Promise<number> {
    const [job] = await this.#boss.fetch<TaskJob>(QUEUES.task);
    if (job === undefined) return 0;
    const task = this.#options.tasks?.find(({ name }) => name === job.data.name);
    try {
      await task?.run();
    } catch (error) {
      this.#options.log.error({ task: job.data.name, error: describeError(error) }, 'task failed');
    }
    // Done or failed, its next time comes anyway.
    await this.#boss.complete(QUEUES.task, job.id);
    return 1;
  }
}
