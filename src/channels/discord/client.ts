import { Client, GatewayIntentBits, Partials } from 'discord.js';
import type { Settings } from '../../settings.ts';
import { restOptions } from './rest.ts';

/** What the assistant hears of: its servers, and messages that mention it or are written to it. */
export function intentsFor({ logChannel }: Pick<Settings, 'logChannel'>): GatewayIntentBits[] {
  return [
    GatewayIntentBits.Guilds,
    GatewayIntentBits.GuildMessages,
    GatewayIntentBits.DirectMessages,
    // Privileged: the text of messages that do not mention the assistant, for a log channel.
    ...(logChannel.allowed ? [GatewayIntentBits.MessageContent] : []),
  ];
}

export interface ClientTuning {
  readonly restTimeoutMs?: number;
}

export function createClient(
  settings: Pick<Settings, 'logChannel' | 'discordApi' | 'shards'>,
  tuning: ClientTuning = {},
): Client {
  const { discordApi: api, shards } = settings;
  return new Client({
    intents: intentsFor(settings),
    // Direct messages come in channels that are not known beforehand.
    partials: [Partials.Channel],
    shards: shards === 'auto' ? 'auto' : Array.from({ length: shards }, (_, id) => id),
    shardCount: shards === 'auto' ? undefined : shards,
    allowedMentions: { parse: [] },
    rest: restOptions({
      api,
      ...(tuning.restTimeoutMs !== undefined && { timeoutMs: tuning.restTimeoutMs }),
    }),
  } as ConstructorParameters<typeof Client>[0]);
}
