/**
 * A stand-in for Discord on 127.0.0.1: REST, gateway and CDN on one free port. The unmodified discord.js client
 * talks to it when `DISCORD_API` is its `api`. Made from Discord's documentation, typed by discord-api-types; every
 * request body is parsed with the schemas of discord-api-spec for its route.
 *
 *     const discord = await startStandIn();
 *     const guild = discord.addGuild('Fig club', ['figs']);
 *     const ana = discord.addUser('Ana');
 *     … start the assistant with { token: discord.token, api: discord.api } …
 *     const asked = discord.people.command({ user: ana, channel: discord.channel(guild) }, 'tip', { tree: 'Alma' });
 *     await discord.until(() => asked.original !== null);
 *     discord.assertClean();   // fails on a body that Discord's API description does not allow
 *     await discord.stop();
 *
 * In a process of its own: `node --import tsx tests/support/discord/run.ts --channels 3` prints one line of JSON
 * (`api`, `cdn`, `control`, `token`, `guild`, `channels`) and runs until it is ended. `GET <control>/messages` lists
 * what was stored (id, channel, nonce, content); `POST <control>/faults` with
 * `{"method":"POST","path":"^/channels/","fault":{"kind":"stall"},"times":3}` makes requests fail, see faults.ts.
 */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { GatewayDispatchEvents, GatewayIntentBits } from 'discord-api-types/v10';
import { StandInClock } from './clock.ts';
import { Deliveries } from './deliveries.ts';
import { Refusal, UNAUTHORIZED } from './errors.ts';
import { Faults } from './faults.ts';
import { Gateway } from './gateway.ts';
import { collect, failureAnswer, limited, write } from './http.ts';
import { readBody } from './multipart.ts';
import { Pace, type PaceLimits } from './pace.ts';
import { guildCreateData } from './payloads.ts';
import { People } from './people.ts';
import { type Answer, type Call, Rest } from './rest.ts';
import {
  type StandInChannel,
  type StandInGuild,
  type StandInMessage,
  type StandInUser,
  World,
} from './world.ts';

export interface StandInOptions extends PaceLimits {
  readonly clock?: StandInClock;
  readonly token?: string;
  readonly port?: number;
  /** 41,250 ms on Discord. */
  readonly heartbeatMs?: number;
  readonly messageContentAllowed?: boolean;
  /** "The past few minutes" in the documentation; five by default here. */
  readonly nonceWindowMs?: number;
}

export interface LoggedRequest {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
  readonly at: number;
  status: number | null;
}

export async function startStandIn(options: StandInOptions = {}): Promise<StandIn> {
  const standIn = new StandIn(options);
  await standIn.listen(options.port ?? 0);
  return standIn;
}

export class StandIn {
  readonly clock: StandInClock;
  readonly token: string;
  readonly world: World;
  readonly faults = new Faults();
  readonly gateway: Gateway;
  readonly people: People;
  readonly rest: Rest;
  readonly requests: LoggedRequest[] = [];
  /** What the CDN does instead of serving a file. */
  cdnFault: 'redirect' | 'hang' | 'endless' | null = null;
  readonly #deliveries: Deliveries;
  readonly #pace: Pace;
  readonly #http: Server;
  #port = 0;

  constructor(options: StandInOptions) {
    this.clock = options.clock ?? new StandInClock();
    this.token = options.token ?? 'stand-in.token.of-no-use';
    this.world = new World(this.clock);
    this.#http = createServer((request, response) => void this.#serve(request, response));
    this.gateway = new Gateway(this.#http, this.world, {
      token: this.token,
      heartbeatMs: options.heartbeatMs ?? 41_250,
      messageContentAllowed: options.messageContentAllowed ?? false,
    });
    const window = options.nonceWindowMs ?? 5 * 60_000;
    this.#deliveries = new Deliveries(this.world, this.gateway, window, () => this.cdn);
    this.#pace = new Pace(options, () => this.clock.now());
    this.people = new People(this.world, this.gateway, this.#deliveries);
    this.rest = new Rest(this.world, this.#deliveries, this.gateway);
  }

  async listen(port: number): Promise<void> {
    await new Promise<void>((resolve) => this.#http.listen(port, '127.0.0.1', resolve));
    this.#port = (this.#http.address() as AddressInfo).port;
    this.gateway.listensOn(this.#port);
  }

  get api(): string {
    return `http://127.0.0.1:${this.#port}/api`;
  }

  get cdn(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  get control(): string {
    return `http://127.0.0.1:${this.#port}/stand-in`;
  }

  addUser(name: string, locale?: string): StandInUser {
    return this.world.addUser(name, locale);
  }

  /** The bot is put in a guild; a connected one hears of it. */
  addGuild(name: string, channels?: readonly string[]): StandInGuild {
    const guild = this.world.addGuild(name, channels);
    this.#announceGuild(guild);
    return guild;
  }

  /** The bot is thrown out, or asked back in. */
  removeGuild(guild: StandInGuild): void {
    guild.present = false;
    this.gateway.dispatch({
      event: GatewayDispatchEvents.GuildDelete,
      guildId: guild.id,
      intent: GatewayIntentBits.Guilds,
      dataFor: () => ({ id: guild.id }),
    });
  }

  returnTo(guild: StandInGuild): void {
    guild.present = true;
    this.#announceGuild(guild);
  }

  #announceGuild(guild: StandInGuild): void {
    this.gateway.dispatch({
      event: GatewayDispatchEvents.GuildCreate,
      guildId: guild.id,
      intent: GatewayIntentBits.Guilds,
      dataFor: () => guildCreateData(this.world, guild),
    });
  }

  channel(guild: StandInGuild, index = 0): StandInChannel {
    const channel = this.world.channels.get(guild.channelIds[index] ?? '');
    if (channel === undefined) throw new Error(`${guild.name} has no channel ${index}`);
    return channel;
  }

  /** What the assistant posted, oldest first, wherever. */
  get posted(): StandInMessage[] {
    const all = [...this.world.channels.values()].flatMap((channel) => channel.messages);
    return all.filter((m) => m.body !== null && !m.deleted).sort((a, b) => a.at - b.at);
  }

  requestsTo(method: string, path: RegExp): LoggedRequest[] {
    return this.requests.filter((request) => request.method === method && path.test(request.path));
  }

  /** Fails when the assistant sent a body that Discord's API description or limits do not allow. */
  assertClean(): void {
    if (this.rest.violations.length > 0) throw new Error(this.rest.violations.join('\n'));
  }

  /** Waits until something holds; says after `withinMs` what it waited for. */
  async until(holds: () => boolean, withinMs = 8000): Promise<void> {
    const end = performance.now() + withinMs;
    while (!holds()) {
      if (performance.now() > end) throw new Error(`never happened: ${holds}`);
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }

  async stop(): Promise<void> {
    await this.gateway.stop();
    this.#http.closeAllConnections();
    await new Promise<void>((resolve) => this.#http.close(() => resolve()));
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      const url = new URL(request.url ?? '/', this.cdn);
      const raw = await collect(request);
      if (url.pathname.startsWith('/attachments/')) return this.#serveFile(url.pathname, response);
      if (url.pathname.startsWith('/stand-in/')) return this.#serveControl(request, url, raw, response);
      await this.#serveApi(request, url, raw, response);
    } catch (error) {
      if (!response.headersSent) write(response, { status: 500, body: { message: String(error), code: 0 } });
    }
  }

  async #serveApi(request: IncomingMessage, url: URL, raw: Buffer, response: ServerResponse): Promise<void> {
    const path = decodeURIComponent(url.pathname).replace(/^\/api\/v10/, '');
    const method = request.method ?? 'GET';
    const { json, files, problems } = await readBody(request.headers['content-type'] ?? '', raw);
    const call: Call = { method, path, query: url.searchParams, body: json, files };
    const logged: LoggedRequest = { method, path, body: json, at: this.clock.now(), status: null };
    this.requests.push(logged);
    const answerWith = (answer: Answer, headers: Record<string, string> = {}) => {
      logged.status = answer.status;
      write(response, answer, headers);
    };

    const fault = this.faults.take(method, path);
    if (fault?.kind === 'hang') return;
    if (fault?.kind === 'reset') return void request.socket.destroy();
    if (fault?.kind === 'delay') await new Promise((resolve) => setTimeout(resolve, fault.ms));
    if (fault?.kind === 'error') return answerWith(failureAnswer(fault.failure));
    if (fault?.kind === 'rate-limit') {
      const global = fault.scope === 'global';
      return answerWith(...limited(fault.retryAfterSeconds, global, fault.scope ?? 'user', fault.code ?? 0));
    }
    const needsToken = this.rest.needsToken(call);
    if (needsToken && request.headers.authorization !== `Bot ${this.token}`) {
      return answerWith(failureAnswer(UNAUTHORIZED));
    }
    const pace = needsToken ? this.#pace.check(method, path) : { headers: {} };
    if (pace.retryAfterSeconds !== undefined) {
      const scope = pace.global ? 'global' : 'user';
      const [answer, headers] = limited(pace.retryAfterSeconds, pace.global === true, scope, 0);
      return answerWith(answer, { ...pace.headers, ...headers });
    }
    let answer: Answer;
    try {
      answer = this.rest.answer(call, problems);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      answer = failureAnswer(error.failure);
    }
    if (fault?.kind === 'stall') return;
    if (fault?.kind === 'error-after') answer = { status: 500, body: { message: 'late failure', code: 0 } };
    answerWith(answer, pace.headers);
  }

  #serveFile(path: string, response: ServerResponse): void {
    if (this.cdnFault === 'hang') return;
    if (this.cdnFault === 'redirect') {
      response.writeHead(302, { location: 'http://127.0.0.1:9/elsewhere' }).end();
      return;
    }
    if (this.cdnFault === 'endless') {
      response.writeHead(200, { 'content-type': 'text/csv' });
      const more = () => {
        while (!response.destroyed && response.write(Buffer.alloc(65_536, 'x'))) {}
      };
      response.on('drain', more);
      response.on('error', () => {});
      more();
      return;
    }
    const file = this.#deliveries.files.get(path);
    if (file === undefined) response.writeHead(404).end();
    else response.writeHead(200, { 'content-type': file.type }).end(Buffer.from(file.bytes));
  }

  #serveControl(request: IncomingMessage, url: URL, raw: Buffer, response: ServerResponse): void {
    if (request.method === 'GET' && url.pathname === '/stand-in/messages') {
      const messages = this.posted.map((m) => ({
        id: m.api.id,
        channel: m.api.channel_id,
        nonce: m.nonce,
        content: m.api.content,
        embeds: m.api.embeds,
      }));
      write(response, { status: 200, body: { messages, violations: this.rest.violations } });
      return;
    }
    if (request.method === 'POST' && url.pathname === '/stand-in/faults') {
      const { method, path, fault, times } = JSON.parse(raw.toString('utf8'));
      this.faults.add(method, new RegExp(path), fault, times);
      write(response, { status: 204 });
      return;
    }
    write(response, { status: 404, body: {} });
  }
}
