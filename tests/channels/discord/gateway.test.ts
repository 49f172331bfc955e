import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../../src/records/database.ts';
import { openEmbedded } from '../../../src/records/open.ts';
import { notes } from '../../../src/records/schema.ts';
import { DiscordClub } from '../../support/discord/club.ts';

let opened: OpenedDatabase;
beforeAll(async () => {
  opened = await openEmbedded('memory');
});
afterAll(() => opened.close());

/** Runs a test with a club of its own on the shared database. */
async function withClub(
  work: (club: DiscordClub) => Promise<void>,
  options: Parameters<typeof DiscordClub.open>[0] = {},
): Promise<void> {
  const club = await DiscordClub.open({ opened, ...options });
  try {
    await club.run('tree add', { name: 'Alma', cultivar: 'Alma' });
    await work(club);
    club.discord.assertClean();
  } finally {
    await club.close();
  }
}

const answersTo = (club: DiscordClub, id: string) => club.discord.posted.filter((m) => m.nonce === `m${id}`);
const logged = async (messageId: string) =>
  (await opened.db.select().from(notes)).filter((note) => note.messageId === messageId).length;

/** How the connection is lost. The session can be resumed, or not. */
const LOSSES: readonly [string, (club: DiscordClub) => void, 'resumed' | 'new session'][] = [
  ['cut', (club) => club.discord.gateway.drop(), 'resumed'],
  ['op 7, reconnect', (club) => club.discord.gateway.askToReconnect(), 'resumed'],
  ['op 9 true, resumable', (club) => club.discord.gateway.invalidate(true), 'resumed'],
  ['close 4000', (club) => club.discord.gateway.close(4000), 'resumed'],
  ['cut and the session forgotten', (club) => club.discord.gateway.dropForGood(), 'new session'],
  ['op 9 false', (club) => club.discord.gateway.invalidate(false), 'new session'],
];

describe('pitfall 10, zombie gateway: a connection lost', () => {
  it.each(LOSSES)(
    'by %s loses no note and logs none twice',
    async (_, lose, outcome) => {
      await withClub(async (club) => {
        const { discord } = club;
        const direct = club.place(club.ana, discord.world.directChannel(club.ana.api.id));
        await club.say('9 fruitlets on the alma', {}, direct);
        const before = discord.people.say(club.place(), '1 fruitlets on the alma', { mentions: true });
        const [identifies, resumes] = [discord.gateway.identifies.length, discord.gateway.resumes.length];
        lose(club);
        const during = discord.people.say(club.place(), '2 fruitlets on the alma', { mentions: true });
        const alone = discord.people.say(direct, '3 fruitlets on the alma');
        await discord.until(
          () =>
            discord.gateway.connected > 0 &&
            discord.gateway.identifies.length + discord.gateway.resumes.length > identifies + resumes,
          15_000,
        );
        const after = discord.people.say(club.place(), '4 fruitlets on the alma', { mentions: true });
        for (const message of [before, during, alone, after]) {
          await discord.until(() => answersTo(club, message.api.id).length > 0, 15_000);
        }
        discord.gateway.repeatLast('MESSAGE_CREATE');
        await new Promise((resolve) => setTimeout(resolve, 200));
        for (const message of [before, during, alone, after]) {
          expect(answersTo(club, message.api.id)).toHaveLength(1);
          expect(await logged(message.api.id)).toBe(1);
        }
        expect(discord.gateway.identifies.length > identifies).toBe(outcome === 'new session');
      });
    },
    40_000,
  );

  it('by heartbeats that are no longer answered is given up and resumed', async () => {
    await withClub(
      async (club) => {
        const { gateway, people } = club.discord;
        await club.discord.until(() => gateway.heartbeats > 0);
        gateway.withholdAcks = true;
        await club.discord.until(() => gateway.closeCodes.length > 0, 10_000);
        gateway.withholdAcks = false;
        const missed = people.say(club.place(), '2 fruitlets on the alma', { mentions: true });
        await club.discord.until(() => gateway.resumes.length > 0, 10_000);
        await club.discord.until(() => answersTo(club, missed.api.id).length > 0);
        expect(gateway.closeCodes[0]).toBe(4200);
      },
      { heartbeatMs: 400 },
    );
  }, 30_000);

  it('while the assistant was not running: what was written then is taken on return', async () => {
    await withClub(async (club) => {
      await club.say('1 fruitlets on the alma');
      await club.stop();
      const missed = club.discord.people.say(club.place(), '2 fruitlets on the alma', { mentions: true });
      await club.start();
      await club.discord.until(() => answersTo(club, missed.api.id).length > 0);
      expect(await logged(missed.api.id)).toBe(1);
    });
  });

  it('while the assistant was not running: a direct message written then is taken on return', async () => {
    await withClub(async (club) => {
      const direct = club.place(club.ana, club.discord.world.directChannel(club.ana.api.id));
      await club.say('1 fruitlets on the alma', {}, direct);
      await club.stop();
      const missed = club.discord.people.say(direct, '2 fruitlets on the alma');
      await club.start();
      await club.discord.until(() => answersTo(club, missed.api.id).length > 0);
      expect(await logged(missed.api.id)).toBe(1);
    });
  });

  it('for good is told, so that whoever runs it may start it again', async () => {
    await withClub(async (club) => {
      const { failed } = club.running!;
      club.discord.gateway.close(4004);
      expect(await failed).toContain('DISCORD_TOKEN is not accepted');
    });
  });
});

describe('pitfall 12, intents', () => {
  // Documentation: Gateway, List of Intents: GUILDS 1 << 0, GUILD_MESSAGES 1 << 9, DIRECT_MESSAGES 1 << 12,
  // MESSAGE_CONTENT 1 << 15.
  const THREE = (1 << 0) | (1 << 9) | (1 << 12);

  it('are three, none of them privileged', async () => {
    await withClub(async (club) => {
      expect(club.discord.gateway.identifies.map(({ intents }) => intents)).toEqual([THREE]);
    });
  });

  it('are four with the opt-in to a log channel', async () => {
    await withClub(
      async (club) => {
        expect(club.discord.gateway.identifies.map(({ intents }) => intents)).toEqual([THREE | (1 << 15)]);
      },
      { messageContentAllowed: true, env: { DISCORD_LOG_CHANNEL: 'on' } },
    );
  });
});

describe('pitfall 15, two instances', () => {
  it('on one database do everything once', async () => {
    await withClub(async (club) => {
      const first = club.running!;
      const second = await club.start();
      await club.discord.until(() => club.discord.gateway.connected === 2);
      const asked = club.discord.people.command(club.place(), 'tree add', { name: 'Only once' });
      const { message, reply } = await club.say('5 fruitlets on the alma');
      await club.answerTo(asked);
      await club.discord.until(() => club.logged.filter((line) => line.includes('"duplicate"')).length >= 2);
      expect((await club.run('tree list')).fields.filter(({ name }) => name === 'Only once')).toHaveLength(1);
      expect(await logged(message.api.id)).toBe(1);
      expect(answersTo(club, message.api.id)).toEqual([reply.message]);
      await first.stop();
      await second.stop();
    });
  }, 30_000);

  it('shards: SHARDS=2 is two sessions, each with its own servers, one set of answers', async () => {
    await withClub(
      async (club) => {
        expect(club.discord.gateway.identifies.map(({ shard }) => shard)).toEqual([
          [0, 2],
          [1, 2],
        ]);
        const { message } = await club.say('6 fruitlets on the alma');
        expect(await logged(message.api.id)).toBe(1);
      },
      { settings: { shards: 2 } },
    );
  }, 30_000);
});
