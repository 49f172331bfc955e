import { and, inArray, isNotNull, isNull, lt, ne, or } from 'drizzle-orm';
import { type Day, monthOf } from '../engine/day.ts';
import type { Database } from '../records/database.ts';
import { members, type WeatherSeries, weatherSeries } from '../records/schema.ts';

const WEEK_MS = 7 * 86_400_000;
/** After an attempt that failed. */
const DAY_MS = 86_400_000;

/**
 * Fetched series that somebody gardens by, are in their season, and were last fetched a week ago. One that
 * failed is tried again a day later.
 */
export async function dueForTopUp(db: Database, now: Date, today: Day): Promise<readonly WeatherSeries[]> {
  const used = db.select({ id: members.seriesId }).from(members).where(isNotNull(members.seriesId));
  const weekAgo = new Date(now.getTime() - WEEK_MS);
  const dayAgo = new Date(now.getTime() - DAY_MS);
  const old = await db
    .select()
    .from(weatherSeries)
    .where(
      and(
        ne(weatherSeries.source, 'file'),
        inArray(weatherSeries.id, used),
        or(isNull(weatherSeries.fetchedAt), lt(weatherSeries.fetchedAt, weekAgo)),
        or(isNull(weatherSeries.triedAt), lt(weatherSeries.triedAt, dayAgo)),
      ),
    );
  return old.filter(({ lat }) => isInSeason(today, lat ?? 0));
}

/** March to November in the north, September to May in the south: from leafing out to the frosts. */
function isInSeason(today: Day, lat: number): boolean {
  const month = monthOf(today);
  return lat < 0 ? month >= 9 || month <= 5 : month >= 3 && month <= 11;
}
