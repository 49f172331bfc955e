import { type Channel, ChannelType, type Client, Events, type Guild, type Message } from 'discord.js';
import { systemClock } from '../../clock.ts';
import { describeError } from '../../log.ts';
import { lastAlive, markAlive, recentDirects } from './claims.ts';
import { markAbsent, markLeft, welcomeGuild } from './clubs.ts';
import type { Kit } from './kit.ts';
import { Messages } from './messages.ts';
import { fetchMissed } from './missed.ts';
import { Router } from './router.ts';

/** How often it is put down that Discord is being heard. */
const ALIVE_EVERY_MS = 60_000;

/** Connects what the gateway tells to what is to be done about it. Call before logging in. */
export function listen(client: Client, kit: Kit): { stop: () => void } {
  const router = new Router(kit);
  const messages = new Messages(kit, () => client.user?.id ?? '');
  const safely = (what: string, work: Promise<unknown>) => {
    work.catch((error: unknown) => kit.log.error({ what, error: describeError(error) }, 'failed'));
  };

  client.on(Events.InteractionCreate, (interaction) => kit.turns.follow(router.take(interaction)));
  client.on(Events.MessageCreate, (message) => kit.turns.follow(messages.take(message as Message)));
  client.on(Events.GuildCreate, (guild) => safely('hello', welcomeGuild(kit, describeGuild(guild))));
  client.on(Events.GuildDelete, (guild) =>
    safely('left', markLeft(kit.opened.db, guild.id, kit.clock.now())),
  );
  // Without a listener an error ends the process.
  client.on(Events.Error, (error) => kit.log.error({ error: describeError(error) }, 'client'));
  client.on(Events.ShardError, (error, shard) =>
    kit.log.warn({ shard, error: describeError(error) }, 'connection'),
  );
  client.on(Events.ShardResume, (shard, replayed) => kit.log.info({ shard, replayed }, 'resumed'));
  client.on(Events.Warn, () => kit.log.warn('client warning'));

  const gaps = watchGaps(client);
  client.on(Events.ShardReady, (shard) =>
    safely('missed messages', catchUp(client, kit, messages, gaps.take(shard))),
  );
  client.once(Events.ClientReady, () => safely('clubs', reconcile(client, kit)));

  const timer = setInterval(() => {
    if (client.isReady()) safely('alive', markAlive(kit.opened.db, systemClock.now()));
  }, ALIVE_EVERY_MS);
  timer.unref();
  return { stop: () => clearInterval(timer) };
}

interface Packet {
  readonly t: string | null;
  readonly d: { readonly guild_id?: string; channel_type?: ChannelType };
}

type Since = Date | 'last run';

/** When each shard last heard anything before it had to begin a new session. */
function watchGaps(client: Client): { take: (shard: number) => Since } {
  const heard = new Map<number, Date>();
  const gaps = new Map<number, Since>();
  client.on(Events.Raw as never, (packet: Packet, shard: number) => {
    // Without it discord.js drops a message from a direct channel it does not know yet.
    if (packet.t === 'MESSAGE_CREATE' && packet.d.guild_id === undefined)
      packet.d.channel_type ??= ChannelType.DM;
    if (packet.t === 'READY') gaps.set(shard, heard.get(shard) ?? 'last run');
    heard.set(shard, systemClock.now());
  });
  return { take: (shard) => gaps.get(shard) ?? 'last run' };
}

/** Takes what was said while nothing could be heard. */
async function catchUp(client: Client, kit: Kit, messages: Messages, since: Since): Promise<void> {
  const from = since === 'last run' ? await lastAlive(kit.opened.db) : since;
  if (from !== null) {
    const directs = await recentDirects(kit.opened.db);
    const missed = await fetchMissed(client, from, systemClock.now(), directs, kit.log);
    if (missed.length > 0) kit.log.info({ count: missed.length }, 'messages since then');
    for (const message of missed) await messages.take(message, true);
  }
  await markAlive(kit.opened.db, systemClock.now());
}

/** Clubs joined or left while the assistant was not running. */
async function reconcile(client: Client, kit: Kit): Promise<void> {
  const guilds = [...client.guilds.cache.values()];
  await markAbsent(
    kit.opened.db,
    guilds.map(({ id }) => id),
    kit.clock.now(),
  );
  for (const guild of guilds) {
    if (!guild.available) continue;
    try {
      await welcomeGuild(kit, describeGuild(guild));
    } catch (error) {
      kit.log.error({ error: describeError(error) }, 'a club could not be opened');
    }
  }
}

function describeGuild(guild: Guild) {
  const writable = guild.channels.cache.filter((channel) => isTextChannel(channel)).map(({ id }) => id);
  const first = guild.systemChannelId === null ? [] : [guild.systemChannelId];
  return {
    id: guild.id,
    name: guild.name,
    ownerId: guild.ownerId,
    channelIds: [...new Set([...first, ...writable])],
  };
}

function isTextChannel(channel: Channel): boolean {
  return channel.type === ChannelType.GuildText;
}
