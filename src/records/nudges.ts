import { and, eq, isNull } from 'drizzle-orm';
import type { Database } from './database.ts';
import { isRowId } from './row-id.ts';
import { type Nudge, nudges, observations } from './schema.ts';

/** The trees that a nudge the member was sent is about. */
export async function treesOfNudgeMessage(
  db: Database,
  memberId: number,
  messageId: string,
): Promise<number[]> {
  const rows = await db
    .select({ treeId: nudges.treeId })
    .from(nudges)
    .where(and(eq(nudges.memberId, memberId), eq(nudges.messageId, messageId)));
  return [...new Set(rows.map((row) => row.treeId))];
}

/** The member's own nudge of that id; another member's is as good as none. */
export async function nudgeOf(db: Database, memberId: number, nudgeId: number): Promise<Nudge | null> {
  if (!isRowId(nudgeId)) return null;
  const [nudge] = await db
    .select()
    .from(nudges)
    .where(and(eq(nudges.id, nudgeId), eq(nudges.memberId, memberId)));
  return nudge ?? null;
}

/** The same, taken for this transaction. */
export async function lockNudge(tx: Database, memberId: number, nudgeId: number): Promise<Nudge | null> {
  const [nudge] = await tx
    .select()
    .from(nudges)
    .where(and(eq(nudges.id, nudgeId), eq(nudges.memberId, memberId)))
    .for('update');
  return nudge ?? null;
}

/** Remembers which button was pressed last; null when that was taken back. */
export async function answerNudge(
  db: Database,
  nudgeId: number,
  answer: string | null,
  now: Date,
): Promise<void> {
  await db.update(nudges).set({ answer, answeredAt: now }).where(eq(nudges.id, nudgeId));
}

/** How many shoots the standing tips of a note were about; false when none stands. */
export async function setShoots(db: Database, noteId: number, shoots: number): Promise<boolean> {
  const rows = await db
    .update(observations)
    .set({ shoots, count: shoots })
    .where(
      and(eq(observations.noteId, noteId), eq(observations.kind, 'tipped'), isNull(observations.undoneAt)),
    )
    .returning({ id: observations.id });
  return rows.length > 0;
}
