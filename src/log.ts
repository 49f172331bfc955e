import { type DestinationStream, type Logger, pino } from 'pino';
import type { LogLevel } from './settings.ts';

export type Log = Logger;

/**
 * Structured logs, one JSON object a line. What members write and what opens doors never belongs in here: log
 * ids, identifiers and durations, and errors through `describeError`.
 */
export function createLog(level: LogLevel, destination?: DestinationStream): Log {
  const options = {
    level,
    base: { name: 'ostiole' },
    // A last line of defence, should an object with a secret ever be logged whole.
    redact: { paths: ['token', '*.token', 'authorization', '*.authorization'], censor: '[secret]' },
  };
  return destination === undefined ? pino(options) : pino(options, destination);
}

/** No logs at all, for tests and for the terminal. */
export const silentLog: Log = createLog('silent');

/**
 * An error for the log: its kind, codes and where it happened. Never its message, which may quote what a member
 * wrote (a failed query lists its parameters) or an address that holds an interaction's token.
 */
export function describeError(error: unknown): Record<string, unknown> {
  if (!(error instanceof Error)) return { kind: typeof error };
  const { code, status, method } = error as Error & { code?: unknown; status?: unknown; method?: unknown };
  const at = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  return {
    kind: error.name,
    ...(isShort(code) && { code }),
    ...(isShort(status) && { status }),
    ...(isShort(method) && { method }),
    at: at.slice(0, 6).map((line) => line.trim().replace(/^at /, '')),
    ...(error.cause !== undefined && { cause: describeError(error.cause) }),
  };
}

function isShort(value: unknown): value is string | number {
  return typeof value === 'number' || (typeof value === 'string' && value.length <= 40);
}
