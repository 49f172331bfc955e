import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCultivar } from '../../src/engine/cultivars.ts';
import { addDays, day, fromEpochDays, later, toEpochDays } from '../../src/engine/day.ts';
import type { SeasonObservation } from '../../src/engine/fruit.ts';
import { OBSERVATION_KINDS } from '../../src/engine/observation.ts';
import { type RipeningGroup, spanOf } from '../../src/engine/ripening.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { type Purpose, verdictOf } from '../../src/engine/verdict.ts';
import { note, seasonCase } from './season-case.ts';

const seen = (on: string) => [note('fruitlets', on, { crop: 'main' })];
const verdict = (...of: Parameters<typeof seasonCase>) => verdictOf(seasonCase(...of)).verdict;

describe('the verdict, row by row', () => {
  it('is set-up while no season is known', () => {
    const garden = { heat: { kind: 'unknown' } } as const;
    expect(verdict('2026-07-07', { garden })).toBe('set-up');
    expect(verdict('2026-07-07', { garden, tree: { purpose: 'wood' }, notes: seen('2026-06-08') })).toBe(
      'set-up',
    );
    expect(verdictOf(seasonCase('2026-07-07', { garden }))).toMatchObject({
      decisionDate: null,
      heatEnd: null,
    });
  });

  it('is not-for-fruit where the main crop drops unpollinated, or the tree is kept for its wood', () => {
    const king = { needsPollination: findCultivar('Desert King')!.mainNeedsPollination };
    expect(verdict('2026-07-07', { tree: king })).toBe('not-for-fruit');
    expect(verdict('2026-07-07', { tree: king, notes: seen('2026-06-08') })).toBe('not-for-fruit');
    expect(verdict('2026-07-07', { tree: { ...king, pollinated: true } })).toBe('tip');
    expect(verdict('2026-07-07', { tree: { purpose: 'wood' } })).toBe('not-for-fruit');
    expect(verdict('2026-07-07', { tree: { purpose: 'both' } })).toBe('tip');
    expect(verdict('2026-07-07', { tree: { ...king, purpose: 'wood', pollinated: true } })).toBe(
      'not-for-fruit',
    );
  });

  it.each([
    // A late tree ripens 90–100 days on: a window of 6–16 September from 8 June, and so on.
    ['2026-06-08', 'in-heat', '2026-09-06', '2026-09-16'],
    ['2026-07-07', 'in-heat', '2026-10-05', '2026-10-15'],
    ['2026-07-08', 'edge', '2026-10-06', '2026-10-16'],
    ['2026-07-17', 'edge', '2026-10-15', '2026-10-25'],
    ['2026-07-18', 'after-heat', '2026-10-16', '2026-10-26'],
    ['2026-08-22', 'after-heat', '2026-11-20', '2026-11-30'],
    ['2026-08-23', 'after-frost', '2026-11-21', '2026-12-01'],
  ])('is leave with fruitlets of %s: %s', (on, timing, ripeFrom, ripeTo) => {
    expect(verdictOf(seasonCase('2026-08-30', { notes: seen(on) }))).toMatchObject({
      verdict: 'leave',
      timing,
      ripeFrom,
      ripeTo,
      seen: on,
    });
  });

  it('is leave after the heat when no frost is known', () => {
    const garden = { firstFrost: null };
    expect(verdictOf(seasonCase('2026-09-30', { garden, notes: seen('2026-09-20') })).timing).toBe(
      'after-heat',
    );
  });

  it('is leave in endless heat, and by frost alone where heat is never reliable', () => {
    const endless = { heat: { kind: 'never-ends' } } as const;
    expect(verdictOf(seasonCase('2026-09-30', { garden: endless, notes: seen('2026-09-20') }))).toMatchObject(
      {
        verdict: 'leave',
        timing: 'in-heat',
      },
    );
    const cool = { heat: { kind: 'none' } } as const;
    expect(verdictOf(seasonCase('2026-08-30', { garden: cool, notes: seen('2026-08-22') })).timing).toBe(
      'after-heat',
    );
    expect(verdictOf(seasonCase('2026-08-30', { garden: cool, notes: seen('2026-08-23') })).timing).toBe(
      'after-frost',
    );
    const unknown = verdictOf(
      seasonCase('2026-08-30', { garden: { ...cool, firstFrost: null }, notes: seen('2026-08-23') }),
    );
    expect(unknown.verdict).toBe('leave');
    expect(unknown).not.toHaveProperty('timing');
  });

  it('is no-deadline where heat never ends, or is never reliable', () => {
    expect(verdictOf(seasonCase('2026-07-07', { garden: { heat: { kind: 'never-ends' } } }))).toMatchObject({
      verdict: 'no-deadline',
      timing: 'endless-heat',
      decisionDate: null,
    });
    expect(verdictOf(seasonCase('2026-07-07', { garden: { heat: { kind: 'none' } } }))).toMatchObject({
      verdict: 'no-deadline',
      timing: 'no-heat',
    });
  });

  it('is await for ten days after a tip, to look from day 7 to day 10', () => {
    const notes = [note('tipped', '2026-07-07')];
    expect(verdictOf(seasonCase('2026-07-07', { notes }))).toMatchObject({
      verdict: 'await',
      tippedOn: '2026-07-07',
      lookFrom: '2026-07-14',
      lookTo: '2026-07-17',
      ripeFrom: '2026-10-12',
      ripeTo: '2026-10-25',
    });
    expect(verdict('2026-07-17', { notes })).toBe('await');
    expect(verdict('2026-07-18', { notes })).toBe('tip');
    // Tipped early: then it is watched again.
    expect(verdict('2026-06-11', { notes: [note('tipped', '2026-06-01')] })).toBe('await');
    expect(verdict('2026-06-12', { notes: [note('tipped', '2026-06-01')] })).toBe('watch');
  });

  it('is watch up to the decision date, and tip from it on', () => {
    expect(verdict('2026-07-06')).toBe('watch');
    expect(verdictOf(seasonCase('2026-07-07'))).toMatchObject({
      verdict: 'tip',
      timing: 'on-time',
      decisionDate: '2026-07-07',
      heatEnd: '2026-10-15',
      lastWarmth: '2026-11-05',
      latestTipDate: '2026-07-31',
      ripeFrom: '2026-10-12',
      ripeTo: '2026-10-25',
    });
  });

  it('is tip on time up to the planning span before the heat ends, then late, whatever the caution', () => {
    const garden = { caution: 7 };
    expect(verdict('2026-06-29', { garden })).toBe('watch');
    expect(verdictOf(seasonCase('2026-06-30', { garden }))).toMatchObject({
      verdict: 'tip',
      timing: 'on-time',
    });
    expect(verdictOf(seasonCase('2026-07-07', { garden })).timing).toBe('on-time');
    expect(verdictOf(seasonCase('2026-07-08', { garden })).timing).toBe('late');
  });

  it('is let-grow once even a quick fig would miss the last warmth', () => {
    expect(verdict('2026-07-31')).toBe('tip');
    expect(verdict('2026-08-01')).toBe('let-grow');
    // An early frost ends it sooner; without a known frost three weeks past the heat do.
    const frosty = { firstFrost: day('2026-10-25') };
    expect(verdict('2026-07-20', { garden: frosty })).toBe('tip');
    expect(verdict('2026-07-21', { garden: frosty })).toBe('let-grow');
    expect(verdict('2026-07-31', { garden: { firstFrost: null } })).toBe('tip');
    expect(verdict('2026-08-01', { garden: { firstFrost: null } })).toBe('let-grow');
  });

  it('gives a tree under cover its own days of heat, but not of frost', () => {
    const tree = { kept: 'cover', coverDays: 20 } as const;
    expect(verdict('2026-07-26', { tree })).toBe('watch');
    expect(verdictOf(seasonCase('2026-07-27', { tree }))).toMatchObject({
      verdict: 'tip',
      heatEnd: '2026-11-04',
      firstFrost: '2026-11-20',
      lastWarmth: '2026-11-20',
      decisionDate: '2026-07-27',
    });
  });

  it('follows the outlook where the member chose it, and counts by days where it has no date', () => {
    const decided = (outlookDate: string) =>
      verdictOf({ ...seasonCase('2026-05-01', { garden: { caution: 2 } }), outlookDate: day(outlookDate) })
        .decisionDate;
    expect(decided('2026-07-20')).toBe('2026-07-18');
    expect(decided('2026-08-20')).toBe('2026-08-18');
    expect(verdictOf({ ...seasonCase('2026-05-01'), outlookDate: null }).decisionDate).toBe('2026-07-07');
  });

  it('still says to tip up to the outlook’s own date, where it lies past the last tip by days', () => {
    // By days the last tip is 31 July: 97 days before 5 November, three weeks past the heat.
    const verdictOn = (today: string, outlookDate: string) => {
      const { verdict, timing, latestTipDate } = verdictOf({
        ...seasonCase(today),
        outlookDate: day(outlookDate),
      });
      return [verdict, timing, latestTipDate];
    };
    expect(verdictOn('2026-08-19', '2026-08-20')).toEqual(['watch', undefined, '2026-08-20']);
    expect(verdictOn('2026-08-20', '2026-08-20')).toEqual(['tip', 'late', '2026-08-20']);
    expect(verdictOn('2026-08-21', '2026-08-20')).toEqual(['let-grow', undefined, '2026-08-20']);
    expect(verdictOn('2026-07-31', '2026-06-20')).toEqual(['tip', 'late', '2026-07-31']);
  });

  it('lets the leaders stay when the tree is kept for both, or is in its first year', () => {
    const shootsOf = (tree: object) => verdictOf(seasonCase('2026-07-07', { tree })).shoots;
    expect(shootsOf({})).toBe('any');
    expect(shootsOf({ purpose: 'both' })).toBe('side');
    expect(shootsOf({ firstYear: true })).toBe('side');
    expect(verdictOf(seasonCase('2026-07-06'))).not.toHaveProperty('shoots');
  });

  it('reads the latest note on buds', () => {
    const signOf = (...notes: SeasonObservation[]) => verdictOf(seasonCase('2026-07-07', { notes })).budSign;
    expect(signOf()).toBe('none');
    expect(signOf(note('buds-double', '2026-06-01'))).toBe('double');
    expect(signOf(note('buds-double', '2026-06-01'), note('buds-single', '2026-06-20'))).toBe('single');
    expect(signOf(note('buds-single', '2026-06-20'), note('buds-double', '2026-06-20'))).toBe('double');
  });
});

describe('the verdict over a season', () => {
  it('still comes to a decision when brebas were logged in May', () => {
    const notes = [note('fruitlets', '2026-05-03', { crop: 'breba' })];
    expect(verdictOf(seasonCase('2026-07-07', { notes }))).toMatchObject({
      verdict: 'tip',
      cropQuestion: false,
    });
    const unnamed = [note('fruitlets', '2026-05-03')];
    expect(verdictOf(seasonCase('2026-07-07', { notes: unnamed }))).toMatchObject({
      verdict: 'tip',
      cropQuestion: true,
    });
  });

  it('does not ask about brebas of a cultivar that bears none', () => {
    const notes = [note('fruitlets', '2026-05-03')];
    const asked = (bearsBrebas: boolean) =>
      verdictOf(seasonCase('2026-07-07', { notes, tree: { bearsBrebas } }));
    expect(asked(false)).toMatchObject({ verdict: 'leave', seen: '2026-05-03', cropQuestion: false });
    expect(asked(true)).toMatchObject({ verdict: 'tip', cropQuestion: true });
  });

  it('is open again when all fruitlets dropped', () => {
    const notes = [...seen('2026-06-08'), note('dropped', '2026-07-01')];
    expect(verdict('2026-06-30', { notes })).toBe('leave');
    expect(verdict('2026-07-07', { notes })).toBe('tip');
  });

  it('stands by its fruitlets when none are seen later, but remembers the contradiction', () => {
    const notes = [...seen('2026-06-08'), note('no-fruitlets', '2026-07-06')];
    expect(verdictOf(seasonCase('2026-07-07', { notes }))).toMatchObject({
      verdict: 'leave',
      contradictedOn: '2026-07-06',
    });
  });

  it('does not read notes of days to come', () => {
    expect(verdict('2026-07-07', { notes: seen('2026-07-08') })).toBe('tip');
    expect(verdict('2026-07-07', { notes: seen('2026-07-07') })).toBe('leave');
  });

  it('narrows the ripe window when ripening shows, and knows a pick without it', () => {
    const ripening = [...seen('2026-06-08'), note('ripening', '2026-09-01')];
    expect(verdictOf(seasonCase('2026-09-02', { notes: ripening }))).toMatchObject({
      ripeFrom: '2026-09-06',
      ripeTo: '2026-09-14',
      expectedWindow: { from: '2026-09-06', to: '2026-09-16' },
    });
    const picked = [note('picked', '2026-09-20', { crop: 'main' })];
    expect(verdictOf(seasonCase('2026-09-21', { notes: picked }))).toMatchObject({
      verdict: 'leave',
      timing: 'in-heat',
      seen: null,
      ripeFrom: '2026-09-20',
    });
  });

  it('counts notes on either side of New Year for one southern season', () => {
    const input = {
      ...seasonCase('2027-01-20', {
        garden: {
          heat: { kind: 'date', day: day('2027-03-20'), basis: 'stated' },
          firstFrost: null,
          lastFrost: null,
        },
        notes: [note('fruitlets', '2026-12-28'), note('remark', '2027-01-05')],
      }),
      season: seasonStarting(2026, 'S'),
    };
    expect(verdictOf(input)).toMatchObject({
      verdict: 'leave',
      seen: '2026-12-28',
      decisionDate: '2026-12-10',
    });
  });
});

describe('whatever a season brings', () => {
  const season = seasonStarting(2026, 'N');
  const dayOfSeason = fc
    .integer({ min: toEpochDays(season.from), max: toEpochDays(season.to) })
    .map(fromEpochDays);
  const anyNote = fc.record({
    kind: fc.constantFrom(...OBSERVATION_KINDS),
    on: dayOfSeason,
    crop: fc.constantFrom(null, 'main' as const, 'breba' as const),
    count: fc.option(fc.nat(50)),
    order: fc.nat(1000),
  });
  const cases = fc.record({
    today: dayOfSeason,
    group: fc.constantFrom<RipeningGroup>('early', 'mid', 'late', 'unknown'),
    heatEnd: dayOfSeason,
    firstFrost: fc.option(dayOfSeason),
    lastFrost: fc.option(dayOfSeason),
    caution: fc.integer({ min: 0, max: 21 }),
    purpose: fc.constantFrom<Purpose>('fruit', 'wood', 'both'),
    needsPollination: fc.boolean(),
    pollinated: fc.boolean(),
    notes: fc.array(anyNote, { maxLength: 12 }),
  });
  const inputOf = ({
    today,
    group,
    heatEnd,
    firstFrost,
    lastFrost,
    caution,
    notes,
    ...tree
  }: Value<typeof cases>) =>
    seasonCase(today, {
      garden: { heat: { kind: 'date', day: heatEnd, basis: 'record' }, firstFrost, lastFrost, caution },
      tree: { ...tree, span: spanOf({ group }) },
      notes,
    });

  it('logging main-crop fruitlets never leads to a tip', () => {
    fc.assert(
      fc.property(cases, dayOfSeason, (of, on) => {
        const input = inputOf(of);
        const logged = { kind: 'fruitlets', on, crop: 'main', count: null, order: 5000 } as const;
        const today = later(on, input.today);
        const after = verdictOf({ ...input, today, observations: [...input.observations, logged] });
        const droppedSince = input.observations.some(
          (other) => other.kind === 'dropped' && other.crop !== 'breba' && other.on > on && other.on <= today,
        );
        if (!droppedSince) expect(['leave', 'not-for-fruit']).toContain(after.verdict);
        const before = verdictOf({ ...input, today });
        if (before.verdict !== 'tip') expect(after.verdict === 'tip' && !droppedSince).toBe(false);
      }),
      { numRuns: 2000 },
    );
  });

  it('a ripe window is there exactly when main-crop fruit is', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const { window, fruit } = verdictOf(inputOf(of));
        expect(window !== null).toBe(fruit.present);
      }),
      { numRuns: 1000 },
    );
  });

  it('brebas change no verdict', () => {
    fc.assert(
      fc.property(cases, dayOfSeason, (of, on) => {
        const input = inputOf(of);
        const brebas = { kind: 'fruitlets', on, crop: 'breba', count: 4, order: 5000 } as const;
        const after = verdictOf({ ...input, observations: [...input.observations, brebas] });
        expect(after).toEqual(verdictOf(input));
      }),
    );
  });

  it('a tree kept for wood or dropping its figs is never told to tip', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const { verdict: found } = verdictOf(inputOf(of));
        if (of.purpose === 'wood' || (of.needsPollination && !of.pollinated))
          expect(found).toBe('not-for-fruit');
      }),
    );
  });

  it('a tip is told only from the decision date on, and only while figs can still ripen', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const found = verdictOf(inputOf(of));
        if (found.verdict !== 'tip') return;
        expect(of.today >= found.decisionDate!).toBe(true);
        expect(addDays(of.today, 7 + spanOf({ group: of.group }).from) <= found.lastWarmth!).toBe(true);
        expect(found.shoots).toBe(of.purpose === 'both' ? 'side' : 'any');
      }),
      { numRuns: 2000 },
    );
  });

  it('a later heat end never turns watch into tip', () => {
    fc.assert(
      fc.property(cases, fc.nat(60), (of, more) => {
        if (verdictOf(inputOf(of)).verdict !== 'watch') return;
        const longer = { ...of, heatEnd: addDays(of.heatEnd, more) };
        expect(verdictOf(inputOf(longer)).verdict).toBe('watch');
      }),
    );
  });

  it('the order in which notes arrive does not matter', () => {
    fc.assert(
      fc.property(cases, (of) => {
        const notes = of.notes.map((one, order) => ({ ...one, order }));
        const input = inputOf({ ...of, notes });
        expect(verdictOf({ ...input, observations: [...notes].reverse() })).toEqual(verdictOf(input));
      }),
    );
  });
});

type Value<T> = T extends fc.Arbitrary<infer U> ? U : never;
