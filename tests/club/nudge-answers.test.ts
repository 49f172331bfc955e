import { and, eq, isNull } from 'drizzle-orm';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SteppedClock } from '../../src/clock.ts';
import { desk } from '../../src/club/desk.ts';
import type { Reply } from '../../src/club/reply.ts';
import { addDays, day, later } from '../../src/engine/day.ts';
import { nextLookOn, runDay } from '../../src/nudges/run-day.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, observations } from '../../src/records/schema.ts';
import { Grower, KeepingMessenger } from '../nudges/grower.ts';
import { openTestDatabase } from '../support/postgres.ts';

describe('answers to nudges', () => {
  let opened: OpenedDatabase;
  let clock: SteppedClock;
  let messenger: KeepingMessenger;
  let grower: Grower;

  beforeAll(async () => {
    opened = await openTestDatabase('postgres');
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    await opened.db.delete(clubs);
    clock = new SteppedClock(day('2026-06-01'));
    messenger = new KeepingMessenger();
    grower = await Grower.join(opened.db, clock);
    await grower.add('Alma');
  });

  /** Goes to `to` day by day of what is due; the messages on the way. */
  async function goTo(to: string): Promise<Reply[]> {
    while (clock.today() < to) {
      const next = await nextLookOn(opened.db);
      clock.moveTo(next === null || next > to ? day(to) : later(next, addDays(clock.today(), 1)));
      await runDay(opened.db, clock, messenger);
    }
    return messenger.stored.splice(0).map((message) => message.reply);
  }

  async function press(on: Reply, label: string, by: Grower = grower): Promise<Reply> {
    const button = on.buttons.find((one) => one.label === label);
    if (button === undefined) throw new Error(`no button ${label}: ${on.buttons.map((b) => b.label)}`);
    return desk.pressButton(await by.context(), button.action);
  }

  const onRecord = () =>
    opened.db
      .select()
      .from(observations)
      .where(and(isNull(observations.undoneAt)));

  /** The decision nudge of 7 July. */
  async function decision(): Promise<Reply> {
    const [last] = (await goTo('2026-07-07')).slice(-1);
    if (last === undefined) throw new Error('no decision nudge');
    return last;
  }

  it('"fruitlets are showing" logs main-crop fruitlets of today, settles the date and can be undone', async () => {
    const nudge = await decision();
    const answer = await press(nudge, 'Fruitlets are showing');
    expect(answer.data.logged).toEqual([{ tree: 'Alma', kind: 'fruitlets', on: '2026-07-07', crop: 'main' }]);
    expect(answer.buttons[0]?.label).toBe('Undo');
    expect(await goTo('2026-10-10')).toMatchObject([
      { data: { items: [{ kind: 'ripe-watch', due: '2026-10-05' }] } },
    ]);
  });

  it('pressed twice it logs once; pressed again after an undo it logs again', async () => {
    const nudge = await decision();
    const answer = await press(nudge, 'Fruitlets are showing');
    expect(await press(nudge, 'Fruitlets are showing')).toMatchObject({
      ok: false,
      data: { error: 'logged-already' },
    });
    expect(await onRecord()).toHaveLength(1);
    await press(answer, 'Undo');
    expect(await onRecord()).toHaveLength(0);
    await press(nudge, 'Fruitlets are showing');
    expect(await onRecord()).toHaveLength(1);
  });

  it('two presses at the same moment log once', async () => {
    const nudge = await decision();
    const answers = await Promise.all([1, 2, 3].map(() => press(nudge, 'Fruitlets are showing')));
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await onRecord()).toHaveLength(1);
  });

  it('"I tipped it" logs the tip, asks how many shoots, and looks again eight days later', async () => {
    const nudge = await decision();
    const answer = await press(nudge, 'I tipped it');
    expect(answer.buttons.map(({ label }) => label)).toEqual(['Undo', '1', '2', '3', '4 or more']);
    expect(answer.text).toContain('How many shoots');
    await press(answer, '3');
    expect(await onRecord()).toMatchObject([{ kind: 'tipped', day: '2026-07-07', shoots: 3 }]);
    expect(await goTo('2026-07-31')).toMatchObject([
      { data: { items: [{ tree: 'Alma', kind: 'second-look', due: '2026-07-15' }] } },
    ]);
  });

  it('how many shoots can be typed, and a message that stands by itself is no answer to it', async () => {
    await press(await decision(), 'I tipped it');
    await desk.takeMessage(await grower.context(), 'alma has double buds');
    expect((await onRecord()).map(({ kind }) => kind).sort()).toEqual(['buds-double', 'tipped']);
    const [tip] = await opened.db.select().from(observations).where(eq(observations.kind, 'tipped'));
    expect(tip?.shoots).toBeNull();
    await opened.db.delete(observations).where(eq(observations.kind, 'buds-double'));
  });

  it('a typed number is how many shoots', async () => {
    await press(await decision(), 'I tipped it');
    expect(await desk.takeMessage(await grower.context(), '12')).toMatchObject({ data: { shoots: 12 } });
    expect(await onRecord()).toMatchObject([{ kind: 'tipped', shoots: 12 }]);
  });

  it('"remind me in 7 days" asks once more on 14 July, once a press', async () => {
    const nudge = await decision();
    expect(await press(nudge, 'Remind me in 7 days')).toMatchObject({ data: { remindOn: '2026-07-14' } });
    expect(await press(nudge, 'Remind me in 7 days')).toMatchObject({ data: { remindOn: '2026-07-14' } });
    const [again, ...more] = await goTo('2026-07-20');
    expect(more).toEqual([]);
    expect(again?.data).toEqual({
      items: [{ tree: 'Alma', kind: 'decision', due: '2026-07-14', late: false }],
    });
    await press(again as Reply, 'Remind me in 7 days');
    expect(await goTo('2026-07-31')).toMatchObject([{ data: { items: [{ due: '2026-07-27' }] } }]);
  });

  it('a reminder is dropped when fruitlets show, and back when that is undone', async () => {
    const nudge = await decision();
    await press(nudge, 'Remind me in 7 days');
    const logged = await press(nudge, 'Fruitlets are showing');
    expect(await goTo('2026-07-13')).toEqual([]);
    await press(logged, 'Undo');
    expect(await goTo('2026-07-15')).toMatchObject([
      { data: { items: [{ due: '2026-07-14', late: false }] } },
    ]);
  });

  it('says when the reminder would come too late for figs', async () => {
    const nudge = await decision();
    let last: Reply = nudge;
    for (const to of ['2026-07-14', '2026-07-21', '2026-07-28']) {
      await press(last, 'Remind me in 7 days');
      last = (await goTo(to)).at(-1) as Reply;
    }
    // Heat to 15 October and 21 days more, less 7 and 90: 31 July is the last day.
    expect((await press(last, 'Remind me in 7 days')).text).toContain('31 July');
    expect(await goTo('2026-12-31')).toEqual([]);
  });

  it('"leave it this year" closes the season for that tree alone', async () => {
    await grower.add('Other');
    const nudge = await decision();
    await press(nudge, 'Alma: leave it this year');
    await grower.change({ cautionDays: 0 });
    const rest = await goTo('2027-06-30');
    expect(rest.map(({ data }) => data.items)).toEqual([
      [
        { tree: 'Alma', kind: 'heads-up', due: '2027-06-23', late: false },
        { tree: 'Other', kind: 'heads-up', due: '2027-06-23', late: false },
      ],
    ]);
  });

  it('leaving a tree alone can be undone', async () => {
    const [headsUp] = await goTo('2026-06-25');
    const left = await press(headsUp as Reply, 'Leave it this year');
    await press(left, 'Undo');
    expect(await goTo('2026-07-10')).toMatchObject([{ data: { items: [{ kind: 'decision' }] } }]);
  });

  it.each([
    ['Fruitlets', 'fruitlets', /figs about/],
    ['Only branches', 'branched', /Wait|Tip|tip/],
    ['Nothing yet', 'no-fruitlets', /Look for fruitlets/],
  ])('a second look answered with "%s" is logged, and says what to do next', async (label, kind, next) => {
    const tipped = await decision();
    await press(tipped, 'I tipped it');
    const [look] = await goTo('2026-07-15');
    const answer = await press(look as Reply, label);
    expect(answer.data.logged).toMatchObject([{ tree: 'Alma', kind, on: '2026-07-15' }]);
    expect(answer.text).toMatch(next);
    expect(await goTo('2026-08-31')).toEqual([]);
  });

  it('nobody else can answer', async () => {
    const other = await Grower.join(opened.db, clock, {}, grower.club);
    const nudge = await decision();
    for (const { label } of nudge.buttons) {
      expect(await press(nudge, label, other)).toMatchObject({ ok: false, data: { error: 'not-yours' } });
    }
    expect(await onRecord()).toEqual([]);
  });

  it('buttons with nonsense in them answer politely', async () => {
    const context = await grower.context();
    for (const action of [
      'showing:',
      'showing:x',
      'later:99999999999',
      'shoots:1:many',
      'nudges:maybe',
      'leave:-1',
    ]) {
      expect(await desk.pressButton(context, action)).toMatchObject({ ok: false });
    }
  });

  it('a silent member can turn nudges off or keep them', async () => {
    await goTo('2027-06-22');
    const [asked] = await goTo('2027-06-23');
    await press(asked as Reply, 'Keep them');
    expect(await goTo('2027-07-07')).toMatchObject([{ data: { items: [{ kind: 'decision' }] } }]);
    expect(await press(asked as Reply, 'Turn nudges off')).toMatchObject({ data: { nudges: 'off' } });
    expect(await goTo('2029-01-01')).toEqual([]);
  });

  it('a message about very many trees opens the answers to each', async () => {
    for (let i = 2; i <= 9; i++) await grower.add(`Pot ${i}`);
    const nudge = await decision();
    const opens = await press(nudge, 'Answer for Pot 7');
    expect(opens.visibility).toBe('only-you');
    await press(opens, 'I tipped it');
    expect(await onRecord()).toMatchObject([{ kind: 'tipped' }]);
  });
});
