import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { updateClub } from '../../../src/records/clubs.ts';
import { clubs } from '../../../src/records/schema.ts';
import { buttonsOf, customIdOf, DiscordClub, show } from '../../support/discord/club.ts';

let club: DiscordClub;
beforeAll(async () => {
  club = await DiscordClub.open({
    messageContentAllowed: true,
    env: { DISCORD_LOG_CHANNEL: 'on' },
  });
  await club.run('tree add', { name: 'Alma', cultivar: 'Alma' });
});
afterEach(() => club.discord.assertClean());
afterAll(() => club.close());

/** Time for an answer that should not come. */
const quietly = () => new Promise((resolve) => setTimeout(resolve, 300));

describe('a message to the assistant', () => {
  it('that is a plain note gets a reaction and one line', async () => {
    const { message, reply } = await club.say('3 fruitlets on the alma');
    expect(message.reactions).toEqual(['🌱']);
    expect(reply.title).toBe('');
    expect(reply.text).not.toContain('\n');
    expect(reply.text).toContain('Alma');
    expect(reply.buttons[0]).toBe('Undo');
    expect(reply.message.api.message_reference?.message_id).toBe(message.api.id);
  });

  it('that asks gets the full reply', async () => {
    const { message, reply } = await club.say('should I tip the alma?');
    expect(message.reactions).toEqual([]);
    expect(reply.title).not.toBe('');
  });

  it('that only mentions it gets help', async () => {
    const { reply } = await club.say('');
    expect(reply.title).toBe('How Ostiole helps');
  });

  it('is understood as about the note whose answer it replies to', async () => {
    const { reply } = await club.say('2 fruitlets on the alma');
    const fixed = await club.say('that was yesterday', { replyTo: reply.message });
    expect(fixed.reply.text).toContain('July 4');
  });

  it('in direct messages needs no mention', async () => {
    const direct = club.discord.world.directChannel(club.ana.api.id);
    const { reply } = await club.say('5 fruitlets on the alma', {}, club.place(club.ana, direct));
    expect(reply.text).toContain('Alma');
  });

  it('that arrives twice is logged once and answered once', async () => {
    const { reply, message } = await club.say('8 fruitlets on the alma');
    club.discord.gateway.repeatLast('MESSAGE_CREATE');
    await quietly();
    const answers = club.discord.posted.filter((m) => m.nonce === `m${message.api.id}`);
    expect(answers).toEqual([reply.message]);
  });

  it('without a mention in an ordinary channel is none of its business', async () => {
    const message = club.discord.people.say(club.place(), '3 fruitlets on the alma');
    await quietly();
    expect(club.discord.posted.some((m) => m.nonce === `m${message.api.id}`)).toBe(false);
  });

  it('of a bot is left alone', async () => {
    const robot = club.discord.addUser('Robot');
    Object.assign(robot.api, { bot: true });
    const message = club.discord.people.say(club.place(robot), '3 fruitlets on the alma', { mentions: true });
    await quietly();
    expect(club.discord.posted.some((m) => m.nonce === `m${message.api.id}`)).toBe(false);
  });
});

describe('a log channel', () => {
  it('is read without mention where the club chose it; notes are answered, chat is left alone', async () => {
    const [row] = await club.opened.db.select().from(clubs);
    const log = club.discord.channel(club.guild, 1);
    await updateClub(club.opened.db, row?.id ?? 0, { logChannelId: log.id });
    const chat = club.discord.people.say(club.place(club.ana, log), 'what a lovely day everyone');
    const { reply, message } = await club.say('4 fruitlets on the alma', {}, club.place(club.ana, log));
    expect(message.reactions).toEqual(['🌱']);
    expect(reply.text).toContain('Alma');
    expect(club.discord.posted.some((m) => m.nonce === `m${chat.api.id}`)).toBe(false);
  });
});

describe('"Log as a note"', () => {
  it('takes a message of one’s own once', async () => {
    const message = club.discord.people.say(club.place(), 'picked 6 figs off the alma');
    const logged = await club.answerTo(
      club.discord.people.messageCommand(club.place(), 'Log as a note', message),
    );
    expect(logged.all).toContain('Alma');
    const again = await club.answerTo(
      club.discord.people.messageCommand(club.place(), 'Log as a note', message),
    );
    expect(again.title).toBe('Noted already');
  });

  it('refuses another’s message', async () => {
    const bea = club.discord.addUser('Bea');
    const message = club.discord.people.say(club.place(bea), 'picked 6 figs off the alma');
    const asked = club.discord.people.messageCommand(club.place(), 'Log as a note', message);
    expect((await club.answerTo(asked)).text).toContain('message of your own');
  });
});

describe('direct messages of a member of several clubs', () => {
  it('ask which club, take up the message, and hold to the choice', async () => {
    const { discord } = club;
    const other = discord.addGuild('Second club', ['figs']);
    await discord.until(() => discord.channel(other).messages.length > 0);
    const there = club.place(club.ana, discord.channel(other));
    await club.run('tree add', { name: 'Celeste', cultivar: 'Celeste' }, there);
    const direct = club.place(club.ana, discord.world.directChannel(club.ana.api.id));

    const asked = await club.say('2 fruitlets on the celeste', {}, direct);
    expect(asked.reply.title).toBe('Which club?');
    expect(asked.reply.buttons).toEqual(['Fig club', 'Second club']);
    await club.stop();
    await club.start();
    const answered = await club.press(asked.reply.message, 'Second club', direct);
    expect(answered.all).toContain('Celeste');
    const after = await club.run('tree list', {}, direct);
    expect(after.fields.map(({ name }) => name)).toEqual(['Celeste']);
  });

  it('offer no club that the member is not in', async () => {
    const { discord } = club;
    const zoe = discord.addUser('Zoe');
    const direct = club.place(zoe, discord.world.directChannel(zoe.api.id));
    const { reply } = await club.say('2 fruitlets on the celeste', {}, direct);
    expect(reply.title).toBe('Not in a club yet');
    const forged = discord.people.press(direct, reply.message, 'v1:::club:1');
    expect((await club.answerTo(forged)).title).toBe('Not in a club yet');
  });
});

it('an error of a message is told under it with its number', async () => {
  const { discord } = club;
  discord.faults.serverErrors('PUT', /reactions/, 3);
  const { reply } = await club.say('9 fruitlets on the alma');
  expect(show(reply.message).text).toContain('Alma');
  expect(buttonsOf(reply.message).length).toBeGreaterThan(0);
  expect(customIdOf(reply.message, 'Undo')).toMatch(/^v1:/);
});
