import { readFileSync } from 'node:fs';
import * as chrono from 'chrono-node';
import { bench, describe } from 'vitest';
import { findDates, findVagueDates, readDates } from '../../src/notes/dates/index.ts';
import { DEADLINE, labelledPhrases, NOTE } from '../notes/dates/support.ts';

const notes = readFileSync(new URL('../notes/corpus/notes-public.jsonl', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .map((line) => (JSON.parse(line) as { text?: string }).text ?? '');
const phrases = labelledPhrases('dates-own.jsonl').map((phrase) => phrase.text);

// Each group in one run beside chrono-node alone: the ratio is what counts.
describe('dates of 70 notes', () => {
  bench('findDates and findVagueDates', () => {
    for (const note of notes) {
      findDates(note, NOTE);
      findVagueDates(note);
    }
  });
  bench('chrono-node alone', () => {
    for (const note of notes) chrono.casual.parse(note);
  });
});

describe('276 date phrases', () => {
  bench('readDates', () => {
    for (const phrase of phrases) readDates(phrase, DEADLINE);
  });
  bench('chrono-node alone', () => {
    for (const phrase of phrases) chrono.casual.parse(phrase);
  });
});
