import type { Clock } from '../clock.ts';
import { sameSeason } from '../club/roundup.ts';
import type { RoundupPeriod } from '../club/roundup-data.ts';
import { addDays, type Day, daysBetween, earlier, later, weekdayOf } from '../engine/day.ts';
import { gardenSeasonOf } from '../engine/garden-season.ts';
import { DORMANT_AFTER_DAYS } from '../engine/milestones.ts';
import { type Hemisphere, midSeason, previousSeason, type Season, seasonOf } from '../engine/season.ts';
import { gardenFactsOf, hemisphereOf } from '../records/garden.ts';
import type { Club, Member } from '../records/schema.ts';

/** Older than this a week's news is none; a season's keeps longer. Ours, days. */
const WEEK_KEEPS_DAYS = 2;
const SEASON_KEEPS_DAYS = 60;

/** The weekly roundup sleeps from two weeks after the first frost until three before the last. Ours, days. */
const AFTER_FROST_DAYS = 14;
const BEFORE_FROST_DAYS = 21;
/** Where no frost is known, the growing season lies around midsummer's parting day. Ours, days. */
const HALF_SEASON_DAYS = 120;

export interface DueRoundup {
  /** Unique in its club: "week:2026-07-05", "season:2026". */
  readonly key: string;
  readonly nonce: string;
  readonly period: RoundupPeriod;
  readonly label: string;
  /** Of a season's roundup. */
  readonly season?: Season;
}

/** What may be due by the calendar alone. */
export function candidatesOf(club: Club, hemisphere: Hemisphere, clock: Clock): DueRoundup[] {
  const today = clock.today(club.zone);
  const due: DueRoundup[] = [];
  if (club.roundupDay !== null) {
    const back = (weekdayOf(today) - club.roundupDay + 7) % 7;
    const day = addDays(today, -back);
    const [from, to] = [addDays(day, -7), addDays(day, -1)];
    if (back <= WEEK_KEEPS_DAYS && clock.hasCome(day, club.roundupHour, club.zone)) {
      due.push({
        key: `week:${day}`,
        nonce: `r${club.id}-${day.replaceAll('-', '')}`,
        period: { span: 'week', from, to },
        label: `${from}/${to}`,
      });
    }
  }
  const running = seasonOf(today, hemisphere);
  for (const season of [previousSeason(running), running]) {
    if (today < midSeason(season) || daysBetween(season.to, today) > SEASON_KEEPS_DAYS) continue;
    due.push({
      key: `season:${season.label}`,
      nonce: `r${club.id}-s${season.startYear}`,
      period: { span: 'season', seasonOf: sameSeason(season) },
      label: season.label,
      season,
    });
  }
  return due;
}

/** Whether the club's gardens agree that a season is over. */
export function isDue({ season }: DueRoundup, club: Club, members: readonly Member[], clock: Clock): boolean {
  if (season === undefined) return true;
  const day = seasonRoundupDay(members, season);
  const late = daysBetween(day, clock.today(club.zone));
  return late >= 0 && late <= SEASON_KEEPS_DAYS && clock.hasCome(day, club.roundupHour, club.zone);
}

/** When the last garden of the club has gone dormant, at the latest on the season's last day. */
export function seasonRoundupDay(members: readonly Member[], season: Season): Day {
  const dormant = members.flatMap((member) => {
    const { firstFrost } = gardenSeasonOf(gardenFactsOf(member), season);
    return firstFrost === null ? [] : [addDays(firstFrost, DORMANT_AFTER_DAYS)];
  });
  return dormant.length === 0 ? season.to : earlier(dormant.reduce(later), season.to);
}

/** Whether figs grow in the member's garden on `day`, as far as its frosts tell. */
export function grows(member: Member, day: Day): boolean {
  const season = seasonOf(day, hemisphereOf(member));
  const { lastFrost, firstFrost } = gardenSeasonOf(gardenFactsOf(member), season);
  const middle = midSeason(season);
  const from = addDays(lastFrost ?? addDays(middle, -HALF_SEASON_DAYS), -BEFORE_FROST_DAYS);
  const to = addDays(firstFrost ?? addDays(middle, HALF_SEASON_DAYS), AFTER_FROST_DAYS);
  return day >= from && day <= to;
}

/** The next such weekday after a day; null for none. */
export function nextWeekday(weekday: number | null, after: Day): Day | null {
  if (weekday === null) return null;
  const days = (weekday - weekdayOf(after) + 7) % 7;
  return addDays(after, days === 0 ? 7 : days);
}
