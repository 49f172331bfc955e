import {
  type APIApplicationCommandInteraction,
  type APIAttachment,
  type APIInteraction,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ChannelType,
  GatewayDispatchEvents,
  InteractionContextType,
  InteractionType,
  type Locale,
  PermissionFlagsBits,
} from 'discord-api-types/v10';
import type { Deliveries } from './deliveries.ts';
import type { Gateway } from './gateway.ts';
import { BASIC_PERMISSIONS, guildMember, message } from './payloads.ts';
import type {
  StandInChannel,
  StandInGuild,
  StandInInteraction,
  StandInMessage,
  StandInUser,
  World,
} from './world.ts';

export interface Place {
  readonly user: StandInUser;
  /** A channel of a guild, or a direct-message channel. */
  readonly channel: StandInChannel;
  readonly managesGuild?: boolean;
}

export type OptionValue = string | number | boolean | { readonly name: string; readonly bytes: Uint8Array };

/** What people in front of a Discord client do. */
export class People {
  readonly #world: World;
  readonly #gateway: Gateway;
  readonly #deliveries: Deliveries;

  constructor(world: World, gateway: Gateway, deliveries: Deliveries) {
    this.#world = world;
    this.#gateway = gateway;
    this.#deliveries = deliveries;
  }

  /** Types `/tree add name:…`. `name` is "tree add". */
  command(place: Place, name: string, options: Record<string, OptionValue> = {}): StandInInteraction {
    const attachments: Record<string, APIAttachment> = {};
    const typed = Object.entries(options).map(([option, value]) => {
      if (typeof value !== 'object') return { name: option, type: typeOf(value), value };
      const attachment = this.#deliveries.upload({ ...value, type: 'text/csv' });
      attachments[attachment.id] = attachment;
      return { name: option, type: ApplicationCommandOptionType.Attachment, value: attachment.id };
    });
    const data = { ...nest(this.#world, name, typed), resolved: { attachments } };
    return this.#interact(place, InteractionType.ApplicationCommand, data, null);
  }

  /** Types into an option and waits for what is offered. */
  complete(place: Place, name: string, focused: string, typed: string): StandInInteraction {
    const option = { name: focused, type: ApplicationCommandOptionType.String, value: typed, focused: true };
    return this.#interact(
      place,
      InteractionType.ApplicationCommandAutocomplete,
      nest(this.#world, name, [option]),
      null,
    );
  }

  /** Uses a command on a message. */
  messageCommand(place: Place, name: string, target: StandInMessage): StandInInteraction {
    const data = {
      id: this.#world.newId(),
      type: ApplicationCommandType.Message,
      name,
      target_id: target.api.id,
      resolved: { messages: { [target.api.id]: target.api } },
    };
    return this.#interact(place, InteractionType.ApplicationCommand, data, null);
  }

  press(place: Place, stored: StandInMessage, customId: string): StandInInteraction {
    const data = { custom_id: customId, component_type: 2 };
    return this.#interact(place, InteractionType.MessageComponent, data, stored);
  }

  /** Writes a message; `mentions` puts the assistant's mention in front. */
  say(
    place: Place,
    text: string,
    how: { readonly mentions?: boolean; readonly replyTo?: StandInMessage; readonly silent?: boolean } = {},
  ): StandInMessage {
    const bot = this.#world.users.get(this.#world.bot.id) as StandInUser;
    const at = this.#world.clock.now();
    const stored: StandInMessage = {
      api: message({
        id: this.#world.newId(),
        channelId: place.channel.id,
        author: place.user,
        at,
        content: how.mentions ? `<@${bot.api.id}> ${text}` : text,
        mentions: how.mentions || (how.replyTo && !how.silent) ? [bot] : [],
        replyTo: how.replyTo?.api ?? null,
      }),
      body: null,
      files: [],
      nonce: null,
      at,
      ephemeral: false,
      reactions: [],
      deleted: false,
    };
    place.channel.messages.push(stored);
    this.#deliveries.announce(stored);
    return stored;
  }

  #interact(
    place: Place,
    type: InteractionType,
    data: object,
    pressed: StandInMessage | null,
  ): StandInInteraction {
    const { user, channel } = place;
    const guild = channel.guildId === null ? null : (this.#world.guilds.get(channel.guildId) ?? null);
    const id = this.#world.newId();
    const token = `token-${id}`;
    const payload = {
      id,
      application_id: this.#world.applicationId,
      type,
      data,
      token,
      version: 1,
      app_permissions: String(BASIC_PERMISSIONS),
      locale: user.locale as Locale,
      entitlements: [],
      authorizing_integration_owners: guild === null ? { 0: '0' } : { 0: guild.id },
      context: guild === null ? InteractionContextType.BotDM : InteractionContextType.Guild,
      attachment_size_limit: 10_485_760,
      channel_id: channel.id,
      channel: { id: channel.id, type: guild === null ? ChannelType.DM : ChannelType.GuildText },
      ...(pressed !== null && { message: pressed.api }),
      ...(guild === null ? { user: user.api } : this.#inGuild(guild, user, place.managesGuild === true)),
    } as unknown as APIInteraction satisfies APIInteraction;
    const interaction: StandInInteraction = {
      id,
      token,
      at: this.#world.clock.now(),
      channelId: channel.id,
      userId: user.api.id,
      message: pressed,
      dispatch: { event: GatewayDispatchEvents.InteractionCreate, data: payload, guildId: channel.guildId },
      acknowledged: null,
      placeholder: null,
      original: null,
      followUps: [],
      choices: null,
    };
    this.#world.interactions.set(id, interaction);
    this.send(interaction);
    return interaction;
  }

  /** Sends the interaction's event; a second time for a duplicate. */
  send(interaction: StandInInteraction): void {
    const { event, data, guildId } = interaction.dispatch;
    this.#gateway.dispatch({ event, guildId, intent: 0, dataFor: () => data });
  }

  #inGuild(guild: StandInGuild, user: StandInUser, manages: boolean) {
    const permissions = manages ? BASIC_PERMISSIONS | PermissionFlagsBits.ManageGuild : BASIC_PERMISSIONS;
    return {
      guild_id: guild.id,
      guild: { id: guild.id, features: [], locale: 'en-US' as Locale },
      guild_locale: 'en-US' as Locale,
      member: { ...guildMember(user), permissions: String(permissions) },
    };
  }
}

function typeOf(value: string | number | boolean): ApplicationCommandOptionType {
  if (typeof value === 'string') return ApplicationCommandOptionType.String;
  if (typeof value === 'boolean') return ApplicationCommandOptionType.Boolean;
  return Number.isInteger(value) ? ApplicationCommandOptionType.Integer : ApplicationCommandOptionType.Number;
}

function nest(world: World, name: string, options: object[]): APIApplicationCommandInteraction['data'] {
  const [command = '', sub] = name.split(' ');
  const inner =
    sub === undefined ? options : [{ name: sub, type: ApplicationCommandOptionType.Subcommand, options }];
  return {
    id: world.newId(),
    type: ApplicationCommandType.ChatInput,
    name: command,
    options: inner,
  } as APIApplicationCommandInteraction['data'];
}
