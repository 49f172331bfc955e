import { setTimeout as wait } from 'node:timers/promises';
import { DefaultRestOptions, type RateLimitData, REST, type RESTOptions } from 'discord.js';
import type { Log } from '../../log.ts';

export interface RestSettings {
  readonly token: string;
  /** Base without version. */
  readonly api: string;
  readonly timeoutMs?: number;
  readonly retries?: number;
  /** Which waits to refuse; none unless given. */
  readonly rejects?: (limit: RateLimitData) => boolean;
}

// A request whose answer never comes is sent again, so what must not be doubled carries a nonce.
const TIMEOUT_MS = 15_000;
const RETRIES = 2;
/** Discord's documentation bans an address after 10,000 refused requests in ten minutes; warn long before. */
const WARN_AFTER_INVALID = 500;

/** A pause before whatever comes next, since discord.js repeats a failed request at once. */
const AFTER_FAILURE_MS = 400;

/** How the REST client behaves; discord.js's own defaults are 3 retries at once, without a pause. */
export function restOptions({
  api,
  timeoutMs,
  retries,
  rejects,
}: Omit<RestSettings, 'token'>): Partial<RESTOptions> {
  return {
    api,
    version: '10',
    timeout: timeoutMs ?? TIMEOUT_MS,
    retries: retries ?? RETRIES,
    makeRequest: requestPatiently,
    invalidRequestWarningInterval: WARN_AFTER_INVALID,
    rejectOnRateLimit: rejects ?? null,
  };
}

/** How long Discord asks to wait: by its answer where there is one, else by what is left of the bucket's time. */
export function waitOf({ retryAfter, timeToReset }: RateLimitData): number {
  return Math.max(retryAfter, timeToReset);
}

/** A REST client of its own, for what has no gateway: nudges, deploying commands. */
export function createRest(settings: RestSettings, log: Log): REST {
  const rest = new REST(restOptions(settings)).setToken(settings.token);
  watchRest(rest, log);
  return rest;
}

export function watchRest(rest: REST, log: Log): void {
  rest.on('rateLimited', (limit) => {
    const { method, route, scope, global } = limit;
    log.warn({ method, route, scope, waitMs: waitOf(limit), global }, 'Discord asks to wait');
  });
  rest.on('invalidRequestWarning', ({ count, remainingTime }) =>
    log.error({ count, remainingMs: remainingTime }, 'many requests are refused; Discord may shut us out'),
  );
}

const requestPatiently: RESTOptions['makeRequest'] = async (url, init) => {
  const response = await DefaultRestOptions.makeRequest(url, init);
  if (response.status >= 500) await wait(AFTER_FAILURE_MS * (0.75 + Math.random() / 2));
  return response;
};
