import { eq, lt } from 'drizzle-orm';
import type { Reply } from '../../club/reply.ts';
import type { Database } from '../../records/database.ts';
import { type LongReply, longReplies } from '../../records/schema.ts';
import { isLong } from './render.ts';

export interface Owner {
  readonly clubId: number;
  /** Null for the club's own. */
  readonly memberId: number | null;
}

/** Keeps a reply that takes more than one page; its id, or null when one message holds it. */
export async function keepLongReply(
  db: Database,
  reply: Reply,
  owner: Owner,
  now: Date,
): Promise<number | null> {
  if (!isLong(reply)) return null;
  const { ok, title, text, fields, buttons } = reply;
  const kept: LongReply = { ok, title, text, fields, buttons };
  const [row] = await db
    .insert(longReplies)
    .values({ ...owner, reply: kept, createdAt: now })
    .returning();
  return row?.id ?? null;
}

/** Whether whoever asks may see it is part of the question. */
export async function longReplyOf(db: Database, id: number, owner: Owner): Promise<LongReply | null> {
  const [row] = await db.select().from(longReplies).where(eq(longReplies.id, id));
  if (row === undefined || row.clubId !== owner.clubId) return null;
  return row.memberId === null || row.memberId === owner.memberId ? row.reply : null;
}

const KEPT_MS = 30 * 24 * 60 * 60_000;

/** For the daily sweep. */
export async function forgetLongReplies(db: Database, now: Date): Promise<void> {
  await db.delete(longReplies).where(lt(longReplies.createdAt, new Date(now.getTime() - KEPT_MS)));
}
