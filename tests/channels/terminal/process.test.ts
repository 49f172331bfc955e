import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { count, eq } from 'drizzle-orm';
import { afterEach, describe, expect, it } from 'vitest';
import { openEmbedded } from '../../../src/records/open.ts';
import { notes, observations } from '../../../src/records/schema.ts';
import { runMain, startMain } from '../../support/run-main.ts';

const folders: string[] = [];
const newFolder = () => {
  const folder = mkdtempSync(join(tmpdir(), 'ostiole-process-'));
  folders.push(folder);
  return folder;
};
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
});

const SETTING_UP = ['/garden set heat_end:October 15', '/tree add name:Pot 3 ripening:late'];

// Each test starts processes, which takes its time where many tests run at once.
describe('the terminal as a process', { timeout: 120_000 }, () => {
  it('answers every line with exactly one reply after the nudges it brought about, and ends with status 0', async () => {
    const lines = [...SETTING_UP, '', '/nonsense', '#9', '@2026-07-07', 'maria> /tree list'];
    const run = await runMain(['--json', '--data', 'memory', '--today', '2026-06-01'], lines);
    expect(run.status).toBe(0);
    expect(run.said.filter(({ kind }) => kind === 'reply').map((said) => said.for)).toEqual(lines);
    expect(run.said.filter(({ kind }) => kind === 'nudge').map(({ for: line, to }) => [line, to])).toEqual([
      ['@2026-07-07', 'me'],
      ['@2026-07-07', 'me'],
    ]);
    expect(run.said.at(-1)).toMatchObject({ to: 'maria', ok: true });
    expect(run.said.filter(({ ok }) => !ok).map(({ data }) => data.error)).toEqual([
      'empty-line',
      'no-such-command',
      'no-such-button',
    ]);
    for (const said of run.said) {
      expect(Object.keys(said)).toEqual([
        'for',
        'kind',
        'to',
        'ok',
        'title',
        'text',
        'fields',
        'buttons',
        'files',
        'data',
      ]);
    }
  });

  it('nudges once, also across restarts on the same folder', async () => {
    const folder = newFolder();
    const flags = ['--json', '--data', folder];
    const first = await runMain([...flags, '--today', '2026-06-01'], [...SETTING_UP, '@2026-07-07']);
    const again = await runMain([...flags, '--today', '2026-07-07'], ['/due']);
    const kinds = (said: typeof first.said) => said.filter(({ kind }) => kind === 'nudge').length;
    expect([kinds(first.said), kinds(again.said)]).toEqual([2, 0]);
  });

  it('brings what fell due while it was off, says that it is late, and only once', async () => {
    const folder = newFolder();
    const flags = ['--json', '--data', folder];
    await runMain([...flags, '--today', '2026-06-01'], SETTING_UP);
    const late = await runMain([...flags, '--today', '2026-07-09'], []);
    expect(late.said.map(({ kind, data }) => [kind, data.items])).toContainEqual([
      'nudge',
      [{ tree: 'Pot 3', kind: 'decision', due: '2026-07-07', late: true }],
    ]);
  });

  it('has a note whole or not at all when it is killed in the middle of one', async () => {
    const folder = newFolder();
    await runMain(['--json', '--data', folder, '--today', '2026-06-01'], SETTING_UP);
    const child = startMain(['--json', '--data', folder, '--today', '2026-06-20']);
    const closed = new Promise((resolve) => child.on('close', resolve));
    let answered = 0;
    child.stdout.on('data', (chunk: Buffer) => {
      answered += String(chunk).split('\n').length - 1;
      // Notes are waiting in its input, so one of them is under way now.
      if (answered >= 3) child.kill('SIGKILL');
    });
    child.stdin.on('error', () => {});
    for (let i = 1; i <= 200; i++) child.stdin.write(`${i} fruitlets on pot 3, watered pot 3\n`);
    await closed;

    const opened = await openEmbedded(folder);
    const kept = await opened.db
      .select({ id: notes.id, observations: count(observations.id) })
      .from(notes)
      .leftJoin(observations, eq(observations.noteId, notes.id))
      .groupBy(notes.id);
    await opened.close();
    expect(kept.length).toBeGreaterThanOrEqual(3);
    expect(kept.filter((note) => note.observations !== 2)).toEqual([]);

    const after = await runMain(
      ['--json', '--data', folder, '--today', '2026-06-20'],
      ['/tip tree:Pot 3', 'watered pot 3'],
    );
    expect(after.status).toBe(0);
    expect(after.said.at(0)?.data).toMatchObject({ verdict: 'leave', seen: '2026-06-20' });
    expect(after.said.at(-1)).toMatchObject({ ok: true });
  });

  it('takes what editors and other systems put into a file: a byte order mark, CRLF, no last line end', async () => {
    const child = startMain(['--json', '--data', 'memory', '--today', '2026-06-20']);
    let stdout = '';
    child.stdout.on('data', (chunk: Buffer) => {
      stdout += chunk;
    });
    child.stdin.end(`\uFEFF${SETTING_UP.join('\r\n')}\r\n${'fig '.repeat(2500)}\r\n3 fruitlets on pot 3`);
    const status = await new Promise((resolve) => child.on('close', resolve));
    const said = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(status).toBe(0);
    expect(said.map(({ ok, data }) => data.error ?? ok)).toEqual([true, true, 'note-too-long', true]);
    expect(said[3].data.logged).toMatchObject([{ tree: 'Pot 3', count: 3 }]);
  });

  it('lets one process at a time into a data folder, and says which has it', async () => {
    const folder = newFolder();
    const child = startMain(['--json', '--data', folder, '--today', '2026-06-20']);
    const closed = new Promise((resolve) => child.on('close', resolve));
    const answered = new Promise((resolve) => child.stdout.once('data', resolve));
    child.stdin.write('/help\n');
    await answered;
    const second = await runMain(['--json', '--data', folder], ['/help']);
    child.stdin.end();
    await closed;
    expect([second.status, second.stdout]).toEqual([1, '']);
    expect(second.stderr).toContain(String(child.pid));
    expect(second.stderr.trim().split('\n')).toHaveLength(1);
  });

  it.each(['package.json', 'package.json/below', '/proc/nowhere'])(
    'says that %s is no data folder, and exits 1',
    async (folder) => {
      const run = await runMain(['--json', '--data', folder], ['/help']);
      expect([run.status, run.stdout]).toEqual([1, '']);
      expect(run.stderr).toContain(`The data folder ${folder} cannot be used`);
    },
  );

  it('says in one sentence why it cannot start, and exits 1', async () => {
    const run = await runMain(['--json', '--data', 'memory', '--today', 'tomorrow-ish'], []);
    expect([run.status, run.stdout]).toEqual([1, '']);
    expect(run.stderr.trim().split('\n')).toHaveLength(1);
  });
});
