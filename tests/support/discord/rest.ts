import type { APIGuild } from 'discord-api-types/v10';
import { CommandStore, GLOBAL } from './commands.ts';
import type { Deliveries } from './deliveries.ts';
import { FAILURES, invalidForm, Refusal } from './errors.ts';
import type { Gateway } from './gateway.ts';
import { acknowledge, byToken, deleteOriginal, editOriginal, followUp } from './interactions.ts';
import { checkMessage } from './limits.ts';
import type { UploadedFile } from './multipart.ts';
import { directChannel, guildFields, textChannel } from './payloads.ts';
import { checkBody, type Route } from './schemas.ts';
import type { World } from './world.ts';

type Body = Record<string, unknown>;

export interface Call {
  readonly method: string;
  /** Decoded, without `/api/v10`. */
  readonly path: string;
  readonly query: URLSearchParams;
  readonly body: unknown;
  readonly files: UploadedFile[];
}

export interface Answer {
  readonly status: number;
  readonly body?: unknown;
}

interface Endpoint {
  readonly method: string;
  readonly path: RegExp;
  /** Needs no bot token: the interaction's own token opens it. */
  readonly open?: boolean;
  readonly schema?: Route;
  /** Where the message's parts stand in the body. */
  readonly messageAt?: 'body' | 'data';
  readonly run: (call: Call, params: string[]) => Answer;
}

/** The REST routes that the assistant uses. What it does not use is 404, so that a new one is noticed. */
export class Rest {
  readonly commands: CommandStore;
  /** Bodies that Discord's API description or its limits do not allow. */
  readonly violations: string[] = [];
  identifiesLeft = 1000;
  readonly #endpoints: Endpoint[];

  constructor(world: World, deliveries: Deliveries, gateway: Gateway) {
    this.commands = new CommandStore(world);
    this.#endpoints = [
      ...generalRoutes(world, gateway, () => this.identifiesLeft),
      ...interactionRoutes(world, deliveries),
      ...messageRoutes(world, deliveries),
      ...commandRoutes(this.commands),
    ];
  }

  needsToken(call: Call): boolean {
    return this.#find(call)?.open !== true;
  }

  answer(call: Call, problems: readonly string[]): Answer {
    const endpoint = this.#find(call);
    if (endpoint === undefined) return { status: 404, body: { message: '404: Not Found', code: 0 } };
    const wrong = [...problems, ...this.#check(endpoint, call)];
    if (wrong.length > 0) {
      this.violations.push(`${call.method} ${call.path}: ${wrong.join('; ')}`);
      throw new Refusal(invalidForm(wrong));
    }
    return endpoint.run(call, call.path.match(endpoint.path)?.slice(1) ?? []);
  }

  #find(call: Call): Endpoint | undefined {
    return this.#endpoints.find((e) => e.method === call.method && e.path.test(call.path));
  }

  #check(endpoint: Endpoint, call: Call): string[] {
    if (endpoint.schema === undefined) return [];
    const problems = checkBody(endpoint.schema, call.body);
    const body = (call.body ?? {}) as Body;
    const parts = endpoint.messageAt === 'data' ? ((body.data ?? {}) as Body) : body;
    if (endpoint.messageAt === undefined) return problems;
    // Explicit on every message that shows anything: whom it may ping must never be left to a default.
    const shows = ['content', 'embeds', 'components'].some((key) => parts[key] !== undefined);
    if (shows && parts.allowed_mentions === undefined) problems.push('allowed_mentions: not explicit');
    return [...problems, ...checkMessage(parts)];
  }
}

function generalRoutes(world: World, gateway: Gateway, remaining: () => number): Endpoint[] {
  return [
    {
      method: 'GET',
      path: /^\/gateway\/bot$/,
      run: () =>
        ok({
          url: gateway.url,
          shards: 1,
          session_start_limit: {
            total: 1000,
            remaining: remaining(),
            reset_after: 3_600_000,
            max_concurrency: 1,
          },
        }),
    },
    { method: 'GET', path: /^\/users\/@me$/, run: () => ok(world.bot) },
    {
      method: 'GET',
      path: /^\/users\/@me\/guilds$/,
      run: () =>
        ok([...world.guilds.values()].filter((g) => g.present).map(({ id, name }) => ({ id, name }))),
    },
    {
      method: 'GET',
      path: /^\/(?:applications\/@me|oauth2\/applications\/@me)$/,
      run: () => ok({ id: world.applicationId, name: 'Ostiole', description: '', flags: 0, bot: world.bot }),
    },
    {
      method: 'GET',
      path: /^\/guilds\/(\d+)$/,
      run: (_call, [id]) => {
        const guild = world.guilds.get(id ?? '');
        if (guild === undefined || !guild.present) throw new Refusal(FAILURES[10004]);
        return ok(guildFields(guild) satisfies Partial<APIGuild>);
      },
    },
    {
      method: 'POST',
      path: /^\/users\/@me\/channels$/,
      schema: 'dm-create',
      run: (call) => {
        const userId = String((call.body as Body).recipient_id);
        if (!world.users.has(userId)) throw new Refusal(FAILURES[10013]);
        return ok(directChannel(world, world.directChannel(userId)));
      },
    },
  ];
}

function interactionRoutes(world: World, deliveries: Deliveries): Endpoint[] {
  const webhook = `^\\/webhooks\\/${world.applicationId}\\/([^/]+)`;
  const original = new RegExp(`${webhook}\\/messages\\/@original$`);
  return [
    {
      method: 'POST',
      path: /^\/interactions\/(\d+)\/([^/]+)\/callback$/,
      open: true,
      schema: 'callback',
      messageAt: 'data',
      run: (call, [id = '', token = '']) => {
        const stored = acknowledge(world, deliveries, id, token, call.body as Body, call.files);
        if (call.query.get('with_response') !== 'true') return { status: 204 };
        const type = (call.body as Body).type;
        const message = stored === null ? {} : { message: stored.api };
        return ok({ interaction: { id, type: 2 }, resource: { type, ...message } });
      },
    },
    {
      method: 'PATCH',
      path: original,
      open: true,
      schema: 'original-edit',
      messageAt: 'body',
      run: (call, [token = '']) =>
        ok(editOriginal(world, deliveries, token, call.body as Body, call.files).api),
    },
    {
      method: 'GET',
      path: original,
      open: true,
      run: (_call, [token = '']) => {
        const stored = byToken(world, token).original;
        if (stored === null || stored.deleted) throw new Refusal(FAILURES[10008]);
        return ok(stored.api);
      },
    },
    {
      method: 'DELETE',
      path: original,
      open: true,
      run: (_call, [token = '']) => {
        deleteOriginal(world, token);
        return { status: 204 };
      },
    },
    {
      method: 'POST',
      path: new RegExp(`${webhook}$`),
      open: true,
      schema: 'follow-up',
      messageAt: 'body',
      run: (call, [token = '']) => ok(followUp(world, deliveries, token, call.body as Body, call.files).api),
    },
  ];
}

function messageRoutes(world: World, deliveries: Deliveries): Endpoint[] {
  const found = (channelId = '', messageId = '') => {
    const stored = deliveries.channel(channelId).messages.find((m) => m.api.id === messageId);
    if (stored === undefined || stored.deleted) throw new Refusal(FAILURES[10008]);
    return stored;
  };
  return [
    {
      method: 'GET',
      path: /^\/channels\/(\d+)$/,
      run: (_call, [id = '']) => {
        const channel = deliveries.channel(id);
        return ok(channel.guildId === null ? directChannel(world, channel) : textChannel(channel));
      },
    },
    {
      method: 'POST',
      path: /^\/channels\/(\d+)\/messages$/,
      schema: 'message-create',
      messageAt: 'body',
      run: (call, [id = '']) => ok(deliveries.create(id, call.body as Body, call.files).api),
    },
    {
      method: 'GET',
      path: /^\/channels\/(\d+)\/messages$/,
      run: (call, [id = '']) => {
        const after = BigInt(call.query.get('after') ?? '0');
        const limit = Number(call.query.get('limit') ?? '50');
        const shown = deliveries.channel(id).messages.filter((m) => !m.deleted && !m.ephemeral);
        const later = shown.filter((m) => BigInt(m.api.id) > after);
        // Newest first; with `after` the ones nearest to it.
        const page = call.query.has('after') ? later.slice(0, limit) : later.slice(-limit);
        return ok(page.map((m) => m.api).reverse());
      },
    },
    {
      method: 'GET',
      path: /^\/channels\/(\d+)\/messages\/(\d+)$/,
      run: (_call, [channelId, messageId]) => ok(found(channelId, messageId).api),
    },
    {
      method: 'PATCH',
      path: /^\/channels\/(\d+)\/messages\/(\d+)$/,
      schema: 'message-edit',
      messageAt: 'body',
      run: (call, [channelId, messageId]) => {
        const stored = found(channelId, messageId);
        deliveries.edit(stored, call.body as Body, call.files);
        return ok(stored.api);
      },
    },
    {
      method: 'PUT',
      path: /^\/channels\/(\d+)\/messages\/(\d+)\/reactions\/([^/]+)\/@me$/,
      run: (_call, [channelId, messageId, emoji = '']) => {
        found(channelId, messageId).reactions.push(emoji);
        return { status: 204 };
      },
    },
  ];
}

function commandRoutes(commands: CommandStore): Endpoint[] {
  const base = '^\\/applications\\/\\d+(?:\\/guilds\\/(\\d+))?\\/commands';
  const all = new RegExp(`${base}$`);
  const one = new RegExp(`${base}\\/(\\d+)$`);
  return [
    { method: 'GET', path: all, run: (_call, [guild]) => ok(commands.list(guild ?? GLOBAL)) },
    {
      method: 'POST',
      path: all,
      schema: 'command-create',
      run: (call, [guild]) => ({ status: 201, body: commands.create(guild ?? GLOBAL, call.body as Body) }),
    },
    {
      method: 'PUT',
      path: all,
      schema: 'commands-put',
      run: (call, [guild]) => ok(commands.replaceAll(guild ?? GLOBAL, call.body as Body[])),
    },
    {
      method: 'PATCH',
      path: one,
      schema: 'command-edit',
      run: (call, [guild, id = '']) => ok(commands.edit(guild ?? GLOBAL, id, call.body as Body)),
    },
    {
      method: 'DELETE',
      path: one,
      run: (_call, [guild, id = '']) => {
        commands.remove(guild ?? GLOBAL, id);
        return { status: 204 };
      },
    },
  ];
}

function ok(body: unknown): Answer {
  return { status: 200, body };
}
