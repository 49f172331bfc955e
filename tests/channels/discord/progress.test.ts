import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Services } from '../../../src/club/services.ts';
import { DiscordClub, show } from '../../support/discord/club.ts';

let club: DiscordClub;
let told: ((text: string) => void) | undefined;
let finish: () => void = () => {};
const services: Services = {
  weather: {
    topUpDue: async () => [],
    lookUp: async (_spot, options) => {
      told = options?.onProgress as typeof told;
      await new Promise<void>((resolve) => {
        finish = resolve;
      });
      return { kind: 'unreachable' } as never;
    },
  },
};

beforeAll(async () => {
  club = await DiscordClub.open({ services });
});
afterAll(() => club.close());

it('long work shows how far it has come in its place, and the member’s other commands need not wait', async () => {
  const { discord } = club;
  await club.run('garden set', { lat: 44.1, lon: 9.8 });
  const asked = discord.people.command(club.place(), 'garden weather');
  await discord.until(() => told !== undefined);
  await wait(2600);
  told?.('year 12 of 40');
  await discord.until(() => asked.original !== null);
  expect(show(asked.original!).text).toBe('year 12 of 40');
  expect((await club.run('help')).title).toBe('How Ostiole helps');
  finish();
  await discord.until(() => (asked.original?.api.embeds.length ?? 0) > 0 || asked.followUps.length > 0);
  discord.assertClean();
}, 30_000);
