import { deliverMorning, type MorningOutcome } from '../../src/nudges/deliver.ts';
import type { Messenger } from '../../src/nudges/messenger.ts';
import { dueMornings, sweep } from '../../src/nudges/sweep.ts';
import type { Database } from '../../src/records/database.ts';
import type { InstantClock } from '../support/instant-clock.ts';

/** What a worker does in one round, without its queue: plan what is due, send what has come. */
export async function round(
  db: Database,
  clock: InstantClock,
  messenger: Messenger,
): Promise<MorningOutcome[]> {
  await sweep(db, clock);
  const outcomes: MorningOutcome[] = [];
  for (const { memberId } of await dueMornings(db, clock)) {
    outcomes.push(await deliverMorning({ db, clock, messenger }, memberId));
  }
  return outcomes;
}
