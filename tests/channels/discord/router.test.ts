import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../../src/records/database.ts';
import { openEmbedded } from '../../../src/records/open.ts';
import { DiscordClub, show } from '../../support/discord/club.ts';
import { failing, slowed } from '../../support/discord/slow.ts';

const EPHEMERAL = 64;
const MINUTES = 60_000;

let opened: OpenedDatabase;
beforeAll(async () => {
  opened = await openEmbedded('memory');
});
afterAll(() => opened.close());

describe('a command', () => {
  let club: DiscordClub;
  beforeEach(async () => {
    club = await DiscordClub.open({ opened });
  });
  afterEach(async () => {
    club.discord.assertClean();
    await club.close();
  });

  it('is answered in the open or to the asker alone, as its command declares', async () => {
    const added = await club.run('tree add', { name: 'Pot 3', cultivar: 'Brunswick' });
    expect(added.ephemeral).toBe(false);
    expect(added.all).toContain('Pot 3');
    const help = await club.run('help');
    expect(help.ephemeral).toBe(true);
    expect(help.title).toBe('How Ostiole helps');
  });

  it('is refused when only managers may use it, and taken from those who manage the server', async () => {
    const refused = await club.run('club');
    expect(refused.text).toContain('for those who manage the club');
    const taken = await club.run('club', {}, club.place(club.ana, club.channel, true));
    expect(taken.title).toBe('Fig club');
  });

  it('that this version does not know is answered with a sentence', async () => {
    const unknown = await club.run('prune');
    expect(unknown.text).toContain('There is no command /prune');
    expect(unknown.ephemeral).toBe(true);
  });

  it('may come in direct messages, for the one club the member is in', async () => {
    await club.run('tree add', { name: 'Alma', cultivar: 'Alma' });
    const direct = club.discord.world.directChannel(club.ana.api.id);
    const list = await club.run('tree list', {}, club.place(club.ana, direct));
    expect(list.all).toContain('Alma');
  });

  it('pitfall 2, double ack: an interaction that arrives twice changes state once', async () => {
    const { people, gateway } = club.discord;
    const asked = people.command(club.place(), 'tree add', { name: 'Twice' });
    people.send(asked);
    gateway.repeatLast('INTERACTION_CREATE');
    await club.answerTo(asked);
    await club.discord.until(() => club.logged.filter((line) => line.includes('"outcome"')).length >= 3);
    const list = await club.run('tree list');
    expect(list.fields.map(({ name }) => name)).toEqual(['Twice']);
    expect(asked.followUps).toEqual([]);
  });

  it('pitfall 2, double ack: an acknowledgement that got through unheard is not taken for another process', async () => {
    const { faults } = club.discord;
    faults.add('POST', /callback$/, { kind: 'error-after' });
    const added = await club.run('tree add', { name: 'Unheard' });
    expect(added.all).toContain('Unheard');
  });

  it('pitfall 3, visibility fixed at defer: a private error never stands in a public placeholder', async () => {
    const asked = club.discord.people.command(club.place(), 'tree show', { tree: 'nowhere' });
    const shown = await club.answerTo(asked);
    expect(asked.acknowledged?.flags).toBe(0);
    expect(asked.placeholder).toBe('deleted');
    expect(shown.ephemeral).toBe(true);
    expect(shown.title).toBe('Not done');
  });

  it('pitfall 3, visibility fixed at defer: what is private is deferred privately', async () => {
    const asked = club.discord.people.command(club.place(), 'mydata export');
    await club.answerTo(asked);
    expect(asked.acknowledged?.flags).toBe(EPHEMERAL);
  });

  it('pitfall 4, token dies at 15 min: a late answer goes by the bot’s own token', async () => {
    const { people, faults, clock, world } = club.discord;
    faults.add('PATCH', /@original$/, { kind: 'delay', ms: 300 });
    const asked = people.command(club.place(), 'tree add', { name: 'Late' });
    await club.discord.until(() => club.discord.requestsTo('PATCH', /@original$/).length > 0);
    clock.advance(16 * MINUTES);
    await club.discord.until(() => club.channel.messages.some((m) => m.body && show(m).all.includes('Late')));
    const secret = people.command(club.place(), 'help');
    await club.discord.until(() => secret.acknowledged !== null);
    expect(asked.original).toBeNull();
    expect(world.directChannel(club.ana.api.id).messages).toEqual([]);
  });

  it('whose placeholder somebody deleted is answered all the same', async () => {
    const { people, faults } = club.discord;
    faults.add('PATCH', /@original$/, {
      kind: 'error',
      failure: { status: 404, code: 10008, message: 'Unknown Message' },
    });
    people.command(club.place(), 'tree add', { name: 'Wiped' });
    await club.discord.until(() =>
      club.channel.messages.some((m) => m.body && show(m).all.includes('Wiped')),
    );
  });
});

describe('pitfall 1, 3-second ack', () => {
  it('an interaction that is too old is dropped, logged with its age, not tried again, and nothing is done', async () => {
    const club = await DiscordClub.open({ opened });
    const { people, clock, requestsTo } = club.discord;
    club.discord.faults.add('POST', /callback$/, { kind: 'delay', ms: 100 });
    const asked = people.command(club.place(), 'tree add', { name: 'Ghost' });
    clock.advance(3500);
    await club.discord.until(() => club.logged.some((line) => line.includes('not acknowledged')));
    const line = JSON.parse(club.logged.find((l) => l.includes('not acknowledged')) ?? '{}');
    expect(line).toMatchObject({ interaction: asked.id, error: { code: 10062 } });
    expect(line.ageMs).toBeTypeOf('number');
    expect(requestsTo.call(club.discord, 'POST', /callback$/)).toHaveLength(1);
    expect((await club.run('tree list')).all).not.toContain('Ghost');
    club.discord.assertClean();
    await club.close();
  });

  it('200 interactions at once, with a database that takes 2 s a statement: all acknowledged within 1 s, all answered', async () => {
    const club = await DiscordClub.open({ opened });
    await club.stop();
    await club.start({ opened: slowed(opened, 2000) });
    const users = Array.from({ length: 200 }, (_, index) => club.discord.addUser(`Grower ${index}`));
    const began = club.discord.clock.now();
    const asked = users.map((user) => club.discord.people.command(club.place(user), 'help'));
    await club.discord.until(() => asked.every(({ acknowledged }) => acknowledged !== null), 5000);
    const slowest = Math.max(...asked.map(({ acknowledged }) => (acknowledged?.at ?? 0) - began));
    expect(slowest).toBeLessThan(1000);
    await club.discord.until(() => asked.every(({ original }) => original !== null), 60_000);
    expect(asked.every(({ original }) => show(original as never).title === 'How Ostiole helps')).toBe(true);
    club.discord.assertClean();
    await club.close();
  }, 90_000);
});

describe('completion', () => {
  it('offers 25 at most, the likeliest first', async () => {
    const club = await DiscordClub.open({ opened });
    const csv = ['name', ...Array.from({ length: 40 }, (_, index) => `Pot ${index + 1}`), 'Alma'].join('\n');
    await club.run('tree import', { file: { name: 'trees.csv', bytes: Buffer.from(csv) } });
    const offered = async (typed: string) => {
      const asked = club.discord.people.complete(club.place(), 'tip', 'tree', typed);
      await club.discord.until(() => asked.choices !== null);
      return asked.choices?.map(({ name }) => name) ?? [];
    };
    expect(await offered('pot')).toHaveLength(25);
    expect((await offered('alm'))[0]).toBe('Alma');
    expect((await offered('pot 31'))[0]).toBe('Pot 31');
    const cultivars = club.discord.people.complete(club.place(), 'tree add', 'cultivar', 'brunsw');
    await club.discord.until(() => cultivars.choices !== null);
    expect(cultivars.choices?.[0]?.name).toContain('Brunswick');
    club.discord.assertClean();
    await club.close();
  }, 30_000);

  it('is answered in time with nothing when the database is slow', async () => {
    const club = await DiscordClub.open({ opened });
    await club.stop();
    await club.start({ opened: slowed(opened, 5000) });
    const asked = club.discord.people.complete(club.place(), 'tip', 'tree', 'pot');
    await club.discord.until(() => asked.choices !== null);
    expect(asked.choices).toEqual([]);
    club.discord.assertClean();
    await club.close();
  }, 30_000);
});

describe('pitfall 6, listener throws', () => {
  it('the member gets a sentence with a number that stands in the log, and the process goes on', async () => {
    let broken = false;
    const club = await DiscordClub.open({ opened });
    await club.stop();
    await club.start({ opened: failing(opened, () => broken) });
    broken = true;
    const asked = club.discord.people.command(club.place(), 'tree add', { name: 'Unlucky' });
    const shown = await club.answerTo(asked);
    broken = false;
    const number = /error ([0-9A-F]{6})/.exec(shown.text)?.[1];
    expect(number).toBeDefined();
    expect(shown.ephemeral).toBe(true);
    expect(asked.placeholder).toBe('deleted');
    const line = club.logged.find((l) => l.includes(`"number":"${number}"`));
    expect(line).toContain('ECONNRESET');
    expect(line).not.toContain('secret-words-of-a-member');
    expect((await club.run('help')).title).toBe('How Ostiole helps');
    club.discord.assertClean();
    await club.close();
  });
});
