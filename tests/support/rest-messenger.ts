import type { DeliveryOutcome, Messenger, Outgoing } from '../../src/nudges/messenger.ts';

/**
 * The least that sends over Discord's REST interface: no client, no retries of its own, so that a test sees
 * every single request that a delivery makes.
 */
export class RestMessenger implements Messenger {
  readonly #api: string;
  readonly #token: string;
  readonly #timeoutMs: number;
  readonly #seen: (step: 'post' | 'answer') => void;

  constructor(api: string, token: string, timeoutMs = 10_000, seen = (_step: 'post' | 'answer') => {}) {
    this.#api = api;
    this.#token = token;
    this.#timeoutMs = timeoutMs;
    this.#seen = seen;
  }

  async send({ club, reply, nonce }: Outgoing): Promise<DeliveryOutcome> {
    this.#seen('post');
    const answer = await fetch(`${this.#api}/v10/channels/${club.channelId}/messages`, {
      method: 'POST',
      headers: { authorization: `Bot ${this.#token}`, 'content-type': 'application/json' },
      body: JSON.stringify({
        content: JSON.stringify(reply.data.items),
        nonce,
        enforce_nonce: true,
        allowed_mentions: { parse: [] },
      }),
      signal: AbortSignal.timeout(this.#timeoutMs),
    });
    const body = (await answer.json()) as { id: string; retry_after?: number };
    this.#seen('answer');
    if (answer.ok) return { kind: 'sent', channelId: String(club.channelId), messageId: body.id };
    const reason = `status ${answer.status}`;
    if (answer.status === 401) return { kind: 'stop', reason };
    if (answer.status === 429) return { kind: 'retry', reason, afterMs: (body.retry_after ?? 1) * 1000 };
    return answer.status < 500 ? { kind: 'dead', reason } : { kind: 'retry', reason };
  }
}
