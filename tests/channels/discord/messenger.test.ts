import { eq } from 'drizzle-orm';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { DiscordMessenger } from '../../../src/channels/discord/messenger.ts';
import { createRest } from '../../../src/channels/discord/rest.ts';
import { SteppedClock } from '../../../src/clock.ts';
import { reply } from '../../../src/club/reply.ts';
import { day } from '../../../src/engine/day.ts';
import { silentLog } from '../../../src/log.ts';
import type { Outgoing } from '../../../src/nudges/messenger.ts';
import { openClub, openMember, updateClub } from '../../../src/records/clubs.ts';
import type { OpenedDatabase } from '../../../src/records/database.ts';
import { openEmbedded } from '../../../src/records/open.ts';
import { type Club, clubs, type Member } from '../../../src/records/schema.ts';
import { type StandIn, startStandIn } from '../../support/discord/stand-in.ts';
import type { StandInChannel, StandInGuild, StandInUser } from '../../support/discord/world.ts';

const clock = new SteppedClock(day('2026-07-07'));
const MESSAGES = /^\/channels\/\d+\/messages$/;

let opened: OpenedDatabase;
let discord: StandIn;
let guild: StandInGuild;
let channel: StandInChannel;
let ana: StandInUser;
let club: Club;
let member: Member;

beforeAll(async () => {
  opened = await openEmbedded('memory');
});
afterAll(() => opened.close());

beforeEach(async () => {
  discord = await startStandIn();
  guild = discord.addGuild('Fig club', ['figs']);
  channel = discord.channel(guild);
  ana = discord.addUser('Ana');
  const key = { platform: 'discord', platformId: guild.id } as const;
  const opening = await openClub(opened.db, key, 'Fig club', clock.now());
  club = await updateClub(opened.db, opening.id, { channelId: channel.id });
  member = await openMember(opened.db, club.id, ana.api.id, 'Ana', clock.now());
});
afterEach(async () => {
  discord.assertClean();
  await discord.stop();
});

function messenger(more: { token?: string; rejects?: () => boolean } = {}) {
  const { token = discord.token, rejects } = more;
  const rest = createRest(
    { token, api: discord.api, timeoutMs: 300, retries: 1, ...(rejects && { rejects }) },
    silentLog,
  );
  return new DiscordMessenger({ rest, db: opened.db, clock, log: silentLog });
}

function outgoing(more: Partial<Outgoing> = {}): Outgoing {
  return {
    club,
    member,
    way: 'channel',
    reply: reply({
      title: 'Last day to tip Alma',
      text: 'Today.',
      buttons: [{ label: 'Tipped', action: 'n:1' }],
    }),
    nonce: 'nudge-1',
    ...more,
  };
}

const clubNow = async () => (await opened.db.select().from(clubs).where(eq(clubs.id, club.id)))[0];

describe('a nudge', () => {
  it('goes to the club’s channel, pings its member alone, and shows its instant in each reader’s zone', async () => {
    const outcome = await messenger().send(outgoing());
    const [sent] = channel.messages;
    expect(outcome).toEqual({ kind: 'sent', channelId: channel.id, messageId: sent?.api.id });
    expect(sent?.body).toMatchObject({
      content: `<@${ana.api.id}>`,
      allowed_mentions: { parse: [], users: [ana.api.id] },
      nonce: 'nudge-1',
      enforce_nonce: true,
    });
    expect(sent?.api.embeds[0]?.timestamp).toBe(clock.now().toISOString());
  });

  it('goes to direct messages where the member chose so, with nobody pinged', async () => {
    const outcome = await messenger().send(outgoing({ way: 'direct' }));
    const [sent] = discord.world.directChannel(ana.api.id).messages;
    expect(outcome).toMatchObject({ kind: 'sent', messageId: sent?.api.id });
    expect(sent?.body).toMatchObject({ allowed_mentions: { parse: [] } });
    expect(channel.messages).toEqual([]);
  });

  it('pitfall 7, REST retries a non-idempotent POST: accepted and then stalled, it is stored once', async () => {
    discord.faults.add('POST', MESSAGES, { kind: 'stall' });
    expect((await messenger().send(outgoing())).kind).toBe('sent');
    expect(discord.requestsTo('POST', MESSAGES)).toHaveLength(2);
    expect(channel.messages).toHaveLength(1);
  });

  it('pitfall 7, REST retries a non-idempotent POST: stored though a 500 came back, it is stored once', async () => {
    discord.faults.add('POST', MESSAGES, { kind: 'error-after' });
    expect((await messenger().send(outgoing())).kind).toBe('sent');
    expect(channel.messages).toHaveLength(1);
  });

  it('pitfall 7, REST retries a non-idempotent POST: two attempts, a pause between, then the queue’s turn', async () => {
    discord.faults.serverErrors('POST', MESSAGES, 9);
    expect(await messenger().send(outgoing())).toEqual({ kind: 'retry', reason: 'Discord answered 500' });
    const [first, second, ...more] = discord.requestsTo('POST', MESSAGES);
    expect(more).toEqual([]);
    expect((second?.at ?? 0) - (first?.at ?? 0)).toBeGreaterThan(250);
    discord.faults.clear();
    expect((await messenger().send(outgoing())).kind).toBe('sent');
    expect(channel.messages).toHaveLength(1);
  });

  it('that a network swallows or cuts is to be tried again', async () => {
    discord.faults.add('POST', MESSAGES, { kind: 'hang' }, 2);
    expect(await messenger().send(outgoing())).toMatchObject({ kind: 'retry' });
    discord.faults.add('POST', MESSAGES, { kind: 'reset' }, 2);
    expect(await messenger().send(outgoing())).toMatchObject({ kind: 'retry' });
    expect(channel.messages).toEqual([]);
  });

  it('that Discord wants to wait for is to be tried again after as long', async () => {
    const limit = { kind: 'rate-limit', retryAfterSeconds: 120, scope: 'shared' } as const;
    discord.faults.add('POST', MESSAGES, limit, 1);
    const outcome = await messenger({ rejects: () => true }).send(outgoing());
    expect(outcome).toMatchObject({ kind: 'retry', reason: 'Discord asks to wait' });
    expect((outcome as { afterMs: number }).afterMs).toBeGreaterThan(100_000);
  });

  it.each([
    [50013, 'may not write'],
    [50001, 'may not see'],
    [10003, 'gone'],
  ] as const)(
    'kept from the channel by %i falls back to a direct message and shows in /club',
    async (code, words) => {
      channel.refuses = code;
      const outcome = await messenger().send(outgoing());
      expect(outcome).toMatchObject({ kind: 'sent', channelId: discord.world.directChannel(ana.api.id).id });
      expect((await clubNow())?.trouble).toContain(words);
    },
  );

  it('that reaches the channel again clears the trouble', async () => {
    await updateClub(opened.db, club.id, { trouble: 'the channel is gone' });
    await messenger().send(outgoing({ club: { ...club, trouble: 'the channel is gone' } }));
    expect((await clubNow())?.trouble).toBeNull();
  });

  it('pitfall 13, invalid-request ban: N refusals make N requests', async () => {
    channel.refuses = 50013;
    ana.dmsClosed = true;
    const sender = messenger();
    for (let n = 1; n <= 5; n++) {
      expect((await sender.send(outgoing({ nonce: `n${n}` }))).kind).toBe('dead');
    }
    const refused = discord.requests.filter(({ status }) => status === 403);
    expect(refused).toHaveLength(10);
    expect(refused.filter(({ path }) => path.includes(channel.id))).toHaveLength(5);
  });

  it('pitfall 13, invalid-request ban: a 401 stops everything, then and after', async () => {
    const sender = messenger({ token: 'wrong.token' });
    expect((await sender.send(outgoing())).kind).toBe('stop');
    expect((await sender.send(outgoing())).kind).toBe('stop');
    expect(discord.requests).toHaveLength(1);
  });

  it('pitfall 14, closed DMs: falls back to the club’s channel', async () => {
    ana.dmsClosed = true;
    const outcome = await messenger().send(outgoing({ way: 'direct' }));
    expect(outcome).toMatchObject({ kind: 'sent', channelId: channel.id });
    expect(channel.messages[0]?.api.content).toBe(`<@${ana.api.id}>`);
    expect(JSON.stringify(channel.messages[0]?.api)).toContain('direct message, but yours are closed');
  });

  it('pitfall 14, closed DMs: with no channel either it is dead, and nothing throws', async () => {
    ana.dmsClosed = true;
    const outcome = await messenger().send(outgoing({ way: 'direct', club: { ...club, channelId: null } }));
    expect(outcome).toEqual({ kind: 'dead', reason: 'the member’s direct messages are closed' });
  });

  it('never goes to a channel of another club’s server', async () => {
    const other = discord.addGuild('Other club', ['figs']);
    const foreign = discord.channel(other);
    const outcome = await messenger().send(outgoing({ club: { ...club, channelId: foreign.id } }));
    expect(foreign.messages).toEqual([]);
    expect(outcome).toMatchObject({ kind: 'sent', channelId: discord.world.directChannel(ana.api.id).id });
    expect((await clubNow())?.trouble).toContain('not in this server');
  });

  it('of many trees is paged, with buttons that only its member may press', async () => {
    const fields = Array.from({ length: 40 }, (_, index) => ({ name: `Tree ${index}`, value: 'look today' }));
    await messenger().send(outgoing({ reply: reply({ title: 'This morning', fields }) }));
    const row = channel.messages[0]?.api.components?.[0] as { components: { custom_id: string }[] };
    expect(row.components[1]?.custom_id).toMatch(new RegExp(`^v1:${BigInt(ana.api.id).toString(36)}:`));
  });
});

describe('a roundup', () => {
  it('without a channel is dead and says why', async () => {
    const outcome = await messenger().send(outgoing({ member: null, club: { ...club, channelId: null } }));
    expect(outcome).toEqual({ kind: 'dead', reason: 'no channel has been chosen' });
  });
});
