import { randomUUID } from 'node:crypto';
import { and, eq, gte, inArray, isNull, or, sql } from 'drizzle-orm';
import type { PgUpdateSetSource } from 'drizzle-orm/pg-core';
import type { Clock } from '../clock.ts';
import { type Reply, reply } from '../club/reply.ts';
import { currentSeasons } from '../club/roundup.ts';
import { hemisphereOfClub, isQuiet, readRoundup } from '../club/roundup-data.ts';
import { drawnRoundup } from '../club/roundup-picture.ts';
import { type Manner, roundupFacts, seasonWords, weekWords } from '../club/roundup-words.ts';
import { addDays, type Day, earlier } from '../engine/day.ts';
import { seasonOf } from '../engine/season.ts';
import { notedDays } from '../records/club-trees.ts';
import { membersOfClub, updateClub } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { learningTrees } from '../records/learning.ts';
import { learnedFigures } from '../records/learning-figures.ts';
import { type Club, clubs, type Member, members, roundups } from '../records/schema.ts';
import type { Messenger } from './messenger.ts';
import {
  candidatesOf,
  type DueRoundup,
  grows,
  isDue,
  nextWeekday,
  seasonRoundupDay,
} from './roundup-days.ts';

/** How long a worker may take over one post, and how long a failed one waits, seconds. */
const LEASE_SECONDS = 60;

/** No period comes due longer than this after its row was made, days. */
const ROWS_MATTER_DAYS = 400;

/**
 * Posts what roundups have come due in every club, each once whoever else is at it, quiet weeks and seasons
 * passed over. Returns how many were posted. A failure waits for the next call. Three queries when nothing is
 * due, however many clubs there are.
 */
export async function postRoundups(db: Database, clock: Clock, messenger: Messenger): Promise<number> {
  const southern = await southernClubs(db);
  const done = await donePeriods(db, clock);
  const all = await db.select().from(clubs).where(isNull(clubs.leftAt)).orderBy(clubs.id);
  let posted = 0;
  for (const club of all) {
    const south = southern.get(club.id);
    if (south === undefined) continue;
    const open = (key: string) => !done.has(`${club.id} ${key}`);
    const candidates = candidatesOf(club, south ? 'S' : 'N', clock).filter(({ key }) => open(key));
    if (candidates.length === 0) continue;
    const members = await membersOfClub(db, club.id);
    for (const due of candidates.filter((one) => isDue(one, club, members, clock))) {
      const outcome = await post(db, clock, messenger, { club, members, due });
      if (outcome === 'stop') return posted;
      if (outcome === 'sent') posted += 1;
    }
  }
  return posted;
}

/** Clubs with members, and whether most of them garden in the south. */
async function southernClubs(db: Database): Promise<Map<number, boolean>> {
  const rows = await db
    .select({
      clubId: members.clubId,
      south: sql<boolean>`count(*) filter (where ${members.hemisphere} = 'S') * 2 > count(*)`,
    })
    .from(members)
    .groupBy(members.clubId);
  return new Map(rows.map(({ clubId, south }) => [clubId, south]));
}

async function donePeriods(db: Database, clock: Clock): Promise<Set<string>> {
  const since = new Date(clock.now().getTime() - ROWS_MATTER_DAYS * 86_400_000);
  const rows = await db
    .select({ clubId: roundups.clubId, period: roundups.period })
    .from(roundups)
    .where(and(inArray(roundups.state, ['sent', 'cancelled', 'dead']), gte(roundups.createdAt, since)));
  return new Set(rows.map(({ clubId, period }) => `${clubId} ${period}`));
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
    if (isQuiet(roundup, today) || !members.some((member) => grows(member, today))) return null;
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
