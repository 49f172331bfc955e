import { inArray } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import type { Services } from '../club/services.ts';
import type { Database } from '../records/database.ts';
import { members } from '../records/schema.ts';
import { summariseMember } from '../records/weather.ts';
import { replanMember } from './plan.ts';

/** Fetches the latest days of the records in use, and brings every garden that rests on them in step. */
export async function topUpWeather(db: Database, clock: Clock, services: Services): Promise<number> {
  const changed = await services.weather.topUpDue();
  if (changed.length === 0) return 0;
  const concerned = await db
    .select()
    .from(members)
    .where(inArray(members.seriesId, [...changed]));
  for (const member of concerned) {
    await db.transaction(async (tx) => {
      await summariseMember(tx, member);
      await replanMember(tx, member.id, clock);
    });
  }
  return concerned.length;
}
