import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeButtonId } from '../../../src/channels/discord/custom-id.ts';
import { features, verbs } from '../../../src/club/features.ts';
import { observations, trees } from '../../../src/records/schema.ts';
import { DiscordClub } from '../../support/discord/club.ts';
import type { StandInChannel, StandInUser } from '../../support/discord/world.ts';

// Words that stand in the strangers' records only; none of them may ever be shown.
const SECRETS = ['Quincunx', 'Zanzibar', 'velvet-rope'];

let club: DiscordClub;
let bea: StandInUser;
let elsewhere: StandInChannel;

beforeAll(async () => {
  club = await DiscordClub.open();
  const { discord } = club;
  // Ana's own, another member's of the same club, and another club's: whoever presses is Ana.
  await club.run('tree add', { name: 'Mine', cultivar: 'Alma' });
  bea = discord.addUser('Bea');
  const other = discord.addGuild('Other club', ['figs']);
  elsewhere = discord.channel(other);
  await discord.until(() => elsewhere.messages.length > 0);
  const carl = discord.addUser('Carl');
  for (const place of [club.place(bea), club.place(carl, elsewhere)]) {
    await club.run('garden set', { heat_end: 'September 20', first_frost: 'November 1' }, place);
    await club.run('tree add', { name: 'Quincunx', cultivar: 'Alma' }, place);
    await club.run('tree add', { name: 'Zanzibar', cultivar: 'Alma' }, place);
    await club.run('note', { text: '3 fruitlets on the Quincunx', tree: 'Quincunx' }, place);
  }
});
afterAll(() => club.close());

const stateOfOthers = async () => {
  const rows = await club.opened.db.select().from(trees);
  const foreign = rows.filter(({ name }) => SECRETS.includes(name));
  const seen = (await club.opened.db.select().from(observations)).filter(({ treeId }) =>
    foreign.some(({ id }) => id === treeId),
  );
  return JSON.stringify({ foreign, seen });
};

describe('cross-club and cross-member isolation', () => {
  it('no command gives anything for the name of a tree that is not one’s own, nor changes it', async () => {
    const before = await stateOfOthers();
    for (const { command } of features) {
      const options: Record<string, string | number> = {};
      for (const option of command.options) {
        if (option.name === 'tree' || option.name === 'from') options[option.name] = 'Quincunx';
      }
      // What asks for its own words is asked with a stranger's.
      if (command.name === 'note') options.text = '5 fruitlets on the Quincunx';
      if (command.name === 'tree add') options.name = 'Bought';
      if (command.name === 'tree edit') options.rename = 'Stolen';
      const shown = await club.run(command.name, options, club.place(club.ana, club.channel, true));
      const said = [shown.all, ...shown.buttons].join('\n').replaceAll(/"?Quincunx"?/g, (name, at, all) =>
        // The name that was just typed may be repeated in the refusal.
        command.options.some((o) => o.name in options) ? '' : name + at + all,
      );
      const clubWide = ['roundup', 'due', 'club'].includes(command.name.split(' ')[0] ?? '');
      if (!clubWide) for (const secret of SECRETS) expect(said, command.name).not.toContain(secret);
    }
    expect(await stateOfOthers()).toBe(before);
  }, 60_000);

  it('no club-wide reply shows anything of another club', async () => {
    for (const [name, options] of [
      ['roundup', { span: 'season' }],
      ['roundup', { span: 'week' }],
      ['due', { whose: 'club', days: 365 }],
    ] as const) {
      const shown = await club.run(name, options);
      expect(shown.all).not.toContain('Carl');
    }
  });

  it('no completion offers a tree that is not one’s own', async () => {
    for (const { command } of features) {
      for (const option of command.options) {
        if (option.type !== 'text' || option.complete !== 'tree') continue;
        for (const typed of ['', 'Q', 'Quincunx', 'Zan']) {
          const asked = club.discord.people.complete(club.place(), command.name, option.name, typed);
          await club.discord.until(() => asked.choices !== null);
          expect(asked.choices!.map(({ name }) => name).join()).not.toMatch(/Quincunx|Zanzibar/);
        }
      }
    }
  }, 60_000);

  it('no button does anything with the ids of another’s trees, notes or nudges', async () => {
    const before = await stateOfOthers();
    const mine = await club.run('note', { text: '2 fruitlets on mine', tree: 'Mine' });
    const rows = await club.opened.db.select().from(trees);
    const foreignIds = rows.filter(({ name }) => SECRETS.includes(name)).map(({ id }) => id);
    const kinds = ['fruitlets', 'no-fruitlets', 'tipped', '0', '1', '2026', 'main', 'breba', 'early'];
    for (const { verb } of verbs) {
      for (const id of [...foreignIds, 1, 2, 3, 4]) {
        for (const rest of ['', ...kinds.slice(0, 3)]) {
          const action = [verb, id, ...(rest === '' ? [] : [rest])].join(':');
          if (rows.some((tree) => tree.id === id && tree.name === 'Mine')) continue;
          const customId = writeButtonId({ ownerId: null, clubId: null, action });
          const press = club.discord.people.press(club.place(), mine.message, customId);
          const shown = await club.answerTo(press);
          expect(shown.all, action).not.toMatch(/Quincunx|Zanzibar/);
        }
      }
    }
    expect(await stateOfOthers()).toBe(before);
  }, 120_000);

  it('no forged id makes a button fail inside', async () => {
    const mine = await club.run('note', { text: '2 fruitlets on mine', tree: 'Mine' });
    const failed: string[] = [];
    for (const { verb } of [...verbs, { verb: 'page' }, { verb: 'club' }]) {
      for (const id of ['99999999999', '-1', '1.5', 'x', '', '__proto__', "1' or '1'='1", '1:1:1:1:1:1']) {
        const press = club.discord.people.press(club.place(), mine.message, `v1:::${verb}:${id}`);
        if ((await club.answerTo(press)).text.includes('went wrong on my side')) failed.push(`${verb}:${id}`);
      }
    }
    expect(failed).toEqual([]);
  }, 120_000);

  it('a button that names another club is refused, in the server and in direct messages', async () => {
    const mine = await club.run('note', { text: '2 fruitlets on mine', tree: 'Mine' });
    const customId = writeButtonId({ ownerId: club.ana.api.id, clubId: 2, action: 'tip:1' });
    const here = await club.answerTo(club.discord.people.press(club.place(), mine.message, customId));
    expect(here.text).toContain('another club');
    const direct = club.place(club.ana, club.discord.world.directChannel(club.ana.api.id));
    const there = await club.answerTo(club.discord.people.press(direct, mine.message, customId));
    expect(there.all).not.toMatch(/Quincunx|Zanzibar/);
  });
});
