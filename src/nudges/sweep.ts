import { and, asc, eq, inArray, isNotNull, lte, sql } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import type { Day } from '../engine/day.ts';
import { groupBy } from '../group-by.ts';
import type { Database } from '../records/database.ts';
import { clubs, members, nudges, trees } from '../records/schema.ts';
import { replanTrees } from './plan.ts';

/** The zone in which a day begins first, UTC+14. */
const FIRST_ZONE = 'Pacific/Kiritimati';

/** Members planned in one transaction: few enough to hold their rows only for a moment. */
const MEMBERS_AT_ONCE = 25;

/** A member's message of a morning that has come. */
export interface DueMorning {
  readonly memberId: number;
  readonly clubId: number;
  readonly today: Day;
}

/** Called in the transaction that wrote the nudges of these members, for the jobs that go with them. */
export type OnPlanned = (tx: Database, memberIds: readonly number[]) => Promise<void>;

/**
 * Plans every tree whose day has come: its nudges get their rows, its `look_on` moves on. Reads what is due
 * and nothing else, so it costs the same however many trees there are. Any number of processes may sweep at
 * once; a member whom another transaction has is left to it, or to the next sweep. Returns how many trees.
 */
export async function sweep(db: Database, clock: Clock, onPlanned?: OnPlanned): Promise<number> {
  const ripe = await dueTrees(db, clock);
  const byMember = [...groupBy(ripe, (tree) => tree.memberId)];
  let planned = 0;
  for (let at = 0; at < byMember.length; at += MEMBERS_AT_ONCE) {
    const batch = byMember.slice(at, at + MEMBERS_AT_ONCE);
    planned += await db.transaction(async (tx) => {
      const free = await takeFree(
        tx,
        batch.map(([memberId]) => memberId),
      );
      const taken = batch.filter(([memberId]) => free.has(memberId));
      for (const [memberId, own] of taken) {
        await replanTrees(
          tx,
          memberId,
          clock,
          own.map((tree) => tree.treeId),
        );
      }
      await onPlanned?.(
        tx,
        taken.map(([memberId]) => memberId),
      );
      return taken.reduce((sum, [, own]) => sum + own.length, 0);
    });
  }
  return planned;
}

async function dueTrees(db: Database, clock: Clock): Promise<{ treeId: number; memberId: number }[]> {
  const rows = await db
    .select({
      treeId: trees.id,
      memberId: trees.memberId,
      lookOn: trees.lookOn,
      zone: sql<string>`coalesce(${members.zone}, ${clubs.zone})`,
    })
    .from(trees)
    .innerJoin(members, eq(members.id, trees.memberId))
    .innerJoin(clubs, eq(clubs.id, members.clubId))
    .where(and(isNotNull(trees.lookOn), lte(trees.lookOn, clock.today(FIRST_ZONE))))
    .orderBy(asc(trees.memberId), asc(trees.id));
  return rows.filter(({ lookOn, zone }) => lookOn !== null && lookOn <= clock.today(zone));
}

async function takeFree(tx: Database, memberIds: readonly number[]): Promise<Set<number>> {
  const rows = await tx
    .select({ id: members.id })
    .from(members)
    .where(inArray(members.id, [...memberIds]))
    .for('no key update', { skipLocked: true });
  return new Set(rows.map(({ id }) => id));
}

/** The members who have something waiting that their morning has come for, club by club. */
export async function dueMornings(db: Database, clock: Clock): Promise<DueMorning[]> {
  const rows = await db
    .select({
      memberId: members.id,
      clubId: members.clubId,
      hour: members.nudgeHour,
      zone: sql<string>`coalesce(${members.zone}, ${clubs.zone})`,
      due: sql<Day>`min(${nudges.due})::text`,
    })
    .from(nudges)
    .innerJoin(members, eq(members.id, nudges.memberId))
    .innerJoin(clubs, eq(clubs.id, members.clubId))
    .where(and(inArray(nudges.state, ['pending', 'leased']), lte(nudges.due, clock.today(FIRST_ZONE))))
    .groupBy(members.id, clubs.id)
    .orderBy(asc(members.clubId), asc(members.id));
  return rows
    .filter(({ due, hour, zone }) => clock.hasCome(due, hour, zone))
    .map(({ memberId, clubId, zone }) => ({ memberId, clubId, today: clock.today(zone) }));
}
