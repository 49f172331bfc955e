import { type REST, Routes } from 'discord.js';
import {
  type APIMessage,
  InteractionResponseType,
  MessageFlags,
  type RESTPostAPICurrentUserCreateDMChannelResult,
} from 'discord-api-types/v10';
import type { Suggestion } from '../../club/complete.ts';
import type { Payload } from './render.ts';

/** The token an interaction is answered with, for 15 minutes. */
export interface Ticket {
  readonly interactionId: string;
  readonly applicationId: string;
  readonly token: string;
}

// The plain REST calls; bodies are ours alone, so that nothing is sent that we did not decide on.

type Callback =
  | { readonly type: InteractionResponseType.DeferredChannelMessageWithSource; readonly private: boolean }
  | { readonly type: InteractionResponseType.DeferredMessageUpdate }
  | { readonly type: InteractionResponseType.ChannelMessageWithSource; readonly payload: Payload }
  | {
      readonly type: InteractionResponseType.ApplicationCommandAutocompleteResult;
      readonly choices: readonly Suggestion[];
    };

/** The first answer to an interaction, which Discord waits 3 s for. A direct message is always private. */
export async function callBack(rest: REST, ticket: Ticket, callback: Callback): Promise<void> {
  const route = Routes.interactionCallback(ticket.interactionId, ticket.token);
  await rest.post(route, { body: callbackBody(callback), auth: false });
}

function callbackBody(callback: Callback) {
  const { type } = callback;
  switch (type) {
    case InteractionResponseType.DeferredChannelMessageWithSource:
      return { type, data: { flags: callback.private ? MessageFlags.Ephemeral : 0 } };
    case InteractionResponseType.DeferredMessageUpdate:
      return { type };
    case InteractionResponseType.ChannelMessageWithSource:
      return { type, data: { ...callback.payload.body, flags: MessageFlags.Ephemeral } };
    case InteractionResponseType.ApplicationCommandAutocompleteResult:
      return { type, data: { choices: callback.choices } };
  }
}

export function editOriginal(rest: REST, ticket: Ticket, payload: Payload): Promise<APIMessage> {
  const route = Routes.webhookMessage(ticket.applicationId, ticket.token, '@original');
  return rest.patch(route, { ...payload, auth: false }) as Promise<APIMessage>;
}

export async function deleteOriginal(rest: REST, ticket: Ticket): Promise<void> {
  await rest.delete(Routes.webhookMessage(ticket.applicationId, ticket.token, '@original'), { auth: false });
}

export function followUp(
  rest: REST,
  ticket: Ticket,
  payload: Payload,
  isPrivate: boolean,
): Promise<APIMessage> {
  const body = { ...payload.body, ...(isPrivate && { flags: MessageFlags.Ephemeral }) };
  const query = new URLSearchParams({ wait: 'true' });
  const route = Routes.webhook(ticket.applicationId, ticket.token);
  return rest.post(route, { body, files: payload.files, query, auth: false }) as Promise<APIMessage>;
}

export interface SendOptions {
  /** The same nonce within a few minutes is the same message, however often it is sent. */
  readonly nonce?: string;
  /** The message that this one answers; never an obstacle when it is gone. */
  readonly replyTo?: string;
}

export function sendTo(
  rest: REST,
  channelId: string,
  payload: Payload,
  options: SendOptions,
): Promise<APIMessage> {
  const { nonce, replyTo } = options;
  const body = {
    ...payload.body,
    ...(nonce !== undefined && { nonce, enforce_nonce: true }),
    ...(replyTo !== undefined && { message_reference: { message_id: replyTo, fail_if_not_exists: false } }),
  };
  return rest.post(Routes.channelMessages(channelId), { body, files: payload.files }) as Promise<APIMessage>;
}

/** The channel of direct messages with a user. */
export async function openDirect(rest: REST, userId: string): Promise<string> {
  const body = { recipient_id: userId };
  const channel = await rest.post(Routes.userChannels(), { body });
  return (channel as RESTPostAPICurrentUserCreateDMChannelResult).id;
}

export async function react(rest: REST, channelId: string, messageId: string, emoji: string): Promise<void> {
  await rest.put(Routes.channelMessageOwnReaction(channelId, messageId, encodeURIComponent(emoji)));
}
