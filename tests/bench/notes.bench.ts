import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import * as chrono from 'chrono-node';
import { build } from 'esbuild';
import { bench, describe } from 'vitest';
import { notesOf } from '../notes/setting.ts';

const { setting, items } = notesOf('notes-public.jsonl');
const notes = items.map(({ text }) => text);

// The product runs its sources with nothing but the types taken out, as esbuild does it for tsx. Vitest's own modules
// look up every imported name as a property of its module at each use, and leave libraries as they are: measured with
// them, the reader seems half as slow again beside chrono-node as it is where it runs.
const { readMessage, readNote } = await buildNotes();

async function buildNotes(): Promise<typeof import('../../src/notes/index.ts')> {
  // Where libraries are found from; Vitest leaves .mjs files alone.
  const caches = fileURLToPath(new URL('../../node_modules/.cache', import.meta.url));
  await mkdir(caches, { recursive: true });
  const folder = await mkdtemp(join(caches, 'notes-bench-'));
  const outfile = join(folder, 'notes.mjs');
  try {
    await build({
      entryPoints: [fileURLToPath(new URL('../../src/notes/index.ts', import.meta.url))],
      outfile,
      bundle: true,
      packages: 'external',
      platform: 'node',
      format: 'esm',
    });
    return await import(/* @vite-ignore */ pathToFileURL(outfile).href);
  } finally {
    await rm(folder, { recursive: true });
  }
}

// The grammar is many small functions: they are timed once they are compiled, which a busy machine takes its time for.
const options = { warmupIterations: 400, time: 2000 };

// As a user of chrono-node would call it for notes, which tell of days gone by: with a day to count from, not forward.
const reference = { instant: new Date(`${setting.today}T12:00:00Z`), timezone: 'EDT' };

// One round is 70 notes: 72 rounds a second are 5,000 notes a second. The ratio to chrono-node is what counts.
describe('70 notes', () => {
  bench(
    'readNote',
    () => {
      for (const note of notes) readNote(note, setting);
    },
    options,
  );
  bench(
    'readMessage',
    () => {
      for (const note of notes) readMessage(note, setting);
    },
    options,
  );
  bench(
    'chrono-node alone',
    () => {
      for (const note of notes) chrono.casual.parse(note, reference, { forwardDate: false });
    },
    options,
  );
});
