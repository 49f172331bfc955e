import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromRows, MISSING, merge, rowsOf, SLOTS, tmaxOn, tminOn } from '../../src/engine/climate.ts';
import { day, fromEpochDays } from '../../src/engine/day.ts';
import { flatten, slotOf } from '../../src/engine/flat-series.ts';

const readings = fc.option(fc.integer({ min: -600, max: 600 }).map((tenths) => tenths / 10));
const rows = fc
  .uniqueArray(
    fc.record({
      // 2023 to 2025, over a leap year.
      day: fc.integer({ min: 19_358, max: 20_453 }).map(fromEpochDays),
      tmaxC: readings,
      tminC: readings,
    }),
    { selector: (row) => row.day, maxLength: 60 },
  )
  .map((list) => list.sort((a, b) => (a.day < b.day ? -1 : 1)));

const held = (list: readonly { tmaxC: number | null; tminC: number | null }[]) =>
  list.filter(({ tmaxC, tminC }) => tmaxC !== null || tminC !== null);

describe('a daily series', () => {
  it('gives back every reading it was given, and no other', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const series = fromRows([...list].reverse());
        expect([...rowsOf(series)]).toEqual(held(list));
        for (const row of list) {
          expect(tmaxOn(series, row.day)).toBe(row.tmaxC);
          expect(tminOn(series, row.day)).toBe(row.tminC);
        }
        expect(series.every(({ tmax, tmin }) => tmax.length === SLOTS && tmin.length === SLOTS)).toBe(true);
      }),
    );
  });

  it('has nothing on days and years it does not hold', () => {
    const series = fromRows([{ day: day('2025-12-31'), tmaxC: 3.04, tminC: null }]);
    expect(tmaxOn(series, day('2025-12-31'))).toBe(3);
    expect(tminOn(series, day('2025-12-31'))).toBeNull();
    expect(tmaxOn(series, day('2025-12-30'))).toBeNull();
    expect(tmaxOn(series, day('2024-12-31'))).toBeNull();
    expect(series[0]?.tmax[365]).toBe(MISSING);
  });

  it('takes one’s own readings over others and tells what that changed', () => {
    const base = fromRows([
      { day: day('2024-02-28'), tmaxC: 10, tminC: 1 },
      { day: day('2024-02-29'), tmaxC: 11, tminC: null },
      { day: day('2024-03-01'), tmaxC: 12, tminC: 3 },
    ]);
    const own = fromRows([
      { day: day('2024-02-28'), tmaxC: 10, tminC: null },
      { day: day('2024-02-29'), tmaxC: 11, tminC: 2 },
      { day: day('2024-03-01'), tmaxC: 12.5, tminC: 3 },
      { day: day('2023-07-01'), tmaxC: 30, tminC: 18 },
    ]);
    const { series, counts } = merge(base, own);
    expect(counts).toEqual({ added: 2, changed: 1, same: 1 });
    expect([...rowsOf(series)]).toEqual([
      { day: '2023-07-01', tmaxC: 30, tminC: 18 },
      { day: '2024-02-28', tmaxC: 10, tminC: 1 },
      { day: '2024-02-29', tmaxC: 11, tminC: 2 },
      { day: '2024-03-01', tmaxC: 12.5, tminC: 3 },
    ]);
    expect(tmaxOn(base, day('2024-03-01'))).toBe(12);
  });

  it('merged with itself changes nothing', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const series = fromRows(list);
        expect(merge(series, series)).toEqual({
          series,
          counts: { added: 0, changed: 0, same: held(list).length },
        });
      }),
    );
  });

  it('runs on from day to day over years it lacks', () => {
    fc.assert(
      fc.property(rows, (list) => {
        const flat = flatten(fromRows(list));
        const known = held(list) as typeof list;
        for (const row of known) {
          expect(flat.tmax[slotOf(flat, row.day)]).toBe(
            row.tmaxC === null ? MISSING : Math.round(row.tmaxC * 10),
          );
        }
        expect(flat.last).toBe(known.length === 0 ? -1 : slotOf(flat, known.at(-1)!.day));
        if (known.length > 0) expect(flat.first).toBe(slotOf(flat, known[0]!.day));
      }),
    );
    expect(flatten([])).toMatchObject({ first: 0, last: -1 });
  });
});
