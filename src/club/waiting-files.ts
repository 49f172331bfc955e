import { randomBytes } from 'node:crypto';
import type { InputFile } from './feature.ts';

/** A file that waits for its sender to say which place in it is theirs. */
export interface WaitingFile {
  readonly memberId: number;
  readonly file: InputFile;
  readonly unit: 'F' | 'C' | undefined;
  readonly places: readonly string[];
}

/** As long as Discord lets a reply be answered by its own token. */
const KEEP_MS = 15 * 60_000;
const MOST_BYTES = 32 * 1024 * 1024;

/** Kept in this process only, and not for long: a file is too large to be stored for a question. */
const waiting = new Map<string, WaitingFile & { readonly until: number }>();

/** Keeps a file for a quarter of an hour, as long as there is room; the token names it. */
export function keepFile(file: WaitingFile, now: Date): string {
  forgetOld(now);
  const token = randomBytes(6).toString('hex');
  waiting.set(token, { ...file, until: now.getTime() + KEEP_MS });
  let bytes = 0;
  for (const [key, each] of [...waiting].reverse()) {
    bytes += each.file.bytes.byteLength;
    if (bytes > MOST_BYTES && key !== token) waiting.delete(key);
  }
  return token;
}

/** The member's own file; null when it is no longer here. It stays, in case another place was meant. */
export function keptFile(token: string | undefined, memberId: number, now: Date): WaitingFile | null {
  forgetOld(now);
  const found = token === undefined ? undefined : waiting.get(token);
  return found?.memberId === memberId ? found : null;
}

function forgetOld(now: Date): void {
  for (const [token, { until }] of waiting) if (until < now.getTime()) waiting.delete(token);
}
