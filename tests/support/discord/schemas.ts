import { isDeepStrictEqual } from 'node:util';
import {
  ApplicationCommandAutocompleteCallbackRequestSchema,
  ApplicationCommandCreateRequestSchema,
  ApplicationCommandPatchRequestPartialSchema,
  ApplicationCommandUpdateRequestSchema,
  CreateMessageInteractionCallbackRequestSchema,
  CreatePrivateChannelRequestSchema,
  IncomingWebhookRequestPartialSchema,
  IncomingWebhookUpdateRequestPartialSchema,
  MessageCreateRequestSchema,
  MessageEditRequestPartialSchema,
  UpdateMessageInteractionCallbackRequestSchema,
} from 'discord-api-spec/zod';

type Schema = typeof MessageCreateRequestSchema;

export type Route =
  | 'callback'
  | 'original-edit'
  | 'follow-up'
  | 'message-create'
  | 'message-edit'
  | 'dm-create'
  | 'command-create'
  | 'command-edit'
  | 'commands-put';

/**
 * Checks a body against Discord's published API description for its route (the package `discord-api-spec` is
 * generated from it), unknown keys included. Returns what is wrong; nothing when all is well.
 */
export function checkBody(route: Route, body: unknown): string[] {
  if (route === 'commands-put') {
    if (!Array.isArray(body)) return ['a list of commands was expected'];
    return body.flatMap((command) => checkAgainst(ApplicationCommandUpdateRequestSchema, command));
  }
  return checkAgainst(schemaFor(route, body), body);
}

function schemaFor(route: Exclude<Route, 'commands-put'>, body: unknown): Schema {
  switch (route) {
    case 'callback': {
      const { type } = (body ?? {}) as { type?: number };
      if (type === 8) return ApplicationCommandAutocompleteCallbackRequestSchema;
      if (type === 6 || type === 7) return UpdateMessageInteractionCallbackRequestSchema;
      return CreateMessageInteractionCallbackRequestSchema;
    }
    case 'original-edit':
      return IncomingWebhookUpdateRequestPartialSchema;
    case 'follow-up':
      return IncomingWebhookRequestPartialSchema;
    case 'message-create':
      return MessageCreateRequestSchema;
    case 'message-edit':
      return MessageEditRequestPartialSchema;
    case 'dm-create':
      return CreatePrivateChannelRequestSchema;
    case 'command-create':
      return ApplicationCommandCreateRequestSchema;
    case 'command-edit':
      return ApplicationCommandPatchRequestPartialSchema;
  }
}

function checkAgainst(schema: Schema, body: unknown): string[] {
  const parsed = schema.safeParse(body);
  if (!parsed.success) {
    return parsed.error.issues.map((issue) => `${issue.path.map(String).join('.')}: ${issue.message}`);
  }
  // The schemas drop what they do not know, so whatever got lost was not in the description.
  if (!isDeepStrictEqual(parsed.data, body)) {
    return [`keys unknown to the API description: ${unknownKeys(body, parsed.data).join(', ')}`];
  }
  return [];
}

function unknownKeys(sent: unknown, known: unknown, path = ''): string[] {
  if (typeof sent !== 'object' || sent === null) return [];
  if (typeof known !== 'object' || known === null) return [path];
  return Object.entries(sent).flatMap(([key, value]) => {
    const inner = path === '' ? key : `${path}.${key}`;
    if (!(key in known)) return [inner];
    return unknownKeys(value, (known as Record<string, unknown>)[key], inner);
  });
}
