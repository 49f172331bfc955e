import { and, eq, isNull } from 'drizzle-orm';
import type { Day } from '../engine/day.ts';
import type { Database } from './database.ts';
import { type Club, clubs, type Member, members, type Platform } from './schema.ts';

export interface ClubKey {
  readonly platform: Platform;
  readonly platformId: string;
}

/** The club of this guild, made when it is new. A club that had left is back. */
export async function openClub(db: Database, key: ClubKey, name: string, now: Date): Promise<Club> {
  const [known] = await db
    .select()
    .from(clubs)
    .where(and(eq(clubs.platform, key.platform), eq(clubs.platformId, key.platformId)));
  if (known && known.leftAt === null) return known;
  const [club] = await db
    .insert(clubs)
    .values({ ...key, name, createdAt: now })
    .onConflictDoUpdate({ target: [clubs.platform, clubs.platformId], set: { name, leftAt: null } })
    .returning();
  return oneRow(club);
}

/** The member of this club with this platform user id, made when new. */
export async function openMember(
  db: Database,
  clubId: number,
  platformUserId: string,
  name: string,
  now: Date,
): Promise<Member> {
  const [known] = await db
    .select()
    .from(members)
    .where(and(eq(members.clubId, clubId), eq(members.platformUserId, platformUserId)));
  if (known && known.name === name) return known;
  const [member] = await db
    .insert(members)
    .values({ clubId, platformUserId, name, createdAt: now })
    .onConflictDoUpdate({ target: [members.clubId, members.platformUserId], set: { name } })
    .returning();
  return oneRow(member);
}

export async function memberById(db: Database, memberId: number): Promise<Member | null> {
  const [member] = await db.select().from(members).where(eq(members.id, memberId));
  return member ?? null;
}

/** The clubs a platform user has records in, for direct messages. */
export async function clubsOfUser(db: Database, platform: Platform, platformUserId: string): Promise<Club[]> {
  const rows = await db
    .select({ club: clubs })
    .from(members)
    .innerJoin(clubs, eq(clubs.id, members.clubId))
    .where(
      and(eq(clubs.platform, platform), eq(members.platformUserId, platformUserId), isNull(clubs.leftAt)),
    )
    .orderBy(clubs.name);
  return rows.map((row) => row.club);
}

export async function updateMember(
  db: Database,
  memberId: number,
  change: Partial<typeof members.$inferInsert>,
): Promise<Member> {
  const [member] = await db.update(members).set(change).where(eq(members.id, memberId)).returning();
  return oneRow(member);
}

/** Remembers that the member said something on that day; one who has just erased everything is left erased. */
export async function markSeen(db: Database, memberId: number, on: Day): Promise<void> {
  await db.update(members).set({ lastSeenOn: on }).where(eq(members.id, memberId));
}

export async function updateClub(
  db: Database,
  clubId: number,
  change: Partial<typeof clubs.$inferInsert>,
): Promise<Club> {
  const [club] = await db.update(clubs).set(change).where(eq(clubs.id, clubId)).returning();
  return oneRow(club);
}

/** The row that a statement which cannot fail to give one gave. */
export function oneRow<Row>(row: Row | undefined): Row {
  if (row === undefined) throw new Error('a row was expected and none came back');
  return row;
}

export async function membersOfClub(db: Database, clubId: number): Promise<Member[]> {
  return db.select().from(members).where(eq(members.clubId, clubId)).orderBy(members.name);
}
