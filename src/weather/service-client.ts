import { setTimeout as sleep } from 'node:timers/promises';

export type ServiceTrouble =
  | 'unreachable'
  | 'slow'
  | 'busy'
  | 'refused'
  | 'failed'
  | 'redirected'
  | 'too-large'
  | 'nonsense';

/** A weather service did not do its part. `message` is a sentence for the member. */
export class ServiceError extends Error {
  readonly trouble: ServiceTrouble;

  constructor(trouble: ServiceTrouble, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'ServiceError';
    this.trouble = trouble;
  }
}

export interface ClientOptions {
  /** One answer, from the request to its last byte. */
  readonly timeoutMs?: number;
  readonly maxBytes?: number;
  /** Waits before the second, third … attempt. */
  readonly retryDelaysMs?: readonly number[];
}

const TIMEOUT_MS = 30_000;
/** Five years of a station's days take 200 kB, thirty years of the grid 600 kB. */
const MAX_BYTES = 8 * 1024 * 1024;
const RETRY_DELAYS_MS = [1_000, 4_000];
/** A service may ask for a pause; past this it is told of as busy instead. */
const LONGEST_PAUSE_MS = 20_000;
const MOST_REDIRECTS = 3;

/** Gets JSON from one service. Never leaves the service's own origin. */
export class ServiceClient {
  readonly name: string;
  #base: string;
  #origin: string;
  #timeoutMs: number;
  #maxBytes: number;
  #retryDelaysMs: readonly number[];

  constructor(name: string, base: string, options: ClientOptions = {}) {
    this.name = name;
    this.#base = base.replace(/(?<!\/)\/+$/, '');
    this.#origin = new URL(base).origin;
    this.#timeoutMs = options.timeoutMs ?? TIMEOUT_MS;
    this.#maxBytes = options.maxBytes ?? MAX_BYTES;
    this.#retryDelaysMs = options.retryDelaysMs ?? RETRY_DELAYS_MS;
  }

  /** The parsed answer. Throws ServiceError; what may pass by itself is tried again first. */
  async getJson(path: string, query: Readonly<Record<string, string>>): Promise<unknown> {
    const url = new URL(this.#base + path);
    for (const [key, value] of Object.entries(query)) url.searchParams.set(key, value);
    for (let attempt = 0; ; attempt++) {
      try {
        return await this.#once(url);
      } catch (error) {
        const delay = this.#retryDelaysMs[attempt];
        if (!(error instanceof PassingError) || delay === undefined) throw error;
        await sleep(Math.max(delay, error.pauseMs));
      }
    }
  }

  async #once(url: URL): Promise<unknown> {
    const signal = AbortSignal.timeout(this.#timeoutMs);
    let at = url;
    try {
      for (let hops = 0; hops <= MOST_REDIRECTS; hops++) {
        const response = await fetch(at, {
          redirect: 'manual',
          signal,
          headers: { accept: 'application/json', 'user-agent': 'Ostiole' },
        });
        const next = this.#redirect(response, at);
        if (next === null) return this.#parse(await this.#read(response));
        await response.body?.cancel();
        at = next;
      }
    } catch (error) {
      throw this.#asServiceError(error);
    }
    throw new ServiceError('redirected', `${this.name} keeps sending requests round in a circle.`);
  }

  #redirect(response: Response, at: URL): URL | null {
    if (response.status < 300 || response.status >= 400 || response.status === 304) return null;
    const location = response.headers.get('location') ?? '';
    const next = URL.canParse(location, at.href) ? new URL(location, at) : null;
    if (next?.origin === this.#origin) return next;
    void response.body?.cancel();
    throw new ServiceError('redirected', `${this.name} points to another address, which I do not follow.`);
  }

  async #read(response: Response): Promise<string> {
    if (!response.ok) {
      await response.body?.cancel();
      throw this.#statusError(response);
    }
    const chunks: Uint8Array[] = [];
    let size = 0;
    for await (const chunk of response.body ?? []) {
      size += chunk.byteLength;
      // Leaving the loop cancels the rest of the body.
      if (size > this.#maxBytes)
        throw new ServiceError('too-large', `${this.name} sent far more than was asked for.`);
      chunks.push(chunk);
    }
    return Buffer.concat(chunks).toString('utf8');
  }

  #statusError(response: Response): ServiceError {
    const { status } = response;
    if (status === 429 || status === 503) {
      const seconds = Number(response.headers.get('retry-after'));
      const pauseMs = Number.isFinite(seconds) ? seconds * 1000 : 0;
      const message = `${this.name} is too busy to answer now (${status}).`;
      return pauseMs > LONGEST_PAUSE_MS
        ? new ServiceError('busy', message)
        : new PassingError('busy', message, pauseMs);
    }
    if (status >= 500 || status === 408)
      return new PassingError('failed', `${this.name} is failing (${status}).`);
    return new ServiceError('refused', `${this.name} refused the question (${status}).`);
  }

  #parse(text: string): unknown {
    try {
      return JSON.parse(text);
    } catch (cause) {
      throw new ServiceError('nonsense', `${this.name} answered something that is no weather record.`, {
        cause,
      });
    }
  }

  #asServiceError(error: unknown): ServiceError {
    if (error instanceof ServiceError) return error;
    if (error instanceof DOMException && error.name === 'TimeoutError') {
      return new PassingError('slow', `${this.name} takes too long to answer.`, 0, { cause: error });
    }
    return new PassingError('unreachable', `${this.name} cannot be reached.`, 0, { cause: error });
  }
}

/** Trouble that another attempt may not meet. */
class PassingError extends ServiceError {
  readonly pauseMs: number;

  constructor(trouble: ServiceTrouble, message: string, pauseMs = 0, options?: ErrorOptions) {
    super(trouble, message, options);
    this.pauseMs = pauseMs;
  }
}
