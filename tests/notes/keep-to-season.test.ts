import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/engine/day.ts';
import { keepToSeason } from '../../src/notes/keep-to-season.ts';
import { SETTING } from './setting.ts';

// SETTING is the corpus's: 2 July 2026, northern hemisphere.
const kept = (kind: 'picked' | 'fruitlets' | 'dormant' | 'cuttings', on: string, today = SETTING.today) =>
  keepToSeason({ logged: [{ tree: 3, kind, on: on as Day, count: 5 }], ask: null }, { ...SETTING, today })
    .logged;

describe('an event of another season', () => {
  it.each([
    ['fruitlets', '2025-07-15'],
    ['picked', '2025-10-02'],
  ] as const)('%s of %s is a remark of today', (kind, on) => {
    expect(kept(kind, on)).toEqual([{ tree: 3, kind: 'remark', on: SETTING.today }]);
  });

  it.each([
    ['dormant', '2025-11-18'],
    ['cuttings', '2025-12-30'],
    ['picked', '2026-06-30'],
  ] as const)('%s of %s stays what it is', (kind, on) => {
    expect(kept(kind, on)).toMatchObject([{ kind, on }]);
  });

  it('late figs are still news at the turn of the year', () => {
    expect(kept('picked', '2025-12-20', '2026-01-03' as Day)).toMatchObject([{ kind: 'picked' }]);
  });
});
