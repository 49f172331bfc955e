import { describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import { milestonesOf, type NudgeKind } from '../../src/engine/milestones.ts';
import { note, seasonCase } from './season-case.ts';

function dates(...of: Parameters<typeof seasonCase>): Partial<Record<NudgeKind, string>> {
  const held = milestonesOf(seasonCase(...of)).filter(({ holds }) => holds);
  return Object.fromEntries(held.map(({ kind, on }) => [kind, on]));
}

const main = { crop: 'main' } as const;

describe('what comes when', () => {
  it('is a heads-up, the decision and dormancy for a tree without fruitlets', () => {
    expect(dates('2026-05-01')).toEqual({
      'heads-up': '2026-06-23',
      decision: '2026-07-07',
      dormant: '2027-01-04',
    });
  });

  it('is in the order of its days', () => {
    const days = milestonesOf(seasonCase('2026-05-01')).map(({ on }) => on);
    expect(days).toEqual([...days].sort());
  });

  it('turns to the ripe window and the frost once there is fruit', () => {
    const notes = [note('fruitlets', '2026-06-08', main)];
    expect(dates('2026-06-09', { notes })).toEqual({
      'ripe-watch': '2026-09-06',
      frost: '2026-11-06',
      dormant: '2027-01-04',
    });
    // Signs of ripening narrow the window but do not move the watch; a pick ends it.
    const ripening = [...notes, note('ripening', '2026-09-01')];
    expect(dates('2026-09-02', { notes: ripening })['ripe-watch']).toBe('2026-09-06');
    expect(dates('2026-09-10', { notes: [...notes, note('picked', '2026-09-09')] })).not.toHaveProperty(
      'ripe-watch',
    );
  });

  it('watches by the signs of ripening where no fruitlets were logged', () => {
    const notes = [note('ripening', '2026-09-01', main)];
    expect(dates('2026-09-02', { notes })['ripe-watch']).toBe('2026-09-06');
  });

  it('looks a second time 8 days after a tip, unless a result is logged', () => {
    const tipped = note('tipped', '2026-07-07');
    expect(dates('2026-07-08', { notes: [tipped] })).toMatchObject({ 'second-look': '2026-07-15' });
    expect(dates('2026-07-08', { notes: [tipped] })).not.toHaveProperty('decision');
    for (const kind of ['no-fruitlets', 'branched', 'fruitlets', 'dropped'] as const) {
      const notes = [tipped, note(kind, '2026-07-14')];
      expect(dates('2026-07-14', { notes }), kind).not.toHaveProperty('second-look');
      // Not yet known the day before.
      expect(dates('2026-07-13', { notes }), kind).toHaveProperty('second-look');
    }
    const breba = [tipped, note('fruitlets', '2026-07-14', { crop: 'breba' })];
    expect(dates('2026-07-14', { notes: breba })).toHaveProperty('second-look');
    const before = [note('no-fruitlets', '2026-07-07'), tipped];
    expect(dates('2026-07-08', { notes: before })).toHaveProperty('second-look');
  });

  it('asks no decision of a tree kept for wood, dropping its figs, or too late in any case', () => {
    expect(dates('2026-05-01', { tree: { purpose: 'wood' } })).toEqual({ dormant: '2027-01-04' });
    expect(dates('2026-05-01', { tree: { needsPollination: true } })).toEqual({ dormant: '2027-01-04' });
    const frost = { firstFrost: day('2026-10-01') };
    expect(dates('2026-05-01', { garden: frost })).not.toHaveProperty('decision');
  });

  it('asks for a decision as long as a tip on its very day can still help', () => {
    // A late tree needs 7 + 90 days from 7 July: to 12 October.
    expect(dates('2026-05-01', { garden: { firstFrost: day('2026-10-12') } }).decision).toBe('2026-07-07');
    expect(dates('2026-05-01', { garden: { firstFrost: day('2026-10-11') } })).not.toHaveProperty('decision');
  });

  it('warns of frost for pots outside even without fruit', () => {
    expect(dates('2026-05-01', { tree: { kept: 'pot' } })).toMatchObject({ frost: '2026-11-06' });
    const notes = [note('fruitlets', '2026-06-08', main)];
    expect(dates('2026-06-09', { tree: { purpose: 'wood' }, notes })).not.toHaveProperty('frost');
  });

  it('knows no dates without a heat end or a frost', () => {
    const garden = { heat: { kind: 'unknown' }, firstFrost: null } as const;
    expect(milestonesOf(seasonCase('2026-05-01', { garden }))).toEqual([]);
  });

  it('moves the decision and its heads-up to the outlook’s date, and leaves them where it has none', () => {
    const withOutlook = (outlookDate: ReturnType<typeof day> | null) =>
      Object.fromEntries(
        milestonesOf({ ...seasonCase('2026-05-01'), outlookDate }).map(({ kind, on }) => [kind, on]),
      );
    expect(withOutlook(day('2026-08-20'))).toMatchObject({
      'heads-up': '2026-08-06',
      decision: '2026-08-20',
    });
    expect(withOutlook(null)).toMatchObject({ 'heads-up': '2026-06-23', decision: '2026-07-07' });
    // Without reliable heat there is nothing to count back from, whatever the outlook says.
    const cool = { ...seasonCase('2026-05-01', { garden: { heat: { kind: 'none' } } }) };
    for (const outlookDate of [day('2026-06-11'), null]) {
      const kinds = milestonesOf({ ...cool, outlookDate }).map(({ kind }) => kind);
      expect(kinds).not.toContain('decision');
      expect(kinds).toContain('dormant');
    }
  });

  it('opens the decision again when all fruitlets dropped', () => {
    const notes = [note('fruitlets', '2026-06-01', main), note('dropped', '2026-06-20')];
    expect(dates('2026-06-20', { notes })).toMatchObject({ decision: '2026-07-07' });
    expect(dates('2026-06-19', { notes })).not.toHaveProperty('decision');
  });
});
