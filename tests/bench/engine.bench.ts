import { parse } from 'csv-parse/sync';
import { bench, describe } from 'vitest';
import { type DailyRow, fromRows } from '../../src/engine/climate.ts';
import { addDays, day, dayOfYear } from '../../src/engine/day.ts';
import { outlookOf } from '../../src/engine/outlook.ts';
import { outlookDecisionDate } from '../../src/engine/outlook-decision.ts';
import { prepareWarmth } from '../../src/engine/past-seasons.ts';
import { summariseRecord } from '../../src/engine/record-summary.ts';
import { RIPENING_GROUPS, spanOf } from '../../src/engine/ripening.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { verdictOf } from '../../src/engine/verdict.ts';
import { note, seasonCase } from '../engine/season-case.ts';

/** Made-up days of a temperate place, with a little unrest that is the same in every run. */
function madeUpRows(from: string, to: string): DailyRow[] {
  const rows: DailyRow[] = [];
  for (let on = day(from); on <= day(to); on = addDays(on, 1)) {
    const unrest = Math.sin(rows.length * 12.9898) * 4;
    const high = 17 + 13 * Math.cos((2 * Math.PI * (dayOfYear(on) - 200)) / 365) + unrest;
    rows.push({ day: on, tmaxC: high, tminC: high - 9 });
  }
  return rows;
}

const MARK_80F = ((80 - 32) * 5) / 9;
const rows40 = madeUpRows('1986-01-01', '2025-12-31');
const series40 = fromRows(rows40);
const series30 = fromRows(madeUpRows('1996-01-01', '2025-12-31'));
const prepared30 = prepareWarmth(series30, { markC: MARK_80F, hemisphere: 'N' });
const csv40 = `DATE,TMAX,TMIN\n${rows40.map((row) => `${row.day},${row.tmaxC?.toFixed(1)},${row.tminC?.toFixed(1)}`).join('\n')}\n`;

const today = day('2026-07-07');
const start = addDays(today, 10);
const season = seasonStarting(2026, 'N');
const spans = RIPENING_GROUPS.map((group) => spanOf({ group }));
const spanFor = (tree: number) => spans[tree % spans.length] ?? spans[0]!;

const options = { time: 400, warmupTime: 100 };

// The measure of the others in this group: parsing the same 40 years with the CSV library and nothing else.
describe('a record of 40 years', () => {
  bench('parsing its CSV', () => void parse(csv40, { columns: true }), options);
  bench('a series of its rows', () => void fromRows(rows40), options);
  bench(
    'its heat end, frosts and completeness',
    () => void summariseRecord(series40, { mark: { value: 80, unit: 'F' }, hemisphere: 'N' }),
    options,
  );
  bench('its warmth', () => void prepareWarmth(series40, { markC: MARK_80F, hemisphere: 'N' }), options);
});

// At most 0.3 ms for one tree, 0.5 s for a thousand.
describe('outlooks over 30 seasons', () => {
  bench('one tree', () => void outlookOf(prepared30, { start, today, span: spanFor(2) }), options);
  bench(
    'a thousand trees',
    () => {
      for (let tree = 0; tree < 1000; tree++) outlookOf(prepared30, { start, today, span: spanFor(tree) });
    },
    options,
  );
  bench(
    'a thousand trees and their decision dates, from the record on',
    () => {
      const prepared = prepareWarmth(series30, { markC: MARK_80F, hemisphere: 'N' });
      for (let tree = 0; tree < 1000; tree++) {
        outlookOf(prepared, { start, today, span: spanFor(tree) });
        outlookDecisionDate(prepared, spanFor(tree), season);
      }
    },
    options,
  );
});

describe('verdicts', () => {
  const input = seasonCase('2026-07-07', {
    notes: Array.from({ length: 20 }, (_, i) => note('care', addDays(today, -i))),
  });
  bench('one tree with 20 notes', () => void verdictOf(input), options);
  bench(
    'a thousand trees with 20 notes',
    () => {
      for (let tree = 0; tree < 1000; tree++) verdictOf(input);
    },
    options,
  );
});
