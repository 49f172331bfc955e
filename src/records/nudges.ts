import { and, eq } from 'drizzle-orm';
import type { Database } from './database.ts';
import { nudges } from './schema.ts';

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
