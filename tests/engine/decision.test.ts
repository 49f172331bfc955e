import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCultivar } from '../../src/engine/cultivars.ts';
import { addDays, day, daysBetween, fromEpochDays } from '../../src/engine/day.ts';
import {
  decisionDate,
  lastWarmthOf,
  latestTipDate,
  MOST_CAUTION_DAYS,
  onTimeUntil,
  ripeWindow,
  windowAfterTip,
  windowFromSigns,
} from '../../src/engine/decision.ts';
import { type RipeningGroup, spanOf } from '../../src/engine/ripening.ts';

const brunswick = spanOf({ group: 'unknown', cultivar: findCultivar('Brunswick') });
const groups = fc.constantFrom<RipeningGroup>('early', 'mid', 'late', 'unknown');
const days = fc.integer({ min: 10_000, max: 30_000 }).map(fromEpochDays);

describe('the decision date', () => {
  it.each([
    ['late', '2026-07-07'],
    ['mid', '2026-07-17'],
    ['early', '2026-07-27'],
    ['unknown', '2026-07-07'],
  ] as const)('of a %s tree with heat to 15 October is %s', (group, expected) => {
    expect(decisionDate(day('2026-10-15'), spanOf({ group }), 0)).toBe(expected);
  });

  it('agrees with common practice within its tolerance', () => {
    // Common practice, no source: heat end 15 October, late kind: about 5–7 July [3 days]; heat end early
    // September, late kind: end of May to the first week of June [10 days].
    const october = decisionDate(day('2026-10-15'), spanOf({ group: 'late' }), 0);
    expect(Math.abs(daysBetween(october, day('2026-07-06')))).toBeLessThanOrEqual(3);
    const september = decisionDate(day('2026-09-05'), spanOf({ group: 'late' }), 0);
    expect(Math.abs(daysBetween(september, day('2026-06-01')))).toBeLessThanOrEqual(10);
  });

  it('in the south lies in the season that began in July', () => {
    expect(decisionDate(day('2027-03-20'), spanOf({ group: 'late' }), 0)).toBe('2026-12-10');
  });

  it('goes by a published span rather than the group, and by caution', () => {
    // Brunswick 75–80 days (Miyagi Prefecture bulletins): 80 + 10 before 15 October.
    expect(decisionDate(day('2026-10-15'), brunswick, 0)).toBe('2026-07-17');
    expect(decisionDate(day('2026-10-15'), brunswick, 7)).toBe('2026-07-10');
    expect(onTimeUntil(day('2026-10-15'), brunswick)).toBe('2026-07-17');
  });

  it('is never earlier for a later heat end', () => {
    fc.assert(
      fc.property(
        days,
        fc.nat(400),
        groups,
        fc.integer({ min: 0, max: MOST_CAUTION_DAYS }),
        (end, on, group, caution) => {
          const span = spanOf({ group });
          const one = decisionDate(end, span, caution);
          const other = decisionDate(addDays(end, on), span, caution);
          expect(daysBetween(one, other)).toBe(on);
        },
      ),
    );
  });

  it('is never later for a longer span or more caution', () => {
    fc.assert(
      fc.property(
        days,
        fc.integer({ min: 35, max: 160 }),
        fc.nat(30),
        fc.nat(21),
        (end, to, more, caution) => {
          const short = spanOf({ own: { from: 30, to }, group: 'mid' });
          const long = spanOf({ own: { from: 30, to: to + more }, group: 'mid' });
          expect(decisionDate(end, long, caution) <= decisionDate(end, short, caution)).toBe(true);
          expect(decisionDate(end, short, caution) <= decisionDate(end, short, 0)).toBe(true);
        },
      ),
    );
  });
});

describe('the ripe window', () => {
  it('of a late kind seen on 8 June is 6–16 September', () => {
    expect(ripeWindow(day('2026-06-08'), spanOf({ group: 'late' }))).toEqual({
      from: '2026-09-06',
      to: '2026-09-16',
    });
    // Common practice, no source: 8 June + 100 days is 16 September [2 days], + 60 days 7 August [1 day].
    expect(addDays(day('2026-06-08'), 100)).toBe('2026-09-16');
    expect(ripeWindow(day('2026-06-08'), spanOf({ group: 'early' })).from).toBe('2026-08-07');
  });

  it('of Brunswick at Yamamoto holds or nears its first picks', () => {
    // Miyagi Prefecture bulletins: first set 22 June 2017, first pick 10 September 2017, 80 days.
    expect(ripeWindow(day('2017-06-22'), brunswick)).toEqual({ from: '2017-09-05', to: '2017-09-10' });
    // First set 5 June 2018, first pick 29 August 2018: 85 days, five past the published upper end.
    expect(daysBetween(day('2018-06-05'), day('2018-08-29'))).toBe(85);
    expect(ripeWindow(day('2018-06-05'), brunswick).to).toBe('2018-08-24');
  });

  it('after a tip allows 7 to 10 days for the response (common practice, no source)', () => {
    expect(windowAfterTip(day('2026-07-07'), spanOf({ group: 'late' }))).toEqual({
      from: '2026-10-12',
      to: '2026-10-25',
    });
  });

  it('narrows to 13 days once ripening shows', () => {
    // Phase III lasts 13 days: Çelikel et al. 1997, Acta Hort. 441:145–151.
    expect(windowFromSigns(day('2026-09-01'))).toEqual({ from: '2026-09-06', to: '2026-09-14' });
  });
});

describe('the last warmth', () => {
  it('is three weeks past the heat, or the first frost if that is earlier', () => {
    const end = day('2026-10-15');
    expect(lastWarmthOf(end, null)).toBe('2026-11-05');
    expect(lastWarmthOf(end, day('2026-11-20'))).toBe('2026-11-05');
    expect(lastWarmthOf(end, day('2026-10-28'))).toBe('2026-10-28');
  });

  it('ends tips a quick response and a quick fig before it', () => {
    expect(latestTipDate(day('2026-11-05'), spanOf({ group: 'late' }))).toBe('2026-07-31');
  });
});
