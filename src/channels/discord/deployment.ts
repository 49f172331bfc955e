import { type REST, Routes } from 'discord.js';
import { type CommandDiff, type DeployedCommand, diffCommands, isEmptyDiff } from './command-diff.ts';
import type { CommandBody } from './commands.ts';

export interface DeploymentScope {
  readonly applicationId: string;
  /** Null: everywhere. */
  readonly guildId: string | null;
}

export interface Deployed {
  readonly diff: CommandDiff;
  /** Commands removed from the other scope, where they would show twice. */
  readonly cleared: number;
}

/** Reads what is deployed and writes only what differs; in one scope, with the other cleared. */
export async function deployCommands(
  rest: REST,
  scope: DeploymentScope,
  wanted: readonly CommandBody[],
): Promise<Deployed> {
  const { applicationId, guildId } = scope;
  const diff = await readDiff(rest, scope, wanted);
  for (const body of diff.create) {
    await rest.post(listRoute(applicationId, guildId), { body: inScope(body, guildId) });
  }
  for (const { id, body } of diff.update) {
    const { type: _type, ...changes } = inScope(body, guildId);
    await rest.patch(oneRoute(applicationId, guildId, id), { body: changes });
  }
  for (const { id } of diff.remove) await rest.delete(oneRoute(applicationId, guildId, id));
  return { diff, cleared: await clearOtherScope(rest, scope) };
}

/** What is deployed against what is wanted, without writing anything. */
export async function readDiff(
  rest: REST,
  { applicationId, guildId }: DeploymentScope,
  wanted: readonly CommandBody[],
): Promise<CommandDiff> {
  const deployed = (await rest.get(listRoute(applicationId, guildId))) as DeployedCommand[];
  return diffCommands(wanted, deployed, guildId === null ? 'global' : 'guild');
}

/** Where a command may be used can be said of one that is everywhere only. */
function inScope(body: CommandBody, guildId: string | null): CommandBody {
  if (guildId === null) return body;
  const { contexts: _contexts, integration_types: _types, ...rest } = body;
  return rest;
}

/** One sentence on what a deployment did. */
export function describeDeployment({ diff, cleared }: Deployed, guildId: string | null): string {
  const where = guildId === null ? 'everywhere' : `in server ${guildId}`;
  const rest =
    cleared === 0 ? '' : ` Removed ${cleared} from the other scope, where they would have shown twice.`;
  if (isEmptyDiff(diff)) {
    return `Commands ${where}: all ${diff.unchanged} are as they should be; nothing was written.${rest}`;
  }
  const parts = [
    ...(diff.create.length > 0 ? [`created ${diff.create.map(({ name }) => name).join(', ')}`] : []),
    ...(diff.update.length > 0 ? [`changed ${diff.update.map(({ body }) => body.name).join(', ')}`] : []),
    ...(diff.remove.length > 0 ? [`removed ${diff.remove.map(({ name }) => name).join(', ')}`] : []),
    `${diff.unchanged} unchanged`,
  ];
  return `Commands ${where}: ${parts.join('; ')}.${rest}`;
}

/** The servers looked at for commands of their own; a club of clubs deploys to one server only while trying out. */
const GUILDS_LOOKED_AT = 100;

async function clearOtherScope(rest: REST, { applicationId, guildId }: DeploymentScope): Promise<number> {
  if (guildId !== null) return clear(rest, applicationId, null);
  const query = new URLSearchParams({ limit: String(GUILDS_LOOKED_AT) });
  const guilds = (await rest.get(Routes.userGuilds(), { query })) as { id: string }[];
  let cleared = 0;
  for (const { id } of guilds) cleared += await clear(rest, applicationId, id);
  return cleared;
}

async function clear(rest: REST, applicationId: string, guildId: string | null): Promise<number> {
  const old = (await rest.get(listRoute(applicationId, guildId))) as DeployedCommand[];
  if (old.length > 0) await rest.put(listRoute(applicationId, guildId), { body: [] });
  return old.length;
}

function listRoute(applicationId: string, guildId: string | null): `/${string}` {
  return guildId === null
    ? Routes.applicationCommands(applicationId)
    : Routes.applicationGuildCommands(applicationId, guildId);
}

function oneRoute(applicationId: string, guildId: string | null, id: string): `/${string}` {
  return guildId === null
    ? Routes.applicationCommand(applicationId, id)
    : Routes.applicationGuildCommand(applicationId, guildId, id);
}
