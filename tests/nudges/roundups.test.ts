import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import type { DeliveryOutcome, Messenger, Outgoing } from '../../src/nudges/messenger.ts';
import { nextRoundupDay, postRoundups } from '../../src/nudges/roundups.ts';
import { updateClub } from '../../src/records/clubs.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, roundups } from '../../src/records/schema.ts';
import { ClubRecords } from '../support/club-records.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';

/** Keeps what it is given and answers as it is told. */
class Box implements Messenger {
  readonly messages: Outgoing[] = [];
  answer: DeliveryOutcome = { kind: 'sent', channelId: 'c', messageId: 'm' };

  async send(message: Outgoing): Promise<DeliveryOutcome> {
    this.messages.push(message);
    return this.answer;
  }
}

describe.each(DATABASE_KINDS)('posted roundups, on %s', (kind) => {
  let opened: OpenedDatabase;
  let club: ClubRecords;
  let box: Box;

  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    await opened.db.delete(clubs);
    box = new Box();
    // A Monday; roundups go out on Sundays.
    club = new ClubRecords(opened.db, '2026-06-15');
  });

  const post = async (date: string) => {
    club.clock.moveTo(day(date));
    box.messages.length = 0;
    await postRoundups(opened.db, club.clock, box);
    return box.messages.map(({ reply }) => reply.data.period);
  };

  async function tellOfFruit(date: string, name = 'Gate') {
    club.clock.moveTo(day(date));
    const ana = await club.grower('Ana');
    const tree = await club.tree(ana, name, { cultivar: 'Celeste' });
    await club.saw(ana, tree, 'fruitlets', date, { crop: 'main' });
    return { ana, tree };
  }

  it('tell of the week on the club’s day, once, to the club, with a nonce and a picture', async () => {
    await tellOfFruit('2026-06-16');
    expect(await post('2026-06-20')).toEqual([]);
    expect(await post('2026-06-21')).toEqual(['2026-06-14/2026-06-20']);
    const [message] = box.messages;
    expect(message).toMatchObject({ member: null, way: 'channel' });
    expect(message?.nonce.length).toBeLessThanOrEqual(25);
    expect(message?.reply.files).toHaveLength(1);
    expect(await post('2026-06-21')).toEqual([]);
    expect(await post('2026-06-22')).toEqual([]);
  });

  it('tell what was noted late in the week after, and once only', async () => {
    const { ana, tree } = await tellOfFruit('2026-06-16');
    await post('2026-06-21');
    await club.saw(ana, tree, 'leafed-out', '2026-06-02');
    expect(await post('2026-06-28')).toEqual(['2026-06-21/2026-06-27']);
    const names = box.messages[0]?.reply.fields.map(({ name }) => name);
    expect(names).toContain('Leafed out');
    expect(names).not.toContain('First fruitlets');
  });

  it('pass over a quiet week and the weeks of winter', async () => {
    const { ana, tree } = await tellOfFruit('2026-06-16');
    await post('2026-06-21');
    expect(await post('2026-06-28')).toEqual([]);
    club.clock.moveTo(day('2027-01-20'));
    await club.saw(ana, tree, 'picked', '2027-01-20', { crop: 'main', count: 1 });
    // Only the season's own, which came due in December.
    expect(await post('2027-01-24')).toEqual(['2026']);
  });

  it('follow the club’s choice of day, or none', async () => {
    const { ana } = await tellOfFruit('2026-06-16');
    await updateClub(opened.db, ana.clubId, { roundupDay: 3 });
    expect(await post('2026-06-17')).toEqual(['2026-06-10/2026-06-16']);
    await tellOfFruit('2026-06-18', 'Porch');
    await updateClub(opened.db, ana.clubId, { roundupDay: null });
    expect(await post('2026-06-24')).toEqual([]);
  });

  it('tell of the season when its last garden has gone dormant, once', async () => {
    // First frost on 1 November; dormant 45 days later.
    await tellOfFruit('2026-06-16');
    expect(await post('2026-12-15')).toEqual([]);
    expect(await post('2026-12-16')).toEqual(['2026']);
    expect(await post('2026-12-17')).toEqual([]);
    expect(await post('2027-01-05')).toEqual([]);
  });

  it('try again after a fault, with the same nonce, and stop for good when the channel is gone', async () => {
    const { ana } = await tellOfFruit('2026-06-16');
    box.answer = { kind: 'retry', reason: '500' };
    await post('2026-06-21');
    const nonce = box.messages[0]?.nonce;
    // Waits until its time has come.
    expect(await post('2026-06-21')).toEqual([]);
    await opened.db.update(roundups).set({ leasedUntil: new Date(0) });
    box.answer = { kind: 'sent', channelId: 'c', messageId: 'm' };
    expect(await post('2026-06-21')).toHaveLength(1);
    expect(box.messages[0]?.nonce).toBe(nonce);

    await tellOfFruit('2026-06-25', 'Porch');
    box.answer = { kind: 'dead', reason: 'the channel is gone' };
    await post('2026-06-28');
    await opened.db.update(roundups).set({ leasedUntil: new Date(0) });
    expect(await post('2026-06-28')).toEqual([]);
    const [row] = await opened.db.select().from(clubs);
    expect(row).toMatchObject({ id: ana.clubId, trouble: 'the channel is gone' });
  });

  it('are posted once by many at the same moment', async () => {
    await tellOfFruit('2026-06-16');
    club.clock.moveTo(day('2026-06-21'));
    await Promise.all(Array.from({ length: 5 }, () => postRoundups(opened.db, club.clock, box)));
    expect(box.messages).toHaveLength(1);
  });

  it('are looked for on their days', async () => {
    await tellOfFruit('2026-06-16');
    expect(await nextRoundupDay(opened.db, day('2026-06-16'))).toBe('2026-06-21');
    expect(await nextRoundupDay(opened.db, day('2026-12-14'))).toBe('2026-12-16');
  });
});
