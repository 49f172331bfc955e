import type { APIApplicationCommand, APIMessage, APIUser } from 'discord-api-types/v10';
import { type StandInClock, snowflake } from './clock.ts';
import type { UploadedFile } from './multipart.ts';

export interface StandInUser {
  readonly api: APIUser;
  /** Direct messages to them are refused with 50007. */
  dmsClosed: boolean;
  locale: string;
}

export interface StandInChannel {
  readonly id: string;
  readonly guildId: string | null;
  readonly name: string;
  /** The other side of a direct-message channel. */
  readonly recipientId: string | null;
  /** What sending to it gives instead: 10003 gone, 50001 no access, 50013 no permission. */
  refuses: 10003 | 50001 | 50013 | null;
  readonly messages: StandInMessage[];
}

export interface StandInMessage {
  readonly api: APIMessage;
  /** The request's body as it came. Null: not sent by the bot. */
  body: Record<string, unknown> | null;
  readonly files: UploadedFile[];
  readonly nonce: string | null;
  readonly at: number;
  readonly ephemeral: boolean;
  readonly reactions: string[];
  deleted: boolean;
}

export interface StandInGuild {
  readonly id: string;
  readonly name: string;
  readonly ownerId: string;
  readonly systemChannelId: string | null;
  readonly channelIds: string[];
  /** The bot is in it. */
  present: boolean;
}

export interface StandInInteraction {
  readonly id: string;
  readonly token: string;
  readonly at: number;
  readonly channelId: string;
  readonly userId: string;
  /** The message whose button was pressed. */
  readonly message: StandInMessage | null;
  readonly dispatch: { readonly event: string; readonly data: unknown; readonly guildId: string | null };
  acknowledged: { readonly type: number; readonly flags: number; readonly at: number } | null;
  /** What a deferred answer shows until it is edited; null when it was not deferred. */
  placeholder: 'waiting' | 'filled' | 'deleted' | null;
  /** The answer; not set while only a placeholder stands. */
  original: StandInMessage | null;
  readonly followUps: StandInMessage[];
  choices: { readonly name: string; readonly value: string }[] | null;
}

/** Everything the stand-in keeps. */
export class World {
  readonly clock: StandInClock;
  readonly applicationId: string;
  readonly bot: APIUser;
  readonly users = new Map<string, StandInUser>();
  readonly guilds = new Map<string, StandInGuild>();
  readonly channels = new Map<string, StandInChannel>();
  readonly interactions = new Map<string, StandInInteraction>();
  /** Application commands by scope: `global` or a guild's id. */
  readonly commands = new Map<string, APIApplicationCommand[]>();

  constructor(clock: StandInClock) {
    this.clock = clock;
    this.applicationId = this.newId();
    this.bot = {
      id: this.applicationId,
      username: 'ostiole',
      global_name: null,
      discriminator: '0001',
      avatar: null,
      bot: true,
    };
    this.users.set(this.bot.id, { api: this.bot, dmsClosed: false, locale: 'en-US' });
  }

  newId(): string {
    return snowflake(this.clock.now());
  }

  addUser(name: string, locale = 'en-US'): StandInUser {
    const api: APIUser = {
      id: this.newId(),
      username:
        name
          .toLowerCase()
          .replaceAll(/[^a-z0-9_.]/g, '_')
          .slice(0, 32) || 'user',
      global_name: name.slice(0, 32),
      discriminator: '0',
      avatar: null,
    };
    const user = { api, dmsClosed: false, locale };
    this.users.set(api.id, user);
    return user;
  }

  addGuild(name: string, channelNames: readonly string[] = ['general']): StandInGuild {
    const id = this.newId();
    const channels = channelNames.map((channel) => this.addChannel(channel, id));
    const guild: StandInGuild = {
      id,
      name,
      ownerId: this.newId(),
      systemChannelId: channels[0]?.id ?? null,
      channelIds: channels.map((channel) => channel.id),
      present: true,
    };
    this.guilds.set(id, guild);
    return guild;
  }

  addChannel(name: string, guildId: string | null, recipientId: string | null = null, id = this.newId()) {
    const channel: StandInChannel = { id, guildId, name, recipientId, refuses: null, messages: [] };
    this.channels.set(id, channel);
    return channel;
  }

  /** The direct-message channel with a user, made when there is none. */
  directChannel(userId: string): StandInChannel {
    for (const channel of this.channels.values()) if (channel.recipientId === userId) return channel;
    return this.addChannel('direct', null, userId);
  }

  findMessage(id: string): StandInMessage | null {
    for (const channel of this.channels.values()) {
      const found = channel.messages.find((message) => message.api.id === id);
      if (found !== undefined) return found;
    }
    return null;
  }
}
