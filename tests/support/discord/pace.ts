export interface PaceLimits {
  /** Requests a second with the bot's token, over all routes (documentation: Rate Limits, Global: 50). */
  readonly globalPerSecond?: number;
  /** Messages per channel and window. */
  readonly messagesPerChannel?: { readonly limit: number; readonly windowMs: number };
}

export interface Verdict {
  readonly headers: Record<string, string>;
  /** Set: refuse with 429 and ask to wait this long. */
  readonly retryAfterSeconds?: number;
  readonly global?: boolean;
}

/** Discord's rate limits, in fixed windows, told in the headers its documentation names. */
export class Pace {
  readonly #limits: PaceLimits;
  readonly #now: () => number;
  readonly #windows = new Map<string, { endsAt: number; used: number }>();

  constructor(limits: PaceLimits, now: () => number) {
    this.#limits = limits;
    this.#now = now;
  }

  check(method: string, path: string): Verdict {
    const { globalPerSecond, messagesPerChannel } = this.#limits;
    if (globalPerSecond !== undefined) {
      const { left, resetMs } = this.#use('global', globalPerSecond, 1000);
      if (left < 0) return { headers: {}, retryAfterSeconds: resetMs / 1000, global: true };
    }
    const channel = path.match(/^\/channels\/(\d+)\/messages$/)?.[1];
    if (messagesPerChannel === undefined || channel === undefined || method !== 'POST')
      return { headers: {} };
    const { limit, windowMs } = messagesPerChannel;
    const { left, resetMs } = this.#use(channel, limit, windowMs);
    const headers = {
      'x-ratelimit-limit': String(limit),
      'x-ratelimit-remaining': String(Math.max(0, left)),
      'x-ratelimit-reset-after': String(resetMs / 1000),
      'x-ratelimit-bucket': 'messages',
    };
    return left < 0 ? { headers, retryAfterSeconds: resetMs / 1000 } : { headers };
  }

  #use(key: string, limit: number, windowMs: number): { left: number; resetMs: number } {
    const now = this.#now();
    let window = this.#windows.get(key);
    if (window === undefined || window.endsAt <= now) {
      window = { endsAt: now + windowMs, used: 0 };
      this.#windows.set(key, window);
    }
    window.used++;
    return { left: limit - window.used, resetMs: window.endsAt - now };
  }
}
