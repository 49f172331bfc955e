import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { eraseLeftClubs } from '../../../src/channels/discord/clubs.ts';
import { clubs, members, notes, trees } from '../../../src/records/schema.ts';
import { DiscordClub, show } from '../../support/discord/club.ts';

let club: DiscordClub;
beforeAll(async () => {
  club = await DiscordClub.open();
});
afterAll(() => club.close());

const DAY_MS = 86_400_000;
const recordOf = async (guildId: string) =>
  (await club.opened.db.select().from(clubs).where(eq(clubs.platformId, guildId)))[0];

describe('joining a server', () => {
  it('says hello once, with three steps to begin, and takes the channel for reminders', async () => {
    const { discord } = club;
    const guild = discord.addGuild('New club', ['general', 'figs']);
    await discord.until(() => discord.channel(guild).messages.length > 0);
    const hello = show(discord.channel(guild).messages[0]!);
    expect(hello.text.match(/^\d\. /gm)).toEqual(['1. ', '2. ', '3. ']);
    await discord.until(
      () => discord.requestsTo('POST', new RegExp(`${discord.channel(guild).id}/messages`)).length > 0,
    );
    // Put down once Discord has taken the hello.
    await expect
      .poll(async () => (await recordOf(guild.id))?.channelId, { timeout: 5000 })
      .toBe(discord.channel(guild).id);
    await club.stop();
    await club.start();
    discord.removeGuild(guild);
    discord.returnTo(guild);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(discord.channel(guild).messages).toHaveLength(1);
    discord.assertClean();
  });

  it('while the assistant was not running is noticed at the start', async () => {
    const { discord } = club;
    await club.stop();
    const guild = discord.addGuild('Quiet club', ['figs']);
    await club.start();
    await discord.until(() => discord.channel(guild).messages.length > 0);
  });

  it('that lets it write nowhere: the owner is told, and /club', async () => {
    const { discord, opened } = club;
    await club.stop();
    const guild = discord.world.addGuild('Shut club', ['a', 'b']);
    for (const index of [0, 1]) discord.channel(guild, index).refuses = 50013;
    const owner = discord.addUser('Owner');
    Object.assign(guild, { ownerId: owner.api.id });
    await club.start();
    await discord.until(() => discord.world.directChannel(owner.api.id).messages.length > 0);
    const [row] = await opened.db.select().from(clubs).where(eq(clubs.platformId, guild.id));
    expect(row?.trouble).toContain('may not write');
  });
});

describe('leaving a server', () => {
  it('keeps the data 30 days, then erases it, and nothing of other clubs', async () => {
    const { discord, opened, clock } = club;
    const guild = discord.addGuild('Leaving club', ['figs']);
    await discord.until(() => discord.channel(guild).messages.length > 0);
    const place = club.place(club.ana, discord.channel(guild));
    await club.run('tree add', { name: 'Alma', cultivar: 'Alma' }, place);
    await club.run('note', { text: '3 fruitlets on the alma' }, place);
    await club.run('tree add', { name: 'Stays', cultivar: 'Alma' });
    discord.removeGuild(guild);
    await discord.until(() => discord.gateway.connected === 1);
    const left = async () => (await recordOf(guild.id))?.leftAt ?? null;
    while ((await left()) === null) await new Promise((resolve) => setTimeout(resolve, 10));
    const now = clock.now().getTime();
    expect(await eraseLeftClubs(opened.db, new Date(now + 29 * DAY_MS))).toBe(0);
    expect(await recordOf(guild.id)).toBeDefined();
    expect(await eraseLeftClubs(opened.db, new Date(now + 31 * DAY_MS))).toBe(1);
    expect(await recordOf(guild.id)).toBeUndefined();
    expect((await opened.db.select().from(trees)).map(({ name }) => name)).toEqual(['Stays']);
    expect(await opened.db.select().from(notes)).toEqual([]);
    expect(await opened.db.select().from(members)).toHaveLength(1);
  });

  it('and coming back within that time finds everything', async () => {
    const { discord } = club;
    discord.removeGuild(club.guild);
    while ((await recordOf(club.guild.id))?.leftAt === null)
      await new Promise((resolve) => setTimeout(resolve, 10));
    discord.returnTo(club.guild);
    while ((await recordOf(club.guild.id))?.leftAt !== null)
      await new Promise((resolve) => setTimeout(resolve, 10));
    expect((await club.run('tree list')).fields.map(({ name }) => name)).toEqual(['Stays']);
  });

  it('while the assistant was not running is noticed at the start', async () => {
    const { discord } = club;
    await club.stop();
    club.guild.present = false;
    await club.start();
    while ((await recordOf(club.guild.id))?.leftAt === null)
      await new Promise((resolve) => setTimeout(resolve, 10));
    discord.assertClean();
  });
});
