import * as chrono from 'chrono-node';
import { describe, expect, it } from 'vitest';
import { addDays, day, dayOfMonthOf } from '../../../src/engine/day.ts';
import { readDates } from '../../../src/notes/dates/index.ts';
import { NOTE } from './support.ts';

/** chrono-node's own reading of a phrase on `today`, as a day; the reference for grammar that leaves no choice. */
function byChrono(text: string, today: string, parser: chrono.Chrono): string | null {
  const results = parser.parse(text, { instant: new Date(`${today}T12:00:00Z`), timezone: 0 });
  const start = results[0]?.start;
  if (!start || results[0]?.text !== text) return null;
  const [year, month, dayOfMonth] = [start.get('year'), start.get('month'), start.get('day')];
  return `${year}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}

const TODAYS = Array.from({ length: 60 }, (_, i) => addDays(day('2024-02-20'), i * 23));
const PHRASES = [
  '22 august 2026',
  'august 22, 2026',
  'aug 22nd 2026',
  '5th of june 2025',
  '2026-08-22',
  'yesterday',
  'tomorrow',
  'today',
  '5 days ago',
  'two weeks ago',
  'a month ago',
  '3 months ago',
  'a year ago',
  'in 10 days',
  'in three weeks',
  'in 2 months',
  '75 days from now',
  '6 weeks from now',
  '1 week and 3 days ago',
  'last monday',
  'next tuesday',
];

describe('phrases with one meaning are read as chrono-node reads them', () => {
  it.each(PHRASES)('%s', (phrase) => {
    for (const today of TODAYS) {
      // chrono runs over the end of a shorter month; RULES §8 keeps the day of the month where there is one.
      if (phrase.includes('month') && dayOfMonthOf(today) > 28) continue;
      const theirs = byChrono(phrase, today, chrono.en.casual);
      expect(theirs).not.toBeNull();
      expect(readDates(phrase, { ...NOTE, today })?.from, today).toBe(theirs);
    }
  });

  it('numbers by the member’s order as its American and its British parser', () => {
    for (const [order, parser] of [
      ['MDY', chrono.en.casual],
      ['DMY', chrono.en.GB],
    ] as const) {
      for (const text of ['3/4/2026', '11/12/2025', '22/8/2026', '8/22/26']) {
        expect(readDates(text, { ...NOTE, order })?.from).toBe(byChrono(text, '2026-07-02', parser));
      }
    }
  });
});
