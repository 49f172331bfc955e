import {
  type APIAttachment,
  type APIDMChannel,
  type APIGuildMember,
  type APIMessage,
  type APITextChannel,
  type ApplicationFlags,
  ChannelType,
  type GatewayGuildCreateDispatchData,
  type GatewayMessageCreateDispatchData,
  type GatewayReadyDispatchData,
  GuildDefaultMessageNotifications,
  GuildExplicitContentFilter,
  type GuildMemberFlags,
  GuildMFALevel,
  GuildNSFWLevel,
  GuildPremiumTier,
  GuildVerificationLevel,
  Locale,
  type MessageFlags,
  MessageType,
  PermissionFlagsBits,
} from 'discord-api-types/v10';
import type { StandInChannel, StandInGuild, StandInMessage, StandInUser, World } from './world.ts';

// What the gateway sends, typed by discord-api-types, so that a drift from Discord's own is a compile error.

export const BASIC_PERMISSIONS =
  PermissionFlagsBits.ViewChannel |
  PermissionFlagsBits.SendMessages |
  PermissionFlagsBits.EmbedLinks |
  PermissionFlagsBits.AttachFiles |
  PermissionFlagsBits.AddReactions |
  PermissionFlagsBits.ReadMessageHistory;

export function readyData(
  world: World,
  guilds: readonly StandInGuild[],
  sessionId: string,
  resumeUrl: string,
  shard: [number, number],
) {
  return {
    v: 10,
    user: world.bot,
    guilds: guilds.map(({ id }) => ({ id, unavailable: true })),
    session_id: sessionId,
    resume_gateway_url: resumeUrl,
    shard,
    application: { id: world.applicationId, flags: 0 as ApplicationFlags, flags_new: '0' },
  } satisfies GatewayReadyDispatchData;
}

export function guildMember(user: StandInUser): APIGuildMember {
  return {
    user: user.api,
    roles: [],
    joined_at: '2026-01-01T00:00:00.000Z',
    deaf: false,
    mute: false,
    flags: 0 as GuildMemberFlags,
  };
}

export function textChannel(channel: StandInChannel): APITextChannel {
  return {
    id: channel.id,
    type: ChannelType.GuildText,
    name: channel.name,
    guild_id: channel.guildId ?? '',
    position: 0,
    permission_overwrites: [],
    nsfw: false,
    parent_id: null,
    last_message_id: channel.messages.at(-1)?.api.id ?? null,
    rate_limit_per_user: 0,
  };
}

export function directChannel(world: World, channel: StandInChannel): APIDMChannel {
  const recipient = world.users.get(channel.recipientId ?? '');
  return {
    id: channel.id,
    type: ChannelType.DM,
    name: null,
    last_message_id: channel.messages.at(-1)?.api.id ?? null,
    recipients: recipient === undefined ? [] : [recipient.api],
  };
}

export function guildCreateData(world: World, guild: StandInGuild): GatewayGuildCreateDispatchData {
  const bot = world.users.get(world.bot.id) as StandInUser;
  return {
    ...guildFields(guild),
    joined_at: '2026-01-01T00:00:00.000Z',
    large: false,
    unavailable: false,
    member_count: 2,
    voice_states: [],
    members: [guildMember(bot)],
    channels: guild.channelIds.flatMap((id) => {
      const channel = world.channels.get(id);
      return channel === undefined || channel.refuses === 10003 ? [] : [textChannel(channel)];
    }),
    threads: [],
    presences: [],
    stage_instances: [],
    guild_scheduled_events: [],
    soundboard_sounds: [],
  } satisfies GatewayGuildCreateDispatchData;
}

export function guildFields(guild: StandInGuild) {
  return {
    id: guild.id,
    name: guild.name,
    icon: null,
    splash: null,
    discovery_splash: null,
    owner_id: guild.ownerId,
    region: '',
    afk_channel_id: null,
    afk_timeout: 300 as const,
    verification_level: GuildVerificationLevel.None,
    default_message_notifications: GuildDefaultMessageNotifications.OnlyMentions,
    explicit_content_filter: GuildExplicitContentFilter.Disabled,
    roles: [
      {
        id: guild.id,
        name: '@everyone',
        color: 0,
        colors: { primary_color: 0, secondary_color: null, tertiary_color: null },
        hoist: false,
        position: 0,
        permissions: String(BASIC_PERMISSIONS),
        managed: false,
        mentionable: false,
        flags: 0,
      },
    ],
    emojis: [],
    features: [],
    mfa_level: GuildMFALevel.None,
    application_id: null,
    system_channel_id: guild.systemChannelId,
    system_channel_flags: 0,
    rules_channel_id: null,
    vanity_url_code: null,
    description: null,
    banner: null,
    premium_tier: GuildPremiumTier.None,
    premium_subscription_count: 0,
    preferred_locale: Locale.EnglishUS,
    public_updates_channel_id: null,
    nsfw_level: GuildNSFWLevel.Default,
    premium_progress_bar_enabled: false,
    safety_alerts_channel_id: null,
    stickers: [],
    hub_type: null,
    incidents_data: null,
  };
}

export interface MessageParts {
  readonly id: string;
  readonly channelId: string;
  readonly author: StandInUser;
  readonly at: number;
  readonly content?: string;
  readonly mentions?: readonly StandInUser[];
  readonly replyTo?: APIMessage | null;
  readonly attachments?: APIAttachment[];
  readonly body?: Record<string, unknown>;
  readonly ephemeral?: boolean;
}

/** A message as Discord keeps it, from what the bot or a user sent. */
export function message(parts: MessageParts): APIMessage {
  const body = parts.body ?? {};
  const referenced = parts.replyTo ?? null;
  return {
    id: parts.id,
    channel_id: parts.channelId,
    author: parts.author.api,
    content: parts.content ?? (body.content as string | undefined) ?? '',
    timestamp: new Date(parts.at).toISOString(),
    edited_timestamp: null,
    tts: false,
    mention_everyone: false,
    mentions: (parts.mentions ?? []).map((user) => user.api),
    mention_roles: [],
    attachments: parts.attachments ?? [],
    embeds: (body.embeds as APIMessage['embeds'] | undefined) ?? [],
    components: (body.components as APIMessage['components']) ?? [],
    pinned: false,
    type: referenced === null ? MessageType.Default : MessageType.Reply,
    flags: (parts.ephemeral ? 64 : 0) as MessageFlags,
    ...(referenced !== null && {
      message_reference: { type: 0, channel_id: referenced.channel_id, message_id: referenced.id },
      referenced_message: referenced,
    }),
  };
}

export function messageCreateData(
  world: World,
  stored: StandInMessage,
  showContent: boolean,
): GatewayMessageCreateDispatchData {
  const channel = world.channels.get(stored.api.channel_id) as StandInChannel;
  const author = world.users.get(stored.api.author.id) as StandInUser;
  const { user: _user, ...member } = guildMember(author);
  return {
    ...stored.api,
    mentions: stored.api.mentions,
    // Without the privileged intent Discord leaves these empty (documentation: Gateway, Message content intent).
    ...(!showContent && { content: '', embeds: [], attachments: [], components: [] }),
    ...(channel.guildId !== null && { guild_id: channel.guildId, member }),
  } satisfies GatewayMessageCreateDispatchData;
}
