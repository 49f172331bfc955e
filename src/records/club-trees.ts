import { and, asc, eq, inArray, isNull, lt, max, or, sql } from 'drizzle-orm';
import type { Day } from '../engine/day.ts';
import type { Season } from '../engine/season.ts';
import type { Database } from './database.ts';
import { type Member, members, observations, type Tree, trees } from './schema.ts';

/**
 * The trees a member had on the list in a period: added by its end and not retired before it began, or noted
 * on within it.
 */
export async function treesWithin(
  db: Database,
  memberId: number,
  { from, to }: Pick<Season, 'from' | 'to'>,
): Promise<Tree[]> {
  const noted = db
    .select({ id: observations.treeId })
    .from(observations)
    .where(
      and(
        eq(observations.memberId, memberId),
        isNull(observations.undoneAt),
        sql`${observations.day} between ${from} and ${to}`,
      ),
    );
  return db
    .select()
    .from(trees)
    .where(
      and(
        eq(trees.memberId, memberId),
        or(
          sql`${trees.addedOn} <= ${to} and (${trees.retiredOn} is null or ${trees.retiredOn} >= ${from})`,
          inArray(trees.id, noted),
        ),
      ),
    )
    .orderBy(asc(trees.nameKey));
}

/** The first and last day on which anything was noted in a club, undone notes left out. */
export async function notedDays(
  db: Database,
  clubId: number,
): Promise<{ readonly first: Day; readonly last: Day } | null> {
  const [row] = await db
    .select({
      first: sql<Day | null>`min(${observations.day})::text`,
      last: sql<Day | null>`max(${observations.day})::text`,
    })
    .from(observations)
    .innerJoin(members, eq(members.id, observations.memberId))
    .where(and(eq(members.clubId, clubId), isNull(observations.undoneAt)));
  if (row?.first == null || row.last == null) return null;
  return { first: row.first, last: row.last };
}

/** The last id of a member's observations put on record before an instant; 0 when there is none. */
export async function lastObservationBefore(db: Database, memberId: number, at: Date): Promise<number> {
  const [row] = await db
    .select({ id: max(observations.id) })
    .from(observations)
    .where(and(eq(observations.memberId, memberId), lt(observations.createdAt, at)));
  return row?.id ?? 0;
}

/** A member's tree with whose it is, as lists of the club show it. */
export interface OwnedTree {
  readonly tree: Tree;
  readonly member: Member;
}

/** The trees of a club whose members have wood of them to spare. */
export async function spareTreesOf(db: Database, clubId: number): Promise<OwnedTree[]> {
  return db
    .select({ tree: trees, member: members })
    .from(trees)
    .innerJoin(members, eq(members.id, trees.memberId))
    .where(and(eq(members.clubId, clubId), eq(trees.spareWood, true), isNull(trees.retiredOn)))
    .orderBy(asc(trees.cultivar), asc(members.name), asc(trees.nameKey));
}
