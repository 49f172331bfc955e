import { eq, sql } from 'drizzle-orm';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { deliverMorning } from '../../src/nudges/deliver.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, nudges, type Tree } from '../../src/records/schema.ts';
import { InstantClock } from '../support/instant-clock.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';
import { Grower, KeepingMessenger } from './grower.ts';
import { round } from './mornings.ts';

const EIGHT_ON_7_JULY = '2026-07-07T12:00Z';

describe.each(DATABASE_KINDS)('delivery of a morning (%s)', (kind) => {
  let opened: OpenedDatabase;
  let clock: InstantClock;
  let messenger: KeepingMessenger;
  let grower: Grower;
  let tree: Tree;

  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    await opened.db.delete(clubs);
    clock = new InstantClock('2026-06-30T12:00Z');
    messenger = new KeepingMessenger();
    grower = await Grower.join(opened.db, clock);
    tree = await grower.add('Alma');
    clock.set(EIGHT_ON_7_JULY);
  });

  const rows = () => opened.db.select().from(nudges).where(eq(nudges.kind, 'decision'));
  /** As if the lease's time had passed. */
  const endLeases = () =>
    opened.db
      .update(nudges)
      .set({ leasedUntil: sql`now() - interval '1 second'` })
      .where(eq(nudges.state, 'leased'));

  it('sends what is due, with its buttons and its nonce, and keeps the message', async () => {
    expect(await round(opened.db, clock, messenger)).toEqual([{ kind: 'sent' }]);
    const [message] = messenger.stored;
    expect(message?.nonce).toBe(`n${grower.memberId}-20260707`);
    expect(message?.nonce.length).toBeLessThanOrEqual(25);
    expect(message?.reply.data).toEqual({
      items: [{ tree: 'Alma', kind: 'decision', due: '2026-07-07', late: false }],
    });
    expect(message?.reply.buttons.map(({ label }) => label)).toEqual([
      'Fruitlets are showing',
      'I tipped it',
      'Remind me in 7 days',
      'Leave it this year',
    ]);
    expect(message?.reply.text).toContain('sap');
    expect(await rows()).toMatchObject([{ state: 'sent', messageId: '0', token: null, attempt: 1 }]);
  });

  it('two days late says so, and sends only what is still true', async () => {
    const tipped = await grower.add('Tipped');
    const past = await grower.add('Past');
    clock.set('2026-07-06T20:00Z');
    await grower.note(tipped, 'tipped');
    await grower.edit(past, { retiredOn: await grower.today() });
    clock.set('2026-07-09T12:00Z');
    await round(opened.db, clock, messenger);
    expect(messenger.stored[0]?.reply.text).toContain('late by 2 days');
    expect(messenger.take()).toEqual([['Alma decision 2026-07-07 late']]);
  });

  it('what stopped being true between plan and sending is called off', async () => {
    clock.set('2026-07-07T06:00Z');
    await round(opened.db, clock, messenger);
    await opened.db.execute(sql`insert into observation (member_id, tree_id, kind, day, text, by, created_at)
      values (${grower.memberId}, ${tree.id}, 'fruitlets', '2026-07-07', '', '', now())`);
    clock.set(EIGHT_ON_7_JULY);
    expect(await round(opened.db, clock, messenger)).toEqual([{ kind: 'nothing' }]);
    expect(messenger.attempts).toBe(0);
    expect(await rows()).toMatchObject([{ state: 'cancelled' }]);
  });

  it('tries the very same message again after a fault, adding nothing to it', async () => {
    messenger.next = () => ({ kind: 'retry', reason: '500' });
    const [outcome] = await round(opened.db, clock, messenger);
    expect(outcome).toEqual({ kind: 'retry', afterMs: 5000, reason: '500' });
    expect(await round(opened.db, clock, messenger)).toMatchObject([
      { kind: 'retry', reason: 'held by another' },
    ]);
    expect(messenger.attempts).toBe(1);
    const other = await grower.add('Other');
    await grower.note(other, 'tipped', '2026-06-29');
    await endLeases();
    messenger.next = () => ({ kind: 'sent', channelId: '1', messageId: '7' });
    await round(opened.db, clock, messenger);
    expect(messenger.stored[0]?.nonce).toBe(`n${grower.memberId}-20260707`);
    expect(messenger.take()).toEqual([['Alma decision 2026-07-07']]);
  });

  it('waits as long as the platform asks', async () => {
    messenger.next = () => ({ kind: 'retry', reason: '429', afterMs: 31_500 });
    expect(await round(opened.db, clock, messenger)).toMatchObject([{ kind: 'retry', afterMs: 32_000 }]);
  });

  it('a send that throws is a fault to be tried again, not a loss', async () => {
    messenger.next = () => Promise.reject(new Error('socket hang up'));
    expect(await round(opened.db, clock, messenger)).toMatchObject([
      { kind: 'retry', reason: 'socket hang up' },
    ]);
    expect(await rows()).toMatchObject([{ state: 'leased', error: 'socket hang up' }]);
  });

  it('goes the way the member chose', async () => {
    await grower.change({ nudgeWay: 'direct' });
    await round(opened.db, clock, messenger);
    expect(messenger.stored.map(({ way }) => way)).toEqual(['direct']);
  });

  it('is dead when every way is closed, and is not tried again', async () => {
    messenger.next = () => ({ kind: 'dead', reason: '10003' });
    expect(await round(opened.db, clock, messenger)).toEqual([{ kind: 'dead', reason: '10003' }]);
    expect(await rows()).toMatchObject([{ state: 'dead', error: '10003' }]);
    await round(opened.db, clock, messenger);
    expect(messenger.attempts).toBe(1);
  });

  it('a refused assistant keeps everything for later', async () => {
    messenger.next = () => ({ kind: 'stop', reason: '401' });
    expect(await round(opened.db, clock, messenger)).toEqual([{ kind: 'stop', reason: '401' }]);
    expect(await rows()).toMatchObject([{ state: 'pending', nonce: null, token: null }]);
    messenger.next = () => ({ kind: 'sent', channelId: '1', messageId: '1' });
    await round(opened.db, clock, messenger);
    expect(messenger.take()).toEqual([['Alma decision 2026-07-07']]);
  });

  it('whoever lost the lease while sending does not complete for the one who has it now', async () => {
    let second: Promise<unknown> = Promise.resolve();
    messenger.next = async () => {
      await endLeases();
      messenger.next = () => ({ kind: 'sent', channelId: '1', messageId: 'second' });
      second = deliverMorning({ db: opened.db, clock, messenger }, grower.memberId);
      await second;
      return { kind: 'sent', channelId: '1', messageId: 'first' };
    };
    await round(opened.db, clock, messenger);
    await second;
    expect(await rows()).toMatchObject([{ state: 'sent', messageId: 'second', attempt: 2 }]);
    expect(new Set(messenger.stored.map(({ nonce }) => nonce)).size).toBe(1);
  });

  it('a club that has left is not written to', async () => {
    await opened.db.update(clubs).set({ leftAt: clock.now() });
    await round(opened.db, clock, messenger);
    expect(messenger.attempts).toBe(0);
  });

  it('many trees share the room that a message has', async () => {
    for (let i = 2; i <= 40; i++) await grower.add(`Pot ${i} ${'x'.repeat(80)}`);
    await round(opened.db, clock, messenger);
    const [message] = messenger.stored;
    expect(message?.reply.buttons.length).toBeLessThanOrEqual(25);
    expect(message?.reply.text.length).toBeLessThanOrEqual(4096);
    for (const { label, action } of message?.reply.buttons ?? []) {
      expect(label.length).toBeLessThanOrEqual(80);
      expect(action.length).toBeLessThanOrEqual(90);
    }
    expect(message?.reply.data.items).toHaveLength(40);
  });
});

describe('delivery by several at once', () => {
  it('ten who deliver the same mornings at once send each once', async () => {
    const opened = await openTestDatabase('postgres', { maxConnections: 20 });
    const clock = new InstantClock('2026-06-30T12:00Z');
    const messenger = new KeepingMessenger();
    const growers = await Promise.all(Array.from({ length: 10 }, () => Grower.join(opened.db, clock)));
    for (const grower of growers) {
      await grower.add('One');
      await grower.add('Two');
    }
    clock.set(EIGHT_ON_7_JULY);
    await Promise.all(Array.from({ length: 10 }, () => round(opened.db, clock, messenger)));
    expect(messenger.stored.map(({ nonce }) => nonce).sort()).toEqual(
      growers.map(({ memberId }) => `n${memberId}-20260707`).sort(),
    );
    for (const items of messenger.take()) expect(items).toHaveLength(2);
    await opened.close();
  });

  it('gets by with one connection', async () => {
    const opened = await openTestDatabase('postgres', { maxConnections: 1 });
    const clock = new InstantClock('2026-06-30T12:00Z');
    const messenger = new KeepingMessenger();
    const grower = await Grower.join(opened.db, clock);
    await grower.add('Alma');
    clock.set(EIGHT_ON_7_JULY);
    await Promise.all([round(opened.db, clock, messenger), round(opened.db, clock, messenger)]);
    expect(messenger.take()).toEqual([['Alma decision 2026-07-07']]);
    await opened.close();
  });
});
