import { and, eq } from 'drizzle-orm';
import { clubs } from '../../records/schema.ts';
import type { Kit } from './kit.ts';

/** Whether every message of a channel is read: the operator's channel, or the one the club chose in /club. */
export async function isLogChannel(
  { logChannel, opened }: Kit,
  guildId: string,
  channelId: string,
): Promise<boolean> {
  if (!logChannel.allowed) return false;
  if (logChannel.channelId === channelId) return true;
  const [club] = await opened.db
    .select({ logChannelId: clubs.logChannelId })
    .from(clubs)
    .where(and(eq(clubs.platform, 'discord'), eq(clubs.platformId, guildId)));
  return club?.logChannelId === channelId;
}
