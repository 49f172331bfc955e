import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Utterance } from '../../src/channels/terminal/print.ts';
import { Terminal } from '../../src/channels/terminal/terminal.ts';
import { SteppedClock } from '../../src/clock.ts';
import type { Services } from '../../src/club/services.ts';
import { day } from '../../src/engine/day.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';

export interface TerminalClub {
  /** Types lines; what was said to the last of them, its own reply last. */
  readonly type: (...lines: string[]) => Promise<readonly Utterance[]>;
  /** Types one line; its reply. */
  readonly ask: (line: string) => Promise<Utterance['reply']>;
  /** `data` of the reply to one line. */
  readonly data: (line: string) => Promise<Record<string, unknown>>;
  /** What was said on the way to a day besides the reply. */
  readonly moveTo: (date: string) => Promise<readonly Utterance[]>;
  readonly outFolder: string;
  /** What was told of long work on the way. */
  readonly progress: readonly string[];
  readonly close: () => void;
}

/** The club in the terminal, in this process, on a database that the caller opened. */
export async function openTerminalClub(
  opened: OpenedDatabase,
  today: string,
  services: Services = {} as Services,
): Promise<TerminalClub> {
  const outFolder = mkdtempSync(join(tmpdir(), 'ostiole-terminal-'));
  const progress: string[] = [];
  let said: Utterance[] = [];
  const terminal = new Terminal({
    db: opened.db,
    clock: new SteppedClock(day(today)),
    services,
    member: 'me',
    outFolder,
    say: (utterance) => said.push(utterance),
    progress: (text) => progress.push(text),
    onError: (_number, error) => {
      throw error;
    },
  });
  await terminal.open();
  const type = async (...lines: string[]) => {
    for (const line of lines) {
      said = [];
      await terminal.take(line);
    }
    return said;
  };
  const ask = async (line: string) => {
    const reply = (await type(line)).at(-1)?.reply;
    if (reply === undefined) throw new Error(`no reply to ${line}`);
    return reply;
  };
  return {
    type,
    ask,
    data: async (line) => ({ ...(await ask(line)).data }),
    moveTo: async (date) => (await type(`@${date}`)).filter(({ kind }) => kind !== 'reply'),
    outFolder,
    progress,
    close: () => rmSync(outFolder, { recursive: true, force: true }),
  };
}
