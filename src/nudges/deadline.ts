/** Longer than any single statement of the queue may take. */
export const STATEMENT_DEADLINE_MS = 60_000;

/** Rejects when `work` has not ended after `ms`; what is late is left to itself. A loop must never hang for ever. */
export async function withDeadline<Result>(work: Promise<Result>, ms: number, what: string): Promise<Result> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`${what} did not end within ${ms} ms`)), ms);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
