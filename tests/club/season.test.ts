import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs } from '../../src/records/schema.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';

let opened: OpenedDatabase;
let club: TerminalClub;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
});
afterAll(() => opened.close());
afterEach(() => club.close());

async function begin(today: string) {
  await opened.db.delete(clubs);
  club = await openTerminalClub(opened, today);
}

const kindsOf = (said: Awaited<ReturnType<TerminalClub['moveTo']>>) =>
  said
    .filter(({ kind }) => kind === 'nudge')
    .flatMap(({ reply }) => reply.data.items as { tree: string; kind: string; due: string; late: boolean }[]);

describe('a season in the north', () => {
  beforeEach(() => begin('2026-05-01'));

  // Common practice, no source: count back from the last reliable 80 °F day.
  it.each([
    ['late', '2026-07-07'],
    ['mid', '2026-07-17'],
    ['early', '2026-07-27'],
    ['unknown', '2026-07-07'],
  ])('gives a %s kind its decision date from a heat end on 15 October', async (ripening, decisionDate) => {
    await club.type('/garden set heat_end:October 15', `/tree add name:Pot 3 ripening:${ripening}`);
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({
      verdict: 'watch',
      decisionDate,
      heatEnd: '2026-10-15',
    });
  });

  // Common practice, no source: 90–100 days from a fruitlet on a late kind.
  it('gives fruitlets of 8 June on a late kind a ripe window from 6 to 16 September', async () => {
    await club.type('/garden set heat_end:October 15', '/tree add name:Pot 3 ripening:late', '@2026-06-08');
    await club.type('fruitlets on pot 3');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({
      verdict: 'leave',
      timing: 'in-heat',
      seen: '2026-06-08',
      ripeFrom: '2026-09-06',
      ripeTo: '2026-09-16',
    });
  });

  // Miyagi Prefecture, Watari Extension, fig bulletins 2017: Brunswick 75–80 days from set to harvest.
  it('lets the published span of Brunswick win over its group', async () => {
    await club.type(
      '/garden set heat_end:October 15',
      '/tree add name:Bruno cultivar:Brunswick ripening:late',
      '@2026-06-22',
    );
    await club.type('fruitlets on bruno');
    expect(await club.data('/tip tree:Bruno')).toMatchObject({
      ripeFrom: '2026-09-05',
      ripeTo: '2026-09-10',
    });
  });

  it('nudges two weeks ahead and on the decision date, once each, and looks again after a tip', async () => {
    await club.type('/garden set heat_end:October 15', '/tree add name:Pot 3 ripening:late');
    expect(kindsOf(await club.moveTo('2026-07-06'))).toEqual([
      { tree: 'Pot 3', kind: 'heads-up', due: '2026-06-23', late: false },
    ]);
    expect(kindsOf(await club.moveTo('2026-07-07'))).toEqual([
      { tree: 'Pot 3', kind: 'decision', due: '2026-07-07', late: false },
    ]);
    expect(kindsOf(await club.moveTo('2026-07-08'))).toEqual([]);
    await club.type('tipped pot 3');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({ verdict: 'await' });
    expect(kindsOf(await club.moveTo('2026-07-20'))).toEqual([
      { tree: 'Pot 3', kind: 'second-look', due: '2026-07-16', late: false },
    ]);
  });

  it('does not nudge a tree with fruitlets, and nudges again once undo takes them back', async () => {
    await club.type('/garden set heat_end:October 15', '/tree add name:Pot 3 ripening:late', '@2026-07-01');
    await club.type('3 fruitlets on pot 3', '#1');
    expect(kindsOf(await club.moveTo('2026-07-07'))).toMatchObject([{ kind: 'decision' }]);
  });

  it('still nudges in July a tree that bore brebas in May', async () => {
    await club.type(
      '/garden set heat_end:October 15 last_frost:April 10',
      '/tree add name:Pot 3 ripening:late',
      '@2026-05-20',
    );
    await club.type('5 brebas on pot 3');
    expect(kindsOf(await club.moveTo('2026-07-07'))).toContainEqual(
      expect.objectContaining({ kind: 'decision' }),
    );
  });

  it('opens the decision again when all fruitlets have dropped', async () => {
    await club.type('/garden set heat_end:October 15', '/tree add name:Pot 3 ripening:late', '@2026-06-20');
    await club.type('fruitlets on pot 3');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({ verdict: 'leave' });
    await club.type('@2026-06-28', 'pot 3 dropped all its figs');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({ verdict: 'watch' });
    expect(kindsOf(await club.moveTo('2026-07-07'))).toContainEqual(
      expect.objectContaining({ kind: 'decision' }),
    );
  });

  it('never tells a San Pedro kind without pollination, or a tree kept for wood, to be tipped', async () => {
    await club.type(
      '/garden set heat_end:October 15',
      '/tree add name:King cultivar:King',
      '/tree add name:Stock for:wood',
    );
    await club.type('@2026-07-20');
    expect(await club.data('/tip tree:King')).toMatchObject({ verdict: 'not-for-fruit' });
    expect(await club.data('/tip tree:Stock')).toMatchObject({ verdict: 'not-for-fruit' });
    expect(await club.data('/tip')).toMatchObject({
      items: [{ verdict: 'not-for-fruit' }, { verdict: 'not-for-fruit' }],
    });
  });

  it('keeps the story of a tree that is renamed', async () => {
    await club.type('/garden set heat_end:October 15', '/tree add name:Pot 3 ripening:late', '@2026-06-20');
    await club.type('fruitlets on pot 3', '/tree edit tree:Pot 3 rename:By the gate');
    expect(await club.data('/tip tree:By the gate')).toMatchObject({ verdict: 'leave', seen: '2026-06-20' });
  });

  it('refuses a second tree of one name for one member and allows it for another', async () => {
    await club.type('/tree add name:Pot 3');
    expect(await club.ask('/tree add name:POT 3')).toMatchObject({
      ok: false,
      data: { error: 'name-taken' },
    });
    expect(await club.ask('maria> /tree add name:Pot 3')).toMatchObject({ ok: true });
  });

  it('takes a vague date for a deadline at its earliest day and says so', async () => {
    const reply = await club.ask('/garden set heat_end:mid October');
    expect(reply.data).toMatchObject({
      heatEnd: '10-11',
      understood: [{ option: 'heat_end', text: 'mid October', from: '2026-10-11', to: '2026-10-20' }],
    });
    expect(reply.text).toContain('earliest');
  });

  it('lists the most urgent trees first', async () => {
    await club.type(
      '/garden set heat_end:October 15',
      '/tree add name:Early ripening:early',
      '/tree add name:Late ripening:late',
      '/tree add name:Mid ripening:mid',
      '@2026-07-08',
    );
    const { items } = (await club.data('/tip')) as { items: { tree: string; verdict: string }[] };
    expect(items.map(({ tree, verdict }) => [tree, verdict])).toEqual([
      ['Late', 'tip'],
      ['Mid', 'watch'],
      ['Early', 'watch'],
    ]);
  });
});

describe('a season in the south', () => {
  beforeEach(() => begin('2026-09-01'));

  it('gives a late tree near Adelaide with heat end 20 March its decision date on 10 December', async () => {
    await club.type(
      '/garden set lat:-34.93 lon:138.6 heat_end:20 March',
      '/tree add name:Pot 3 ripening:late',
    );
    expect(await club.data('/garden show')).toMatchObject({
      hemisphere: 'S',
      zone: 'Australia/Adelaide',
      heatEnd: '03-20',
    });
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({
      decisionDate: '2026-12-10',
      heatEnd: '2027-03-20',
    });
  });

  it('counts notes on either side of New Year for one season', async () => {
    await club.type(
      '/garden set lat:-34.93 lon:138.6 heat_end:20 March',
      '/tree add name:Pot 3 ripening:late',
      '@2026-12-28',
    );
    await club.type('fruitlets on pot 3', '@2027-01-03', 'watered pot 3');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({ verdict: 'leave', seen: '2026-12-28' });
  });
});
