import type { ButtonInteraction } from 'discord.js';
import { type REST, Routes } from 'discord.js';
import type { APIMessage } from 'discord-api-types/v10';
import type { Context } from '../../club/context.ts';
import { desk } from '../../club/desk.ts';
import { type Reply, reply } from '../../club/reply.ts';
import { UserError } from '../../errors.ts';
import { isRowId } from '../../records/row-id.ts';
import { readButtonId } from './custom-id.ts';
import type { Kit } from './kit.ts';
import { longReplyOf } from './long-replies.ts';
import { editOriginal, type Ticket } from './post.ts';
import type { Progress } from './progress.ts';
import { PAGE_VERB, renderPage } from './render.ts';
import { CLUB_VERB, openFor, type Speaker } from './who.ts';

/** Why a button may not be pressed, before anything is looked up; null when it may. */
export function refusePress(customId: string, userId: string): string | null {
  const id = readButtonId(customId);
  if (id === null) {
    return 'This button is from another version of the assistant; type the command instead.';
  }
  if (id.ownerId !== null && id.ownerId !== userId) {
    return 'This button is for whoever asked; ask for yourself and you get your own.';
  }
  return null;
}

/** Does what a button says. Null when its message itself was changed and nothing is left to answer. */
export async function pressAs(
  kit: Kit,
  speaker: Speaker,
  interaction: ButtonInteraction,
  ticket: Ticket,
  progress: Progress,
): Promise<{ reply: Reply; context: Context | null } | null> {
  const id = readButtonId(interaction.customId);
  if (id === null) return null;
  const [verb, first = '', second = ''] = id.action.split(':');
  if (verb === CLUB_VERB)
    return chooseClub(kit, speaker, interaction.channelId, Number(first), second, progress);

  const opened = await openFor(kit, speaker, { clubId: id.clubId, progress: progress.show });
  if ('instead' in opened) return { reply: opened.instead, context: null };
  const { context } = opened;
  if (verb === PAGE_VERB) {
    return turnPage(kit, context, id.ownerId, ticket, Number(first), Math.trunc(Number(second)) || 0);
  }
  return { reply: await desk.pressButton(context, id.action), context };
}

async function turnPage(
  kit: Kit,
  context: Context,
  ownerId: string | null,
  ticket: Ticket,
  replyId: number,
  page: number,
): Promise<null> {
  const owner = { clubId: context.club.id, memberId: context.member.id };
  const kept = isRowId(replyId) ? await longReplyOf(kit.opened.db, replyId, owner) : null;
  if (kept === null) {
    throw new UserError('old-page', 'These pages are no longer kept; type the command again.');
  }
  await editOriginal(
    kit.rest,
    ticket,
    renderPage(kept, { ownerId, clubId: context.club.id, paging: { id: replyId, page } }),
  );
  return null;
}

/** Answers "which club?" in direct messages, and takes up the message that brought the question about. */
async function chooseClub(
  kit: Kit,
  speaker: Speaker,
  channelId: string,
  clubId: number,
  messageId: string,
  progress: Progress,
): Promise<{ reply: Reply; context: Context | null }> {
  const occasion = { clubId, progress: progress.show, ...(messageId !== '' && { messageId }) };
  const opened = await openFor(kit, { ...speaker, guild: null }, occasion);
  if ('instead' in opened) return { reply: opened.instead, context: null };
  const { context } = opened;
  kit.directClubs.choose(speaker.userId, context.club.id);
  if (messageId === '') return { reply: chosen(context), context };
  const text = await textOf(kit.rest, channelId, messageId, speaker.userId);
  return { reply: text === null ? chosen(context) : await desk.takeMessage(context, text), context };
}

/** A message is read again rather than remembered, so that the question outlives a restart. */
async function textOf(
  rest: REST,
  channelId: string,
  messageId: string,
  userId: string,
): Promise<string | null> {
  if (!/^\d{15,21}$/.test(messageId)) return null;
  const message = (await rest.get(Routes.channelMessage(channelId, messageId))) as APIMessage;
  return message.author.id === userId && message.content.trim() !== '' ? message.content : null;
}

function chosen(context: Context): Reply {
  return reply({
    title: context.club.name,
    text: 'What you write to me here in the next hour is for this club. Type your command again.',
    visibility: 'only-you',
    data: { club: context.club.name },
  });
}
