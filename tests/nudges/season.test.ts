import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SteppedClock } from '../../src/clock.ts';
import { addDays, day, later, monthDay } from '../../src/engine/day.ts';
import { nextLookOn, runDay } from '../../src/nudges/run-day.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs } from '../../src/records/schema.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';
import { Grower, KeepingMessenger } from './grower.ts';

describe.each(DATABASE_KINDS)('a season of nudges (%s)', (kind) => {
  let opened: OpenedDatabase;
  let clock: SteppedClock;
  let messenger: KeepingMessenger;

  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    await opened.db.delete(clubs);
    clock = new SteppedClock(day('2026-06-01'));
    messenger = new KeepingMessenger();
  });

  const join = (garden = {}) => Grower.join(opened.db, clock, garden);

  /** Goes to `to` as the terminal does, and gives what was sent on the way as `day: items`. */
  async function goTo(to: string): Promise<string[]> {
    const seen: string[] = [];
    const run = async () => {
      await runDay(opened.db, clock, messenger);
      for (const items of messenger.take()) seen.push(`${clock.today()}: ${items.join(', ')}`);
    };
    await run();
    while (clock.today() < to) {
      const next = await nextLookOn(opened.db);
      clock.moveTo(next === null || next > to ? day(to) : later(next, addDays(clock.today(), 1)));
      await run();
    }
    return seen;
  }

  it('comes once each: heads-up, decision, frost and dormant on a pot without fruit', async () => {
    const grower = await join({ firstFrost: monthDay('11-15') });
    await grower.add('Pot 3', { kept: 'pot' });
    expect(await goTo('2026-12-31')).toEqual([
      '2026-06-23: Pot 3 heads-up 2026-06-23',
      '2026-07-07: Pot 3 decision 2026-07-07',
      '2026-11-01: Pot 3 frost 2026-11-01',
      '2026-12-30: Pot 3 dormant 2026-12-30',
    ]);
    expect(await goTo('2026-12-31')).toEqual([]);
  });

  it('goes on in the next season', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    expect(await goTo('2026-08-01')).toEqual([
      '2026-06-23: Alma heads-up 2026-06-23',
      '2026-07-07: Alma decision 2026-07-07',
    ]);
    await grower.note(tree, 'remark');
    expect(await goTo('2027-07-31')).toEqual([
      '2027-06-23: Alma heads-up 2027-06-23',
      '2027-07-07: Alma decision 2027-07-07',
    ]);
  });

  it('says nothing of dates that were past when the tree was added', async () => {
    const grower = await join();
    clock.moveTo(day('2026-07-20'));
    await grower.add('Alma');
    expect(await goTo('2026-12-31')).toEqual([]);
  });

  it('says nothing of dates that were past when the season was first known', async () => {
    const grower = await join({ heatEnd: null, firstFrost: monthDay('11-15') });
    await grower.add('Alma');
    clock.moveTo(day('2026-07-20'));
    await grower.change({ heatEnd: monthDay('10-15') });
    expect(await goTo('2026-12-01')).toEqual([]);
  });

  it('is due again when a later change moves a past date ahead', async () => {
    const grower = await join();
    clock.moveTo(day('2026-07-20'));
    const tree = await grower.add('Alma');
    await grower.change({ heatEnd: monthDay('11-10') });
    expect(await grower.lookOn(tree)).toBe('2026-08-02');
    expect(await goTo('2026-12-31')).toEqual(['2026-08-02: Alma decision 2026-08-02']);
  });

  it('is due at once when a later change moves the decision date into the past', async () => {
    const grower = await join({ heatEnd: monthDay('11-10') });
    clock.moveTo(day('2026-07-10'));
    await grower.add('Alma');
    await grower.change({ heatEnd: monthDay('10-15') });
    expect(await goTo('2026-07-10')).toEqual(['2026-07-10: Alma decision 2026-07-10']);
  });

  it('is not due when the change makes it too late for fruit', async () => {
    const grower = await join({ heatEnd: monthDay('11-10') });
    clock.moveTo(day('2026-08-01'));
    await grower.add('Alma');
    await grower.change({ heatEnd: monthDay('09-10') });
    expect(await goTo('2026-12-31')).toEqual([]);
  });

  it('a note of fruitlets settles the decision, and undoing it brings the nudge back', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    await goTo('2026-07-05');
    const note = await grower.note(tree, 'fruitlets');
    expect(await grower.lookOn(tree)).toBe('2026-10-03');
    await grower.undo(note);
    expect(await grower.lookOn(tree)).toBe('2026-07-07');
    const again = await grower.note(tree, 'fruitlets');
    expect(await goTo('2026-07-12')).toEqual([]);
    await grower.undo(again);
    expect(await goTo('2026-07-12')).toEqual(['2026-07-12: Alma decision 2026-07-12']);
  });

  it('fruitlets that all dropped re-open the decision', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    await grower.note(tree, 'fruitlets');
    expect(await goTo('2026-07-12')).toEqual([]);
    await grower.note(tree, 'dropped');
    expect(await goTo('2026-07-12')).toEqual(['2026-07-12: Alma decision 2026-07-12']);
  });

  it('brebas in May leave the decision open', async () => {
    clock.moveTo(day('2026-05-02'));
    const grower = await join();
    const tree = await grower.add('Alma');
    await grower.note(tree, 'fruitlets');
    expect(await goTo('2026-07-08')).toEqual([
      '2026-06-23: Alma heads-up 2026-06-23',
      '2026-07-07: Alma decision 2026-07-07',
    ]);
  });

  it('a sent decision is not sent again, whatever moves', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    await goTo('2026-07-07');
    const note = await grower.note(tree, 'fruitlets');
    await grower.undo(note);
    await grower.change({ cautionDays: 5 });
    await grower.change({ heatEnd: monthDay('11-20'), cautionDays: 0 });
    expect(await goTo('2026-12-31')).toEqual([]);
  });

  it('looks again eight days after a tip, and not when a result was logged', async () => {
    const grower = await join();
    const [one, two] = [await grower.add('One'), await grower.add('Two')];
    await goTo('2026-07-07');
    await grower.note(one, 'tipped');
    await grower.note(two, 'tipped');
    expect(await goTo('2026-07-14')).toEqual([]);
    await grower.note(two, 'fruitlets');
    expect(await goTo('2026-08-31')).toEqual(['2026-07-15: One second-look 2026-07-15']);
  });

  it('looks again after a second tip, and once only after a tip that was put right', async () => {
    const grower = await join({ heatEnd: monthDay('11-30') });
    const tree = await grower.add('Alma');
    await grower.note(tree, 'tipped');
    expect(await goTo('2026-06-12')).toEqual(['2026-06-09: Alma second-look 2026-06-09']);
    await grower.note(tree, 'no-fruitlets');
    const second = await grower.note(tree, 'tipped');
    expect(await goTo('2026-06-21')).toEqual(['2026-06-20: Alma second-look 2026-06-20']);
    await grower.undo(second);
    await grower.note(tree, 'tipped', '2026-06-11');
    expect(await goTo('2026-07-31')).toEqual([]);
  });

  it('a tip told of ten days later is looked at the day after', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    await goTo('2026-06-20');
    await grower.note(tree, 'tipped', '2026-06-10');
    expect(await goTo('2026-07-31')).toEqual(['2026-06-21: Alma second-look 2026-06-21']);
  });

  it('watches the ripe window from its first day until something is picked', async () => {
    const grower = await join();
    const [one, two] = [await grower.add('One'), await grower.add('Two')];
    await grower.note(one, 'fruitlets', '2026-05-30');
    await grower.note(two, 'fruitlets', '2026-05-30');
    clock.moveTo(day('2026-08-20'));
    await grower.note(two, 'picked');
    expect(await goTo('2026-10-30')).toEqual(['2026-08-28: One ripe-watch 2026-08-28']);
  });

  it('never tells to tip a San Pedro kind or a tree kept for its wood', async () => {
    const grower = await join();
    await grower.add('King', { cultivar: 'King' });
    await grower.add('Mother', { purpose: 'wood' });
    expect(await goTo('2026-12-31')).toEqual([]);
  });

  it('a retired tree is quiet', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    await grower.edit(tree, { retiredOn: clock.today() });
    expect(await goTo('2027-12-31')).toEqual([]);
  });

  it('a tree left alone this season is asked about in the next', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    await goTo('2026-06-25');
    await grower.edit(tree, { leftAloneIn: '2026' });
    expect(await goTo('2027-06-25')).toEqual(['2027-06-23: Alma heads-up 2027-06-23']);
  });

  it('keeps to seasons of the south: heat end 20 March, decision on 10 December', async () => {
    clock.moveTo(day('2026-10-01'));
    const grower = await join({
      heatEnd: monthDay('03-20'),
      firstFrost: monthDay('06-10'),
      hemisphere: 'S',
      zone: 'Australia/Adelaide',
    });
    await grower.add('Late');
    expect(await goTo('2027-08-31')).toEqual([
      '2026-11-26: Late heads-up 2026-11-26',
      '2026-12-10: Late decision 2026-12-10',
      '2027-07-25: Late dormant 2027-07-25',
    ]);
  });

  it('has one message for all of a member, and one for each member', async () => {
    const ana = await join();
    await ana.add('One');
    await ana.add('Two');
    const ben = await join();
    await ben.add('Three');
    expect(await goTo('2026-06-23')).toEqual([
      '2026-06-23: One heads-up 2026-06-23, Two heads-up 2026-06-23',
      '2026-06-23: Three heads-up 2026-06-23',
    ]);
  });

  it('what comes due after the message of the morning waits for the next', async () => {
    const grower = await join({ heatEnd: monthDay('11-10') });
    await grower.add('Soon', { ripening: 'early', spanFrom: 100, spanTo: 130 });
    const [first] = await goTo('2026-06-09');
    expect(first).toMatch(/heads-up/);
    await goTo('2026-06-23');
    await grower.add('Late');
    await grower.change({ heatEnd: monthDay('09-20') });
    const sent = await goTo('2026-06-30');
    expect(new Set(sent.map((line) => line.slice(0, 10))).size).toBe(sent.length);
  });

  it('nudges turned off are not made up for, and come again once on', async () => {
    const grower = await join({ nudgeWay: 'off' });
    await grower.add('Alma');
    expect(await goTo('2026-07-01')).toEqual([]);
    await grower.change({ nudgeWay: 'direct' });
    expect(await goTo('2026-07-31')).toEqual(['2026-07-07: Alma decision 2026-07-07']);
  });

  it('asks a member who was silent for a season, and is silent then until they speak', async () => {
    const grower = await join();
    const tree = await grower.add('Alma');
    await goTo('2027-06-22');
    clock.moveTo(day('2027-06-23'));
    await runDay(opened.db, clock, messenger);
    const [last] = messenger.stored.splice(0);
    expect(last?.reply.buttons.map(({ label }) => label).slice(-2)).toEqual(['Turn nudges off', 'Keep them']);
    expect(await goTo('2028-12-31')).toEqual([]);
    await grower.note(tree, 'remark');
    await grower.change({ lastSeenOn: clock.today() });
    expect(await goTo('2029-06-30')).toEqual(['2029-06-23: Alma heads-up 2029-06-23']);
  });
});
