import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  claimInteraction,
  claimMessage,
  finishMessage,
  forgetHandled,
} from '../../../src/channels/discord/claims.ts';
import type { OpenedDatabase } from '../../../src/records/database.ts';
import { openEmbedded } from '../../../src/records/open.ts';
import { handled, nudges } from '../../../src/records/schema.ts';
import { DiscordClub } from '../../support/discord/club.ts';

let opened: OpenedDatabase;
beforeAll(async () => {
  opened = await openEmbedded('memory');
});
afterAll(() => opened.close());

const at = (seconds: number) => new Date(Date.UTC(2026, 6, 5) + seconds * 1000);

describe('pitfall 16, 24.8-day timers', () => {
  it('a nudge due in more than a year sets no timer and is not sent now', async () => {
    const warnings: string[] = [];
    const onWarning = ({ name }: Error) => void warnings.push(name);
    process.on('warning', onWarning);
    const club = await DiscordClub.open({ opened, settings: { role: 'all' } });
    await club.run('garden set', { heat_end: 'October 15' });
    await club.run('tree add', { name: 'Late one', ripening: 'late' });
    const [before] = [club.discord.posted.length];
    await new Promise((resolve) => setTimeout(resolve, 1500));
    expect(club.discord.posted).toHaveLength(before);
    expect((await opened.db.select().from(nudges)).filter(({ state }) => state === 'sent')).toEqual([]);
    expect(warnings.filter((name) => name === 'TimeoutOverflowWarning')).toEqual([]);
    process.off('warning', onWarning);
    await club.close();
  }, 30_000);
});

describe('pitfall 17, lost on restart', () => {
  it('a message that a process died over is taken by the next, at once on return, else after two minutes', async () => {
    const { db } = opened;
    expect(await claimMessage(db, '1', at(0), false)).toBe(true);
    expect(await claimMessage(db, '1', at(30), false)).toBe(false);
    expect(await claimMessage(db, '1', at(30), true)).toBe(true);
    expect(await claimMessage(db, '1', at(60), false)).toBe(false);
    expect(await claimMessage(db, '1', at(200), false)).toBe(true);
  });

  it('one that was answered is never taken again, whoever asks', async () => {
    const { db } = opened;
    await claimMessage(db, '2', at(0), false);
    await finishMessage(db, '2', at(1));
    expect(await claimMessage(db, '2', at(9999), true)).toBe(false);
  });

  it('of many that ask at once, one gets it', async () => {
    const { db } = opened;
    const messages = await Promise.all(Array.from({ length: 9 }, () => claimMessage(db, '3', at(0), false)));
    const interactions = await Promise.all(Array.from({ length: 9 }, () => claimInteraction(db, '3', at(0))));
    expect([messages, interactions].map((all) => all.filter(Boolean).length)).toEqual([1, 1]);
  });

  it('a server that the cache does not know yet is not taken for one that was left', async () => {
    const club = await DiscordClub.open({ opened });
    club.discord.gateway.dropForGood();
    await club.discord.until(() => club.discord.gateway.identifies.length > 1, 15_000);
    await club.run('tree add', { name: 'Still here' });
    const found = await opened.db.query.clubs.findFirst({
      where: (c, { eq }) => eq(c.platformId, club.guild.id),
    });
    expect(found?.leftAt).toBeNull();
    await club.close();
  }, 30_000);

  it('claims are forgotten after a week, not before', async () => {
    const { db } = opened;
    await claimInteraction(db, '9', at(0));
    await forgetHandled(db, at(6 * 86_400));
    expect((await db.select().from(handled)).some(({ id }) => id === 'i:9')).toBe(true);
    await forgetHandled(db, at(8 * 86_400));
    expect((await db.select().from(handled)).some(({ id }) => id === 'i:9')).toBe(false);
  });
});
