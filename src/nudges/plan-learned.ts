import { and, asc, eq, isNull } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import { addDays, type Day } from '../engine/day.ts';
import { LEARNED_RECORDS_NEEDED } from '../engine/ripening.ts';
import { groupBy } from '../group-by.ts';
import type { Database } from '../records/database.ts';
import { learningKeyOf, spanRecords } from '../records/learning.ts';
import { type Member, members, trees } from '../records/schema.ts';
import { lockMember, replanTrees } from './plan.ts';

/** What the club's records said of a member's cultivars before a change. */
export interface LearnedBefore {
  readonly clubId: number;
  readonly keys: ReadonlySet<string>;
  readonly until: Day;
  readonly records: ReadonlyMap<string, readonly number[]>;
}

/**
 * To be called in the transaction of a change to this member's notes or trees, before that change. `cultivars`
 * are those concerned; all of the member's when left out.
 */
export async function learnedBefore(
  tx: Database,
  member: Pick<Member, 'id' | 'clubId'>,
  today: Day,
  cultivars?: readonly (string | null)[],
): Promise<LearnedBefore> {
  const own =
    cultivars?.map((cultivar) => ({ cultivar })) ??
    (await tx.select({ cultivar: trees.cultivar }).from(trees).where(eq(trees.memberId, member.id)));
  const keys = new Set(own.flatMap((tree) => learningKeyOf(tree) ?? []));
  const until = addDays(today, 1);
  return {
    clubId: member.clubId,
    keys,
    until,
    records: await spanRecords(tx, member.clubId, { until, keys }),
  };
}

/**
 * Brings the dates of every tree in the club in step whose learned span that change moved. To be called after
 * the change and before anything takes a member’s row:
 * the rows are taken in one order, so that two changes at once wait for each other.
 */
export async function replanLearned(tx: Database, before: LearnedBefore, clock: Clock): Promise<void> {
  const { clubId, keys, until } = before;
  const records = await spanRecords(tx, clubId, { until, keys });
  const changed = [...keys].filter((key) => {
    const was = before.records.get(key) ?? [];
    const is = records.get(key) ?? [];
    // Under three records nothing is planned by them.
    return Math.max(was.length, is.length) >= LEARNED_RECORDS_NEEDED && was.join() !== is.join();
  });
  if (changed.length === 0) return;
  const rows = await tx
    .select({ id: trees.id, memberId: trees.memberId, cultivar: trees.cultivar })
    .from(trees)
    .innerJoin(members, eq(members.id, trees.memberId))
    .where(and(eq(members.clubId, clubId), isNull(trees.retiredOn), isNull(trees.spanFrom)))
    .orderBy(asc(trees.memberId), asc(trees.id));
  const concerned = rows.filter((tree) => changed.includes(learningKeyOf(tree) ?? ''));
  const byMember = groupBy(concerned, ({ memberId }) => memberId);
  for (const memberId of byMember.keys()) await lockMember(tx, memberId);
  for (const [memberId, own] of byMember) {
    await replanTrees(
      tx,
      memberId,
      clock,
      own.map(({ id }) => id),
    );
  }
}

/** Takes every member's row of a club, in one order, for changes that may bear on everybody's dates. */
export async function lockClub(tx: Database, clubId: number): Promise<void> {
  await tx
    .select({ id: members.id })
    .from(members)
    .where(eq(members.clubId, clubId))
    .orderBy(asc(members.id))
    .for('no key update');
}
