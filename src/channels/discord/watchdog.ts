import type { Client } from 'discord.js';
import { systemClock } from '../../clock.ts';

/** Discord asks for a heartbeat every 41 s; this many minutes without one answered is a gateway gone deaf. */
const DEAF_AFTER_MS = 5 * 60_000;
const LOOK_EVERY_MS = 30_000;

export interface WatchdogOptions {
  readonly deafAfterMs?: number;
  readonly lookEveryMs?: number;
}

/**
 * Calls `onDeaf` when nothing has been heard of Discord for minutes, heartbeats included: online but deaf. The
 * client mends a missed heartbeat by itself; this is for when it does not. Returns the end of it.
 */
export function watchGateway(client: Client, onDeaf: () => void, options: WatchdogOptions = {}): () => void {
  const { deafAfterMs = DEAF_AFTER_MS, lookEveryMs = LOOK_EVERY_MS } = options;
  let heardAt = systemClock.now().getTime();
  const hear = () => {
    heardAt = systemClock.now().getTime();
  };
  client.on('raw' as never, hear);
  const timer = setInterval(() => {
    const beats = client.ws.shards.map((shard) => shard.lastPingTimestamp);
    // The worst shard counts; one that has never had a heartbeat answered is judged by what it has heard.
    const lastBeat = beats.length === 0 ? heardAt : Math.min(...beats.map((at) => (at > 0 ? at : heardAt)));
    const last = beats.length > 1 ? lastBeat : Math.max(lastBeat, heardAt);
    if (systemClock.now().getTime() - last > deafAfterMs) onDeaf();
  }, lookEveryMs);
  timer.unref();
  return () => {
    clearInterval(timer);
    client.off('raw' as never, hear);
  };
}
