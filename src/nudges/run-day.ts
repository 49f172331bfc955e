import { inArray, min } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import { type Day, earlier } from '../engine/day.ts';
import type { Database } from '../records/database.ts';
import { nudges, trees } from '../records/schema.ts';
import { deliverMorning } from './deliver.ts';
import type { Messenger } from './messenger.ts';
import { dueMornings, sweep } from './sweep.ts';

/**
 * Plans and sends all that is due now, one member after the other, without a queue: for a process that has the
 * database to itself. Returns how many messages were sent.
 */
export async function runDay(db: Database, clock: Clock, messenger: Messenger): Promise<number> {
  await sweep(db, clock);
  let sent = 0;
  for (const { memberId } of await dueMornings(db, clock)) {
    const outcome = await deliverMorning({ db, clock, messenger, alone: true }, memberId);
    if (outcome.kind === 'sent') sent += 1;
  }
  return sent;
}

/** The next day on which anything may be due to anybody; null when nothing is in sight. */
export async function nextLookOn(db: Database): Promise<Day | null> {
  const [planned] = await db.select({ on: min(trees.lookOn) }).from(trees);
  const [waiting] = await db
    .select({ on: min(nudges.due) })
    .from(nudges)
    .where(inArray(nudges.state, ['pending', 'leased']));
  const days = [planned?.on, waiting?.on].filter((on): on is Day => on != null);
  return days.length === 0 ? null : days.reduce(earlier);
}
