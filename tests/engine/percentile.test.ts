import fc from 'fast-check';
import { jStat } from 'jstat';
import { quantileSorted } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { quantile } from '../../src/engine/percentile.ts';

const ascending = fc
  .array(fc.integer({ min: -400, max: 400 }), { minLength: 1, maxLength: 60 })
  .map((list) => list.sort((a, b) => a - b));

describe('a percentile', () => {
  it('is that of jstat with its plotting positions 1 and 1, which are (n−1)p', () => {
    fc.assert(
      fc.property(ascending, fc.double({ min: 0, max: 1, noNaN: true }), (list, p) => {
        // jstat has no quantile of a single value.
        fc.pre(list.length > 1);
        expect(quantile(list, p)).toBeCloseTo(jStat.quantiles(list, [p], 1, 1)[0]!, 8);
      }),
    );
  });

  it('is that of simple-statistics where its rule gives the same order statistic', () => {
    // simple-statistics takes the inverse of the empirical distribution (Hyndman & Fan 1996, type 2): it
    // agrees where (n−1)p is whole, and at the median.
    fc.assert(
      fc.property(ascending, fc.nat(59), (list, nth) => {
        const k = nth % list.length;
        const p = list.length === 1 ? 0.5 : k / (list.length - 1);
        // Off the knife's edge: k/(n−1)·(n−1) may fall a hair short of k.
        expect(quantile(list, p)).toBeCloseTo(quantileSorted(list, p), 9);
        expect(quantile(list, 0.5)).toBeCloseTo(quantileSorted(list, 0.5), 9);
      }),
    );
  });

  it('of first freezes in New York and Seattle is the worked one', () => {
    // Days after 1 August of the first freezes of 2012–2015, observations of vega-datasets (US Government).
    const newYork = [97, 103, 106, 115];
    const seattle = [101, 103, 112, 114];
    expect([0.1, 0.5, 0.9].map((p) => quantile(newYork, p))).toEqual([98.8, 104.5, 112.3].map(near));
    expect([0.1, 0.5, 0.9].map((p) => quantile(seattle, p))).toEqual([101.6, 107.5, 113.4].map(near));
  });

  it('of nothing is refused', () => {
    expect(() => quantile([], 0.5)).toThrow(RangeError);
  });
});

function near(value: number): unknown {
  return expect.closeTo(value, 9);
}
