import * as chrono from 'chrono-node';
import { bench, describe } from 'vitest';
import { readMessage, readNote } from '../../src/notes/index.ts';
import { notesOf } from '../notes/setting.ts';

const { setting, items } = notesOf('notes-public.jsonl');
const notes = items.map(({ text }) => text);

// The grammar is many small functions: they are timed once they are compiled.
const options = { warmupTime: 1500, time: 2000 };

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
