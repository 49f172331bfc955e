import { DiscordAPIError, HTTPError, RateLimitError } from 'discord.js';
import type { DeliveryOutcome } from '../../nudges/messenger.ts';

/** Discord's JSON error codes that decide something here. Documentation: Opcodes and Status Codes. */
export const CODES = {
  unknownChannel: 10003,
  unknownGuild: 10004,
  unknownMessage: 10008,
  unknownUser: 10013,
  unknownWebhook: 10015,
  unknownInteraction: 10062,
  dailyCommandCreates: 30034,
  alreadyAcknowledged: 40060,
  missingAccess: 50001,
  closedDirectMessages: 50007,
  missingPermissions: 50013,
  invalidWebhookToken: 50027,
} as const;

/** Why a direct message failed whose member takes none from this server. */
export const CLOSED_DMS = 'the member’s direct messages are closed';

const DEAD: ReadonlyMap<number, string> = new Map([
  [CODES.unknownChannel, 'the channel is gone'],
  [CODES.unknownGuild, 'the server is gone'],
  [CODES.unknownUser, 'the member is gone from Discord'],
  [CODES.missingAccess, 'the assistant may not see the channel'],
  [CODES.closedDirectMessages, CLOSED_DMS],
  [CODES.missingPermissions, 'the assistant may not write in the channel'],
]);

/** The code of an answer of Discord's; null for any other failure. */
export function codeOf(error: unknown): number | null {
  return error instanceof DiscordAPIError ? Number(error.code) : null;
}

type Failure = Exclude<DeliveryOutcome, { kind: 'sent' }>;

/** What a failed send means: try again, give up on this way, or stop altogether. */
export function classifyFailure(error: unknown): Failure {
  if (error instanceof RateLimitError) {
    return { kind: 'retry', reason: 'Discord asks to wait', afterMs: error.retryAfter };
  }
  if (error instanceof DiscordAPIError) {
    const reason = DEAD.get(Number(error.code));
    if (reason !== undefined) return { kind: 'dead', reason };
    if (error.status === 401) return { kind: 'stop', reason: 'Discord no longer takes the token' };
    if (error.status === 403) return { kind: 'dead', reason: `Discord forbids it (${error.code})` };
    if (error.status >= 500 || error.status === 429) {
      return { kind: 'retry', reason: `Discord answered ${error.status}` };
    }
    return { kind: 'dead', reason: `Discord refuses the message (${error.code})` };
  }
  if (error instanceof HTTPError) {
    if (error.status === 401) return { kind: 'stop', reason: 'Discord no longer takes the token' };
    return { kind: 'retry', reason: `Discord answered ${error.status}` };
  }
  // After a 401 discord.js forgets the token, and this is what every later call throws.
  if (error instanceof Error && /expected token to be set/i.test(error.message)) {
    return { kind: 'stop', reason: 'Discord no longer takes the token' };
  }
  return { kind: 'retry', reason: 'no answer from Discord' };
}
