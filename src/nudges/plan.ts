import { and, asc, eq, inArray, isNull, or, sql } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import type { Day } from '../engine/day.ts';
import { nextSeason, previousSeason, type Season } from '../engine/season.ts';
import { groupBy } from '../group-by.ts';
import { oneRow } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { gardenFactsOf, zoneOf } from '../records/garden.ts';
import {
  clubs,
  type Member,
  members,
  type NudgeKind,
  notes,
  nudges,
  observations,
  type Tree,
  trees,
} from '../records/schema.ts';
import { type Standing, standingsOf } from '../records/standing.ts';
import { type DueItem, dueItems, type TipRecord } from './due.ts';
import { type NudgeRow, planTree, type TreePlan } from './plan-tree.ts';

/** What a change came to for one tree, so that the reply to it can say so. */
export interface Replanned {
  readonly treeId: number;
  readonly tree: string;
  readonly lookOn: Day | null;
  /** Nudges this change made due at once. */
  readonly dueAtOnce: readonly NudgeKind[];
  /** Nudges that waited to be sent and are called off. */
  readonly calledOff: readonly NudgeKind[];
  /** What comes next and when; null when nothing is in sight. */
  readonly next: { readonly kind: NudgeKind; readonly on: Day } | null;
}

/**
 * Takes the member's row for this transaction. Everything that plans or delivers takes it first, so that two
 * transactions of one member wait for each other instead of locking each other out.
 */
export async function lockMember(tx: Database, memberId: number): Promise<Member> {
  const [member] = await tx.select().from(members).where(eq(members.id, memberId)).for('no key update');
  return oneRow(member);
}

/**
 * Brings `look_on` and the nudges of one tree in step with what is on record. To be called in the transaction
 * of whatever changes the tree, its notes, the garden or its weather. Null when there is no such tree.
 */
export async function replanTree(tx: Database, treeId: number, clock: Clock): Promise<Replanned | null> {
  const [found] = await tx.select({ memberId: trees.memberId }).from(trees).where(eq(trees.id, treeId));
  if (!found) return null;
  const [replanned] = await replanTrees(tx, found.memberId, clock, [treeId]);
  return replanned ?? null;
}

/** The same for all trees of a member, retired ones too. */
export async function replanMember(tx: Database, memberId: number, clock: Clock): Promise<Replanned[]> {
  return replanTrees(tx, memberId, clock, null);
}

/** The same for some trees of a member; null for all. */
export async function replanTrees(
  tx: Database,
  memberId: number,
  clock: Clock,
  treeIds: readonly number[] | null,
): Promise<Replanned[]> {
  const member = await lockMember(tx, memberId);
  const own = await tx
    .select()
    .from(trees)
    .where(
      treeIds === null
        ? eq(trees.memberId, memberId)
        : and(eq(trees.memberId, memberId), inArray(trees.id, [...treeIds])),
    )
    .orderBy(asc(trees.id));
  const first = own[0];
  if (first === undefined) return [];
  const [club] = await tx.select().from(clubs).where(eq(clubs.id, member.clubId));
  const today = clock.today(zoneOf(member, oneRow(club)));
  const standings = await standingsOf(tx, member, own, today);
  const season = oneRow(standings[0]).season;
  const rows = await rowsOf(tx, own, season);
  const tips = await tipsOf(tx, member, own, season);
  const plans = standings.map((standing) => {
    const { tree, input, result } = standing;
    const ofTree = tips.filter(({ treeId }) => treeId === tree.id || treeId === null);
    const items = dueItems(dueInputOf(standing, member, ofTree));
    const plan = planTree({
      today,
      season,
      items,
      rows: rows.get(tree.id) ?? [],
      planned: tree,
      tippedOn: result.tippedOn,
      retired: tree.retiredOn !== null,
      nudgesOff: member.nudgeWay === 'off',
    });
    return { tree, plan, items, today: input.today };
  });
  await write(tx, plans, clock.now());
  return plans.map(({ tree, plan, items }) => ({
    treeId: tree.id,
    tree: tree.name,
    lookOn: plan.lookOn,
    dueAtOnce: plan.dueAtOnce,
    calledOff: plan.calledOff,
    next: items.find((item) => item.on === plan.lookOn && item.holds) ?? null,
  }));
}

/** What `dueItems` needs of a tree, from how it stands. */
export function dueInputOf(standing: Standing, member: Member, tips: readonly TipRecord[]) {
  const { input, result, season, tree } = standing;
  return {
    input,
    result,
    gardenFacts: gardenFactsOf(member),
    tips,
    leftAlone: tree.leftAloneIn === season.label,
  };
}

async function rowsOf(tx: Database, own: readonly Tree[], season: Season): Promise<Map<number, NudgeRow[]>> {
  const labels = [previousSeason(season), season, nextSeason(season)].map(({ label }) => label);
  const rows = await tx
    .select()
    .from(nudges)
    .where(
      and(
        inArray(
          nudges.treeId,
          own.map(({ id }) => id),
        ),
        inArray(nudges.season, labels),
      ),
    )
    .orderBy(asc(nudges.id));
  return groupBy(rows, (row) => row.treeId);
}

/** All tips of these trees in a season, taken back or not, in the order of entry. */
export async function tipsOf(
  tx: Database,
  member: Member,
  own: readonly Tree[],
  season: Season,
): Promise<(TipRecord & { readonly treeId: number | null })[]> {
  const rows = await tx
    .select({ treeId: observations.treeId, day: observations.day, writtenOn: notes.writtenOn })
    .from(observations)
    .leftJoin(notes, eq(notes.id, observations.noteId))
    .where(
      and(
        eq(observations.memberId, member.id),
        eq(observations.kind, 'tipped'),
        or(
          inArray(
            observations.treeId,
            own.map(({ id }) => id),
          ),
          isNull(observations.treeId),
        ),
        sql`${observations.day} between ${season.from} and ${season.to}`,
      ),
    )
    .orderBy(asc(observations.id));
  return rows.map(({ treeId, day, writtenOn }) => ({ treeId, day, toldOn: writtenOn ?? day }));
}

interface PlannedTree {
  readonly tree: Tree;
  readonly plan: TreePlan;
  readonly items: readonly DueItem[];
}

async function write(tx: Database, plans: readonly PlannedTree[], now: Date) {
  const inserts = plans.flatMap(({ tree, plan }) =>
    plan.inserts.map((row) => ({ ...row, treeId: tree.id, memberId: tree.memberId, createdAt: now })),
  );
  if (inserts.length > 0) await tx.insert(nudges).values(inserts).onConflictDoNothing();
  const deletes = plans.flatMap(({ plan }) => plan.deletes);
  if (deletes.length > 0) await tx.delete(nudges).where(inArray(nudges.id, deletes));
  for (const { id, ...change } of plans.flatMap(({ plan }) => plan.updates)) {
    await tx.update(nudges).set(change).where(eq(nudges.id, id));
  }
  // Trees of one member mostly share their dates, so few statements serve many trees.
  const moved = plans.filter(
    ({ tree, plan }) => tree.lookOn !== plan.lookOn || tree.decisionOn !== plan.decisionOn,
  );
  for (const group of groupBy(moved, ({ plan }) => `${plan.lookOn} ${plan.decisionOn}`).values()) {
    const { lookOn, decisionOn } = oneRow(group[0]).plan;
    await tx
      .update(trees)
      .set({ lookOn, decisionOn })
      .where(
        inArray(
          trees.id,
          group.map(({ tree }) => tree.id),
        ),
      );
  }
}
