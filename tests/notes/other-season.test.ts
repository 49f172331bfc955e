import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/engine/day.ts';
import type { ObservationKind } from '../../src/engine/observation.ts';
import { isOfAnotherSeason } from '../../src/notes/events.ts';
import { readNote } from '../../src/notes/index.ts';
import { SETTING } from './setting.ts';

// SETTING is the corpus's: 2 July 2026, northern hemisphere.
const isOther = (kind: ObservationKind, on: string, today = SETTING.today) =>
  isOfAnotherSeason(kind, on as Day, { ...SETTING, today });

describe('an event of another season', () => {
  it.each([
    ['fruitlets', '2025-07-15'],
    ['picked', '2025-10-02'],
  ] as const)('is %s of %s', (kind, on) => {
    expect(isOther(kind, on)).toBe(true);
  });

  it.each([
    ['dormant', '2025-11-18'],
    ['cuttings', '2025-12-30'],
    ['picked', '2026-06-30'],
  ] as const)('is not %s of %s', (kind, on) => {
    expect(isOther(kind, on)).toBe(false);
  });

  it('is not what late figs did at the turn of the year', () => {
    expect(isOther('picked', '2025-12-20', '2026-01-03' as Day)).toBe(false);
  });

  it('is a remark of today, also where its day was told in the sentence before', () => {
    const { logged } = readNote('remember last july? alma had 50 on it', SETTING);
    expect(logged).toEqual([{ tree: 3, kind: 'remark', on: SETTING.today }]);
  });
});
