import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import type { RawSql } from '../../records/database.ts';

export interface HealthOptions {
  readonly port: number;
  readonly raw: RawSql;
  /** Null where this process has no gateway. */
  readonly gatewayConnected: (() => boolean) | null;
}

export interface Health {
  readonly ok: boolean;
  readonly gateway: 'connected' | 'disconnected' | 'none';
  readonly database: 'answers' | 'silent';
  /** Day of the oldest nudge whose day is over everywhere and that has not been sent. */
  readonly oldestOverdueNudge: string | null;
}

const DATABASE_WITHIN_MS = 2000;

/** GET /healthz: 200 when all is well, else 503; either way with what was found. */
export async function startHealth(
  options: HealthOptions,
): Promise<{ port: number; stop: () => Promise<void> }> {
  const server: Server = createServer((request, response) => {
    if (request.method !== 'GET' || request.url?.split('?')[0] !== '/healthz') {
      response.writeHead(404).end();
      return;
    }
    void checkHealth(options).then((health) => {
      response.writeHead(health.ok ? 200 : 503, { 'content-type': 'application/json' });
      response.end(JSON.stringify(health));
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port, resolve);
  });
  return {
    port: (server.address() as AddressInfo).port,
    stop: () => {
      server.closeAllConnections();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}

export async function checkHealth({ raw, gatewayConnected }: Omit<HealthOptions, 'port'>): Promise<Health> {
  const gateway = gatewayConnected === null ? 'none' : gatewayConnected() ? 'connected' : 'disconnected';
  const overdue = await oldestOverdue(raw);
  return {
    ok: gateway !== 'disconnected' && overdue.answered,
    gateway,
    database: overdue.answered ? 'answers' : 'silent',
    oldestOverdueNudge: overdue.answered ? overdue.day : null,
  };
}

async function oldestOverdue(
  raw: RawSql,
): Promise<{ answered: true; day: string | null } | { answered: false }> {
  const ending = new AbortController();
  const ask = raw
    .query(
      `select min(due)::text as due from nudge
        where state in ('pending', 'leased') and due < (now() - interval '36 hours')::date`,
    )
    .then(({ rows }) => ({
      answered: true as const,
      day: (rows[0]?.due as string | null | undefined) ?? null,
    }));
  try {
    return await Promise.race([
      ask,
      wait(DATABASE_WITHIN_MS, { answered: false as const }, { signal: ending.signal }),
    ]);
  } catch {
    return { answered: false };
  } finally {
    ending.abort();
    ask.catch(() => {});
  }
}
