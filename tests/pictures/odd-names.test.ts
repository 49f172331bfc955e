import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../src/engine/day.ts';
import { overlaps } from '../../src/pictures/flags.ts';
import { boxOf } from '../../src/pictures/marks.ts';
import { loadMeasure } from '../../src/pictures/measure.ts';
import { fileName, tidy } from '../../src/pictures/names.ts';
import { drawRoundup } from '../../src/pictures/roundup-picture.ts';
import { seasonDrawing, seasonFacts } from '../../src/pictures/season-drawing.ts';
import { drawSeason } from '../../src/pictures/season-picture.ts';
import { drawTree } from '../../src/pictures/tree-picture.ts';
import { cultivars, hillGarden, hollowLane, potThree } from './gardens.ts';

/** What people and machines put into names: any text, markup, emoji, right to left, control characters. */
const oddName = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 100 }),
  fc.string({ unit: 'grapheme', maxLength: 100 }),
  fc.constantFrom(
    '',
    ' ',
    '\u0000\u0007\u001b[31m',
    '\ud83c',
    ']]></style><script>&amp;"\'',
    '🌳'.repeat(50),
    '👩🏽‍🌾🏴󠁧󠁢󠁷󠁬󠁳󠁿🇮🇪',
    '\u202eamla\u202c',
    'تينة الجدار 12',
    'תאנה 3',
    'いちじく',
    'A\u0301\u0323'.repeat(33),
    '{b|Alma}',
    '__proto__',
    'W'.repeat(100),
  ),
);

const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47];

describe('Names that nobody expected', () => {
  it('never stop a season picture', async () => {
    await fc.assert(
      fc.asyncProperty(oddName, fc.array(oddName, { maxLength: 12 }), async (garden, names) => {
        const trees = names.map((name, i) => ({
          name,
          decisionDate: addDays(day('2015-06-01'), i * 2),
          settled: i % 2 === 0,
        }));
        const { bytes, alt } = await drawSeason(hillGarden({ garden, trees, series: null }));
        expect([...bytes.subarray(0, 4)]).toEqual(PNG_SIGNATURE);
        for (const name of names) expect(alt).toContain(tidy(name));
      }),
      { numRuns: 15 },
    );
  });

  it('never stop a tree picture or a roundup', async () => {
    await fc.assert(
      fc.asyncProperty(oddName, oddName, oddName, async (tree, cultivar, state) => {
        const picture = await drawTree(potThree({ tree, cultivar, state }));
        expect([...picture.bytes.subarray(0, 4)]).toEqual(PNG_SIGNATURE);
        expect(picture.name).toMatch(/^tree-[a-z0-9-]+\.png$/);
        const rows = cultivars(2).map((row) => ({ ...row, cultivar }));
        const roundup = await drawRoundup(hollowLane({ club: tree, heading: state, cultivars: rows }));
        expect([...roundup.bytes.subarray(0, 4)]).toEqual(PNG_SIGNATURE);
      }),
      { numRuns: 8 },
    );
  });

  it('never reach the prototypes of other objects through the chart library', async () => {
    const keys = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', '__defineGetter__'];
    const traces = () =>
      [Object.prototype, ...keys.map((key) => Reflect.get(Object.prototype, key))].map((of) =>
        Object.keys(of ?? {}),
      );
    const before = traces();
    for (const name of keys) {
      await drawTree(potThree({ tree: name, cultivar: name, state: name }));
      await drawSeason(
        hillGarden({
          garden: name,
          series: null,
          trees: [{ name, decisionDate: day('2015-06-01'), settled: false }],
        }),
      );
    }
    expect(traces()).toEqual(before);
    expect(before.flat()).toEqual([]);
  });

  it('never leave their room or lie over other words', async () => {
    const measure = await loadMeasure();
    fc.assert(
      fc.property(oddName, fc.array(oddName, { maxLength: 12 }), (garden, names) => {
        const trees = names.map((name, i) => ({
          name,
          decisionDate: addDays(day('2015-06-01'), i),
          settled: i % 2 > 0,
        }));
        const input = hillGarden({ garden, trees, series: null });
        const { labels } = seasonDrawing(input, seasonFacts(input), measure);
        expect(overlaps(labels, measure)).toEqual([]);
        for (const label of labels) {
          const box = boxOf(label, measure);
          expect(box.left).toBeGreaterThanOrEqual(20);
          expect(box.right).toBeLessThanOrEqual(1060);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('are told on one line without anything unseen', () => {
    expect(tidy('  Pot\t3\n\u202e(wall)\u0000 ')).toBe('Pot 3 (wall)');
    expect(tidy('👩🏽‍🌾 Alma')).toBe('👩🏽‍🌾 Alma');
    expect(tidy('\ud83c')).toBe('');
  });

  it('give a plain file name', () => {
    expect(fileName('tree', 'Pastilière № 3', '2026/27')).toBe('tree-pastiliere-no-3-2026-27.png');
    expect(fileName('tree', 'いちじく', '2026')).toBe('tree-2026.png');
    expect(fileName('tree', '../../x', '2026')).toBe('tree-x-2026.png');
  });
});
