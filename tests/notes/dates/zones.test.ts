import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';

const run = promisify(execFile);
const CHILD = fileURLToPath(new URL('./zones-child.ts', import.meta.url));

async function readingsUnder(zone: string): Promise<{ offset: number; readings: unknown[] }> {
  const env = { ...process.env, TZ: zone };
  const { stdout } = await run(process.execPath, ['--import', 'tsx', CHILD], { env, maxBuffer: 1e8 });
  return JSON.parse(stdout) as { offset: number; readings: unknown[] };
}

describe('the host’s time zone', () => {
  it('changes no reading', async () => {
    const zones = ['UTC', 'America/New_York', 'Australia/Lord_Howe', 'Pacific/Apia'];
    const [utc, ...others] = await Promise.all(zones.map(readingsUnder));
    // The children did run in their zones.
    expect([utc, ...others].map((found) => found?.offset)).toEqual([0, 240, -630, -780]);
    expect(utc?.readings.length).toBeGreaterThan(1500);
    for (const other of others) expect(other.readings).toEqual(utc?.readings);
  });
});
