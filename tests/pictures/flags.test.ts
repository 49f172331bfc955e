import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Flag, overlaps, placeFlags } from '../../src/pictures/flags.ts';
import { loadMeasure, type Measure } from '../../src/pictures/measure.ts';

const ROOM = { left: 40, right: 1040 };
let measure: Measure;
beforeAll(async () => {
  measure = await loadMeasure();
});

const flag = (x: number, words: string): Flag => ({ x, words, style: { ink: 'ink', width: 3 } });

describe('dates over a chart', () => {
  it('are all shown, however close their lines stand', () => {
    const flags = [flag(343, 'last frost 2 Apr'), flag(354, 'today 6 Apr'), flag(900, 'first frost 22 Nov')];
    const { labels } = placeFlags(flags, ROOM, measure).place(300, 800);
    expect(labels).toHaveLength(3);
  });

  it('never lie over each other and never get lost', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 110, max: 1040 }), { minLength: 1, maxLength: 5 }), (places) => {
        const words = [
          'last frost Mar 29',
          'decision Jun 26',
          'heat end Sep 24',
          'first frost Nov 10',
          'today Jul 5',
        ];
        const flags = places.map((x, i) => flag(x, words[i] ?? ''));
        const { labels } = placeFlags(flags, ROOM, measure).place(300, 800);
        expect(labels).toHaveLength(flags.length);
        expect(overlaps(labels, measure)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
