import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export interface SaidLine {
  readonly for: string;
  readonly kind: 'reply' | 'nudge' | 'roundup';
  readonly to: string;
  readonly ok: boolean;
  readonly title: string;
  readonly text: string;
  readonly fields: { name: string; value: string }[];
  readonly buttons: string[];
  readonly files: { name: string; bytes: number; path: string }[];
  readonly data: Record<string, unknown>;
}

export interface Run {
  readonly status: number | null;
  readonly said: SaidLine[];
  readonly stdout: string;
  readonly stderr: string;
}

/** `npm start` with these flags, as a process of its own. The environment holds no settings but `env`. */
export function startMain(
  flags: readonly string[],
  env: Record<string, string> = {},
): ChildProcessWithoutNullStreams {
  const { PATH = '', HOME = '' } = process.env;
  return spawn(process.execPath, ['--import', 'tsx', 'src/main.ts', ...flags], {
    cwd: ROOT,
    env: { PATH, HOME, ...env },
  });
}

/** Starts it, types the lines, closes its input and waits for its end. `--json` is parsed. */
export async function runMain(
  flags: readonly string[],
  lines: readonly string[],
  env: Record<string, string> = {},
): Promise<Run> {
  const child = startMain(flags, env);
  let stdout = '';
  let stderr = '';
  child.stdout.on('data', (chunk) => {
    stdout += chunk;
  });
  child.stderr.on('data', (chunk) => {
    stderr += chunk;
  });
  child.stdin.on('error', () => {});
  child.stdin.end(lines.map((line) => `${line}\n`).join(''));
  const status = await new Promise<number | null>((resolve) => child.on('close', resolve));
  const said = flags.includes('--json')
    ? stdout
        .split('\n')
        .filter((line) => line !== '')
        .map((line) => JSON.parse(line) as SaidLine)
    : [];
  return { status, said, stdout, stderr };
}
