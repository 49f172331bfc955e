import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkHealth } from '../../../src/channels/discord/health.ts';
import { watchGateway } from '../../../src/channels/discord/watchdog.ts';
import type { OpenedDatabase } from '../../../src/records/database.ts';
import { openEmbedded } from '../../../src/records/open.ts';
import { DiscordClub } from '../../support/discord/club.ts';

let opened: OpenedDatabase;
beforeAll(async () => {
  opened = await openEmbedded('memory');
});
afterAll(() => opened.close());

async function withClub(
  work: (club: DiscordClub) => Promise<void>,
  options: Parameters<typeof DiscordClub.prepare>[0] = {},
): Promise<void> {
  const club = await DiscordClub.prepare({ opened, ...options });
  try {
    await work(club);
  } finally {
    await club.close();
  }
}

describe('a start that cannot go on says why in one sentence', () => {
  it('a wrong token', () =>
    withClub(
      async (club) => {
        await expect(club.start()).rejects.toThrow(/^DISCORD_TOKEN is not accepted by Discord;.*\.$/);
      },
      { env: { DISCORD_TOKEN: 'wrong.token' } },
    ));

  it('pitfall 12, intents: a log channel without the intent ticked (4014)', () =>
    withClub(
      async (club) => {
        await expect(club.start()).rejects.toThrow(/^DISCORD_LOG_CHANNEL needs the Message Content Intent/);
      },
      { env: { DISCORD_LOG_CHANNEL: 'on' } },
    ));

  it('Discord out of reach', () =>
    withClub(
      async (club) => {
        await expect(club.start()).rejects.toThrow(
          /^Discord does not answer at http:\/\/127\.0\.0\.1:9\/api/,
        );
      },
      { env: { DISCORD_API: 'http://127.0.0.1:9/api' } },
    ));

  it.each([0, 3])('pitfall 11, identify budget: %i logins left', (left) =>
    withClub(async (club) => {
      club.discord.rest.identifiesLeft = left;
      await expect(club.start()).rejects.toThrow(new RegExp(`allows only ${left} more logins`));
      expect(club.discord.gateway.identifies).toEqual([]);
    }),
  );

  it('a port that is taken', () =>
    withClub(async (club) => {
      const port = Number(new URL(club.discord.api).port);
      const settings = { healthPort: port };
      const second = await DiscordClub.prepare({ opened, settings });
      await expect(second.start()).rejects.toThrow(/^HEALTH_PORT \d+ cannot be listened on/);
      await second.close();
    }));
});

describe('/healthz', () => {
  it('tells of the gateway, the database and the oldest overdue nudge', () =>
    withClub(
      async (club) => {
        const { healthPort } = await club.start();
        const ask = async () => {
          const response = await fetch(`http://127.0.0.1:${healthPort}/healthz`);
          return { status: response.status, body: await response.json() };
        };
        expect(await ask()).toEqual({
          status: 200,
          body: { ok: true, gateway: 'connected', database: 'answers', oldestOverdueNudge: null },
        });
        club.discord.gateway.refuseConnections = true;
        club.discord.gateway.drop();
        const deadline = performance.now() + 5000;
        while ((await ask()).status !== 503 && performance.now() < deadline)
          await new Promise((r) => setTimeout(r, 20));
        expect(await ask()).toMatchObject({ status: 503, body: { gateway: 'disconnected' } });
        club.discord.gateway.refuseConnections = false;
      },
      { settings: { healthPort: 0 } },
    ));

  it('does not wait for a database that is silent', async () => {
    const raw = { query: () => new Promise<never>(() => {}) };
    expect(await checkHealth({ raw, gatewayConnected: null })).toMatchObject({
      ok: false,
      database: 'silent',
    });
  });

  it('tells of a nudge whose day is over', async () => {
    const raw = { query: async () => ({ rows: [{ due: '2026-07-01' }] }) };
    expect(await checkHealth({ raw, gatewayConnected: () => true })).toMatchObject({
      ok: true,
      oldestOverdueNudge: '2026-07-01',
    });
  });
});

describe('the running assistant', () => {
  it('pitfall 8, command deploy: never deploys by itself, and says what differs', () =>
    withClub(async (club) => {
      await club.start();
      await club.discord.until(() => club.logged.some((line) => line.includes('npm run commands')));
      expect(
        club.discord.requests.filter(({ method, path }) => method !== 'GET' && path.includes('/commands')),
      ).toEqual([]);
    }));

  it('pitfall 10, zombie gateway: a watchdog notices that nothing is heard any more', () =>
    withClub(async (club) => {
      const { client } = await club.start();
      const deaf = new Promise<void>((resolve) => {
        const stop = watchGateway(
          client!,
          () => {
            stop();
            resolve();
          },
          { deafAfterMs: 100, lookEveryMs: 20 },
        );
      });
      await deaf;
    }));

  it('ends after what is under way, and answers it', () =>
    withClub(async (club) => {
      await club.start();
      club.discord.faults.add('PATCH', /@original/, { kind: 'delay', ms: 200 });
      const asked = club.discord.people.command(club.place(), 'help');
      await club.discord.until(() => asked.acknowledged !== null);
      await club.stop();
      expect(asked.original).not.toBeNull();
    }));
});
