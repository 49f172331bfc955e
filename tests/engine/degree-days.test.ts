import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DegreeDayMethod, type DegreeDayModel, degreeDays } from '../../src/engine/degree-days.ts';

/**
 * UC ANR "Degree Days Validation Challenge" (github.com/UCANR-IGIS/degree-day-challenge, MIT, commit
 * 1766f1c, 2022): Esparto CIMIS station 2020, answers generated on UC IPM, °F, thresholds 50 and 70 °F.
 */
const validation = readFileSync(fileURLToPath(new URL('./fixtures/degree-days.csv', import.meta.url)), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [label, date, ...numbers] = line.split(',');
    const [min, max, nextMin, ss, ds, st, dt, vertical, intermediate] = numbers.map(Number) as number[];
    return {
      label: `case ${label}, ${date}`,
      day: { min: min!, max: max!, nextMin: nextMin! },
      ss,
      ds,
      st,
      dt,
      vertical,
      intermediate,
    };
  });

/** The published values are rounded to two decimals. */
const ROUNDING = 0.006;

const within = (actual: number, expected: number | undefined, tolerance = ROUNDING) =>
  expect(Math.abs(actual - expected!), `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);

const fahrenheit = (
  method: DegreeDayMethod,
  kind: 'horizontal' | 'vertical' | 'intermediate' = 'horizontal',
) => ({ method, base: 50, cutoff: { at: 70, kind } }) satisfies DegreeDayModel;

const simple = (method: DegreeDayMethod, base: number, at: number | null = null): DegreeDayModel => ({
  method,
  base,
  cutoff: at === null ? null : { at, kind: 'horizontal' },
});

const of = (min: number, max: number) => ({ min, max, nextMin: min });

describe('degree-days of the University of California’s validation rows', () => {
  it('has them all, every case among them', () => {
    expect(validation).toHaveLength(31);
    expect(new Set(validation.map(({ label }) => label.slice(0, 6))).size).toBe(6);
  });

  it.each(validation)('$label', ({ day, ss, ds, st, dt, vertical, intermediate }) => {
    within(degreeDays(day, fahrenheit('single-sine')), ss);
    within(degreeDays(day, fahrenheit('double-sine')), ds);
    within(degreeDays(day, fahrenheit('single-triangle')), st);
    within(degreeDays(day, fahrenheit('double-triangle')), dt);
    within(degreeDays(day, fahrenheit('single-sine', 'vertical')), vertical);
    within(degreeDays(day, fahrenheit('single-sine', 'intermediate')), intermediate);
  });
});

describe('degree-days of worked examples', () => {
  it('by the average', () => {
    // Nugent, Michigan State University, Calculating Growing Degree Days: base 50 °F.
    within(degreeDays(of(40, 65), simple('average', 50)), 2.5);
    within(degreeDays(of(35, 60), simple('average', 50)), 0);
    // Iowa State University, Agronomy 541: 70/50 °F; and the daily ceiling of the 50/86 method.
    within(degreeDays(of(50, 70), simple('average', 50)), 10);
    within(degreeDays(of(90, 100), simple('clamped-average', 50, 86)), 36);
    // UC IPM: mean 64 °F over 53 °F.
    within(degreeDays(of(60, 68), simple('average', 53)), 11);
    // A seed supplier's note (EDDS Supplies), base 50 °F.
    within(degreeDays(of(61, 83), simple('average', 50)), 22);
  });

  it('by method 2 and the single sine on the days of Michigan State', () => {
    // Arithmetic from the definitions of McMaster & Wilhelm 1997 and Baskerville & Emin 1969.
    within(degreeDays(of(40, 65), simple('clamped-average', 50)), 7.5);
    within(degreeDays(of(35, 60), simple('clamped-average', 50)), 5);
    within(degreeDays(of(40, 65), simple('single-sine', 50)), 5.31);
    within(degreeDays(of(35, 60), simple('single-sine', 50)), 2.81);
  });

  it('by Baskerville and Emin, of a Python package', () => {
    // github.com/jhsu98/growing-degree-days-py, its test: 60/34 °F, base 50 °F, 2.749.
    within(degreeDays(of(34, 60), simple('single-sine', 50)), 2.749, 0.0006);
  });

  it.each([
    ['single-sine', 7, 14, 0.47],
    ['single-sine', 7, 10, 0],
    ['single-sine', 13, 14, 1.5],
    ['single-sine', 13, 40, 12.94],
    ['single-sine', 7, 40, 10.94],
    ['single-sine', 7, 20, 2.87],
    ['single-triangle', 7, 14, 0.29],
    ['single-triangle', 13, 14, 1.5],
    ['single-triangle', 35, 40, 21],
    ['single-triangle', 13, 40, 13.59],
    ['single-triangle', 7, 40, 11.14],
    ['single-triangle', 7, 20, 2.46],
  ] as const)('of the R package TrenchR, %s of %i to %i °C', (method, min, max, expected) => {
    // github.com/trenchproject/TrenchR, test 19: thresholds 12 and 33 °C.
    within(degreeDays(of(min, max), simple(method, 12, 33)), expected);
  });

  it('but not three of its expectations, which are wrong', () => {
    // Known wrong, not used: single sine of 35–40 °C as 5 (the whole day lies above 33 °C, so it is
    // 33 − 12); double triangle of 13–40 °C with equal minima as 28.09 (it is the single one, 13.59);
    // double triangle of 13–32 °C over 10 °C as 1.25 (mean 22.5 − 10).
    within(degreeDays(of(35, 40), simple('single-sine', 12, 33)), 21);
    within(degreeDays(of(13, 40), simple('double-triangle', 12, 33)), 13.59);
    within(degreeDays(of(13, 32), simple('double-triangle', 10, 33)), 12.5);
  });
});

describe('degree-days against numerical integration', () => {
  const temperature = fc.double({ min: -20, max: 50, noNaN: true });
  // Thresholds that are whole tenths, a base under its cutoff.
  const thresholds = fc
    .tuple(fc.integer({ min: 0, max: 150 }), fc.integer({ min: 1, max: 300 }))
    .map(([base, above]) => ({ base: base / 10, at: (base + above) / 10 }));

  /** Degree-days of half a wave from `a` to `b`, by Gauss–Legendre between the days' breaks. */
  function integrate(
    a: number,
    b: number,
    shape: 'sine' | 'triangle',
    rate: (t: number) => number,
    breaks: number[],
  ) {
    const mean = (a + b) / 2;
    const swing = (b - a) / 2;
    const at = (x: number) =>
      shape === 'sine' ? mean + swing * Math.sin(Math.PI * (x - 0.5)) : a + (b - a) * x;
    const crossings = breaks
      .map((threshold) => {
        const part = (threshold - mean) / swing;
        if (!(Math.abs(part) < 1)) return Number.NaN;
        return shape === 'sine' ? 0.5 + Math.asin(part) / Math.PI : (threshold - a) / (b - a);
      })
      .filter((x) => x > 0 && x < 1);
    const ends = [0, ...crossings.sort((x, y) => x - y), 1];
    return ends.slice(1).reduce((sum, end, i) => sum + gauss(ends[i]!, end, (x) => rate(at(x))), 0);
  }

  it('agree to 1e-6, for the sine and the triangle, in 10,000 cases', () => {
    fc.assert(
      fc.property(
        temperature,
        temperature,
        temperature,
        thresholds,
        fc.constantFrom<DegreeDayMethod>('single-sine', 'double-sine', 'single-triangle', 'double-triangle'),
        fc.constantFrom('horizontal' as const, 'vertical' as const, 'none' as const),
        (one, other, nextMin, { base, at }, method, kind) => {
          const [min, max] = [Math.min(one, other), Math.max(one, other)];
          const shape = method.endsWith('sine') ? 'sine' : 'triangle';
          const rate = (t: number) => {
            if (kind === 'vertical' && t > at) return 0;
            return Math.max(0, (kind === 'none' ? t : Math.min(t, at)) - base);
          };
          const half = (low: number) => integrate(low, max, shape, rate, [base, at]);
          const expected = method.startsWith('double') ? (half(min) + half(nextMin)) / 2 : half(min);
          const cutoff = kind === 'none' ? null : { at, kind };
          const actual = degreeDays({ min, max, nextMin }, { method, base, cutoff });
          expect(Math.abs(actual - expected)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 10_000 },
    );
  });

  it('are never negative, and never more than the whole day at the cutoff', () => {
    fc.assert(
      fc.property(
        temperature,
        temperature,
        temperature,
        thresholds,
        fc.constantFrom<DegreeDayMethod>(
          'single-sine',
          'double-sine',
          'single-triangle',
          'double-triangle',
          'clamped-average',
        ),
        fc.constantFrom('horizontal' as const, 'vertical' as const, 'intermediate' as const),
        (min, max, nextMin, { base, at }, method, kind) => {
          const value = degreeDays({ min, max, nextMin }, { method, base, cutoff: { at, kind } });
          expect(value).toBeGreaterThanOrEqual(-1e-9);
          expect(value).toBeLessThanOrEqual(at - base + 1e-9);
        },
      ),
    );
  });
});

/** Eight-point Gauss–Legendre quadrature on eight panels; nodes from Legendre's polynomial by Newton. */
function gauss(from: number, to: number, f: (x: number) => number): number {
  const panels = 8;
  let sum = 0;
  for (let panel = 0; panel < panels; panel++) {
    const width = (to - from) / panels;
    const middle = from + (panel + 0.5) * width;
    for (const { node, weight } of NODES) sum += ((weight * width) / 2) * f(middle + (node * width) / 2);
  }
  return sum;
}

const NODES = legendreNodes(8);

function legendreNodes(n: number) {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 50; step++) {
      let [before, here] = [1, x];
      for (let k = 2; k <= n; k++) [before, here] = [here, ((2 * k - 1) * x * here - (k - 1) * before) / k];
      slope = (n * (x * here - before)) / (x * x - 1);
      x -= here / slope;
    }
    return { node: x, weight: 2 / ((1 - x * x) * slope * slope) };
  });
}
