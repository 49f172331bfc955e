import { and, eq, gt, min, sql } from 'drizzle-orm';
import { addDays, type Day } from '../engine/day.ts';
import type { Database } from '../records/database.ts';
import { type Member, notes, nudges } from '../records/schema.ts';

/** A year's round but a month, since next year's first nudge may come a little earlier than this year's. Ours. */
const SEASON_DAYS = 335;

/**
 * Whether this morning's message should ask if nudges are wanted at all: for a whole season's round the member
 * has been sent nudges, and neither answered one nor said anything else.
 */
export async function shouldAskQuiet(db: Database, member: Member, today: Day): Promise<boolean> {
  const lastSign = await lastSignOf(db, member);
  const [unanswered] = await db
    .select({ first: min(nudges.due) })
    .from(nudges)
    .where(
      and(
        eq(nudges.memberId, member.id),
        eq(nudges.state, 'sent'),
        ...(lastSign === null ? [] : [gt(nudges.due, lastSign)]),
      ),
    );
  return unanswered?.first != null && addDays(unanswered.first, SEASON_DAYS) <= today;
}

/** The last day on which the member noted, answered or asked anything; null when they never have. */
async function lastSignOf(db: Database, member: Member): Promise<Day | null> {
  const [noted] = await db
    .select({ on: sql<Day | null>`max(${notes.writtenOn})::text` })
    .from(notes)
    .where(eq(notes.memberId, member.id));
  const [answered] = await db
    .select({ on: sql<Day | null>`max(${nudges.answeredAt})::date::text` })
    .from(nudges)
    .where(eq(nudges.memberId, member.id));
  const signs = [member.lastSeenOn, noted?.on, answered?.on].filter((on): on is Day => on != null);
  return signs.sort().at(-1) ?? null;
}
