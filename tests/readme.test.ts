import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const README = join(ROOT, 'README.md');
const MARK = '<!-- example: checked by tests/readme.test.ts -->\n\n```text\n';
const PROMPT = /^\d{4}-\d{2}-\d{2} me> (.*)$/;

/** The README's example, typed anew. UPDATE_README=1 writes what came out. */
it('shows in the README what the lines of its example really bring', async () => {
  const readme = readFileSync(README, 'utf8');
  const from = readme.indexOf(MARK) + MARK.length;
  const to = readme.indexOf('```', from);
  const shown = readme.slice(from, to);
  const typed = shown.split('\n').flatMap((line) => PROMPT.exec(line)?.[1] ?? []);
  expect(typed.length).toBeGreaterThan(5);

  const printed = await type(typed);
  if (process.env.UPDATE_README) writeFileSync(README, readme.slice(0, from) + printed + readme.slice(to));
  else expect(printed).toBe(shown);
}, 120_000);

async function type(lines: readonly string[]): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'ostiole-readme-'));
  // US Government data as vega-datasets ships it; the README says how to cut it.
  const weather = readFileSync(join(ROOT, 'node_modules/vega-datasets/data/weather.csv'), 'utf8');
  const rows = weather.split('\n').filter((line, i) => i === 0 || line.startsWith('New York'));
  writeFileSync(join(folder, 'new-york.csv'), `${rows.join('\n')}\n`);
  const tsx = fileURLToPath(import.meta.resolve('tsx'));
  const args = ['--import', tsx, join(ROOT, 'src/main.ts'), '--data', 'data', '--today', '2026-05-02'];
  const { PATH = '', HOME = '' } = process.env;
  const child = spawn(process.execPath, args, { cwd: folder, env: { PATH, HOME } });
  let stdout = '';
  child.stdout.on('data', (chunk) => {
    stdout += chunk;
  });
  child.stdin.end(lines.map((line) => `${line}\n`).join(''));
  await new Promise((resolve) => child.on('close', resolve));
  rmSync(folder, { recursive: true, force: true });
  return stdout.slice(stdout.search(/^\d{4}-\d{2}-\d{2} me> /m));
}
