import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs } from '../../src/records/schema.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';

// Days are reckoned by hand with a calendar. Spans are common practice, no source: late 100 days back, early 80.

let opened: OpenedDatabase;
let club: TerminalClub;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
});
afterAll(() => opened.close());
afterEach(() => club.close());

interface Item {
  readonly tree: string;
  readonly kind: string;
  readonly due: string;
  readonly late: boolean;
}

/** `due tree kind`, with `late` after it, in the order in which it was said; with whom it went to. */
async function nudgesUntil(date: string): Promise<string[]> {
  return nudgesIn(await club.moveTo(date));
}

function nudgesIn(said: Awaited<ReturnType<TerminalClub['moveTo']>>): string[] {
  return said
    .filter(({ kind }) => kind === 'nudge')
    .flatMap(({ to, reply }) =>
      (reply.data.items as Item[]).map(
        ({ tree, kind, due, late }) => `${due} ${to} ${tree} ${kind}${late ? ' late' : ''}`,
      ),
    );
}

async function begin(today: string) {
  await opened.db.delete(clubs);
  club = await openTerminalClub(opened, today);
  await club.type('/garden set heat_end:October 15', '/tree add name:Oak ripening:late');
}

describe('nudges on the way to a day', () => {
  beforeEach(() => begin('2026-05-01'));

  it('come in the order of their days, one message a member and morning, each once', async () => {
    await club.type(
      '/tree add name:Elm ripening:late',
      '/tree add name:Fir ripening:early',
      'maria> /garden set heat_end:October 1',
      'maria> /tree add name:Oak ripening:early',
    );
    const said = await club.moveTo('2026-07-27');
    expect(nudgesIn(said)).toEqual([
      '2026-06-23 me Elm heads-up',
      '2026-06-23 me Oak heads-up',
      '2026-06-29 maria Oak heads-up',
      '2026-07-07 me Elm decision',
      '2026-07-07 me Oak decision',
      '2026-07-13 me Fir heads-up',
      '2026-07-13 maria Oak decision',
      '2026-07-27 me Fir decision',
    ]);
    expect(said.filter(({ kind, to }) => kind === 'nudge' && to === 'me')).toHaveLength(4);
    expect(await nudgesUntil('2026-10-01')).toEqual([]);
  });

  it('/due tells of the same days that the nudges then keep', async () => {
    const { items } = (await club.data('/due days:100')) as {
      items: { tree: string; kind: string; on: string }[];
    };
    expect(items.map(({ tree, kind, on }) => `${on} me ${tree} ${kind}`)).toEqual(
      await nudgesUntil('2026-08-09'),
    );
  });

  it('do not come while nudges are off, and a decision that is past when they are on again is not dug up', async () => {
    await club.type('/garden set nudges:off');
    expect(await nudgesUntil('2026-07-10')).toEqual([]);
    expect(nudgesIn(await club.type('/garden set nudges:direct'))).toEqual([]);
    expect(await nudgesUntil('2026-07-20')).toEqual([]);
  });

  it('a season later come again for the same tree', async () => {
    expect(await nudgesUntil('2026-12-31')).toContain('2026-07-07 me Oak decision');
    await club.type('what is due?');
    expect(await nudgesUntil('2027-07-07')).toEqual([
      '2027-06-23 me Oak heads-up',
      '2027-07-07 me Oak decision',
    ]);
  });
});

describe('a date that is past already', () => {
  beforeEach(() => begin('2026-07-10'));

  it('is told in the reply to the new tree, and not nudged', async () => {
    const said = await club.ask('/tree add name:Elm ripening:late');
    expect(said.data).toMatchObject({ verdict: 'tip', timing: 'late', decisionDate: '2026-07-07' });
    expect(said.text).toContain('July 7');
    expect(await nudgesUntil('2026-07-20')).toEqual([]);
  });

  it('is nudged at once when a later change of the garden moves it there and the verdict is still tip', async () => {
    await club.type('/tree add name:Elm ripening:mid');
    // 1 October − 90 days = 3 July; a tip still works until 1 October + 21 − 75 − 7 = 1 August.
    const said = await club.type('/garden set heat_end:October 1');
    const [nudge] = said.filter(({ kind }) => kind === 'nudge');
    expect(nudge?.reply.data.items).toMatchObject([{ tree: 'Elm', kind: 'decision', late: false }]);
    expect(said.at(-1)).toMatchObject({ kind: 'reply' });
    expect(nudgesIn(await club.type('/garden set heat_end:September 30'))).toEqual([]);
    expect(await nudgesUntil('2026-07-31')).toEqual([]);
  });

  it('is not nudged when that change makes it too late for figs', async () => {
    await club.type('/tree add name:Elm ripening:mid');
    expect(nudgesIn(await club.type('/garden set heat_end:August 15'))).toEqual([]);
  });
});

describe('the answers to a decision nudge', () => {
  beforeEach(async () => {
    await begin('2026-05-01');
    expect(await nudgesUntil('2026-07-07')).toContain('2026-07-07 me Oak decision');
  });

  it('remind me in 7 days: once more on the seventh day and never again by itself', async () => {
    expect(await club.data('#3')).toEqual({ tree: 'Oak', remindOn: '2026-07-14' });
    expect(await nudgesUntil('2026-07-13')).toEqual([]);
    expect(await nudgesUntil('2026-07-14')).toEqual(['2026-07-14 me Oak decision']);
    expect(await nudgesUntil('2026-09-30')).toEqual([]);
  });

  it('I tipped it: a second look eight days later, whose answer ends it', async () => {
    await club.type('#2');
    expect(await club.data('/tip tree:Oak')).toMatchObject({ verdict: 'await' });
    expect(await nudgesUntil('2026-07-15')).toEqual(['2026-07-15 me Oak second-look']);
    expect(await club.data('#1')).toMatchObject({ logged: [{ kind: 'fruitlets', on: '2026-07-15' }] });
    // 15 July + 90 days.
    expect(await nudgesUntil('2026-10-13')).toEqual(['2026-10-13 me Oak ripe-watch']);
  });

  it('fruitlets are showing: main crop of today, and the ripe watch when the window opens', async () => {
    expect(await club.data('#1')).toMatchObject({
      logged: [{ tree: 'Oak', kind: 'fruitlets', on: '2026-07-07', crop: 'main' }],
    });
    expect(await nudgesUntil('2026-10-05')).toEqual(['2026-10-05 me Oak ripe-watch']);
  });

  it('leave it this year: nothing more of it this season, and asked again in the next', async () => {
    await club.type('#4');
    expect(await nudgesUntil('2026-12-31')).toEqual([]);
    await club.type('what is due?');
    expect(await nudgesUntil('2027-07-07')).toContain('2027-07-07 me Oak decision');
  });
});
