import { describe, expect, it } from 'vitest';
import { fromRows } from '../../src/engine/climate.ts';
import { addDays, day, toEpochDays } from '../../src/engine/day.ts';
import type { DegreeDayModel } from '../../src/engine/degree-days.ts';
import { FIG_WARMTH, needOf, warmthOf } from '../../src/engine/warmth.ts';
import { observed, seriesOf } from './observed.ts';

/** °C·days of each calendar year. */
function yearSums(place: 'New York' | 'Seattle', model: DegreeDayModel): number[] {
  const { sumBefore, start } = warmthOf(seriesOf(observed(place)), model);
  return [2012, 2013, 2014, 2015].map((year) => {
    const from = toEpochDays(day(`${year}-01-01`)) - start;
    const to = toEpochDays(day(`${year + 1}-01-01`)) - start;
    return sumBefore[to]! - sumBefore[from]!;
  });
}

/** Published to one decimal; 1369.25 may go either way. */
const toATenth = (value: number): unknown =>
  expect.toSatisfy((actual: number) => Math.abs(actual - value) < 0.051);

describe('the warmth a fig needs', () => {
  it('is the span at the mean temperature of the Fukuoka study', () => {
    // 2,100 °C·days over 80–89 days, 84.5 on average: Yahata & Nogata 2000, J. Jpn. Soc. Hort. Sci.; base
    // 8 °C: Souza et al., Botucatu. The conversion is arithmetic: (2100 / 84.5 − 8) × 90 = 1516.7.
    expect(needOf(90)).toBeCloseTo(1516.7, 1);
    expect(needOf(84.5, 0)).toBeCloseTo(2100, 9);
    expect(needOf(84.5)).toBeCloseTo(1424, 0);
    expect(needOf(84.5, 10)).toBeCloseTo(1255, 0);
  });

  it('is reckoned by single sine over 8 °C with a horizontal cutoff at 36 °C', () => {
    expect(FIG_WARMTH).toEqual({ method: 'single-sine', base: 8, cutoff: { at: 36, kind: 'horizontal' } });
  });
});

describe('the warmth of a record', () => {
  it('has the sums of New York and Seattle over 10 °C', () => {
    // Arithmetic on vega-datasets 3.2.1, data/weather.csv, done outside this project.
    const average: DegreeDayModel = { method: 'average', base: 10, cutoff: null };
    const sine: DegreeDayModel = { method: 'single-sine', base: 10, cutoff: null };
    expect(yearSums('Seattle', average)).toEqual([1133.4, 1369.2, 1490.2, 1541.1].map(toATenth));
    expect(yearSums('Seattle', sine)).toEqual([1201.7, 1436.3, 1559.7, 1616.1].map(toATenth));
    expect(yearSums('New York', average)).toEqual([2140.5, 1977.2, 1994.7, 2290.3].map(toATenth));
    expect(yearSums('New York', sine)).toEqual([2203.7, 2031.8, 2045.1, 2342.5].map(toATenth));
  });

  it('fills gaps of up to three days on a straight line, and no longer ones', () => {
    const from = day('2025-07-01');
    const with_ = (gap: number) => {
      const rows = Array.from({ length: 20 }, (_, i) => ({
        day: addDays(from, i),
        tmaxC: 20 + i,
        tminC: 10 + i,
      }));
      return warmthOf(fromRows(rows.filter((_, i) => i < 5 || i >= 5 + gap)), FIG_WARMTH);
    };
    const whole = with_(0);
    const slot = toEpochDays(from) - whole.start;
    const sum = ({ sumBefore }: typeof whole) => sumBefore[slot + 20]! - sumBefore[slot]!;
    expect(sum(with_(3))).toBeCloseTo(sum(whole), 9);
    expect(with_(3).gapsBefore[slot + 20]! - with_(3).gapsBefore[slot]!).toBe(0);
    expect(sum(with_(4))).toBeLessThan(sum(whole));
    expect(with_(4).gapsBefore[slot + 20]! - with_(4).gapsBefore[slot]!).toBe(4);
  });

  it('does not reach beyond the record', () => {
    const only = warmthOf(fromRows([{ day: day('2025-07-01'), tmaxC: 30, tminC: 18 }]), FIG_WARMTH);
    expect(only.gapsBefore.at(-1)).toBe(364);
    expect(only.sumBefore.at(-1)).toBeCloseTo(16, 9);
    expect(warmthOf([], FIG_WARMTH).length).toBe(0);
  });

  it('takes the next day’s minimum for the double methods, and the day’s own on the last', () => {
    const rows = [
      { day: day('2025-07-01'), tmaxC: 30, tminC: 20 },
      { day: day('2025-07-02'), tmaxC: 30, tminC: 10 },
    ];
    const { sumBefore, start } = warmthOf(fromRows(rows), { ...FIG_WARMTH, method: 'double-triangle' });
    const slot = toEpochDays(day('2025-07-01')) - start;
    // (25 + 20) / 2 − 8, then 20 − 8.
    expect(sumBefore[slot + 1]! - sumBefore[slot]!).toBeCloseTo(14.5, 9);
    expect(sumBefore[slot + 2]! - sumBefore[slot + 1]!).toBeCloseTo(12, 9);
  });
});
