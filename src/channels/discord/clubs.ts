import { and, eq, inArray, isNull, lt, notInArray } from 'drizzle-orm';
import { type Reply, reply } from '../../club/reply.ts';
import { describeError } from '../../log.ts';
import { membersOfClub, openClub, updateClub } from '../../records/clubs.ts';
import type { Database } from '../../records/database.ts';
import { eraseMember } from '../../records/erase.ts';
import { type Club, clubs } from '../../records/schema.ts';
import { classifyFailure } from './failures.ts';
import type { Kit } from './kit.ts';
import { openDirect, sendTo } from './post.ts';
import { renderReply } from './render.ts';

/** A server the assistant is in, as far as it matters here. */
export interface Guild {
  readonly id: string;
  readonly name: string;
  readonly ownerId: string;
  /** Where a hello may go, best first. */
  readonly channelIds: readonly string[];
}

/** How many channels are tried for the hello before the owner is written to. */
const CHANNELS_TRIED = 5;

/** Puts a club on record, back from having left if it had, and says hello if it has not been said yet. */
export async function welcomeGuild(kit: Kit, guild: Guild): Promise<void> {
  const { db } = kit.opened;
  const now = kit.clock.now();
  const key = { platform: 'discord', platformId: guild.id } as const;
  const club = await openClub(db, key, guild.name, now);
  if (club.name !== guild.name) await updateClub(db, club.id, { name: guild.name });
  const [greeting] = await db
    .update(clubs)
    .set({ greetedAt: now })
    .where(and(eq(clubs.id, club.id), isNull(clubs.greetedAt)))
    .returning();
  if (greeting !== undefined) await sayHello(kit, guild, club);
}

async function sayHello(kit: Kit, guild: Guild, club: Club): Promise<void> {
  const { rest, opened, log } = kit;
  const payload = renderReply(hello(), { ownerId: null, clubId: club.id });
  const nonce = `hello-${club.id}`;
  for (const channelId of guild.channelIds.slice(0, CHANNELS_TRIED)) {
    try {
      await sendTo(rest, channelId, payload, { nonce });
      if (club.channelId === null) await updateClub(opened.db, club.id, { channelId });
      return;
    } catch (error) {
      if (classifyFailure(error).kind !== 'dead') throw error;
    }
  }
  await updateClub(opened.db, club.id, { trouble: 'the assistant may not write in any channel it tried' });
  try {
    await sendTo(rest, await openDirect(rest, guild.ownerId), payload, { nonce });
  } catch (error) {
    log.info({ club: club.id, error: describeError(error) }, 'nowhere to say hello');
  }
}

function hello(): Reply {
  return reply({
    title: 'Ostiole is here for your figs',
    text: [
      'I keep each member’s fig trees, what is seen on them, and the last day to tip each one. To begin:',
      [
        '1. /garden set place: and your town, so that I know your season.',
        '2. /tree add name: and what you call the tree, cultivar: and its kind.',
        '3. Tell me what you see: mention me, as in "3 fruitlets on pot 3", or type /note.',
      ].join('\n'),
      'Whoever manages this server chooses with /club where reminders go; /help says the rest.',
    ].join('\n\n'),
  });
}

/** The assistant was removed from a server; its records are kept for a while. */
export async function markLeft(db: Database, guildId: string, now: Date): Promise<void> {
  await db
    .update(clubs)
    .set({ leftAt: now })
    .where(and(eq(clubs.platform, 'discord'), eq(clubs.platformId, guildId), isNull(clubs.leftAt)));
}

/** Servers it was removed from while it was not running. */
export async function markAbsent(db: Database, presentIds: readonly string[], now: Date): Promise<void> {
  const here = and(eq(clubs.platform, 'discord'), isNull(clubs.leftAt));
  const absent = presentIds.length === 0 ? here : and(here, notInArray(clubs.platformId, [...presentIds]));
  await db.update(clubs).set({ leftAt: now }).where(absent);
}

/** How long a club that has left may come back and find its records. Issue: 30 days. */
export const KEPT_AFTER_LEAVING_DAYS = 30;

/** Erases the clubs that left more than 30 days ago, with all that is theirs. Returns how many. For the daily sweep. */
export async function eraseLeftClubs(db: Database, now: Date): Promise<number> {
  const before = new Date(now.getTime() - KEPT_AFTER_LEAVING_DAYS * 86_400_000);
  const gone = await db
    .select({ id: clubs.id })
    .from(clubs)
    .where(and(eq(clubs.platform, 'discord'), lt(clubs.leftAt, before)));
  for (const { id } of gone) {
    await db.transaction(async (tx) => {
      for (const member of await membersOfClub(tx, id)) await eraseMember(tx, member);
      await tx.delete(clubs).where(inArray(clubs.id, [id]));
    });
  }
  return gone.length;
}
