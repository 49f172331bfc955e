import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { fetchAttachment } from '../../../src/channels/discord/options.ts';
import { DiscordClub } from '../../support/discord/club.ts';

let club: DiscordClub;
beforeAll(async () => {
  club = await DiscordClub.open();
});
afterEach(() => {
  club.discord.cdnFault = null;
  club.discord.assertClean();
});
afterAll(() => club.close());

const csv = { name: 'trees.csv', bytes: Buffer.from('name,cultivar\nPot 1,Alma\n') };
const importTrees = () => club.run('tree import', { file: csv });

describe('an attached file', () => {
  it('is fetched and used', async () => {
    await importTrees();
    expect((await club.run('tree list')).all).toContain('Pot 1');
  });

  it.each([
    ['redirect', 'could not be fetched'],
    ['hang', 'could not be fetched'],
    ['endless', 'larger than 10 MB'],
  ] as const)('from a CDN that answers with %s does no harm', async (fault, words) => {
    club.discord.cdnFault = fault;
    expect((await importTrees()).text).toContain(words);
  });

  it.each([
    'http://127.0.0.1:9/attachments/1/2/x.csv',
    'https://cdn.discordapp.com.evil.example/x.csv',
    'https://evil.example/https://cdn.discordapp.com/x.csv',
    'http://cdn.discordapp.com/x.csv',
    'https://user@evil.example/x.csv',
    'file:///etc/passwd',
    'not an address',
  ])('is fetched from Discord’s own hosts only, not from %s', async (url) => {
    const rules = { cdn: null, timeoutMs: 200 };
    await expect(fetchAttachment({ name: 'x.csv', url, size: 1 }, rules)).rejects.toThrow(
      /does not come from Discord/,
    );
  });

  it('that is announced as too large is not fetched at all', async () => {
    const file = { name: 'x.csv', url: `${club.discord.cdn}/attachments/1/2/x.csv`, size: 11 * 1024 * 1024 };
    await expect(fetchAttachment(file, { cdn: club.discord.cdn, timeoutMs: 200 })).rejects.toThrow(
      /larger than 10 MB/,
    );
  });
});
