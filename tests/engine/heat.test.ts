import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DailyRow, fromRows } from '../../src/engine/climate.ts';
import { addDays, type Day, day, daysBetween, monthDayOf, monthOf } from '../../src/engine/day.ts';
import { heatEndOf, sharesOf } from '../../src/engine/heat.ts';
import { type ObservedDay, observed, seriesOf } from './observed.ts';

const MARK_80F = ((80 - 32) * 5) / 9;

/** Made-up highs of whole years. */
function years(from: number, to: number, highOn: (on: Day) => number | null) {
  const rows: DailyRow[] = [];
  for (let on = day(`${from}-01-01`); on <= day(`${to}-12-31`); on = addDays(on, 1)) {
    rows.push({ day: on, tmaxC: highOn(on), tminC: 5 });
  }
  return fromRows(rows);
}

/**
 * The rule again, written from its words and straight from the file's rows, in °F: the share of days at the
 * mark within a week of each calendar day, then the unbroken run of shares of a half and more around the
 * greatest. Returns its last day.
 */
function heatEndByHand(days: readonly ObservedDay[], markF: number): string | null {
  const calendar = Array.from({ length: 365 }, (_, i) => new Date(Date.UTC(2001, 0, 1 + i)));
  const nameOf = (date: Date) => date.toISOString().slice(5, 10);
  const indexOf = new Map(calendar.map((date, i) => [nameOf(date), i]));
  indexOf.set('02-29', 58);
  const shares = calendar.map((_, at) => {
    const near = days.filter(({ date }) => {
      const distance = Math.abs(at - (indexOf.get(date.slice(5)) ?? Number.NaN));
      return Math.min(distance, 365 - distance) <= 7;
    });
    // The file keeps tenths of °C, so a mark is reached when it is within that rounding.
    return near.filter(({ high }) => high * 1.8 + 32 + 0.09 >= markF).length / near.length;
  });
  const greatest = Math.max(...shares);
  if (greatest < 0.5) return null;
  let at = shares.indexOf(greatest);
  while ((shares[(at + 1) % 365] ?? 0) >= 0.5) at = (at + 1) % 365;
  return nameOf(calendar[at] as Date);
}

describe('the end of the heat', () => {
  // Daily highs of vega-datasets 3.2.1, data/weather.csv (NOAA, US Government work), at 80 °F.
  it('is 10 September in New York 2012–2015', () => {
    const days = observed('New York');
    expect(days).toHaveLength(1461);
    expect(heatEndOf(seriesOf(days), { markC: MARK_80F, hemisphere: 'N' })).toMatchObject({
      kind: 'date',
      heatEnd: '09-10',
    });
    expect(heatEndByHand(days, 80)).toBe('09-10');
  });

  it('is 16 August in Seattle, after a short run', () => {
    const days = observed('Seattle');
    const heat = heatEndOf(seriesOf(days), { markC: MARK_80F, hemisphere: 'N' });
    expect(heat).toMatchObject({ kind: 'date', heatEnd: '08-16', heatStart: '08-02' });
    expect(heatEndByHand(days, 80)).toBe('08-16');
  });

  it.each([70, 75, 78, 82, 85, 88])('agrees with the rule worked by hand at %i °F', (markF) => {
    for (const place of ['New York', 'Seattle'] as const) {
      const days = observed(place);
      const heat = heatEndOf(seriesOf(days), { markC: ((markF - 32) * 5) / 9, hemisphere: 'N' });
      expect(heat.kind === 'date' ? heat.heatEnd : null, place).toBe(heatEndByHand(days, markF));
    }
  });

  it('does not exist where no time of the year has half its days at the mark', () => {
    const heat = heatEndOf(seriesOf(observed('Seattle')), { markC: 35, hemisphere: 'N' });
    expect(heat.kind).toBe('none');
    expect(heat.greatestShare).toBeLessThan(0.5);
    expect(heatEndOf([], { markC: 27, hemisphere: 'N' })).toEqual({ kind: 'none', greatestShare: null });
  });

  it('never comes where every time of the year has', () => {
    const series = years(2022, 2024, () => 31);
    expect(heatEndOf(series, { markC: 27, hemisphere: 'N' })).toEqual({
      kind: 'never-ends',
      greatestShare: 1,
    });
    // Without a reading from mid-June to mid-July nobody can say that it never ends.
    const gappy = years(2022, 2024, (on) => (monthOf(on) === 6 ? null : 31));
    expect(heatEndOf(gappy, { markC: 27, hemisphere: 'S' })).toMatchObject({
      kind: 'date',
      heatEnd: '06-07',
    });
  });

  it('counts a share of exactly one half as reliable', () => {
    // Highs at the mark in one of two years.
    const half = years(2022, 2023, (on) => (on < day('2023-01-01') && monthOf(on) === 7 ? 27 : 20));
    expect(heatEndOf(half, { markC: 27, hemisphere: 'N' }).greatestShare).toBe(0.5);
    expect(heatEndOf(half, { markC: 27, hemisphere: 'N' })).toMatchObject({ kind: 'date', heatEnd: '07-24' });
  });

  it('runs over the turn of the year in the south', () => {
    const warm = years(2020, 2024, (on) => ([11, 12, 1, 2, 3].includes(monthOf(on)) ? 30 : 18));
    expect(heatEndOf(warm, { markC: 27, hemisphere: 'S' })).toMatchObject({
      kind: 'date',
      heatStart: '11-01',
      heatEnd: '03-31',
    });
  });

  it('follows the earliest of two equal runs in the season', () => {
    const twice = years(2021, 2023, (on) => ([5, 10].includes(monthOf(on)) ? 30 : 18));
    expect(heatEndOf(twice, { markC: 27, hemisphere: 'N' })).toMatchObject({ heatEnd: '05-31' });
    expect(heatEndOf(twice, { markC: 27, hemisphere: 'S' })).toMatchObject({ heatEnd: '10-31' });
  });

  it('takes 80 °F, kept as 26.7 °C, for 80 °F, and 90 °F, kept as 32.2 °C, for 90 °F', () => {
    const at = (celsius: number) => years(2021, 2023, () => celsius);
    expect(heatEndOf(at(26.7), { markC: MARK_80F, hemisphere: 'N' }).kind).toBe('never-ends');
    expect(heatEndOf(at(26.6), { markC: MARK_80F, hemisphere: 'N' }).kind).toBe('none');
    expect(heatEndOf(at(32.2), { markC: ((90 - 32) * 5) / 9, hemisphere: 'N' }).kind).toBe('never-ends');
  });

  it('is not moved by a 29 February, which counts as the 28th', () => {
    const common = years(2021, 2023, (on) => (monthDayOf(on) <= '02-28' ? 30 : 10));
    const leap = years(2022, 2024, (on) => (monthDayOf(on) <= '02-29' ? 30 : 10));
    expect(heatEndOf(common, { markC: 27, hemisphere: 'S' })).toMatchObject({ heatEnd: '02-28' });
    expect(heatEndOf(leap, { markC: 27, hemisphere: 'S' })).toMatchObject({ heatEnd: '02-28' });
    expect(sharesOf(leap, 27)).toHaveLength(365);
  });

  it('never comes earlier for a lower mark', () => {
    const series = seriesOf(observed('New York'));
    const peak = day('2001-07-18');
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (low, up) => {
          const lower = heatEndOf(series, { markC: low, hemisphere: 'N' });
          const higher = heatEndOf(series, { markC: low + up, hemisphere: 'N' });
          if (lower.kind !== 'date' || higher.kind !== 'date') return;
          const daysAfterPeak = (end: string) => daysBetween(peak, day(`2001-${end}`));
          expect(daysAfterPeak(lower.heatEnd)).toBeGreaterThanOrEqual(daysAfterPeak(higher.heatEnd));
        },
      ),
    );
  });
});
