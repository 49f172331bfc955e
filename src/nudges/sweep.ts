import { and, asc, eq, inArray, isNotNull, lte, sql } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import type { Day } from '../engine/day.ts';
import { groupBy } from '../group-by.ts';
import { oneRow } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { clubs, members, nudges, trees } from '../records/schema.ts';
import { nonceOf } from './nonce.ts';
import { replanTrees } from './plan.ts';

/** The zone in which a day begins first, UTC+14. */
const FIRST_ZONE = 'Pacific/Kiritimati';

/** Members planned in one transaction: few enough to hold their rows only for a moment. */
const MEMBERS_AT_ONCE = 25;

/** A member with something due, and their place among those of their club. */
export interface DueMember {
  readonly memberId: number;
  readonly clubId: number;
  /** 0 for the first of the club. */
  readonly rank: number;
  /** How many of the club have something due. */
  readonly crowd: number;
}

/** A member's message of a morning that has come. */
export interface DueMorning extends DueMember {
  readonly today: Day;
  /** For how long yet a worker holds it, milliseconds; 0 or less when none does. */
  readonly heldMs: number;
}

/** Called in the transaction that wrote the nudges of these members, for the jobs that go with them. */
export type OnPlanned = (tx: Database, due: readonly DueMember[]) => Promise<void>;

/** The latest day it is anywhere. */
export function latestToday(clock: Clock): Day {
  return clock.today(FIRST_ZONE);
}

export interface SweepOptions {
  readonly onPlanned?: OnPlanned;
  /** Told of a member who could not be planned; without it the sweep fails as a whole. */
  readonly onError?: (memberId: number, error: unknown) => void;
}

/**
 * Plans every tree whose day has come: its nudges get their rows, its `look_on` moves on. Reads what is due
 * and nothing else, so it costs the same however many trees there are. Any number of processes may sweep at
 * once; a member whom another transaction has is left to it, or to the next sweep. Returns how many trees.
 */
export async function sweep(db: Database, clock: Clock, options: SweepOptions = {}): Promise<number> {
  const byMember = [...groupBy(await dueTrees(db, clock), (tree) => tree.memberId).values()];
  const due = ranks(byMember.map((own) => ({ ...oneRow(own[0]), treeIds: own.map((one) => one.treeId) })));
  let planned = 0;
  for (let at = 0; at < due.length; at += MEMBERS_AT_ONCE) {
    const batch = due.slice(at, at + MEMBERS_AT_ONCE);
    try {
      planned += await planBatch(db, clock, batch, options);
    } catch (error) {
      if (options.onError === undefined) throw error;
      planned += await planEach(db, clock, batch, options);
    }
  }
  return planned;
}

type DueMemberTrees = DueMember & { readonly treeIds: readonly number[] };

async function planBatch(
  db: Database,
  clock: Clock,
  batch: readonly DueMemberTrees[],
  { onPlanned }: SweepOptions,
): Promise<number> {
  return db.transaction(async (tx) => {
    const free = await takeFree(tx, batch);
    const taken = batch.filter(({ memberId }) => free.has(memberId));
    for (const { memberId, treeIds } of taken) await replanTrees(tx, memberId, clock, treeIds);
    await onPlanned?.(tx, taken);
    return taken.reduce((sum, { treeIds }) => sum + treeIds.length, 0);
  });
}

/** One member whose records cannot be planned must not keep the others from their mornings. */
async function planEach(
  db: Database,
  clock: Clock,
  batch: readonly DueMemberTrees[],
  options: SweepOptions,
): Promise<number> {
  let planned = 0;
  for (const one of batch) {
    try {
      planned += await planBatch(db, clock, [one], options);
    } catch (error) {
      options.onError?.(one.memberId, error);
    }
  }
  return planned;
}

interface DueTree {
  readonly treeId: number;
  readonly memberId: number;
  readonly clubId: number;
}

async function dueTrees(db: Database, clock: Clock): Promise<DueTree[]> {
  const rows = await db
    .select({
      treeId: trees.id,
      memberId: trees.memberId,
      clubId: members.clubId,
      lookOn: trees.lookOn,
      zone: sql<string>`coalesce(${members.zone}, ${clubs.zone})`,
    })
    .from(trees)
    .innerJoin(members, eq(members.id, trees.memberId))
    .innerJoin(clubs, eq(clubs.id, members.clubId))
    .where(and(isNotNull(trees.lookOn), lte(trees.lookOn, latestToday(clock))))
    .orderBy(asc(trees.memberId), asc(trees.id));
  return rows.filter(({ lookOn, zone }) => lookOn !== null && lookOn <= clock.today(zone));
}

async function takeFree(tx: Database, due: readonly DueMember[]): Promise<Set<number>> {
  const ids = due.map(({ memberId }) => memberId);
  const rows = await tx
    .select({ id: members.id })
    .from(members)
    .where(inArray(members.id, ids))
    .for('no key update', { skipLocked: true });
  return new Set(rows.map(({ id }) => id));
}

/**
 * The members who have something waiting that their morning has come for, club by club. Those whose message of
 * this morning has been sent are left out: what came due since waits for the next.
 */
export async function dueMornings(db: Database, clock: Clock): Promise<DueMorning[]> {
  const rows = await db
    .select({
      memberId: members.id,
      clubId: members.clubId,
      hour: members.nudgeHour,
      zone: sql<string>`coalesce(${members.zone}, ${clubs.zone})`,
      due: sql<Day>`min(${nudges.due})::text`,
      heldMs: sql<string | null>`extract(epoch from max(${nudges.leasedUntil}) - now()) * 1000`,
      // A member's nonces differ in their day only, so that the greatest is the last morning's.
      lastNonce: sql<string | null>`(select max(sent.nonce) from nudge sent
        where sent.member_id = ${members.id} and sent.state = 'sent')`,
    })
    .from(nudges)
    .innerJoin(members, eq(members.id, nudges.memberId))
    .innerJoin(clubs, eq(clubs.id, members.clubId))
    .where(and(inArray(nudges.state, ['pending', 'leased']), lte(nudges.due, latestToday(clock))))
    .groupBy(members.id, clubs.id)
    .orderBy(asc(members.clubId), asc(members.id));
  // Thousands share few zones and hours, and a zone's clock is slow to work out.
  const hasCome = memo(({ due, hour, zone }: Morning) => clock.hasCome(due, hour, zone));
  const todayIn = memo(({ zone }: Pick<Morning, 'zone'>) => clock.today(zone));
  const come = rows
    .filter(({ due, hour, zone }) => hasCome({ due, hour, zone }))
    .map(({ heldMs, zone, ...row }) => ({ ...row, today: todayIn({ zone }), heldMs: Number(heldMs ?? 0) }));
  return ranks(come.filter((one) => one.heldMs !== 0 || one.lastNonce !== nonceOf(one.memberId, one.today)));
}

interface Morning {
  readonly due: Day;
  readonly hour: number;
  readonly zone: string;
}

function memo<Argument, Result>(work: (argument: Argument) => Result): (argument: Argument) => Result {
  const known = new Map<string, Result>();
  return (argument) => {
    const key = JSON.stringify(argument);
    const result = known.has(key) ? (known.get(key) as Result) : work(argument);
    known.set(key, result);
    return result;
  };
}

/** Adds to each its place among those of its club. */
function ranks<Due extends { readonly clubId: number }>(all: readonly Due[]) {
  return [...groupBy(all, ({ clubId }) => clubId).values()].flatMap((ofClub) =>
    ofClub.map((due, rank) => ({ ...due, rank, crowd: ofClub.length })),
  );
}
