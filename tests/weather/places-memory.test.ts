import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, it } from 'vitest';

it('the towns take at most 20 MB of a process that has loaded and asked them', async () => {
  const script = fileURLToPath(new URL('../support/weather/places-memory.ts', import.meta.url));
  const { stdout } = await promisify(execFile)(process.execPath, ['--expose-gc', '--import', 'tsx', script]);
  const bytes = Number(stdout);
  expect(bytes).toBeGreaterThan(2_000_000);
  expect(bytes).toBeLessThanOrEqual(20_000_000);
}, 60_000);
