import { rmSync, statSync } from 'node:fs';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs } from '../../src/records/schema.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';

// Days here are reckoned by hand with a calendar (Python's datetime), not with the engine. Groups and their
// planning spans are common practice, no source, unless a line says otherwise.

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

const VERDICT_KEYS = ['tree', 'verdict', 'decisionDate', 'heatEnd', 'ripeFrom', 'ripeTo'];

describe('verdicts as a script reads them', () => {
  beforeEach(() => begin('2026-07-07'));

  it('set-up has every date, all of them null', async () => {
    await club.type('/tree add name:Oak ripening:late');
    expect(await club.data('/tip tree:Oak')).toEqual({
      tree: 'Oak',
      verdict: 'set-up',
      decisionDate: null,
      heatEnd: null,
      ripeFrom: null,
      ripeTo: null,
    });
  });

  it('not-for-fruit has no date to decide on; pollinated:yes gives it one', async () => {
    await club.type(
      '/garden set heat_end:October 15',
      '/tree add name:Stock for:wood ripening:late',
      '/tree add name:King cultivar:King',
      '/tree add name:Smyrna cultivar:Calimyrna',
    );
    for (const tree of ['Stock', 'King', 'Smyrna']) {
      const data = await club.data(`/tip tree:${tree}`);
      expect(Object.keys(data)).toEqual(VERDICT_KEYS);
      expect(data).toMatchObject({ verdict: 'not-for-fruit', decisionDate: null, ripeFrom: null });
    }
    expect(await club.data('/tree edit tree:King pollinated:yes')).toMatchObject({
      verdict: 'tip',
      decisionDate: '2026-07-07',
    });
  });

  it.each([
    // 7 July + 7 + 90 = 12 October; 7 July + 10 + 100 = 25 October.
    ['Oak', '', { timing: 'on-time', shoots: 'any', ripeFrom: '2026-10-12', ripeTo: '2026-10-25' }],
    ['Both', 'for:both', { timing: 'on-time', shoots: 'side' }],
    ['Young', 'started:March 2026', { timing: 'on-time', shoots: 'side' }],
    ['Older', 'started:March 2025', { timing: 'on-time', shoots: 'any' }],
  ])(
    'tip on the decision date itself is on time, and says which shoots: %s',
    async (name, options, expected) => {
      await club.type('/garden set heat_end:October 15', `/tree add name:${name} ripening:late ${options}`);
      const said = await club.ask(`/tip tree:${name}`);
      expect(said.data).toMatchObject({ verdict: 'tip', decisionDate: '2026-07-07', ...expected });
      expect(said.text).toContain('sap');
      expect(said.text.toLowerCase()).toContain('side shoots');
    },
  );

  it('tip is late from the day after, to the last day that finishes a fig, and then let-grow', async () => {
    await club.type('/garden set heat_end:October 15', '/tree add name:Oak ripening:late', '@2026-07-08');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'tip', timing: 'late' });
    // 15 October + 21 − 90 − 7 = 31 July.
    await club.type('@2026-07-31');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'tip', timing: 'late' });
    await club.type('@2026-08-01');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'let-grow', ripeFrom: null });
  });

  it('a first frost ends the warmth sooner than three weeks past the heat', async () => {
    await club.type(
      '/garden set heat_end:October 15 first_frost:October 20',
      '/tree add name:Oak ripening:late',
      '@2026-07-15',
    );
    // 20 October − 90 − 7 = 15 July.
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'tip' });
    await club.type('@2026-07-16');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'let-grow' });
  });

  it('caution moves the date ahead but not what counts as on time', async () => {
    await club.type(
      '/garden set heat_end:October 15 caution:10',
      '/tree add name:Oak ripening:mid',
      '/tree add name:Elm ripening:mid kept:cover cover_days:14',
    );
    // 15 October − 90 − 10; 14 days of cover later.
    expect(await club.data('/tip tree:Oak')).toMatchObject({
      verdict: 'tip',
      timing: 'on-time',
      decisionDate: '2026-07-07',
    });
    expect(await club.data('/tip tree:Elm')).toMatchObject({
      verdict: 'watch',
      decisionDate: '2026-07-21',
      heatEnd: '2026-10-29',
    });
  });

  it('await for ten days after a tip, and the table goes on after them', async () => {
    await club.type('/garden set heat_end:October 15', '/tree add name:Oak ripening:late', 'tipped oak');
    expect(await club.data('/tip tree:Oak')).toMatchObject({
      verdict: 'await',
      ripeFrom: '2026-10-12',
      ripeTo: '2026-10-25',
    });
    await club.type('@2026-07-17');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'await' });
    await club.type('@2026-07-18');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'tip', timing: 'late' });
  });

  it.each([
    // Fruitlets of 7 July + 90 to 100 days: 5 to 15 October.
    ['October 15', 'November 1', 'in-heat'],
    ['October 14', 'November 1', 'edge'],
    ['October 5', 'November 1', 'edge'],
    ['October 4', 'November 1', 'after-heat'],
    ['September 20', 'October 5', 'after-heat'],
    ['September 20', 'October 4', 'after-frost'],
  ])('leave with heat until %s and frost from %s is %s', async (heat, frost, timing) => {
    await club.type(
      `/garden set heat_end:${heat} first_frost:${frost}`,
      '/tree add name:Oak ripening:late',
      'fruitlets on oak',
    );
    expect(await club.data('/tip tree:Oak')).toMatchObject({
      verdict: 'leave',
      timing,
      seen: '2026-07-07',
      ripeFrom: '2026-10-05',
      ripeTo: '2026-10-15',
    });
  });

  it('/tip of all puts what is most urgent first, each item as the tree alone has it', async () => {
    await club.type(
      '/garden set heat_end:October 15',
      '/tree add name:Stock for:wood',
      '/tree add name:Early ripening:early',
      '/tree add name:Mid ripening:mid',
      '/tree add name:Oak ripening:late',
      '/tree add name:Elm ripening:late',
      'fruitlets on elm',
    );
    const { items } = (await club.data('/tip')) as { items: { tree: string }[] };
    expect(items.map(({ tree }) => tree)).toEqual(['Oak', 'Mid', 'Early', 'Elm', 'Stock']);
    for (const item of items) expect(item).toEqual(await club.data(`/tip tree:${item.tree}`));
  });
});

describe('the garden as a script reads it', () => {
  beforeEach(() => begin('2026-05-01'));

  it('has all its parts before anything is known', async () => {
    const none = { p10: null, p50: null, p90: null, none: 0 };
    expect(await club.data('/garden show')).toMatchObject({
      heatEnd: null,
      basis: null,
      mark: { value: 80, unit: 'F' },
      seasons: 0,
      frost: { first: none, last: none },
      hemisphere: 'N',
    });
  });

  it('counts heat from 27 °C where people think in °C, in day-first words at once', async () => {
    await club.type('/garden set heat_end:October 15');
    const said = await club.ask('/garden set units:C');
    expect(said.data).toMatchObject({ heatEnd: '10-15', basis: 'stated', mark: { value: 27, unit: 'C' } });
    expect(said.text).toContain('15 October');
  });

  it.each([
    ['mid October', '2026-10-11', '2026-10-20', '10-11'],
    ['early October', '2026-10-01', '2026-10-10', '10-01'],
    ['late September', '2026-09-21', '2026-09-30', '09-21'],
    ['around October 10', '2026-10-07', '2026-10-13', '10-07'],
    ['October 15', '2026-10-15', '2026-10-15', '10-15'],
    ['2026-10-15', '2026-10-15', '2026-10-15', '10-15'],
  ])('understands heat_end:%s', async (text, from, to, heatEnd) => {
    const said = await club.ask(`/garden set heat_end:${text}`);
    expect(said.data).toMatchObject({ heatEnd, understood: [{ option: 'heat_end', text, from, to }] });
    expect(said.text.includes('earliest')).toBe(from !== to);
  });

  it('takes a date of the season at hand, also where it has gone by', async () => {
    const north = await club.ask(
      '/garden set heat_end:October 15 last_frost:April 10 first_frost:November 2',
    );
    expect(north.data.understood).toMatchObject([
      { option: 'heat_end', from: '2026-10-15' },
      { option: 'last_frost', from: '2026-04-10' },
      { option: 'first_frost', from: '2026-11-02' },
    ]);
    // On 1 May the southern season is 2025/26.
    const south = await club.ask('sam> /garden set heat_end:March 20');
    expect(south.data).toMatchObject({ hemisphere: 'S', understood: [{ from: '2026-03-20' }] });
  });

  it('a hemisphere that only a date told can be put right by another date, one that the place told cannot', async () => {
    expect(await club.data('/garden set heat_end:4/10')).toMatchObject({ hemisphere: 'S' });
    expect(await club.data('/garden set heat_end:October 4')).toMatchObject({
      hemisphere: 'N',
      heatEnd: '10-04',
    });
    await club.type('/garden set lat:52.2 lon:0.1');
    expect(await club.data('/garden set heat_end:March 20')).toEqual({ error: 'heat-end-in-winter' });
  });

  it('labels a southern season by both its years', async () => {
    await club.type('/garden set lat:-34.93 lon:138.6 heat_end:20 March', '/tree add name:Oak ripening:late');
    // 20 March 2026 − 100 days, in the season that runs to 30 June.
    expect(await club.data('/tip tree:Oak')).toMatchObject({ decisionDate: '2025-12-10' });
    await club.type('@2026-07-01');
    expect(await club.data('/tip tree:Oak')).toMatchObject({
      decisionDate: '2026-12-10',
      heatEnd: '2027-03-20',
    });
    expect(await club.data('/roundup span:season')).toMatchObject({ period: '2026/27' });
  });
});

describe('notes as a script reads them', () => {
  beforeEach(async () => {
    await begin('2026-06-20');
    await club.type(
      '/garden set heat_end:October 15 last_frost:April 10',
      '/tree add name:Oak ripening:late',
      '/tree add name:Late ripening:late',
      '/tree add name:🌳🔥 ripening:late',
    );
  });

  it('"undo that" takes back the last note of the day, once', async () => {
    await club.type('/tree add name:Oak', 'tipped the oak');
    expect(await club.data('undo that')).toMatchObject({ undone: true });
    expect(await club.data('undo that')).toMatchObject({ undone: false, error: 'nothing-to-undo' });
  });

  it('a correction of a note about two trees changes only the one it names', async () => {
    await club.type('/tree add name:Oak', '/tree add name:Ash', '3 tips off the oak, 4 off the ash');
    expect(await club.data('no, 5 off the ash')).toMatchObject({
      logged: [
        { tree: 'Oak', kind: 'tipped', count: 3 },
        { tree: 'Ash', kind: 'tipped', count: 5 },
      ],
    });
  });

  it('Undo is the first button of whatever was logged', async () => {
    const said = await club.ask('3 fruitlets on oak');
    expect(said.data).toEqual({
      logged: [{ tree: 'Oak', kind: 'fruitlets', on: '2026-06-20', count: 3 }],
      ask: null,
      intent: 'note',
    });
    expect(said.buttons[0]?.label).toBe('Undo');
    expect(await club.data('#1')).toMatchObject({ undone: true });
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'watch' });
  });

  it('a vague day of /note is the day that the same words in the text would be, and is said', async () => {
    const said = await club.ask('/note text:fruitlets tree:Oak on:early June');
    expect(said.data).toMatchObject({
      logged: [{ tree: 'Oak', on: '2026-06-05' }],
      understood: [{ option: 'on', text: 'early June', from: '2026-06-01', to: '2026-06-10' }],
    });
    expect(said.text).toContain('"early June" was taken as');
    expect(await club.data('/note text:fruitlets tree:Oak on:tomorrow')).toEqual({ error: 'day-to-come' });
  });

  it('asks which tree with a button for each, and the button completes the note', async () => {
    const said = await club.ask('tipped it');
    expect(said.data).toMatchObject({ logged: [], ask: 'tree' });
    expect(said.buttons.map(({ label }) => label)).toEqual(['Late', 'Oak', '🌳🔥']);
    expect(await club.data('#2')).toMatchObject({ logged: [{ tree: 'Oak', kind: 'tipped' }], ask: null });
  });

  it.each([
    ['fruitlets on late', 'Late'],
    ['2 fruitlets on 🌳🔥', '🌳🔥'],
    ['tipped Late', 'Late'],
  ])('takes a name literally where it could be anything: %s', async (text, tree) => {
    expect((await club.data(text)).logged).toMatchObject([{ tree }]);
    expect(await club.data(`should I tip ${tree}?`)).toMatchObject({ tree, intent: 'tip' });
  });

  it('a name is not read into words that only look like it', async () => {
    expect((await club.data('2 fruitlets on oak, showed up late')).logged).toMatchObject([{ tree: 'Oak' }]);
  });

  it('a denial that follows a note is a note of its own', async () => {
    await club.type('3 fruitlets on late');
    expect((await club.data('no fruitlets on oak')).logged).toMatchObject([
      { tree: 'Oak', kind: 'no-fruitlets' },
    ]);
    expect(await club.data('/tip tree:Late')).toMatchObject({ verdict: 'leave' });
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'watch' });
  });

  it('a question waiting for its answer swallows no message that stands by itself', async () => {
    await club.type('tipped it');
    expect(await club.data('2 fruitlets on oak')).toMatchObject({
      logged: [{ tree: 'Oak', kind: 'fruitlets', count: 2 }],
      ask: null,
    });
    await club.type('tipped it');
    expect(await club.data("what's due?")).toMatchObject({ intent: 'due' });
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'leave' });
  });

  it('no fruitlets after fruitlets is asked about, and all dropped opens the decision again', async () => {
    await club.type('3 fruitlets on oak', '@2026-06-25');
    const said = await club.ask('no fruitlets on oak');
    expect(said.text).toContain('If all have dropped, say so');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'leave' });
    await club.type('oak dropped all its figs');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'watch' });
  });
});

describe('questions', () => {
  beforeEach(async () => {
    await begin('2026-06-20');
    await club.type('/garden set heat_end:October 15', '/tree add name:Oak ripening:late');
  });

  it.each([
    ['should I tip oak?', '/tip tree:Oak', 'tip'],
    ['when will oak be ripe?', '/tip tree:Oak', 'ripe-when'],
    ["what's due?", '/due', 'due'],
    ['what should I tip?', '/tip', 'tip'],
    ['which trees need tipping?', '/tip', 'tip'],
  ])('"%s" has the data of %s and its intent', async (question, command, intent) => {
    expect(await club.data(question)).toEqual({ ...(await club.data(command)), intent });
  });
});

describe('files', () => {
  it('stand where the reply says, as large as it says, also after another of the same name', async () => {
    await begin('2026-06-20');
    await club.type('/garden set heat_end:October 15', '/tree add name:Oak ripening:late');
    const first = (await club.type('/due')).at(-1)?.files ?? [];
    await club.type('/tree add name:Elm ripening:early');
    const second = (await club.type('/due')).at(-1)?.files ?? [];
    expect([first.length, second.length]).toEqual([1, 1]);
    for (const file of [...first, ...second]) {
      expect(file.name).toBe('fig-dates.ics');
      expect(statSync(file.path).size).toBe(file.bytes);
      expect(file.path.startsWith(club.outFolder)).toBe(true);
    }
    rmSync(club.outFolder, { recursive: true, force: true });
  });
});
