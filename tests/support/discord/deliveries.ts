import { type APIAttachment, GatewayDispatchEvents, GatewayIntentBits } from 'discord-api-types/v10';
import { FAILURES, invalidForm, Refusal } from './errors.ts';
import type { Gateway } from './gateway.ts';
import type { UploadedFile } from './multipart.ts';
import { message, messageCreateData } from './payloads.ts';
import type { StandInChannel, StandInMessage, StandInUser, World } from './world.ts';

type Body = Record<string, unknown>;

export interface StoreOptions {
  readonly ephemeral?: boolean;
  /** Ephemeral messages and answers to interactions are not guarded by the channel's permissions. */
  readonly asAnswer?: boolean;
}

/** Keeps what the bot sends, with Discord's rules on who may and on nonces. */
export class Deliveries {
  readonly #world: World;
  readonly #gateway: Gateway;
  readonly #nonceWindowMs: number;
  readonly #cdnUrl: () => string;
  /** Files by their path on the CDN. */
  readonly files = new Map<string, UploadedFile>();

  constructor(world: World, gateway: Gateway, nonceWindowMs: number, cdnUrl: () => string) {
    this.#world = world;
    this.#gateway = gateway;
    this.#nonceWindowMs = nonceWindowMs;
    this.#cdnUrl = cdnUrl;
  }

  channel(id: string): StandInChannel {
    const channel = this.#world.channels.get(id);
    if (channel === undefined) throw new Refusal(FAILURES[10003]);
    if (channel.refuses !== null) throw new Refusal(FAILURES[channel.refuses]);
    return channel;
  }

  /** POST /channels/:id/messages */
  create(channelId: string, body: Body, files: UploadedFile[]): StandInMessage {
    const channel = this.channel(channelId);
    const recipient = this.#world.users.get(channel.recipientId ?? '');
    if (recipient?.dmsClosed) throw new Refusal(FAILURES[50007]);
    const nonce = body.nonce === undefined || body.nonce === null ? null : String(body.nonce);
    if (nonce !== null && nonce.length > 25) throw new Refusal(invalidForm(['nonce: longer than 25']));
    if (nonce !== null && body.enforce_nonce === true) {
      const earlier = this.#withNonce(nonce);
      if (earlier !== null) return earlier;
    }
    const reference = body.message_reference as
      | { message_id?: string; fail_if_not_exists?: boolean }
      | undefined;
    if (reference?.message_id !== undefined && reference.fail_if_not_exists !== false) {
      const target = channel.messages.find((m) => m.api.id === reference.message_id);
      if (target === undefined || target.deleted) throw new Refusal(invalidForm(['Unknown message']));
    }
    return this.store(channel, body, files, {});
  }

  /**
   * `enforce_nonce` (documentation: Message, Create Message): within the past few minutes a message of the same
   * author with the same nonce is returned and none is created.
   */
  #withNonce(nonce: string): StandInMessage | null {
    const since = this.#world.clock.now() - this.#nonceWindowMs;
    for (const channel of this.#world.channels.values()) {
      const found = channel.messages.find((m) => m.nonce === nonce && m.body !== null && m.at >= since);
      if (found !== undefined) return found;
    }
    return null;
  }

  store(channel: StandInChannel, body: Body, files: UploadedFile[], options: StoreOptions): StandInMessage {
    if (isEmpty(body) && files.length === 0) throw new Refusal(FAILURES[50006]);
    const at = this.#world.clock.now();
    const id = this.#world.newId();
    const author = this.#world.users.get(this.#world.bot.id) as StandInUser;
    const reference = body.message_reference as { message_id?: string } | undefined;
    const stored: StandInMessage = {
      api: message({
        id,
        channelId: channel.id,
        author,
        at,
        body,
        replyTo: reference?.message_id ? (this.#world.findMessage(reference.message_id)?.api ?? null) : null,
        attachments: this.#attach(channel.id, id, files),
        ephemeral: options.ephemeral ?? false,
      }),
      body,
      files: [...files],
      nonce: body.nonce === undefined || body.nonce === null ? null : String(body.nonce),
      at,
      ephemeral: options.ephemeral ?? false,
      reactions: [],
      deleted: false,
    };
    channel.messages.push(stored);
    if (!stored.ephemeral) this.announce(stored);
    return stored;
  }

  edit(stored: StandInMessage, body: Body, files: UploadedFile[]): void {
    if (stored.deleted) throw new Refusal(FAILURES[10008]);
    const changed = { ...stored.body, ...body };
    if (isEmpty(changed) && files.length === 0) throw new Refusal(FAILURES[50006]);
    stored.body = changed;
    if ('content' in body) stored.api.content = String(body.content ?? '');
    if ('embeds' in body) stored.api.embeds = (body.embeds ?? []) as typeof stored.api.embeds;
    if ('components' in body) stored.api.components = (body.components ?? []) as typeof stored.api.components;
    stored.files.push(...files);
    stored.api.attachments.push(...this.#attach(stored.api.channel_id, stored.api.id, files));
    stored.api.edited_timestamp = new Date(this.#world.clock.now()).toISOString();
  }

  /** MESSAGE_CREATE to whoever may see it. */
  announce(stored: StandInMessage): void {
    const channel = this.#world.channels.get(stored.api.channel_id);
    const guildId = channel?.guildId ?? null;
    this.#gateway.dispatch({
      event: GatewayDispatchEvents.MessageCreate,
      guildId,
      intent: guildId === null ? GatewayIntentBits.DirectMessages : GatewayIntentBits.GuildMessages,
      dataFor: (intents) => messageCreateData(this.#world, stored, this.#mayRead(stored, guildId, intents)),
    });
  }

  /** Text is shown with the intent, in direct messages, to whom it mentions and of one's own. */
  #mayRead(stored: StandInMessage, guildId: string | null, intents: number): boolean {
    return (
      guildId === null ||
      (intents & GatewayIntentBits.MessageContent) !== 0 ||
      stored.api.author.id === this.#world.bot.id ||
      stored.api.mentions.some((user) => user.id === this.#world.bot.id)
    );
  }

  #attach(channelId: string, messageId: string, files: readonly UploadedFile[]): APIAttachment[] {
    return files.map((file) => {
      const path = `/attachments/${channelId}/${messageId}/${encodeURIComponent(file.name)}`;
      this.files.set(path, file);
      const url = `${this.#cdnUrl()}${path}`;
      return { id: this.#world.newId(), filename: file.name, size: file.bytes.length, url, proxy_url: url };
    });
  }

  /** A file that a user uploads with a command. */
  upload(file: UploadedFile): APIAttachment {
    const [attachment] = this.#attach(this.#world.newId(), this.#world.newId(), [file]);
    return { ...(attachment as APIAttachment), content_type: file.type };
  }
}

function isEmpty(body: Body): boolean {
  const lists = [body.embeds, body.components, body.attachments, body.sticker_ids];
  return !body.content && lists.every((list) => !Array.isArray(list) || list.length === 0);
}
