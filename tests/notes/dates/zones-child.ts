/** Prints all readings of the labelled phrases and some notes as JSON, under the TZ it was started with. */
import { day } from '../../../src/engine/day.ts';
import { findDates, readDates } from '../../../src/notes/dates/index.ts';
import { contextOf, labelledPhrases, NOTE } from './support.ts';

// The last two are days that Pacific/Apia skipped or that Lord Howe's half-hour change falls on.
const TODAYS = ['2026-07-02', '2028-02-29', '2026-01-01', '2011-12-30', '2026-04-05'];
const NOTES = [
  'tipped the alma sat, figs 1 week and 3 days ago, watered last night',
  'pruned feb 8, rooted by mid april, tomorrow more, easter next',
  'feb 29: fed. the 31st: picked',
];

const phrases = ['dates-public.jsonl', 'dates-own.jsonl'].flatMap(labelledPhrases);
const readings = [
  ...phrases.map((phrase) => readDates(phrase.text, contextOf(phrase))),
  ...TODAYS.flatMap((today) => [
    ...phrases.map((phrase) => readDates(phrase.text, { ...contextOf(phrase), today: day(today) })),
    ...NOTES.map((note) => findDates(note, { ...NOTE, today: day(today) })),
  ]),
];
const offset = new Date(Date.UTC(2026, 6, 2)).getTimezoneOffset();
process.stdout.write(JSON.stringify({ offset, readings }));
