import { type Client, DiscordAPIError, Routes } from 'discord.js';
import { type APIGatewayBotInfo, GatewayCloseCodes } from 'discord-api-types/v10';
import { StartError } from '../../errors.ts';

/** Discord takes a token away after 1,000 logins a day, as a crash loop makes; far fewer is already a fault. */
const LEAST_LOGINS_LEFT = 10;

const WRONG_TOKEN =
  'DISCORD_TOKEN is not accepted by Discord; copy it again from the application’s page in the developer portal.';

/** What a connection that Discord closed for good means; null where the client connects again by itself. */
export function fatalClose(code: number): string | null {
  switch (code) {
    case GatewayCloseCodes.AuthenticationFailed:
      return WRONG_TOKEN;
    case GatewayCloseCodes.DisallowedIntents:
    case GatewayCloseCodes.InvalidIntents:
      return 'DISCORD_LOG_CHANNEL needs the Message Content Intent, which is not ticked on the application’s page in the developer portal (Bot); tick it there, or set DISCORD_LOG_CHANNEL=off.';
    case GatewayCloseCodes.ShardingRequired:
    case GatewayCloseCodes.InvalidShard:
      return 'Discord wants more shards for so many servers; set SHARDS=auto.';
    default:
      return null;
  }
}

/** Logs in and waits until Discord has told of all servers. Throws StartError with one sentence. */
export async function logIn(client: Client, token: string, api: string): Promise<void> {
  client.rest.setToken(token);
  await checkStart(client, api);
  let refuse: (error: StartError) => void = () => {};
  const refused = new Promise<never>((_, reject) => {
    refuse = reject;
  });
  refused.catch(() => {});
  const onClose = ({ code }: { code: number }) => {
    const reason = fatalClose(code);
    if (reason !== null) refuse(new StartError(reason));
  };
  client.on('shardDisconnect', onClose);
  const ready = new Promise<void>((resolve) => client.once('clientReady', () => resolve()));
  try {
    await Promise.race([Promise.all([client.login(token), ready]), refused]);
  } catch (error) {
    if (error instanceof StartError) throw error;
    throw new StartError(`Discord could not be logged in to (${nameOf(error)}).`, { cause: error });
  } finally {
    client.off('shardDisconnect', onClose);
  }
}

async function checkStart(client: Client, api: string): Promise<void> {
  let info: APIGatewayBotInfo;
  try {
    info = (await client.rest.get(Routes.gatewayBot())) as APIGatewayBotInfo;
  } catch (error) {
    if (error instanceof DiscordAPIError && error.status === 401) throw new StartError(WRONG_TOKEN);
    throw new StartError(`Discord does not answer at ${api}; check the connection, or DISCORD_API.`, {
      cause: error,
    });
  }
  const { remaining, reset_after: resetMs } = info.session_start_limit;
  if (remaining >= LEAST_LOGINS_LEFT) return;
  throw new StartError(
    `Discord allows only ${remaining} more logins for the next ${Math.ceil(resetMs / 60_000)} min, which a restart loop must have used up; not started, so that the token is not reset.`,
  );
}

function nameOf(error: unknown): string {
  return error instanceof Error ? (error.message.split('\n')[0] ?? error.name) : String(error);
}
