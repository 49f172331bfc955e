import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day, daysBetween, parseDay } from '../../../src/engine/day.ts';
import { type DateContext, findDates, findVagueDates, readDates } from '../../../src/notes/dates/index.ts';
import { DEADLINE, labelledPhrases, NOTE } from './support.ts';

const phrases = ['dates-public.jsonl', 'dates-own.jsonl']
  .flatMap(labelledPhrases)
  .map((phrase) => phrase.text);
const words = [...new Set(phrases.flatMap((text) => text.split(' ')))];

const contexts: fc.Arbitrary<DateContext> = fc.record({
  today: fc.integer({ min: -20_000, max: 40_000 }).map((days) => addDays(day('1970-01-01'), days)),
  hemisphere: fc.constantFrom('N', 'S'),
  order: fc.constantFrom('MDY', 'DMY'),
  lean: fc.constantFrom('past', 'future'),
});
/** Any text, and the words of dates in any order. */
const texts = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc
    .array(
      fc.oneof(fc.constantFrom(...words), fc.constantFrom('-', '/', ',', '.', 'to', '5', '31', '2026')),
      { maxLength: 12 },
    )
    .map((some) => some.join(' ')),
  fc.array(fc.constantFrom(...words, '/', '-', '1'), { maxLength: 8 }).map((some) => some.join('')),
);

describe('any text', () => {
  it('gives days that exist, in order, with the note’s day near them', () => {
    fc.assert(
      fc.property(texts, contexts, (text, context) => {
        for (const reading of [readDates(text, context), ...findDates(text, context)]) {
          if (!reading) continue;
          expect([reading.from, reading.to, reading.on].map(parseDay)).toEqual([
            reading.from,
            reading.to,
            reading.on,
          ]);
          expect(reading.from <= reading.to).toBe(true);
          // "Last week" is logged a week back from today, the rest within their span.
          expect(Math.abs(daysBetween(reading.from, reading.on))).toBeLessThan(366);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('gives hits left to right that do not overlap and quote the text', () => {
    fc.assert(
      fc.property(texts, contexts, (text, context) => {
        let end = 0;
        for (const hit of findDates(text, context)) {
          expect(hit.index).toBeGreaterThanOrEqual(end);
          expect(hit.text).toBe(text.slice(hit.index, hit.index + hit.length));
          end = hit.index + hit.length;
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('takes a recurring date for the nearest one by lean', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('june 5', 'the 17th', 'easter', 'labor day', 'mid sept', 'winter', 'sunday'),
        contexts,
        (text, context) => {
          const past = readDates(text, { ...context, lean: 'past' });
          const future = readDates(text, { ...context, lean: 'future' });
          // RULES §8: past starts on or before today, future ends on or after it.
          expect(past && past.from <= context.today).toBe(true);
          expect(future && future.to >= context.today).toBe(true);
          expect(past && daysBetween(past.from, context.today) <= 400).toBe(true);
          expect(future && daysBetween(context.today, future.to) <= 400).toBe(true);
        },
      ),
    );
  });
});

describe('long texts', () => {
  const LENGTH = 100_000;
  it.each([
    'a week before ',
    '1/',
    '1.',
    'june ',
    'june 5 to ',
    'the ',
    '1 week and 1 week ago ',
    'in 1 week 1 week ',
    '2026 june ',
    'sat & ',
    "a'",
    '9',
    'monday, ',
    'late early mid to ',
    'between june and june and ',
    'st. patrick ',
    'a few weeks and ',
    'around about ',
    'sunday after the week of the day before ',
  ])('of “%s” take time in proportion at most', (piece) => {
    const time = (repeats: number): number => {
      const text = piece.repeat(repeats);
      const start = process.hrtime.bigint();
      for (const context of [NOTE, DEADLINE]) {
        findDates(text, context);
        readDates(text, context);
      }
      findVagueDates(text);
      return Number(process.hrtime.bigint() - start) / 1e6;
    };
    time(20);
    // 100,000 characters: catastrophic backtracking or a square would take minutes, not the 2 s that a busy machine may.
    expect(time(Math.ceil(LENGTH / piece.length))).toBeLessThan(2000);
  });
});
