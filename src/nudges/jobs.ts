import { and, eq, inArray, lte, sql } from 'drizzle-orm';
import type PgBoss from 'pg-boss';
import { type Clock, instantAt } from '../clock.ts';
import type { Day } from '../engine/day.ts';
import type { Database } from '../records/database.ts';
import { clubs, members, nudges } from '../records/schema.ts';
import { inTransaction, QUEUES } from './boss.ts';
import { type DueMember, type DueMorning, latestToday } from './sweep.ts';

/** A club's mornings are this far apart, so that its channel is not flooded at eight o'clock. Ours. */
const APART_MS = 2000;

/** However many there are, the last comes within this time. Ours. */
const LONGEST_SPREAD_MS = 10 * 60_000;

const JOBS_AT_ONCE = 250;

/** Jobs for members whose nudges were just written, in the same transaction; for the hour each has chosen. */
export async function insertMorningJobs(
  boss: PgBoss,
  tx: Database,
  clock: Clock,
  due: readonly DueMember[],
): Promise<void> {
  if (due.length === 0) return;
  const rows = await tx
    .select({
      memberId: members.id,
      hour: members.nudgeHour,
      zone: sql<string>`coalesce(${members.zone}, ${clubs.zone})`,
      first: sql<Day>`min(${nudges.due})::text`,
    })
    .from(nudges)
    .innerJoin(members, eq(members.id, nudges.memberId))
    .innerJoin(clubs, eq(clubs.id, members.clubId))
    .where(
      and(
        eq(nudges.state, 'pending'),
        inArray(
          members.id,
          due.map(({ memberId }) => memberId),
        ),
        // What a member put off themselves has its own day.
        lte(nudges.due, latestToday(clock)),
      ),
    )
    .groupBy(members.id, clubs.id);
  const jobs = rows.map(({ memberId, hour, zone, first }) => {
    const place = due.find((one) => one.memberId === memberId);
    const comes = Math.max(instantAt(first, hour, zone).getTime(), clock.now().getTime());
    const inMs = comes - clock.now().getTime() + spreadMs(place?.rank ?? 0, place?.crowd ?? 1);
    return morningJob(memberId, clock.today(zone), inMs);
  });
  if (jobs.length > 0) await boss.insert(jobs, { db: inTransaction(tx) });
}

/**
 * Jobs for mornings that have come and have none waiting; those held by a worker are left to it. One whose
 * worker died goes before all others: its message may stand in the channel, and Discord knows its nonce for a
 * few minutes only, which is less than a long queue takes.
 */
export async function insertMissingJobs(boss: PgBoss, mornings: readonly DueMorning[]): Promise<void> {
  const jobs = mornings
    .filter(({ heldMs }) => heldMs <= 0)
    .map(({ memberId, today, rank, crowd, heldMs }) =>
      heldMs < 0 ? againJob(memberId, 0) : morningJob(memberId, today, spreadMs(rank, crowd)),
    );
  // In pieces: while very many wait, this process must not miss its turns to send.
  for (let at = 0; at < jobs.length; at += JOBS_AT_ONCE) await boss.insert(jobs.slice(at, at + JOBS_AT_ONCE));
}

/** The same morning again, after a failed attempt or a dead worker; ahead of those not tried yet. */
export function againJob(memberId: number, inMs: number): PgBoss.JobInsert {
  return { ...job(memberId, `${memberId}:again`, inMs), priority: 1 };
}

function morningJob(memberId: number, today: Day, inMs: number): PgBoss.JobInsert {
  return job(memberId, `${memberId}:${today}`, inMs);
}

/** The delay is an interval and not an instant, so that the database's clock alone counts. */
function job(memberId: number, singletonKey: string, inMs: number): PgBoss.JobInsert {
  return {
    name: QUEUES.morning,
    data: { memberId },
    startAfter: `${Math.max(0, Math.round(inMs))} milliseconds`,
    singletonKey,
  };
}

/** The place of one morning among a club's: two seconds apart, closer when there are very many. */
export function spreadMs(rank: number, crowd: number): number {
  return Math.round(rank * Math.min(APART_MS, LONGEST_SPREAD_MS / crowd));
}
