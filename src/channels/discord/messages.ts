import type { Message } from 'discord.js';
import { MessageType } from 'discord-api-types/v10';
import { systemClock } from '../../clock.ts';
import type { Context } from '../../club/context.ts';
import { desk } from '../../club/desk.ts';
import type { Reply } from '../../club/reply.ts';
import { describeError } from '../../log.ts';
import { setReplyMessage } from '../../records/notes.ts';
import { claimMessage, finishMessage, rememberDirect } from './claims.ts';
import { errorNumber, failureSentence } from './exchange.ts';
import { classifyFailure } from './failures.ts';
import type { Kit } from './kit.ts';
import { isLogChannel } from './log-channel.ts';
import { keepLongReply } from './long-replies.ts';
import { readMessageText } from './message-text.ts';
import { openDirect, react, sendTo } from './post.ts';
import { type Payload, renderBrief, renderReply, renderSentence } from './render.ts';
import { openFor, type Speaker } from './who.ts';

/** Under a note that was plainly understood. */
const NOTED = '🌱';

/** Why a message concerns the assistant. */
type Address = 'spoken-to' | 'overheard';

/** Messages to the assistant: mentions, direct messages, replies to it, and what is said in a log channel. */
export class Messages {
  readonly #kit: Kit;
  readonly #assistantId: () => string;

  constructor(kit: Kit, assistantId: () => string) {
    this.#kit = kit;
    this.#assistantId = assistantId;
  }

  /** Never rejects. `missed`: from a time when nothing could be heard. */
  async take(message: Message, missed = false): Promise<void> {
    const { log, turns } = this.#kit;
    try {
      const address = await this.#addressOf(message);
      if (address === null) return;
      const began = performance.now();
      const outcome = await turns.take(message.author.id, () => this.#handle(message, address, missed));
      log.info({ message: message.id, outcome, ms: Math.round(performance.now() - began) }, 'message');
    } catch (error) {
      await this.#fail(message, error);
    }
  }

  async #addressOf(message: Message): Promise<Address | null> {
    if (message.author.bot || message.webhookId !== null) return null;
    if (message.type !== MessageType.Default && message.type !== MessageType.Reply) return null;
    const me = this.#assistantId();
    if (message.guildId === null || message.mentions.users.has(me)) return 'spoken-to';
    // Texts that do not mention the assistant come empty without the privileged intent.
    if (!this.#kit.logChannel.allowed) return null;
    if (message.mentions.repliedUser?.id === me) return 'spoken-to';
    return (await isLogChannel(this.#kit, message.guildId, message.channelId)) ? 'overheard' : null;
  }

  async #handle(message: Message, address: Address, missed: boolean): Promise<string> {
    const { db } = this.#kit.opened;
    const text = readMessageText(message, this.#assistantId());
    if (text === '' && address === 'overheard') return 'empty';
    if (!(await claimMessage(db, message.id, systemClock.now(), missed))) return 'duplicate';
    if (message.guildId === null) await rememberDirect(db, message.channelId, systemClock.now());
    const repliesTo = message.reference?.messageId;
    const opened = await openFor(this.#kit, speakerOf(message), {
      messageId: message.id,
      ...(repliesTo !== undefined && { repliesTo }),
    });
    const context = 'instead' in opened ? null : opened.context;
    const reply = 'instead' in opened ? opened.instead : await answerTo(opened.context, text);
    if (address === 'spoken-to' || isWorthAnswering(reply)) await this.#answer(message, reply, context);
    await finishMessage(db, message.id, systemClock.now());
    return reply.ok ? 'done' : 'refused';
  }

  async #answer(message: Message, reply: Reply, context: Context | null): Promise<void> {
    const { db } = this.#kit.opened;
    const options = { ownerId: message.author.id, clubId: context?.club.id ?? null };
    const { brief } = reply;
    if (reply.ok && brief !== undefined && reply.files.length === 0) {
      await react(this.#kit.rest, message.channelId, message.id, NOTED).catch((error: unknown) =>
        this.#kit.log.debug({ error: describeError(error) }, 'no reaction'),
      );
      await this.#send(message, renderBrief({ ...reply, brief }, options), false, reply.noteId);
      return;
    }
    const owner = context === null ? null : { clubId: context.club.id, memberId: context.member.id };
    const pageId = owner === null ? null : await keepLongReply(db, reply, owner, this.#kit.clock.now());
    const payload = renderReply(reply, {
      ...options,
      ...(pageId !== null && { paging: { id: pageId, page: 0 } }),
    });
    // What went wrong with a public message may be said under it; facts for one pair of eyes may not.
    await this.#send(message, payload, reply.ok && reply.visibility === 'only-you', reply.noteId);
  }

  async #send(message: Message, payload: Payload, privately: boolean, noteId?: number): Promise<void> {
    const { rest, opened } = this.#kit;
    // However often it is tried, and by however many processes: one answer a message.
    const nonce = `m${message.id}`;
    const direct = async () => sendTo(rest, await openDirect(rest, message.author.id), payload, { nonce });
    const here = async () => sendTo(rest, message.channelId, payload, { nonce, replyTo: message.id });
    const sent = privately
      ? await direct()
      : await here().catch((error: unknown) => {
          if (classifyFailure(error).kind !== 'dead' || message.guildId === null) throw error;
          return direct();
        });
    if (noteId !== undefined) await setReplyMessage(opened.db, noteId, sent.id);
  }

  async #fail(message: Message, error: unknown): Promise<void> {
    const number = errorNumber();
    const { log, opened } = this.#kit;
    log.error({ number, message: message.id, error: describeError(error) }, 'message failed');
    try {
      await this.#send(message, renderSentence(failureSentence(number)), false);
      await finishMessage(opened.db, message.id, systemClock.now());
    } catch (second) {
      log.error({ number, error: describeError(second) }, 'nor could the member be told');
    }
  }
}

function answerTo(context: Context, text: string): Promise<Reply> {
  return text === '' ? desk.runCommand(context, 'help', {}) : desk.takeMessage(context, text);
}

/** In a log channel people also just talk: what is no note is left alone there. */
function isWorthAnswering(reply: Reply): boolean {
  const { intent, ask, logged } = reply.data;
  if (intent !== 'note') return false;
  return (Array.isArray(logged) && logged.length > 0) || (typeof ask === 'string' && ask !== 'kind');
}

function speakerOf(message: Message): Speaker {
  const { author, guild, guildId, member } = message;
  return {
    userId: author.id,
    userName: member?.nickname ?? author.globalName ?? author.username,
    guild: guildId === null ? null : { id: guildId, name: guild?.name ?? 'the club' },
    managesGuild: false,
  };
}
