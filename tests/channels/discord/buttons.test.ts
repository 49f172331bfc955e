import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { buttonsOf, customIdOf, DiscordClub, show } from '../../support/discord/club.ts';

let club: DiscordClub;
beforeAll(async () => {
  club = await DiscordClub.open();
});
afterEach(() => club.discord.assertClean());
afterAll(() => club.close());

describe('a button', () => {
  it('pitfall 5, components lost on restart: works after a restart, and once however often it is pressed', async () => {
    await club.run('tree add', { name: 'Alma', cultivar: 'Alma' });
    const noted = await club.run('note', { text: '3 fruitlets on the alma' });
    expect(noted.buttons[0]).toBe('Undo');
    await club.stop();
    await club.start();
    const { people } = club.discord;
    const id = customIdOf(noted.message, 'Undo');
    const presses = [1, 2, 3].map(() => people.press(club.place(), noted.message, id));
    const answers = await Promise.all(presses.map((press) => club.answerTo(press)));
    const story = await club.run('tree show', { tree: 'Alma' });
    expect(story.all).not.toContain('3 fruitlets');
    expect(new Set(answers.map(({ text }) => text)).size).toBeGreaterThan(1);
  });

  it('is acknowledged without touching the message it stands on', async () => {
    const noted = await club.run('note', { text: '4 fruitlets on the alma' });
    const press = club.discord.people.press(club.place(), noted.message, customIdOf(noted.message, 'Undo'));
    await club.answerTo(press);
    expect(press.acknowledged?.type).toBe(6);
    expect(noted.message.deleted).toBe(false);
    expect(buttonsOf(noted.message)[0]?.label).toBe('Undo');
  });

  it('refuses another member’s press politely, to them alone, before any work', async () => {
    const noted = await club.run('note', { text: '5 fruitlets on the alma' });
    const bea = club.discord.addUser('Bea');
    const press = club.discord.people.press(
      club.place(bea),
      noted.message,
      customIdOf(noted.message, 'Undo'),
    );
    await club.discord.until(() => press.original !== null);
    expect(press.original?.ephemeral).toBe(true);
    expect(press.original?.api.content).toContain('for whoever asked');
    expect((await club.run('tree show', { tree: 'Alma' })).all).toContain('5');
  });

  it('of another version answers politely', async () => {
    const noted = await club.run('note', { text: '6 fruitlets on the alma' });
    for (const id of ['v2:1:1:undo:1', 'undo:1', 'v1::undo', 'v1:zz']) {
      const press = club.discord.people.press(club.place(), noted.message, id);
      await club.discord.until(() => press.original !== null);
      expect(press.original?.ephemeral).toBe(true);
      expect(show(press.original as never).text).toContain('another version');
    }
  });

  it('whose verb is no longer known answers politely', async () => {
    const noted = await club.run('note', { text: '7 fruitlets on the alma' });
    const press = club.discord.people.press(club.place(), noted.message, 'v1:::bygone:1');
    expect((await club.answerTo(press)).text).toContain('older version');
  });

  it('on a message that only its reader sees is answered to them alone', async () => {
    const direct = await club.run('note', { text: 'fruitlets on the celeste' });
    const ephemeral = {
      ...direct.message,
      api: { ...direct.message.api, flags: 64 },
    } as typeof direct.message;
    const press = club.discord.people.press(club.place(), ephemeral, 'v1:::tip:1');
    expect((await club.answerTo(press)).ephemeral).toBe(true);
  });
});

describe('a long list', () => {
  const name = (index: number) =>
    `${String(index).padStart(3, '0')} ${'fig *bold* '.repeat(9)}`.slice(0, 100).trim();

  it('of 200 trees with names of 100 characters is paged inside Discord’s limits, nothing left out', async () => {
    const carla = club.discord.addUser('Carla');
    const rows = Array.from({ length: 200 }, (_, index) => name(index));
    const csv = ['name', ...rows].join('\n');
    const place = club.place(carla);
    await club.run('tree import', { file: { name: 'trees.csv', bytes: Buffer.from(csv) } }, place);
    const first = await club.run('tree list', {}, place);
    expect(first.buttons).toEqual(expect.arrayContaining(['Earlier page', 'Next page']));
    const seen = new Set<string>();
    await club.stop();
    await club.start();
    for (let page = 0; page < 60; page++) {
      for (const field of show(first.message).fields) seen.add(field.name);
      const next = buttonsOf(first.message).find(({ label }) => label === 'Next page');
      if (next === undefined || next.disabled) break;
      const before = JSON.stringify(first.message.api.embeds);
      const press = club.discord.people.press(place, first.message, next.customId);
      await club.discord.until(() => JSON.stringify(first.message.api.embeds) !== before);
      expect(press.followUps).toEqual([]);
    }
    expect([...seen].sort()).toEqual(rows.sort());
  }, 60_000);

  it('shows no page of another member’s, whatever is pressed', async () => {
    const dora = club.discord.addUser('Dora');
    const help = await club.run('note', { text: 'x' }, club.place(dora));
    for (const id of [1, 2, 3]) {
      const press = club.discord.people.press(club.place(dora), help.message, `v1:::page:${id}:0`);
      expect((await club.answerTo(press)).text).toContain('no longer kept');
    }
  });
});
