import { describe, expect, it } from 'vitest';
import { shareOf } from '../../src/engine/learning.ts';
import { tipResultsOf, tipSuccess } from '../../src/engine/tip-success.ts';
import { note } from './season-case.ts';

const tipped = (on = '2026-07-07') => note('tipped', on);
const brought = (...notes: Parameters<typeof tipResultsOf>[0]) =>
  tipResultsOf(notes).map(({ broughtFruitlets }) => broughtFruitlets);

describe('the result of a tip', () => {
  it('is fruitlets within 20 days', () => {
    expect(brought(tipped(), note('fruitlets', '2026-07-15'))).toEqual([true]);
    expect(brought(tipped(), note('fruitlets', '2026-07-27'))).toEqual([true]);
    expect(brought(tipped(), note('fruitlets', '2026-07-28'))).toEqual([]);
  });

  it('is none when nothing or only branches showed from day 7 on', () => {
    expect(brought(tipped(), note('no-fruitlets', '2026-07-14'))).toEqual([false]);
    expect(brought(tipped(), note('branched', '2026-07-20'))).toEqual([false]);
    expect(brought(tipped(), note('no-fruitlets', '2026-07-13'))).toEqual([]);
    // Late, but within the 20 days after all.
    expect(brought(tipped(), note('no-fruitlets', '2026-07-15'), note('fruitlets', '2026-07-20'))).toEqual([
      true,
    ]);
  });

  it('is unknown without a note, and no breba makes one', () => {
    expect(brought(tipped())).toEqual([]);
    expect(brought(tipped(), note('fruitlets', '2026-07-15', { crop: 'breba' }))).toEqual([]);
  });

  it('goes to the latest tip before it', () => {
    const notes = [
      tipped('2026-06-20'),
      note('no-fruitlets', '2026-06-28'),
      tipped(),
      note('fruitlets', '2026-07-16'),
    ];
    expect(brought(...notes)).toEqual([false, true]);
    expect(brought(tipped('2026-07-01'), tipped('2026-07-05'), note('fruitlets', '2026-07-12'))).toEqual([
      true,
    ]);
  });

  it('is not counted on a tree that had fruitlets, unless all had dropped', () => {
    const fruit = note('fruitlets', '2026-06-08');
    expect(brought(fruit, tipped(), note('fruitlets', '2026-07-15'))).toEqual([]);
    expect(brought(fruit, note('dropped', '2026-06-20'), tipped(), note('fruitlets', '2026-07-15'))).toEqual([
      true,
    ]);
  });

  it('remembers what the buds had shown before it', () => {
    const signs = tipResultsOf([
      note('buds-single', '2026-06-01'),
      note('buds-double', '2026-06-30'),
      tipped(),
      note('buds-single', '2026-07-10'),
      note('fruitlets', '2026-07-15'),
    ]);
    expect(signs).toEqual([{ on: '2026-07-07', budSign: 'double', broughtFruitlets: true }]);
  });
});

describe('how often tips brought fruitlets', () => {
  it('is told by bud sign, and kept silent under three tips', () => {
    const result = (budSign: 'double' | 'single' | 'none', broughtFruitlets: boolean) => ({
      on: tipped().on,
      budSign,
      broughtFruitlets,
    });
    const results = [
      result('double', true),
      result('double', true),
      result('double', false),
      result('single', false),
      result('single', true),
      ...Array.from({ length: 4 }, () => result('none', false)),
    ];
    expect(tipSuccess(results)).toEqual({ double: shareOf(2, 3), none: shareOf(0, 4) });
    expect(tipSuccess([])).toEqual({});
  });
});
