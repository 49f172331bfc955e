import { randomUUID } from 'node:crypto';
import { and, eq, inArray, isNull, or, sql } from 'drizzle-orm';
import type { PgUpdateSetSource } from 'drizzle-orm/pg-core';
import type { Clock } from '../clock.ts';
import { type Reply, reply } from '../club/reply.ts';
import { currentSeasons, sameSeason } from '../club/roundup.ts';
import { hemisphereOfClub, isQuiet, type RoundupPeriod, readRoundup } from '../club/roundup-data.ts';
import { drawnRoundup } from '../club/roundup-picture.ts';
import { type Manner, roundupFacts, seasonWords, weekWords } from '../club/roundup-words.ts';
import { addDays, type Day, daysBetween, earlier, later, weekdayOf } from '../engine/day.ts';
import { gardenSeasonOf } from '../engine/garden-season.ts';
import { DORMANT_AFTER_DAYS } from '../engine/milestones.ts';
import { midSeason, previousSeason, type Season, seasonOf } from '../engine/season.ts';
import { notedDays } from '../records/club-trees.ts';
import { membersOfClub, updateClub } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { gardenFactsOf } from '../records/garden.ts';
import { learningTrees } from '../records/learning.ts';
import { learnedFigures } from '../records/learning-figures.ts';
import { type Club, clubs, type Member, roundups } from '../records/schema.ts';
import type { Messenger } from './messenger.ts';

/** Older than this a week's news is none; a season's keeps longer. Ours, days. */
const WEEK_KEEPS_DAYS = 2;
const SEASON_KEEPS_DAYS = 60;

/** The weekly roundup sleeps from two weeks after the first frost until three before the last. Ours, days. */
const AFTER_FROST_DAYS = 14;
const BEFORE_FROST_DAYS = 21;
/** Where no frost is known, the growing season lies around midsummer's parting day. Ours, days. */
const HALF_SEASON_DAYS = 120;

/** How long a worker may take over one post, and how long a failed one waits, seconds. */
const LEASE_SECONDS = 60;

interface DueRoundup {
  /** Unique in its club: "week:2026-07-05", "season:2026". */
  readonly key: string;
  readonly nonce: string;
  readonly period: RoundupPeriod;
  readonly label: string;
}

/**
 * Posts what roundups have come due in every club, each once whoever else is at it, quiet weeks and seasons
 * passed over. Returns how many were posted. A failure waits for the next call. It looks at every club, so
 * once in a quarter of an hour is enough.
 */
export async function postRoundups(db: Database, clock: Clock, messenger: Messenger): Promise<number> {
  let posted = 0;
  const all = await db.select().from(clubs).where(isNull(clubs.leftAt)).orderBy(clubs.id);
  for (const club of all) {
    const members = await membersOfClub(db, club.id);
    const due = dueRoundups(club, members, clock);
    const done = due.length === 0 ? new Set() : await donePeriods(db, club.id);
    for (const one of due.filter(({ key }) => !done.has(key))) {
      const outcome = await post(db, clock, messenger, { club, members, due: one });
      if (outcome === 'stop') return posted;
      if (outcome === 'sent') posted += 1;
    }
  }
  return posted;
}

async function donePeriods(db: Database, clubId: number): Promise<Set<string>> {
  const rows = await db
    .select({ period: roundups.period })
    .from(roundups)
    .where(and(eq(roundups.clubId, clubId), inArray(roundups.state, ['sent', 'cancelled', 'dead'])));
  return new Set(rows.map(({ period }) => period));
}
/** The next day after `after` on which a roundup may come due in any club; null when none will. */
export async function nextRoundupDay(db: Database, after: Day): Promise<Day | null> {
  const all = await db.select().from(clubs).where(isNull(clubs.leftAt));
  let next: Day | null = null;
  for (const club of all) {
    const members = await membersOfClub(db, club.id);
    if ((await notedDays(db, club.id)) === null) continue;
    const season = seasonOf(addDays(after, 1), hemisphereOfClub(members));
    const end = seasonRoundupDay(members, season);
    const days = [end > after ? end : null, nextWeekday(club.roundupDay, after)];
    for (const day of days) if (day !== null) next = next === null ? day : earlier(next, day);
  }
  return next;
}

function nextWeekday(weekday: number | null, after: Day): Day | null {
  if (weekday === null) return null;
  const days = (weekday - weekdayOf(after) + 7) % 7;
  return addDays(after, days === 0 ? 7 : days);
}

function dueRoundups(club: Club, members: readonly Member[], clock: Clock): DueRoundup[] {
  const today = clock.today(club.zone);
  const due: DueRoundup[] = [];
  const hasCome = (day: Day) => day <= today && clock.hasCome(day, club.roundupHour, club.zone);
  if (club.roundupDay !== null) {
    const back = (weekdayOf(today) - club.roundupDay + 7) % 7;
    const day = addDays(today, -back);
    const [from, to] = [addDays(day, -7), addDays(day, -1)];
    if (hasCome(day) && back <= WEEK_KEEPS_DAYS && members.some((member) => grows(member, day))) {
      due.push({
        key: `week:${day}`,
        nonce: `r${club.id}-${day.replaceAll('-', '')}`,
        period: { span: 'week', from, to },
        label: `${from}/${to}`,
      });
    }
  }
  const running = seasonOf(today, hemisphereOfClub(members));
  for (const season of [previousSeason(running), running]) {
    const day = seasonRoundupDay(members, season);
    if (!hasCome(day) || daysBetween(day, today) > SEASON_KEEPS_DAYS) continue;
    due.push({
      key: `season:${season.label}`,
      nonce: `r${club.id}-s${season.startYear}`,
      period: { span: 'season', seasonOf: sameSeason(season) },
      label: season.label,
    });
  }
  return due;
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
function grows(member: Member, day: Day): boolean {
  const season = seasonOf(day, member.hemisphere ?? 'N');
  const { lastFrost, firstFrost } = gardenSeasonOf(gardenFactsOf(member), season);
  const middle = midSeason(season);
  const from = addDays(lastFrost ?? addDays(middle, -HALF_SEASON_DAYS), -BEFORE_FROST_DAYS);
  const to = addDays(firstFrost ?? addDays(middle, HALF_SEASON_DAYS), AFTER_FROST_DAYS);
  return day >= from && day <= to;
}

interface Post {
  readonly club: Club;
  readonly members: readonly Member[];
  readonly due: DueRoundup;
}

async function post(
  db: Database,
  clock: Clock,
  messenger: Messenger,
  { club, members, due }: Post,
): Promise<'sent' | 'not' | 'stop'> {
  const token = randomUUID();
  if (!(await claim(db, clock, club, due, token))) return 'not';
  const finish = (change: PgUpdateSetSource<typeof roundups>) =>
    db
      .update(roundups)
      .set({ token: null, leasedUntil: null, ...change })
      .where(and(eq(roundups.clubId, club.id), eq(roundups.period, due.key), eq(roundups.token, token)));
  const content = await compose(db, clock, club, members, due);
  if (content === null) {
    await finish({ state: 'cancelled', error: 'quiet' });
    return 'not';
  }
  const outcome = await messenger.send({
    club,
    member: null,
    way: 'channel',
    reply: content,
    nonce: due.nonce,
  });
  switch (outcome.kind) {
    case 'sent':
      await finish({ state: 'sent', messageId: outcome.messageId, error: null });
      return 'sent';
    case 'retry':
      await finish({
        state: 'pending',
        error: outcome.reason,
        leasedUntil: fromNow(retrySeconds(outcome.afterMs)),
      });
      return 'not';
    case 'dead':
      await finish({ state: 'dead', error: outcome.reason });
      await updateClub(db, club.id, { trouble: outcome.reason });
      return 'not';
    case 'stop':
      await finish({ state: 'pending', error: outcome.reason, leasedUntil: fromNow(LEASE_SECONDS) });
      return 'stop';
  }
}

function retrySeconds(afterMs: number | undefined): number {
  return Math.max(LEASE_SECONDS, Math.ceil((afterMs ?? 0) / 1000));
}

/** One statement: a new row, or one that waits, or one whose holder is gone. */
async function claim(
  db: Database,
  clock: Clock,
  club: Club,
  due: DueRoundup,
  token: string,
): Promise<boolean> {
  const taken = {
    state: 'leased' as const,
    token,
    nonce: due.nonce,
    leasedUntil: fromNow(LEASE_SECONDS),
  };
  const rows = await db
    .insert(roundups)
    .values({ clubId: club.id, period: due.key, createdAt: clock.now(), ...taken })
    .onConflictDoUpdate({
      target: [roundups.clubId, roundups.period],
      set: taken,
      setWhere: and(
        or(eq(roundups.state, 'pending'), eq(roundups.state, 'leased')),
        or(isNull(roundups.leasedUntil), sql`${roundups.leasedUntil} < now()`),
      ),
    })
    .returning({ id: roundups.id });
  return rows.length > 0;
}

/** The database's clock, so that all workers agree. */
function fromNow(seconds: number) {
  return sql`now() + make_interval(secs => ${seconds})`;
}

/** What to post; null when there is nothing worth a message. */
async function compose(
  db: Database,
  clock: Clock,
  club: Club,
  members: readonly Member[],
  { period, label }: DueRoundup,
): Promise<Reply | null> {
  const today = clock.today(club.zone);
  const manner = mannerOf(members);
  const roundup = await readRoundup(db, club, period, today);
  if (period.span === 'week') {
    if (isQuiet(roundup, today)) return null;
    const words = weekWords(roundup, manner);
    const season = await readRoundup(db, club, currentSeasons(today), today);
    return reply({
      ...words,
      files: await drawnRoundup(club.name, roundup, season, manner, today),
      data: roundupFacts(roundup, label),
    });
  }
  if (!roundup.trees.some(({ standing }) => standing.observations.length > 0)) return null;
  const learned = learnedFigures(await learningTrees(db, club.id, { until: today }));
  return reply({
    ...seasonWords(roundup, label, learned, manner),
    files: await drawnRoundup(club.name, roundup, roundup, manner, today),
    data: roundupFacts(roundup, label, learned),
  });
}

/** A club's message is written as most of its members write. */
function mannerOf(members: readonly Member[]): Manner {
  const metric = members.filter(({ units }) => units === 'C').length * 2 > members.length;
  const dayFirst = members.filter(
    ({ dates, units }) => (dates ?? (units === 'C' ? 'DMY' : 'MDY')) === 'DMY',
  ).length;
  return { units: metric ? 'C' : 'F', order: dayFirst * 2 > members.length ? 'DMY' : 'MDY' };
}
