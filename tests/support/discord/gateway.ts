import { randomBytes } from 'node:crypto';
import type { Server } from 'node:http';
import {
  GatewayCloseCodes,
  GatewayDispatchEvents,
  type GatewayIdentifyData,
  GatewayIntentBits,
  GatewayOpcodes,
  type GatewayReceivePayload,
  type GatewayResumeData,
  type GatewaySendPayload,
} from 'discord-api-types/v10';
import { type WebSocket, WebSocketServer } from 'ws';
import { guildCreateData, readyData } from './payloads.ts';
import type { World } from './world.ts';

interface Session {
  readonly id: string;
  readonly intents: number;
  readonly shard: [number, number];
  readonly sent: { readonly seq: number; readonly event: string; readonly data: unknown }[];
  seq: number;
  socket: WebSocket | null;
}

/** An event on its way to the bot; `dataFor` lets it depend on what the session may see. */
export interface Dispatch {
  readonly event: string;
  readonly guildId: string | null;
  readonly intent: number;
  readonly dataFor: (intents: number) => unknown;
}

export interface GatewayOptions {
  readonly token: string;
  readonly heartbeatMs: number;
  /** Whether the message content intent was ticked for the application. */
  readonly messageContentAllowed: boolean;
}

/** Discord's gateway, as its documentation ("Gateway", "Opcodes and Status Codes") describes it. */
export class Gateway {
  readonly identifies: GatewayIdentifyData[] = [];
  readonly resumes: GatewayResumeData[] = [];
  readonly closeCodes: number[] = [];
  heartbeats = 0;
  /** Heartbeats are no longer acknowledged. */
  withholdAcks = false;
  /** New connections are shut at once. */
  refuseConnections = false;
  readonly #world: World;
  readonly #options: GatewayOptions;
  readonly #server: WebSocketServer;
  readonly #sessions = new Map<string, Session>();
  #port = 0;

  constructor(http: Server, world: World, options: GatewayOptions) {
    this.#world = world;
    this.#options = options;
    this.#server = new WebSocketServer({ server: http });
    this.#server.on('connection', (socket) => this.#greet(socket));
  }

  listensOn(port: number): void {
    this.#port = port;
  }

  get url(): string {
    return `ws://127.0.0.1:${this.#port}`;
  }

  get connected(): number {
    return [...this.#sessions.values()].filter((session) => session.socket !== null).length;
  }

  /** Sends an event to the session whose shard it belongs to, or keeps it for the session's return. */
  dispatch(event: Dispatch): void {
    for (const session of this.#sessions.values()) {
      if (shardOf(event.guildId, session.shard[1]) !== session.shard[0]) continue;
      if (event.intent !== 0 && (session.intents & event.intent) === 0) continue;
      this.#push(session, event.event, event.dataFor(session.intents));
    }
  }

  /** The last dispatch of this kind once more, as a new event: what a faulty replay looks like. */
  repeatLast(event: string): void {
    for (const session of this.#sessions.values()) {
      const last = session.sent.findLast((sent) => sent.event === event);
      if (last !== undefined) this.#push(session, last.event, last.data);
    }
  }

  /** Cuts the connections without a close frame; sessions can be resumed. */
  drop(): void {
    this.#eachSocket((socket) => socket.terminate());
  }

  /** Cuts the connections and forgets the sessions: a RESUME gets op 9 false. */
  dropForGood(): void {
    const sockets = [...this.#sessions.values()].map((session) => session.socket);
    this.#sessions.clear();
    for (const socket of sockets) socket?.terminate();
  }

  close(code: number): void {
    this.#eachSocket((socket) => socket.close(code));
  }

  askToReconnect(): void {
    this.#eachSocket((socket) => send(socket, { op: GatewayOpcodes.Reconnect, d: null, s: null, t: null }));
  }

  invalidate(resumable: boolean): void {
    const sockets = [...this.#sessions.values()].map((session) => session.socket);
    if (!resumable) this.#sessions.clear();
    for (const socket of sockets) if (socket !== null) sendInvalid(socket, resumable);
  }

  async stop(): Promise<void> {
    for (const socket of this.#server.clients) socket.terminate();
    await new Promise<void>((resolve) => this.#server.close(() => resolve()));
  }

  #eachSocket(act: (socket: WebSocket) => void): void {
    for (const session of this.#sessions.values()) if (session.socket !== null) act(session.socket);
  }

  #greet(socket: WebSocket): void {
    if (this.refuseConnections) {
      socket.terminate();
      return;
    }
    let session: Session | null = null;
    socket.on('error', () => {});
    socket.on('close', (code) => {
      this.closeCodes.push(code);
      if (session?.socket === socket) {
        session.socket = null;
        // A client that closes with 1000 or 1001 ends its session (documentation: Gateway, Disconnecting).
        if (code === 1000 || code === 1001) this.#sessions.delete(session.id);
      }
    });
    socket.on('message', (raw) => {
      const payload = JSON.parse(String(raw)) as GatewaySendPayload;
      switch (payload.op) {
        case GatewayOpcodes.Heartbeat:
          this.heartbeats++;
          if (!this.withholdAcks) send(socket, { op: GatewayOpcodes.HeartbeatAck } as GatewayReceivePayload);
          break;
        case GatewayOpcodes.Identify:
          session = this.#identify(socket, payload.d);
          break;
        case GatewayOpcodes.Resume:
          session = this.#resume(socket, payload.d);
          break;
        default:
          break;
      }
    });
    send(socket, {
      op: GatewayOpcodes.Hello,
      d: { heartbeat_interval: this.#options.heartbeatMs },
      s: null,
      t: null,
    });
  }

  #identify(socket: WebSocket, data: GatewayIdentifyData): Session | null {
    this.identifies.push(data);
    if (data.token !== this.#options.token) {
      socket.close(GatewayCloseCodes.AuthenticationFailed);
      return null;
    }
    const wantsContent = (data.intents & GatewayIntentBits.MessageContent) !== 0;
    if (wantsContent && !this.#options.messageContentAllowed) {
      socket.close(GatewayCloseCodes.DisallowedIntents);
      return null;
    }
    const session: Session = {
      id: randomBytes(16).toString('hex'),
      intents: data.intents,
      shard: data.shard ?? [0, 1],
      sent: [],
      seq: 0,
      socket,
    };
    this.#sessions.set(session.id, session);
    const guilds = [...this.#world.guilds.values()].filter(
      (guild) => guild.present && shardOf(guild.id, session.shard[1]) === session.shard[0],
    );
    const ready = readyData(this.#world, guilds, session.id, this.url, session.shard);
    this.#push(session, GatewayDispatchEvents.Ready, ready);
    for (const guild of guilds) {
      this.#push(session, GatewayDispatchEvents.GuildCreate, guildCreateData(this.#world, guild));
    }
    return session;
  }

  #resume(socket: WebSocket, data: GatewayResumeData): Session | null {
    this.resumes.push(data);
    const session = this.#sessions.get(data.session_id);
    if (session === undefined) {
      sendInvalid(socket, false);
      return null;
    }
    session.socket = socket;
    for (const { seq, event, data: missed } of session.sent.filter((sent) => sent.seq > data.seq)) {
      socket.send(JSON.stringify({ op: GatewayOpcodes.Dispatch, s: seq, t: event, d: missed }));
    }
    this.#push(session, GatewayDispatchEvents.Resumed, { _trace: [] });
    return session;
  }

  #push(session: Session, event: string, data: unknown): void {
    const seq = ++session.seq;
    session.sent.push({ seq, event, data });
    session.socket?.send(JSON.stringify({ op: GatewayOpcodes.Dispatch, s: seq, t: event, d: data }));
  }
}

/** Which shard hears of a guild (documentation: Gateway, Sharding); direct messages go to the first. */
function shardOf(guildId: string | null, shards: number): number {
  return guildId === null ? 0 : Number((BigInt(guildId) >> 22n) % BigInt(shards));
}

function sendInvalid(socket: WebSocket, resumable: boolean): void {
  send(socket, { op: GatewayOpcodes.InvalidSession, d: resumable, s: null, t: null });
}

function send(socket: WebSocket, payload: unknown): void {
  socket.send(JSON.stringify(payload));
}
