import type { SteppedClock } from '../../clock.ts';
import { addDays, type Day, earlier, later } from '../../engine/day.ts';
import type { Messenger } from '../../nudges/messenger.ts';
import { nextRoundupDay, postRoundups } from '../../nudges/roundups.ts';
import { nextLookOn, runDay } from '../../nudges/run-day.ts';
import type { Database } from '../../records/database.ts';

/**
 * Moves the clock to `to` and delivers all that falls due on the way, each thing on its own day. Days on which
 * nothing is due are passed over. A day in the past only sets the clock back.
 */
export async function passDays(
  db: Database,
  clock: SteppedClock,
  to: Day,
  messenger: Messenger,
): Promise<void> {
  if (to < clock.today()) {
    clock.moveTo(to);
    return;
  }
  await runDay(db, clock, messenger);
  await postRoundups(db, clock, messenger);
  while (clock.today() < to) {
    const tomorrow = addDays(clock.today(), 1);
    const days = [await nextLookOn(db), await nextRoundupDay(db, clock.today()), to];
    const next = days.filter((day) => day !== null).reduce(earlier);
    clock.moveTo(later(next, tomorrow));
    await runDay(db, clock, messenger);
    await postRoundups(db, clock, messenger);
  }
}
