import { readFileSync } from 'node:fs';
import { parse } from 'dotenv';
import { describe, expect, it } from 'vitest';
import { StartError } from '../src/errors.ts';
import { readSettings } from '../src/settings.ts';

function failureOf(env: Record<string, string>, argv: string[] = []): string {
  try {
    readSettings(env, argv);
  } catch (error) {
    expect(error).toBeInstanceOf(StartError);
    return (error as Error).message;
  }
  throw new Error('the settings were taken');
}

describe('settings', () => {
  it('need nothing: a terminal club in .data', () => {
    expect(readSettings({}, [])).toEqual({
      discordToken: null,
      discordGuild: null,
      discordApi: 'https://discord.com/api',
      discordCdn: null,
      logChannel: { allowed: false, channelId: null },
      databaseUrl: undefined,
      dataFolder: '.data',
      role: 'all',
      shards: 1,
      healthPort: null,
      logLevel: 'info',
      weather: { noaa: 'https://www.ncei.noaa.gov', power: 'https://power.larc.nasa.gov' },
      today: null,
      member: 'me',
      json: false,
    });
  });

  it('take an empty variable as one that is not set', () => {
    expect(readSettings({ DISCORD_TOKEN: '', DATABASE_URL: '  ' }, [])).toEqual(readSettings({}, []));
  });

  it('read .env.example as the defaults it shows', () => {
    const example = parse(readFileSync(new URL('../.env.example', import.meta.url)));
    expect(readSettings(example, [])).toEqual(readSettings({}, []));
  });

  it('read the flags of the terminal', () => {
    expect(
      readSettings({}, ['--today', '2026-07-05', '--data', 'memory', '--member', 'ana', '--json']),
    ).toMatchObject({ today: '2026-07-05', dataFolder: 'memory', member: 'ana', json: true });
  });

  it('take an address of Discord with or without its version', () => {
    const read = (api: string) => readSettings({ DISCORD_API: api }, []).discordApi;
    expect(read('http://127.0.0.1:99/api/v10/')).toBe('http://127.0.0.1:99/api');
    expect(read('http://127.0.0.1:99/api')).toBe('http://127.0.0.1:99/api');
  });

  it('let a log channel be allowed in general or be one channel', () => {
    const read = (text: string) => readSettings({ DISCORD_LOG_CHANNEL: text }, []).logChannel;
    expect(read('on')).toEqual({ allowed: true, channelId: null });
    expect(read('off')).toEqual({ allowed: false, channelId: null });
    expect(read('123456789012345678')).toEqual({ allowed: true, channelId: '123456789012345678' });
  });

  it.each([
    ['DISCORD_TOKEN', 'two words'],
    ['DISCORD_GUILD', 'my guild'],
    ['DISCORD_API', 'ftp://example.org'],
    ['DISCORD_CDN', 'pictures.example'],
    ['DISCORD_LOG_CHANNEL', 'perhaps'],
    ['DATABASE_URL', 'mysql://u:secret@h/db'],
    ['ROLE', 'boss'],
    ['SHARDS', '0'],
    ['HEALTH_PORT', '65536'],
    ['LOG_LEVEL', 'loud'],
    ['NOAA_API', 'nowhere'],
  ])('refuse a wrong %s in one sentence that does not repeat it', (name, value) => {
    const message = failureOf({ [name]: value });
    expect(message).toMatch(new RegExp(`^${name} .*\\.$`));
    expect(message).not.toContain(value);
  });

  it('refuse a part of the work on a database that cannot be shared', () => {
    expect(failureOf({ ROLE: 'worker' })).toMatch(/^ROLE=worker needs DATABASE_URL/);
  });

  it.each([
    [['--today', 'tomorrow']],
    [['--today', '2026-02-30']],
    [['--data', '']],
    [['--member', ' ']],
    [['--colour']],
    [['stray']],
  ])('refuse the flags %j', (argv) => {
    expect(failureOf({}, argv)).toMatch(/^\S.*\.$/);
  });
});
