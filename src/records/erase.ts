import { and, eq, inArray, isNotNull } from 'drizzle-orm';
import type { Database } from './database.ts';
import {
  type Member,
  members,
  type Note,
  type Nudge,
  notes,
  nudges,
  type Observation,
  observations,
  type Tree,
  trees,
  weatherSeries,
} from './schema.ts';

/** Everything a club keeps of one member. */
export interface MemberRecords {
  readonly trees: readonly Tree[];
  readonly notes: readonly Note[];
  readonly observations: readonly Observation[];
  readonly nudges: readonly Nudge[];
}

export async function recordsOf(db: Database, memberId: number): Promise<MemberRecords> {
  return {
    trees: await db.select().from(trees).where(eq(trees.memberId, memberId)).orderBy(trees.id),
    notes: await db.select().from(notes).where(eq(notes.memberId, memberId)).orderBy(notes.id),
    observations: await db
      .select()
      .from(observations)
      .where(eq(observations.memberId, memberId))
      .orderBy(observations.id),
    nudges: await db.select().from(nudges).where(eq(nudges.memberId, memberId)).orderBy(nudges.id),
  };
}

/**
 * Removes a member and all that hangs on them: trees, notes, what was seen, nudges, their own readings. Readings
 * of a public station stay, since they are not theirs. Where another member's tree is said to come from them,
 * it comes from a former member.
 */
export async function eraseMember(tx: Database, member: Member): Promise<void> {
  // Trees, notes, observations and nudges go with the member's row.
  await tx.delete(members).where(eq(members.id, member.id));
  await forgetOrigins(tx, member);
  const series = [member.seriesId, member.ownSeriesId].filter((id) => id !== null);
  if (series.length === 0) return;
  await tx
    .delete(weatherSeries)
    .where(and(inArray(weatherSeries.id, series), eq(weatherSeries.source, 'file')));
}

async function forgetOrigins(tx: Database, member: Member): Promise<void> {
  const told = await tx
    .select({ id: trees.id, origin: trees.origin })
    .from(trees)
    .innerJoin(members, eq(members.id, trees.memberId))
    .where(and(eq(members.clubId, member.clubId), isNotNull(trees.origin)));
  const name = new RegExp(`(?<![\\p{L}\\p{N}])${escapeRegExp(member.name)}(?![\\p{L}\\p{N}])`, 'giu');
  for (const { id, origin } of told) {
    const kept = origin?.replaceAll(name, 'a former member') ?? null;
    if (kept !== origin) await tx.update(trees).set({ origin: kept }).where(eq(trees.id, id));
  }
}

function escapeRegExp(text: string): string {
  return text.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
}
