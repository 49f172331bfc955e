import { and, desc, eq, inArray, like, lt, max, not } from 'drizzle-orm';
import type { Database } from '../../records/database.ts';
import { handled } from '../../records/schema.ts';

// Discord delivers at least once, and two processes may both hear it. The table `handled` decides who acts.

/** Whether this process is the one to act on an interaction. */
export async function claimInteraction(db: Database, interactionId: string, now: Date): Promise<boolean> {
  return claim(db, `i:${interactionId}`, now);
}

/** Claims of messages that another process has had for longer than this are those of one that died. */
const CLAIM_LASTS_MS = 2 * 60_000;

/**
 * Whether this process is the one to act on a message. Unlike an interaction it comes only once to a process that
 * may die over it, so a claim that was not finished is taken over: after two minutes, or at once with `takeOver`
 * (on return from being away). The note itself is protected by its message id.
 */
export async function claimMessage(
  db: Database,
  messageId: string,
  now: Date,
  takeOver: boolean,
): Promise<boolean> {
  const id = `m:${messageId}`;
  const rows = await db
    .select()
    .from(handled)
    .where(inArray(handled.id, [id, `${id}:done`]));
  if (rows.some((row) => row.id !== id)) return false;
  const [claimed] = rows;
  if (claimed === undefined) return claim(db, id, now);
  if (!takeOver && now.getTime() - claimed.at.getTime() < CLAIM_LASTS_MS) return false;
  const taken = await db
    .update(handled)
    .set({ at: now })
    .where(and(eq(handled.id, id), eq(handled.at, claimed.at)))
    .returning();
  return taken.length > 0;
}

/** The message has been answered, or needs no answer. */
export async function finishMessage(db: Database, messageId: string, now: Date): Promise<void> {
  await db
    .insert(handled)
    .values({ id: `m:${messageId}:done`, at: now })
    .onConflictDoNothing();
}

const ALIVE = 'alive';

/** Puts down that everything up to now has been heard. */
export async function markAlive(db: Database, now: Date): Promise<void> {
  await db
    .insert(handled)
    .values({ id: ALIVE, at: now })
    .onConflictDoUpdate({ target: handled.id, set: { at: now } });
}

/** When this club of processes last heard Discord; null when never. */
export async function lastAlive(db: Database): Promise<Date | null> {
  const [row] = await db.select({ at: max(handled.at) }).from(handled);
  return row?.at ?? null;
}

const DIRECT = 'd:';
/** Most direct channels that are looked into on return, those used last. */
const MOST_DIRECT = 200;

/** Keeps in mind that a member writes here: Discord never lists the direct channels of an assistant. */
export async function rememberDirect(db: Database, channelId: string, now: Date): Promise<void> {
  await db
    .insert(handled)
    .values({ id: `${DIRECT}${channelId}`, at: now })
    .onConflictDoUpdate({ target: handled.id, set: { at: now } });
}

/** The direct channels somebody wrote in of late, the last first. */
export async function recentDirects(db: Database): Promise<string[]> {
  const rows = await db
    .select()
    .from(handled)
    .where(like(handled.id, `${DIRECT}%`))
    .orderBy(desc(handled.at))
    .limit(MOST_DIRECT);
  return rows.map(({ id }) => id.slice(DIRECT.length));
}

/** Discord repeats nothing after this long. */
const REMEMBERED_MS = 7 * 24 * 60 * 60_000;

/** Drops claims that are of no use any more. For the daily sweep. */
export async function forgetHandled(db: Database, now: Date): Promise<void> {
  const before = new Date(now.getTime() - REMEMBERED_MS);
  await db.delete(handled).where(and(lt(handled.at, before), not(like(handled.id, ALIVE))));
}

async function claim(db: Database, id: string, now: Date): Promise<boolean> {
  const rows = await db.insert(handled).values({ id, at: now }).onConflictDoNothing().returning();
  return rows.length > 0;
}
