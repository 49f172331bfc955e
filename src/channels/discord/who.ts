import { and, eq } from 'drizzle-orm';
import type { Context } from '../../club/context.ts';
import { openContext } from '../../club/open-context.ts';
import type { Button } from '../../club/reply.ts';
import { type Reply, reply } from '../../club/reply.ts';
import { clubsOfUser } from '../../records/clubs.ts';
import { type Club, members } from '../../records/schema.ts';
import type { Kit } from './kit.ts';

/** Who speaks, as Discord tells it. */
export interface Speaker {
  readonly userId: string;
  readonly userName: string;
  /** Null in direct messages. */
  readonly guild: { readonly id: string; readonly name: string } | null;
  readonly managesGuild: boolean;
  readonly locale?: string;
}

export interface Occasion {
  readonly messageId?: string;
  readonly repliesTo?: string;
  readonly progress?: (text: string) => void;
  /** The club that a button belongs to. */
  readonly clubId?: number | null;
}

/** The context of what a speaker asks, or the reply that says why there is none yet. */
export type Opened = { readonly context: Context } | { readonly instead: Reply };

export async function openFor(kit: Kit, speaker: Speaker, occasion: Occasion = {}): Promise<Opened> {
  if (speaker.guild !== null) {
    const context = await contextIn(kit, speaker, speaker.guild, occasion);
    // A button of another club's message, forged or forwarded.
    if (typeof occasion.clubId === 'number' && occasion.clubId !== context.club.id) {
      return { instead: notHere() };
    }
    return { context };
  }
  const clubs = await clubsOfUser(kit.opened.db, 'discord', speaker.userId);
  const club = whichClub(kit, speaker.userId, clubs, occasion.clubId ?? null);
  if (club === null)
    return { instead: clubs.length === 0 ? noClub() : askWhichClub(clubs, occasion.messageId) };
  const userName = await nameIn(kit, club, speaker);
  const guild = { id: club.platformId, name: club.name };
  return { context: await contextIn(kit, { ...speaker, userName, managesGuild: false }, guild, occasion) };
}

function whichClub(kit: Kit, userId: string, clubs: readonly Club[], clubId: number | null): Club | null {
  if (clubId !== null) return clubs.find((club) => club.id === clubId) ?? null;
  if (clubs.length === 1) return clubs[0] ?? null;
  const chosen = kit.directClubs.of(userId);
  return clubs.find((club) => club.id === chosen) ?? null;
}

function contextIn(
  kit: Kit,
  speaker: Speaker,
  guild: { readonly id: string; readonly name: string },
  occasion: Occasion,
): Promise<Context> {
  const { messageId, repliesTo, progress } = occasion;
  const localeDates = speaker.locale === undefined ? null : dateOrder(speaker.locale);
  return openContext({
    db: kit.opened.db,
    clock: kit.clock,
    services: kit.services,
    platform: 'discord',
    clubPlatformId: guild.id,
    clubName: guild.name,
    userId: speaker.userId,
    userName: speaker.userName,
    managesClub: speaker.managesGuild,
    ...(messageId !== undefined && { messageId }),
    ...(repliesTo !== undefined && { repliesTo }),
    ...(progress !== undefined && { progress }),
    ...(localeDates !== null && { localeDates }),
  });
}

/** Order of numeric dates by Discord's locale: of its languages only American English puts the month first. */
function dateOrder(locale: string): 'MDY' | 'DMY' {
  return locale === 'en-US' ? 'MDY' : 'DMY';
}

/** A member goes by their name in the club, which direct messages do not tell. */
async function nameIn(kit: Kit, club: Club, speaker: Speaker): Promise<string> {
  const [row] = await kit.opened.db
    .select({ name: members.name })
    .from(members)
    .where(and(eq(members.clubId, club.id), eq(members.platformUserId, speaker.userId)));
  return row?.name ?? speaker.userName;
}

/** The verb of the button that chooses a club in direct messages; the channel's own. */
export const CLUB_VERB = 'club';

function askWhichClub(clubs: readonly Club[], messageId: string | undefined): Reply {
  const buttons: Button[] = clubs.slice(0, 25).map((club) => ({
    label: club.name,
    action: [CLUB_VERB, club.id, ...(messageId === undefined ? [] : [messageId])].join(':'),
  }));
  return reply({
    ok: false,
    title: 'Which club?',
    text: 'You keep trees in more than one club; choose the one you mean. It then holds for your direct messages of the next hour.',
    buttons,
    visibility: 'only-you',
    data: { ask: 'club', error: 'which-club' },
  });
}

function noClub(): Reply {
  return reply({
    ok: false,
    title: 'Not in a club yet',
    text: 'Records are kept by club. Write to me in your club’s server first, for example with /help; then we can go on here.',
    visibility: 'only-you',
    data: { error: 'no-club' },
  });
}

function notHere(): Reply {
  return reply({
    ok: false,
    title: 'Not done',
    text: 'This button belongs to another club; type the command here instead.',
    visibility: 'only-you',
    data: { error: 'other-club' },
  });
}
