import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DailyRow, fromRows } from '../../src/engine/climate.ts';
import { addDays, type Day, day, daysBetween, monthDayOf, monthOf } from '../../src/engine/day.ts';
import { type OutlookQuestion, outlookOf } from '../../src/engine/outlook.ts';
import { OUTLOOK_SHARE, outlookDecisionDate } from '../../src/engine/outlook-decision.ts';
import { prepareWarmth } from '../../src/engine/past-seasons.ts';
import { type RipeningGroup, spanOf } from '../../src/engine/ripening.ts';
import { inSeason, seasonStarting } from '../../src/engine/season.ts';
import { type ObservedDay, observed, seriesOf } from './observed.ts';

const MARK_80F = ((80 - 32) * 5) / 9;
const SEASONS = [2012, 2013, 2014, 2015];
const GROUPS = ['early', 'mid', 'late', 'unknown'] as const;

/** A day's warmth over 8 °C and up to 36 °C, by 20,000 steps along the sine. */
function warmthByHand(low: number, high: number): number {
  let sum = 0;
  const steps = 20_000;
  for (let i = 0; i < steps; i++) {
    const at = (low + high) / 2 + ((high - low) / 2) * Math.sin((2 * Math.PI * (i + 0.5)) / steps);
    sum += Math.max(0, Math.min(at, 36) - 8);
  }
  return sum / steps;
}

interface HandDay extends ObservedDay {
  readonly warmth: number;
}

/**
 * The outlook again, straight from the rows and in the words of the rule, for fruit showing on `start`
 * (`MM-DD`), with `current` left out. Own days of the current season run up to `knownTo`, null for none.
 */
function outlookByHand(
  days: readonly HandDay[],
  current: number,
  start: string,
  span: number,
  knownTo: string | null,
) {
  const need = span * (2100 / 84.5 - 8);
  return SEASONS.filter((year) => year !== current).map((year) => {
    const ofYear = days.filter(({ date }) => date.startsWith(`${year}`));
    const own = days.filter(
      ({ date }) => knownTo !== null && date >= `${current}-${start}` && date <= `${current}-${knownTo}`,
    );
    const resume = knownTo === null || knownTo < start ? start : null;
    const rest = ofYear.filter(({ date }) =>
      resume ? date.slice(5) >= resume : date.slice(5) > (knownTo ?? ''),
    );
    let sum = 0;
    let ripe: string | null = null;
    for (const { date, warmth } of [...own, ...rest]) {
      sum += warmth;
      if (sum >= need) {
        ripe = `${year}${date.slice(4)}`;
        break;
      }
    }
    const heatEnd = ofYear.findLast(
      (_, i) => ofYear.slice(Math.max(0, i - 6), i + 1).filter(({ high }) => high >= 26.65).length >= 4,
    )?.date;
    const freeze = ofYear.find(({ date, low }) => date.slice(5) >= '07-24' && low <= 0)?.date;
    return {
      season: String(year),
      ripeOn: ripe,
      inHeat: ripe !== null && heatEnd !== undefined && ripe <= heatEnd,
      beforeFrost: ripe !== null && (freeze === undefined || ripe < freeze),
    };
  });
}

describe.each(['New York', 'Seattle'] as const)('the outlook in %s, one season left out', (place) => {
  // Daily temperatures of vega-datasets 3.2.1, data/weather.csv (NOAA, US Government work).
  const days = observed(place).map((one) => ({ ...one, warmth: warmthByHand(one.low, one.high) }));
  const prepared = prepareWarmth(seriesOf(days), { markC: MARK_80F, hemisphere: 'N' });

  it.each(SEASONS)('has exactly the counts of the other three: %i', (current) => {
    for (const start of ['05-20', '06-08', '06-20', '07-01', '07-17', '08-01', '08-20']) {
      for (const group of GROUPS) {
        const span = spanOf({ group });
        const on = day(`${current}-${start}`);
        const outlook = outlookOf(prepared, { start: on, today: addDays(on, -10), span })!;
        const byHand = outlookByHand(days, current, start, span.planning, null);
        expect(outlook.outcomes, `${start} ${group}`).toEqual(byHand);
        expect(outlook).toMatchObject({
          seasons: 3,
          inHeat: byHand.filter(({ inHeat }) => inHeat).length,
          beforeFrost: byHand.filter(({ beforeFrost }) => beforeFrost).length,
          leftOut: [],
        });
      }
    }
  });

  it.each(SEASONS)('goes by this season’s own days as far as they are known: %i', (current) => {
    for (const knownTo of ['06-07', '06-08', '07-02', '08-15', '10-10']) {
      const question = { start: day(`${current}-06-08`), today: day(`${current}-${knownTo}`) };
      const span = spanOf({ group: 'mid' });
      const outlook = outlookOf(prepared, { ...question, span })!;
      expect(outlook.outcomes, knownTo).toEqual(
        outlookByHand(days, current, '06-08', span.planning, knownTo),
      );
    }
  });

  it('decides on the last day from which four in five seasons would have made it', () => {
    for (const group of GROUPS) {
      const span = spanOf({ group });
      const season = seasonStarting(2026, 'N');
      let byHand: Day | null = null;
      for (
        let tip = season.from;
        tip <= season.to && monthDayOf(addDays(tip, 10)) >= '01-11';
        tip = addDays(tip, 1)
      ) {
        const outcomes = outlookByHand(days, 0, monthDayOf(addDays(tip, 10)), span.planning, null);
        const made = outcomes.filter(({ beforeFrost }) => beforeFrost).length;
        if (made >= OUTLOOK_SHARE * outcomes.length) byHand = tip;
      }
      expect(outlookDecisionDate(prepared, span, season), group).toBe(byHand);
    }
  });
});

describe('the outlook', () => {
  /** Whole years of a plain climate: a sine of highs about `mean`, lows 10 °C below. */
  function plain(from: string, to: string, mean: (on: Day) => number | null, swing = 12) {
    const rows: DailyRow[] = [];
    for (let on = day(from); on <= day(to); on = addDays(on, 1)) {
      const middle = mean(on);
      if (middle === null) continue;
      const high =
        middle + swing * Math.cos((2 * Math.PI * (daysBetween(day('2000-07-20'), on) % 365.25)) / 365.25);
      rows.push({ day: on, tmaxC: high, tminC: high - 10 });
    }
    return fromRows(rows);
  }
  const prepare = (series: ReturnType<typeof plain>, hemisphere: 'N' | 'S' = 'N') =>
    prepareWarmth(series, { markC: 27, hemisphere });
  const question = (start: string, group: RipeningGroup = 'mid'): OutlookQuestion => ({
    start: day(start),
    today: addDays(day(start), -10),
    span: spanOf({ group }),
  });

  it('says nothing on fewer than three past seasons', () => {
    expect(
      outlookOf(prepare(plain('2023-01-01', '2025-12-31', () => 18)), question('2026-06-08'))?.seasons,
    ).toBe(3);
    expect(
      outlookOf(prepare(plain('2024-01-01', '2025-12-31', () => 18)), question('2026-06-08')),
    ).toBeNull();
    // This season's own part of the record is no past season.
    expect(
      outlookOf(prepare(plain('2024-01-01', '2026-12-31', () => 18)), question('2026-06-08')),
    ).toBeNull();
    expect(outlookOf(prepare([]), question('2026-06-08'))).toBeNull();
    expect(outlookDecisionDate(prepare([]), spanOf({ group: 'mid' }), seasonStarting(2026, 'N'))).toBeNull();
  });

  it('says nothing of fruit that would show in another season', () => {
    const prepared = prepare(plain('2021-01-01', '2025-12-31', () => 18));
    const span = spanOf({ group: 'mid' });
    expect(outlookOf(prepared, { start: day('2026-12-31'), today: day('2026-12-21'), span })).not.toBeNull();
    expect(outlookOf(prepared, { start: day('2027-01-01'), today: day('2026-12-22'), span })).toBeNull();
    expect(outlookOf(prepared, { start: day('2025-12-31'), today: day('2026-01-02'), span })).toBeNull();
    expect(outlookOf(prepared, { start: day('2026-01-01'), today: day('2026-01-02'), span })).not.toBeNull();
  });

  it('fills gaps of three days and leaves a season with a longer one out', () => {
    const gapOf = (length: number, from: string) => {
      const to = addDays(day(from), length - 1);
      return plain('2021-01-01', '2025-12-31', (on) => (on >= day(from) && on <= to ? null : 18));
    };
    const whole = outlookOf(prepare(gapOf(0, '2023-07-10')), question('2026-06-08'))!;
    expect(whole).toMatchObject({ seasons: 5, leftOut: [] });
    expect(outlookOf(prepare(gapOf(3, '2023-07-10')), question('2026-06-08'))).toMatchObject({
      seasons: 5,
      beforeFrost: whole.beforeFrost,
    });
    expect(outlookOf(prepare(gapOf(4, '2023-07-10')), question('2026-06-08'))).toMatchObject({
      seasons: 4,
      leftOut: ['2023'],
    });
    // Before the fruitlet, or after the first freeze, a gap does no harm.
    expect(outlookOf(prepare(gapOf(20, '2023-05-10')), question('2026-06-08'))?.seasons).toBe(5);
    expect(outlookOf(prepare(gapOf(10, '2023-12-20')), question('2026-06-08'))?.seasons).toBe(5);
  });

  it('leaves out a season the record does not hold to its end', () => {
    const record = plain('2020-03-01', '2025-09-20', () => 18);
    expect(outlookOf(prepare(record), question('2026-06-08'))).toMatchObject({
      seasons: 5,
      leftOut: ['2025'],
    });
    const southern = outlookOf(
      prepare(
        plain('2020-01-01', '2025-12-31', () => 30, 4),
        'S',
      ),
      question('2026-11-08'),
    )!;
    expect(southern.outcomes.map(({ season }) => season)).toEqual([
      '2020/21',
      '2021/22',
      '2022/23',
      '2023/24',
      '2024/25',
    ]);
    expect(southern.leftOut).toEqual(['2019/20', '2025/26']);
  });

  it('has no ripe day where the warmth falls short', () => {
    const cold = outlookOf(
      prepare(plain('2021-01-01', '2025-12-31', () => 4)),
      question('2026-06-08', 'late'),
    )!;
    expect(cold).toMatchObject({ inHeat: 0, beforeFrost: 0, days: { from: null, planning: null, to: null } });
    expect(cold.outcomes.every(({ ripeOn }) => ripeOn === null)).toBe(true);
  });

  it('counts a season without frost by its end, and one without heat as not in heat', () => {
    const mild = outlookOf(prepare(plain('2021-01-01', '2025-12-31', () => 23, 2)), question('2026-06-08'))!;
    expect(mild).toMatchObject({ seasons: 5, inHeat: 0, beforeFrost: 5 });
  });

  it('does not count a fruit that would ripen behind a gap after the freeze', () => {
    const gap = plain('2021-01-01', '2025-12-31', (on) =>
      monthOf(on) === 12 && on < day('2025-12-25') ? null : 17,
    );
    const outlook = outlookOf(prepare(gap), question('2026-09-25', 'late'))!;
    expect(outlook.outcomes.every(({ ripeOn }) => ripeOn === null)).toBe(true);
  });

  /** Three years of even days: highs and lows alike, so that a day's warmth is its temperature less 8 °C. */
  function even(
    temperatureOn: (monthDay: string) => number,
    lowOn: (monthDay: string) => number | null = () => null,
  ) {
    const rows: DailyRow[] = [];
    for (let on = day('2023-01-01'); on <= day('2025-12-31'); on = addDays(on, 1)) {
      const high = temperatureOn(monthDayOf(on));
      rows.push({ day: on, tmaxC: high, tminC: lowOn(monthDayOf(on)) ?? high });
    }
    return prepare(fromRows(rows));
  }
  const ripeOn = (prepared: ReturnType<typeof even>, planning: number) =>
    outlookOf(prepared, {
      start: day('2026-06-10'),
      today: day('2026-06-01'),
      span: spanOf({ own: { from: 50, to: planning }, group: 'mid' }),
    })!.outcomes[0]!;

  it('counts fruit ripe on the last day of the heat as in the heat', () => {
    // 65 days need 1095.4 °C·days. 30 °C to 27 July gives 48 × 22 = 1056, then three days at 26 °C 54 more:
    // ripe on 30 July, the last day with four of seven at 27 °C. A day less of 30 °C ends the heat on the 29th.
    const heatTo = (last: string) => even((monthDay) => (monthDay <= last ? 30 : 26));
    expect(ripeOn(heatTo('07-27'), 65)).toMatchObject({ ripeOn: '2023-07-30', inHeat: true });
    expect(ripeOn(heatTo('07-26'), 65)).toMatchObject({ ripeOn: '2023-07-30', inHeat: false });
  });

  it('does not count fruit ripe on the day of the first freeze as before the frost', () => {
    // 64.2 days need 1081.9 °C·days; 49 days at 30 °C give 1078, and even a day from −1 to 30 °C the rest.
    const freezeOn = (on: string) =>
      even(
        () => 30,
        (monthDay) => (monthDay === on ? -1 : null),
      );
    expect(ripeOn(freezeOn('07-29'), 64.2)).toMatchObject({ ripeOn: '2023-07-29', beforeFrost: false });
    expect(ripeOn(freezeOn('07-30'), 64.2)).toMatchObject({ ripeOn: '2023-07-29', beforeFrost: true });
  });

  it('gives a tree under cover its days of heat, and no more', () => {
    const prepared = prepare(plain('2016-01-01', '2025-12-31', () => 18));
    const asked = question('2026-06-14', 'late');
    const open = outlookOf(prepared, asked)!;
    const covered = outlookOf(prepared, { ...asked, coverDays: 60 })!;
    expect(open.inHeat).toBe(0);
    expect(covered.inHeat).toBe(10);
    expect(covered.beforeFrost).toBe(open.beforeFrost);
  });

  it('spreads over the span’s two ends', () => {
    const { days: spread } = outlookOf(
      prepare(plain('2016-01-01', '2025-12-31', () => 18)),
      question('2026-06-08'),
    )!;
    expect(spread.from!).toBeLessThan(spread.planning!);
    expect(spread.planning!).toBeLessThan(spread.to!);
  });

  it('decides no day where no day is good enough, and the same in the south half a year on', () => {
    const cold = prepare(plain('2016-01-01', '2025-12-31', () => 6));
    expect(outlookDecisionDate(cold, spanOf({ group: 'late' }), seasonStarting(2026, 'N'))).toBeNull();
    const north = outlookDecisionDate(
      prepare(plain('2016-01-01', '2025-12-31', () => 18)),
      spanOf({ group: 'late' }),
      seasonStarting(2026, 'N'),
    )!;
    const south = outlookDecisionDate(
      prepare(
        plain('2015-07-01', '2026-06-30', () => 18, -12),
        'S',
      ),
      spanOf({ group: 'late' }),
      seasonStarting(2026, 'S'),
    )!;
    expect(Math.abs(daysBetween(north, south) - 184)).toBeLessThanOrEqual(3);
  });

  it('is never better for later fruit', () => {
    const prepared = prepareWarmth(seriesOf(observed('New York')), { markC: MARK_80F, hemisphere: 'N' });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 60 }), (from, more) => {
        const at = (offset: number) =>
          addDays(inSeason(monthDayOf(day('2026-04-01')), seasonStarting(2026, 'N')), offset);
        const span = spanOf({ group: 'mid' });
        const sooner = outlookOf(prepared, { start: at(from), today: day('2026-01-01'), span })!;
        const later = outlookOf(prepared, { start: at(from + more), today: day('2026-01-01'), span })!;
        expect(later.beforeFrost).toBeLessThanOrEqual(sooner.beforeFrost);
        expect(later.inHeat).toBeLessThanOrEqual(sooner.inHeat);
      }),
    );
  });
});
