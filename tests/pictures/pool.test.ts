import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { count, emptyPool, quantilesOf } from '../../src/pictures/pool.ts';

describe('A pool of counted values', () => {
  it('has the quantiles jstat finds at (n−1)p, also after values have gone', () => {
    const values = fc.array(fc.integer({ min: -400, max: 500 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(values, values, (kept, gone) => {
        const pool = emptyPool();
        for (const value of [...gone, ...kept]) count(pool, value, 1);
        for (const value of gone) count(pool, value, -1);
        const ps = [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1];
        const expected = kept.length === 1 ? ps.map(() => kept[0] ?? 0) : jStat.quantiles(kept, ps, 1, 1);
        for (const [i, value] of quantilesOf(pool, ps).entries()) {
          expect(value).toBeCloseTo(expected[i] ?? Number.NaN, 6);
        }
      }),
    );
  });

  it('has none when it is empty', () => {
    expect(quantilesOf(emptyPool(), [0.5])).toEqual([]);
  });
});
