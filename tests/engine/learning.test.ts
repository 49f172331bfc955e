import fc from 'fast-check';
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import { learnSpan, recordedSpan, shareOf } from '../../src/engine/learning.ts';
import { GROUPS, RIPENING_GROUPS, type RipeningGroup } from '../../src/engine/ripening.ts';
import { studentTCdf, studentTQuantile } from '../../src/engine/student-t.ts';

/** A random generator of one seed: mulberry32, so that a failing club can be met again. */
function random(seed: number) {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4_294_967_296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

describe('a club record', () => {
  it('counts from 35 to 160 days', () => {
    const from = day('2026-06-01');
    expect(recordedSpan(from, day('2026-07-06'))).toBe(35);
    expect(recordedSpan(from, day('2026-07-05'))).toBeNull();
    expect(recordedSpan(from, day('2026-11-08'))).toBe(160);
    expect(recordedSpan(from, day('2026-11-09'))).toBeNull();
    // First set and first pick of Brunswick at Yamamoto: Miyagi Prefecture bulletins 2017 and 2018.
    expect(recordedSpan(day('2017-06-22'), day('2017-09-10'))).toBe(80);
    expect(recordedSpan(day('2018-06-05'), day('2018-08-29'))).toBe(85);
  });
});

describe('a learned span', () => {
  it('is the one worked by hand', () => {
    // Mid group 75–90: m₀ = 82.5, s₀² = (7.5 / 1.28155)² = 34.2495. Records 80, 85, 78 (mean 81):
    // mean (4 · 82.5 + 3 · 81) / 7 = 81.857; scatter 1 + 16 + 9 = 26; pull 12/7 · 1.5² = 3.857;
    // s² = (136.998 + 26 + 3.857) / 7 = 23.836; predictive scale √(23.836 · 8/7) = 5.219.
    // With 7 degrees of freedom t₀.₈ = 0.8960 and t₀.₉ = 1.4149 (jstat).
    expect(jStat.studentt.inv(0.8, 7)).toBeCloseTo(0.896, 3);
    expect(jStat.studentt.inv(0.9, 7)).toBeCloseTo(1.4149, 4);
    const span = learnSpan([80, 85, 78], 'mid')!;
    expect(span.mean).toBeCloseTo(81.857, 3);
    // 81.857 + 0.8960 · 5.219 = 86.53; ± 1.4149 · 5.219 = 7.385; ± 1.4149 · √(23.836 / 7) = 2.611.
    expect(span).toMatchObject({ planning: 87, from: 74, to: 89, records: 3 });
    expect(span.meanFrom).toBeCloseTo(79.246, 2);
    expect(span.meanTo).toBeCloseTo(84.468, 2);
  });

  it('passes over days that are slips, and is nothing without records', () => {
    expect(learnSpan([80, 85, 78, 12, 400], 'mid')).toEqual(learnSpan([80, 85, 78], 'mid'));
    expect(learnSpan([], 'mid')).toBeNull();
    expect(learnSpan([34, 161], 'late')).toBeNull();
  });

  it('lies between the group’s middle and the records’ mean, nearer to the records the more there are', () => {
    const days = fc.array(fc.integer({ min: 35, max: 160 }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(days, fc.constantFrom<RipeningGroup>(...RIPENING_GROUPS), (records, group) => {
        const span = learnSpan(records, group)!;
        const middle = (GROUPS[group].spanFrom + GROUPS[group].spanTo) / 2;
        const average = records.reduce((sum, value) => sum + value, 0) / records.length;
        const share = records.length / (4 + records.length);
        expect(span.mean).toBeCloseTo(middle + share * (average - middle), 8);
        expect(span.from).toBeLessThanOrEqual(span.mean + 0.5);
        expect(span.planning).toBeGreaterThanOrEqual(span.mean);
        expect(span.planning).toBeLessThanOrEqual(span.to + 1);
      }),
    );
  });

  it('covers what the model’s own clubs hold, 80 % of the time', () => {
    // Clubs drawn from the prior: variance scaled inverse χ² with 4 degrees of freedom, mean normal.
    for (const group of RIPENING_GROUPS) {
      const { normal } = random(20_260_707);
      const { spanFrom, spanTo } = GROUPS[group];
      const spread = (spanTo - spanFrom) / 2 / 1.2815515655446004;
      let [ofMean, ofNext, clubs] = [0, 0, 0];
      for (let club = 0; club < 4000; club++) {
        const chi = normal() ** 2 + normal() ** 2 + normal() ** 2 + normal() ** 2;
        const sigma = spread * Math.sqrt(4 / chi);
        const truth = (spanFrom + spanTo) / 2 + (sigma / 2) * normal();
        const records = Array.from({ length: 3 + (club % 10) }, () => truth + sigma * normal());
        const next = truth + sigma * normal();
        const span = learnSpan(records, group);
        // A club with slips is not one of the model's.
        if (!span || span.records < records.length) continue;
        clubs += 1;
        if (truth >= span.meanFrom && truth <= span.meanTo) ofMean += 1;
        if (next >= span.mean - (span.to - span.from) / 2 && next <= span.mean + (span.to - span.from) / 2)
          ofNext += 1;
      }
      expect(ofMean / clubs, `mean, ${group}`).toBeGreaterThan(0.75);
      expect(ofMean / clubs, `mean, ${group}`).toBeLessThan(0.85);
      expect(ofNext / clubs, `next, ${group}`).toBeGreaterThan(0.75);
      expect(ofNext / clubs, `next, ${group}`).toBeLessThan(0.85);
    }
  });

  it('foretells the next tree of a cultivar anywhere in its group’s span in 75–85 % of cases', () => {
    // Not the model's own clubs: cultivars spread evenly over the group's span, trees and seasons scattering
    // by 4 to 7 days about theirs, days whole.
    fc.assert(
      fc.property(fc.integer(), fc.constantFrom<RipeningGroup>('early', 'mid'), (seed, group) => {
        const { uniform, normal } = random(seed);
        const { spanFrom, spanTo } = GROUPS[group];
        let covered = 0;
        const clubs = 4000;
        for (let club = 0; club < clubs; club++) {
          const truth = spanFrom + (spanTo - spanFrom) * uniform();
          const sigma = 4 + 3 * uniform();
          const records = Array.from({ length: 3 + (club % 15) }, () => Math.round(truth + sigma * normal()));
          const { from, to } = learnSpan(records, group)!;
          const next = truth + sigma * normal();
          if (next >= from && next <= to) covered += 1;
        }
        expect(covered / clubs).toBeGreaterThan(0.75);
        expect(covered / clubs).toBeLessThan(0.85);
      }),
      { numRuns: 10 },
    );
  });

  it('comes to the truth with many records, whatever the group said', () => {
    const { normal } = random(7);
    const records = Array.from({ length: 400 }, () => 100 + 5 * normal());
    const span = learnSpan(records, 'early')!;
    expect(span.meanFrom).toBeLessThan(100);
    expect(Math.abs(span.mean - 100)).toBeLessThan(1);
    // 80th percentile of a normal with mean 100 and deviation 5: 104.2.
    expect(Math.abs(span.planning - 105)).toBeLessThanOrEqual(1);
  });
});

describe('a share with its interval', () => {
  it('is Wilson’s at 80 %', () => {
    // By hand: 7 of 10, z = 1.28155: centre (0.7 + 0.082119) / 1.164237 = 0.671788; half-width
    // √(0.164237 · (0.21 + 0.041059)) / 1.164237 = 0.174414.
    const share = shareOf(7, 10);
    expect(share).toMatchObject({ count: 7, of: 10 });
    expect(share.low).toBeCloseTo(0.497374, 5);
    expect(share.high).toBeCloseTo(0.846202, 5);
  });

  it('solves the score equation it comes from', () => {
    // Both limits p satisfy |p̂ − p| = z √(p(1 − p)/n): Wilson 1927.
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.nat(500), (of, k) => {
        const count = k % (of + 1);
        const { low, high } = shareOf(count, of);
        for (const p of [low, high]) {
          const off = Math.abs(count / of - p) - 1.2815515655446004 * Math.sqrt((p * (1 - p)) / of);
          expect(Math.abs(off)).toBeLessThan(1e-7);
        }
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('covers 75–85 % of the truths of simulated clubs', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { uniform } = random(seed);
        let covered = 0;
        const clubs = 3000;
        for (let club = 0; club < clubs; club++) {
          const truth = uniform();
          const of = 3 + (club % 28);
          let count = 0;
          for (let tip = 0; tip < of; tip++) if (uniform() < truth) count += 1;
          const { low, high } = shareOf(count, of);
          if (truth >= low && truth <= high) covered += 1;
        }
        expect(covered / clubs).toBeGreaterThan(0.75);
        expect(covered / clubs).toBeLessThan(0.85);
      }),
      { numRuns: 20 },
    );
  });
});

describe('Student’s t', () => {
  it('is that of jstat', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: 8, noNaN: true }),
        fc.integer({ min: 1, max: 200 }),
        (t, degrees) => {
          expect(studentTCdf(t, degrees)).toBeCloseTo(jStat.studentt.cdf(t, degrees), 7);
        },
      ),
    );
    for (const degrees of [1, 2, 4, 5, 7, 10, 34, 120]) {
      for (const p of [0.02, 0.1, 0.5, 0.8, 0.9, 0.999]) {
        expect(studentTQuantile(p, degrees)).toBeCloseTo(jStat.studentt.inv(p, degrees), 5);
      }
    }
  });
});
