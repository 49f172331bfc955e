import 'dotenv/config';
import { pathToFileURL } from 'node:url';
import { DiscordAPIError, type RateLimitData, RateLimitError, type REST, Routes } from 'discord.js';
import type { APIUser } from 'discord-api-types/v10';
import { features } from '../../club/features.ts';
import { StartError } from '../../errors.ts';
import { silentLog } from '../../log.ts';
import { readSettings, type Settings } from '../../settings.ts';
import { commandBodies } from './commands.ts';
import { deployCommands, describeDeployment } from './deployment.ts';
import { CODES } from './failures.ts';
import { createRest, waitOf } from './rest.ts';

/** Writing many commands one by one meets short limits, which are worth waiting for. */
const LONGEST_WAIT_MS = 30_000;

/** `npm run commands`: brings the deployed commands up to date. Returns what it did, in one sentence. */
export async function runDeployment(settings: Settings): Promise<string> {
  const { discordToken: token, discordApi: api, discordGuild: guildId } = settings;
  if (token === null) {
    throw new StartError('DISCORD_TOKEN is not set; put the bot’s token in .env or the environment.');
  }
  // Discord may ask to wait for hours, and discord.js would do so in silence.
  const rejects = (limit: RateLimitData) => waitOf(limit) > LONGEST_WAIT_MS;
  const rest = createRest({ token, api, rejects }, silentLog);
  try {
    const wanted = commandBodies(features.map(({ command }) => command));
    const applicationId = await readApplicationId(rest);
    const deployed = await deployCommands(rest, { applicationId, guildId }, wanted);
    return describeDeployment(deployed, guildId);
  } catch (error) {
    throw new StartError(sentenceFor(error, api), { cause: error });
  }
}

/** A bot's application has its user's id. */
async function readApplicationId(rest: REST): Promise<string> {
  return ((await rest.get(Routes.user())) as APIUser).id;
}

function sentenceFor(error: unknown, api: string): string {
  if (error instanceof RateLimitError) {
    const minutes = Math.max(1, Math.ceil(error.retryAfter / 60_000));
    return `Discord asks to wait ${minutes} min before commands may be written again (200 new ones a day and server at most); what was written so far stands. Run this again then.`;
  }
  if (error instanceof DiscordAPIError) {
    if (error.status === 401)
      return 'DISCORD_TOKEN is not accepted by Discord; copy it again from the developer portal.';
    if (Number(error.code) === CODES.missingAccess) {
      return 'The assistant is not in the server DISCORD_GUILD, or was invited without the applications.commands scope.';
    }
    return `Discord refused the commands (${error.code}: ${error.message.split('\n').join(' ')}).`;
  }
  return `Discord does not answer at ${api}.`;
}

async function main(): Promise<void> {
  try {
    process.stdout.write(`${await runDeployment(readSettings(process.env, process.argv.slice(2)))}\n`);
  } catch (error) {
    const sentence =
      error instanceof StartError ? error.message : `The commands could not be deployed: ${error}`;
    process.stderr.write(`${sentence}\n`);
    process.exitCode = 1;
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await main();
