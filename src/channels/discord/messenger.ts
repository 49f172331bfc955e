import { type REST, Routes } from 'discord.js';
import type { APIChannel, APIMessage } from 'discord-api-types/v10';
import type { Clock } from '../../clock.ts';
import { describeError, type Log } from '../../log.ts';
import type { DeliveryOutcome, Messenger, Outgoing } from '../../nudges/messenger.ts';
import { updateClub } from '../../records/clubs.ts';
import type { Database } from '../../records/database.ts';
import { CLOSED_DMS, CODES, classifyFailure, codeOf } from './failures.ts';
import { LIMITS } from './limits.ts';
import { keepLongReply } from './long-replies.ts';
import { openDirect, sendTo } from './post.ts';
import { type Payload, renderReply } from './render.ts';

export interface MessengerOptions {
  readonly rest: REST;
  readonly db: Database;
  readonly clock: Clock;
  readonly log: Log;
}

/**
 * Sends what the assistant says by itself. Needs no gateway. Where the chosen way is shut for good the other is
 * tried: the club's channel, then a direct message, or the reverse; what keeps messages from the club's channel is
 * put down for /club to show.
 */
export class DiscordMessenger implements Messenger {
  readonly #options: MessengerOptions;
  /** Channels known to be in the server of the club that chose them. */
  readonly #checked = new Set<string>();
  readonly #directChannels = new Map<string, string>();

  constructor(options: MessengerOptions) {
    this.#options = options;
  }

  async send(message: Outgoing): Promise<DeliveryOutcome> {
    if (message.nonce.length > LIMITS.nonce)
      throw new RangeError(`a nonce of ${message.nonce.length} characters`);
    const ways =
      message.way === 'channel' ? [this.#toChannel, this.#toMember] : [this.#toMember, this.#toChannel];
    const reasons: string[] = [];
    for (const way of ways) {
      const outcome = await way.call(
        this,
        reasons.includes(CLOSED_DMS) ? withWordOfClosed(message) : message,
      );
      if (outcome === null) continue;
      if (outcome.kind !== 'dead') return outcome;
      reasons.push(outcome.reason);
    }
    return { kind: 'dead', reason: reasons.join('; ') || 'no channel has been chosen' };
  }

  async #toChannel(message: Outgoing): Promise<DeliveryOutcome | null> {
    const { club, member } = message;
    const { channelId } = club;
    if (channelId === null) {
      await this.#setTrouble(message, 'no channel has been chosen');
      return null;
    }
    const outcome = await this.#attempt(async () => {
      await this.#checkChannel(club.platformId, channelId);
      return this.#post(channelId, message, member?.platformUserId);
    });
    if (outcome.kind === 'dead') await this.#setTrouble(message, outcome.reason);
    else if (outcome.kind === 'sent' && club.trouble !== null) await this.#setTrouble(message, null);
    return outcome;
  }

  /** A club has no one to write to directly, a member has. */
  async #toMember(message: Outgoing): Promise<DeliveryOutcome | null> {
    const userId = message.member?.platformUserId;
    if (userId === undefined) return null;
    return this.#attempt(async () => {
      const channelId = this.#directChannels.get(userId) ?? (await openDirect(this.#options.rest, userId));
      this.#directChannels.set(userId, channelId);
      return this.#post(channelId, message, undefined);
    });
  }

  async #post(channelId: string, message: Outgoing, pings: string | undefined): Promise<APIMessage> {
    const payload = await this.#render(message, pings);
    return sendTo(this.#options.rest, channelId, payload, { nonce: message.nonce });
  }

  async #render({ club, member, reply }: Outgoing, pings: string | undefined): Promise<Payload> {
    const { db, clock } = this.#options;
    const now = clock.now();
    const owner = { clubId: club.id, memberId: member?.id ?? null };
    const pageId = await keepLongReply(db, reply, owner, now);
    return renderReply(reply, {
      ownerId: member?.platformUserId ?? null,
      clubId: club.id,
      at: now,
      ...(pageId !== null && { paging: { id: pageId, page: 0 } }),
      ...(pings !== undefined && { pings }),
    });
  }

  /** A channel is chosen by its id, and must not be one of another club's server. */
  async #checkChannel(guildId: string, channelId: string): Promise<void> {
    const key = `${guildId}/${channelId}`;
    if (this.#checked.has(key)) return;
    const channel = (await this.#options.rest.get(Routes.channel(channelId))) as APIChannel;
    if (!('guild_id' in channel) || channel.guild_id !== guildId) throw new ForeignChannel();
    this.#checked.add(key);
  }

  async #attempt(send: () => Promise<APIMessage>): Promise<DeliveryOutcome> {
    try {
      const sent = await send();
      return { kind: 'sent', channelId: sent.channel_id, messageId: sent.id };
    } catch (error) {
      if (error instanceof ForeignChannel) return { kind: 'dead', reason: error.message };
      if (codeOf(error) === CODES.unknownChannel) this.#directChannels.clear();
      const outcome = classifyFailure(error);
      this.#options.log.warn({ outcome: outcome.kind, error: describeError(error) }, 'not sent');
      return outcome;
    }
  }

  async #setTrouble({ club }: Outgoing, trouble: string | null): Promise<void> {
    if (club.trouble !== trouble) await updateClub(this.#options.db, club.id, { trouble });
  }
}

/** A member who chose direct messages learns in the channel why the message stands there, and what to do. */
function withWordOfClosed(message: Outgoing): Outgoing {
  const why =
    'This was meant as a direct message, but yours are closed to me. Open them for this server, or choose ' +
    'the channel with /garden set nudges:channel.';
  const { reply } = message;
  return { ...message, reply: { ...reply, text: [reply.text, why].filter(Boolean).join('\n\n') } };
}

class ForeignChannel extends Error {
  constructor() {
    super('the chosen channel is not in this server');
  }
}
