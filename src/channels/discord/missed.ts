import { type Channel, type Client, type Message, SnowflakeUtil } from 'discord.js';
import { describeError, type Log } from '../../log.ts';

/** Nobody waits for an answer to what they wrote longer ago. */
const AT_MOST_MS = 24 * 60 * 60_000;
/** Clocks differ a little, and what was taken already is not taken again. */
const MARGIN_MS = 10_000;
const PAGE = 100;
const PAGES = 10;

/**
 * Fetches what was written while nothing could be heard: Discord repeats missed events only to a session that could
 * be resumed. In servers the channels that saw messages since; of direct channels those that this process knows, and
 * `directs`, which an earlier one knew.
 */
export async function fetchMissed(
  client: Client,
  since: Date,
  now: Date,
  directs: readonly string[],
  log: Log,
): Promise<Message[]> {
  const from = Math.max(since.getTime() - MARGIN_MS, now.getTime() - AT_MOST_MS);
  const after = SnowflakeUtil.generate({ timestamp: from }).toString();
  const found: Message[] = [];
  for (const id of directs) {
    // Closed since, or of a member who is gone: nothing to read there.
    await client.channels
      .fetch(id)
      .catch((error: unknown) =>
        log.debug({ channel: id, error: describeError(error) }, 'no direct channel'),
      );
  }
  for (const channel of client.channels.cache.values()) {
    if (!hasNews(channel, after)) continue;
    try {
      found.push(...(await messagesAfter(channel, after)));
    } catch (error) {
      log.debug({ channel: channel.id, error: describeError(error) }, 'missed messages cannot be read');
    }
  }
  return found.sort((a, b) => (BigInt(a.id) < BigInt(b.id) ? -1 : 1));
}

function hasNews(channel: Channel, after: string): boolean {
  if (!channel.isTextBased()) return false;
  if (channel.isDMBased()) return true;
  return channel.lastMessageId !== null && BigInt(channel.lastMessageId) > BigInt(after);
}

async function messagesAfter(channel: Channel, after: string): Promise<Message[]> {
  if (!channel.isTextBased()) return [];
  const found: Message[] = [];
  let from = after;
  for (let page = 0; page < PAGES; page++) {
    const fetched = await channel.messages.fetch({ after: from, limit: PAGE, cache: false });
    const ordered = [...fetched.values()].sort((a, b) => (BigInt(a.id) < BigInt(b.id) ? -1 : 1));
    found.push(...ordered);
    const last = ordered.at(-1);
    if (last === undefined || ordered.length < PAGE) break;
    from = last.id;
  }
  return found;
}
