import { randomBytes } from 'node:crypto';
import type { REST } from 'discord.js';
import type { APIMessage } from 'discord-api-types/v10';
import type { Context } from '../../club/context.ts';
import type { Reply } from '../../club/reply.ts';
import { describeError } from '../../log.ts';
import { setReplyMessage } from '../../records/notes.ts';
import { CODES, codeOf } from './failures.ts';
import type { Kit } from './kit.ts';
import { keepLongReply } from './long-replies.ts';
import { deleteOriginal, editOriginal, followUp, openDirect, sendTo, type Ticket } from './post.ts';
import { type Payload, renderReply, renderSentence } from './render.ts';

/** What the member sees while they wait: a placeholder of fixed visibility, or the message with the button. */
export type Waiting = 'private' | 'public' | 'button';

/** One interaction that has been acknowledged and is to be answered. */
export interface Exchange {
  readonly ticket: Ticket;
  readonly waiting: Waiting;
  /** The pressed message is one that only its reader sees, so the answer is too. */
  readonly privately: boolean;
  readonly userId: string;
  readonly channelId: string | null;
}

/** Answers an interaction by the reply's visibility, and keeps what a reply to the answer will need. */
export async function answerExchange(
  kit: Kit,
  exchange: Exchange,
  reply: Reply,
  context: Context | null,
): Promise<void> {
  const owner = context === null ? null : { clubId: context.club.id, memberId: await ownerOf(kit, context) };
  const pageId = owner === null ? null : await keepLongReply(kit.opened.db, reply, owner, kit.clock.now());
  const payload = renderReply(reply, {
    ownerId: exchange.userId,
    clubId: context?.club.id ?? null,
    ...(pageId !== null && { paging: { id: pageId, page: 0 } }),
  });
  const sent = await deliver(kit, exchange, payload, reply.visibility === 'only-you');
  if (reply.noteId !== undefined) await setReplyMessage(kit.opened.db, reply.noteId, sent.id);
}

/** Null once the member has erased their records. */
async function ownerOf(kit: Kit, context: Context): Promise<number | null> {
  const row = await kit.opened.db.query.members.findFirst({
    columns: { id: true },
    where: (member, { eq }) => eq(member.id, context.member.id),
  });
  return row?.id ?? null;
}

/** Tells the member that it went wrong, with a number that stands in the log. Never throws. */
export async function failExchange(kit: Kit, exchange: Exchange, error: unknown): Promise<void> {
  const number = errorNumber();
  kit.log.error(
    { number, interaction: exchange.ticket.interactionId, error: describeError(error) },
    'failed',
  );
  try {
    await deliver(kit, exchange, renderSentence(failureSentence(number)), true);
  } catch (second) {
    kit.log.error({ number, error: describeError(second) }, 'nor could the member be told');
  }
}

export function errorNumber(): string {
  return randomBytes(3).toString('hex').toUpperCase();
}

export function failureSentence(number: string): string {
  return `That went wrong on my side (error ${number}); please try again, and if it happens again, give this number to whoever runs Ostiole.`;
}

/**
 * A public placeholder cannot be made private, so it is removed first: the first follow-up would fill it and be
 * public too.
 */
async function deliver(
  kit: Kit,
  exchange: Exchange,
  payload: Payload,
  isPrivate: boolean,
): Promise<APIMessage> {
  const { rest } = kit;
  const { ticket, waiting } = exchange;
  try {
    if (waiting === 'button') return await followUp(rest, ticket, payload, isPrivate || exchange.privately);
    if (waiting === 'private' || !isPrivate) return await editOriginal(rest, ticket, payload);
    await removePlaceholder(rest, ticket);
    return await followUp(rest, ticket, payload, true);
  } catch (error) {
    const code = codeOf(error);
    const gone = [CODES.invalidWebhookToken, CODES.unknownWebhook, CODES.unknownMessage] as const;
    if (!gone.some((known) => known === code)) throw error;
    return deliverLate(kit, exchange, payload, isPrivate || exchange.privately || waiting === 'private');
  }
}

async function removePlaceholder(rest: REST, ticket: Ticket): Promise<void> {
  try {
    await deleteOriginal(rest, ticket);
  } catch (error) {
    if (codeOf(error) !== CODES.unknownMessage) throw error;
  }
}

/** After 15 minutes an interaction's token is dead, so the answer goes by the bot's own. */
async function deliverLate(
  kit: Kit,
  { userId, channelId }: Exchange,
  payload: Payload,
  isPrivate: boolean,
): Promise<APIMessage> {
  const channel = isPrivate || channelId === null ? await openDirect(kit.rest, userId) : channelId;
  return sendTo(kit.rest, channel, payload, {});
}
