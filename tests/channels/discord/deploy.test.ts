import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { diffCommands, isEmptyDiff } from '../../../src/channels/discord/command-diff.ts';
import { commandBodies, LOG_AS_NOTE } from '../../../src/channels/discord/commands.ts';
import { runDeployment } from '../../../src/channels/discord/deploy.ts';
import type { CommandDefinition } from '../../../src/club/feature.ts';
import { features } from '../../../src/club/features.ts';
import { readSettings } from '../../../src/settings.ts';
import { checkCommand } from '../../support/discord/limits.ts';
import { checkBody } from '../../support/discord/schemas.ts';
import { type StandIn, startStandIn } from '../../support/discord/stand-in.ts';

const wanted = commandBodies(features.map(({ command }) => command));
const COMMANDS = /\/commands/;

describe('the commands', () => {
  it('are all as Discord’s API description and its limits allow', () => {
    for (const body of wanted) {
      expect(checkBody('command-create', body)).toEqual([]);
      expect(checkCommand(body as never)).toEqual([]);
    }
  });

  it('hold every feature, and "Log as a note" on messages', () => {
    const names = wanted.flatMap(({ name, options }) => {
      const subs = (options ?? []).filter(({ type }) => type === 1);
      return subs.length > 0 ? subs.map((sub) => `${name} ${sub.name}`) : [name];
    });
    expect(names).toEqual([...new Set(features.map(({ command }) => command.name)), LOG_AS_NOTE]);
  });

  it('want Manage Server for /club, which is for servers only, and nothing for the others', () => {
    // Documentation: Permissions, MANAGE_GUILD is 1 << 5. Contexts: 0 a server, 1 the assistant's direct messages.
    const club = wanted.find(({ name }) => name === 'club');
    expect(club).toMatchObject({ default_member_permissions: 32, contexts: [0] });
    for (const body of wanted.filter(({ name }) => name !== 'club')) {
      expect(body.default_member_permissions ?? null).toBeNull();
      expect(body.contexts).toEqual([0, 1]);
    }
  });

  it('offer completion for trees, cultivars and places', () => {
    const all = wanted.flatMap(({ options = [] }) => options.flatMap((o) => [o, ...(o.options ?? [])]));
    const completed = new Set(all.filter(({ autocomplete }) => autocomplete).map(({ name }) => name));
    expect([...completed]).toEqual(expect.arrayContaining(['tree', 'cultivar', 'place']));
  });
});

describe('the difference of commands', () => {
  const definition: CommandDefinition = {
    name: 'note',
    description: 'Log it',
    visibility: 'everyone',
    options: [
      { name: 'text', type: 'text', description: 'what', required: true },
      { name: 'days', type: 'integer', description: 'how many', min: 1, max: 9 },
      { name: 'kind', type: 'choice', description: 'which', choices: [{ value: 'a', label: 'A' }] },
    ],
  };
  const [body] = commandBodies([definition]);
  /** As Discord gives it back: more fields, permissions as text, false left out. */
  const echo = { ...body, id: '1', version: '9', nsfw: false, default_member_permissions: null } as never;

  it('is none between a command and what Discord makes of it', () => {
    const managed = commandBodies([{ ...definition, managersOnly: true }])[0];
    const deployed = { ...managed, id: '1', default_member_permissions: '32' } as never;
    expect(diffCommands([body!], [echo], 'global')).toMatchObject({ unchanged: 1, update: [], create: [] });
    expect(isEmptyDiff(diffCommands([managed!], [deployed], 'global'))).toBe(true);
  });

  it.each([
    ['description', { description: 'Log that' }],
    ['permission', { managersOnly: true }],
    ['option', { options: definition.options.slice(0, 2) }],
    ['requirement', { options: [{ name: 'text', type: 'text', description: 'what' }] }],
    ['bound', { options: [{ name: 'days', type: 'integer', description: 'how many', min: 1, max: 8 }] }],
  ] as const)('sees another %s', (_, change) => {
    const [changed] = commandBodies([{ ...definition, ...(change as Partial<CommandDefinition>) }]);
    expect(diffCommands([changed!], [echo], 'global').update).toHaveLength(1);
  });

  it('creates what is missing and removes what is left over', () => {
    const diff = diffCommands([body!], [{ id: '2', type: 1, name: 'old' }], 'global');
    expect(diff.create.map(({ name }) => name)).toEqual(['note']);
    expect(diff.remove.map(({ name }) => name)).toEqual(['old']);
  });
});

describe('npm run commands', () => {
  let discord: StandIn;
  beforeEach(async () => {
    discord = await startStandIn();
  });
  afterEach(async () => {
    discord.assertClean();
    await discord.stop();
  });

  const deploy = (more: Record<string, string> = {}) =>
    runDeployment(readSettings({ DISCORD_TOKEN: discord.token, DISCORD_API: discord.api, ...more }, []));
  const writes = () => discord.requests.filter(({ method, path }) => method !== 'GET' && COMMANDS.test(path));

  it('writes all of them the first time and nothing the second', async () => {
    expect(await deploy()).toContain('created help');
    expect(writes()).toHaveLength(wanted.length);
    expect(await deploy()).toContain('nothing was written');
    expect(writes()).toHaveLength(wanted.length);
  });

  it('writes only what differs', async () => {
    await deploy();
    const { commands } = discord.rest;
    const [first] = commands.list('global');
    commands.edit('global', first?.id ?? '', { description: 'stale' });
    commands.create('global', { name: 'bygone', description: 'gone' });
    const before = writes().length;
    expect(await deploy()).toMatch(/changed help; removed bygone; \d+ unchanged/);
    expect(writes()).toHaveLength(before + 2);
  });

  it('pitfall 9, duplicate commands: one scope holds them and the other is cleared', async () => {
    const guild = discord.addGuild('Fig club');
    await deploy({ DISCORD_GUILD: guild.id });
    expect(discord.rest.commands.list(guild.id)).toHaveLength(wanted.length);
    expect(discord.rest.commands.list('global')).toEqual([]);
    expect(await deploy({ DISCORD_GUILD: guild.id })).toContain('nothing was written');
    expect(await deploy()).toContain(`Removed ${wanted.length} from the other scope`);
    expect(discord.rest.commands.list(guild.id)).toEqual([]);
    expect(discord.rest.commands.list('global')).toHaveLength(wanted.length);
    expect(await deploy({ DISCORD_GUILD: guild.id })).toContain('Removed');
    expect(discord.rest.commands.list('global')).toEqual([]);
  });

  it('pitfall 8, command deploy hangs: a wait of an hour fails at once with a sentence', async () => {
    const limit = { kind: 'rate-limit', retryAfterSeconds: 3600, code: 30034 } as const;
    discord.faults.add('POST', COMMANDS, limit, 99);
    await expect(deploy()).rejects.toThrow(/asks to wait 6[01] min/);
    expect(writes()).toHaveLength(1);
  });

  it('says so when the token is wrong, the server is not its own, or Discord is not there', async () => {
    await expect(deploy({ DISCORD_TOKEN: 'wrong.token' })).rejects.toThrow(/DISCORD_TOKEN is not accepted/);
    discord.faults.add('GET', COMMANDS, {
      kind: 'error',
      failure: { status: 403, code: 50001, message: 'Missing Access' },
    });
    await expect(deploy({ DISCORD_GUILD: '123456789012345678' })).rejects.toThrow(/not in the server/);
    await expect(deploy({ DISCORD_API: 'http://127.0.0.1:9/api' })).rejects.toThrow(/does not answer/);
    await expect(runDeployment(readSettings({}, []))).rejects.toThrow(/DISCORD_TOKEN is not set/);
  });
});
