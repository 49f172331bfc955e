import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { SteppedClock, systemClock } from '../../clock.ts';
import type { Services } from '../../club/services.ts';
import type { OpenedDatabase } from '../../records/database.ts';
import type { Settings } from '../../settings.ts';
import { toJsonLine, toPage, type Utterance } from './print.ts';
import { Terminal } from './terminal.ts';
import { welcome } from './welcome.ts';

export interface TerminalStart {
  readonly settings: Settings;
  readonly opened: OpenedDatabase;
  readonly services: Services;
  readonly onError: (number: string, error: unknown) => void;
}

/** Runs the club in the terminal until its input ends. */
export async function startTerminal({ settings, opened, services, onError }: TerminalStart): Promise<void> {
  const { json, member } = settings;
  const interactive = !json && process.stdin.isTTY === true && process.stdout.isTTY === true;
  const hostZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const clock = new SteppedClock(settings.today ?? systemClock.today(hostZone));
  const page = () => ({
    columns: process.stdout.columns ?? 80,
    colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  });
  const print = (said: Utterance) => {
    process.stdout.write(json ? `${toJsonLine(said)}\n` : `\n${toPage(said, page())}\n`);
  };
  // Whoever reads the output may go before its end ("| head"); that is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
  const terminal = new Terminal({
    db: opened.db,
    clock,
    services,
    member,
    outFolder:
      settings.dataFolder === 'memory'
        ? mkdtempSync(join(tmpdir(), 'ostiole-out-'))
        : join(settings.dataFolder, 'out'),
    say: print,
    progress: (text) => process.stderr.write(`${text}\n`),
    onError,
  });

  if (!json) process.stdout.write(`${await welcome(opened.db, clock.today(), page().columns)}\n`);
  await terminal.open();

  const lines = createInterface({
    input: process.stdin,
    terminal: interactive,
    crlfDelay: Number.POSITIVE_INFINITY,
  });
  const prompt = () => {
    if (!interactive) return;
    lines.setPrompt(`\n${clock.today()} ${member}> `);
    lines.prompt();
  };
  prompt();
  for await (const line of lines) {
    // In a file for people to read, the answers alone would be hard to follow.
    if (!json && !interactive) process.stdout.write(`\n${clock.today()} ${member}> ${line}\n`);
    if (json || line.trim() !== '') await terminal.take(line);
    prompt();
  }
}
