import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/engine/day.ts';
import type { ReadEvent } from '../../src/notes/contract.ts';
import { tellOneFate } from '../../src/notes/one-fate.ts';

const at = { tree: 1, on: '2026-07-02' as Day };
const figs: ReadEvent = { ...at, kind: 'fruitlets' };
const ripe: ReadEvent = { ...at, kind: 'ripening' };
const ate: ReadEvent = { ...at, kind: 'picked' };
const gone: ReadEvent = { ...at, kind: 'dropped' };

describe('figs told of twice in one note', () => {
  it('"3 figs, all going soft" are three that ripen', () => {
    expect(tellOneFate([{ ...figs, count: 3 }, ripe])).toEqual([{ ...ripe, count: 3 }]);
  });
  it('"the crop: 1. ate it" is one picked', () => {
    expect(tellOneFate([{ ...figs, count: 1 }, ate])).toEqual([{ ...ate, count: 1 }]);
  });
  it('"16 figs, 1.2 lb" are 16 picked', () => {
    expect(
      tellOneFate([
        { ...figs, count: 16 },
        { ...ate, count: 1.2, unit: 'lb' },
      ]),
    ).toEqual([{ ...ate, count: 16 }]);
  });
  it('"12 figs, 2 ripe" are two things', () => {
    const both = [
      { ...figs, count: 12 },
      { ...ripe, count: 2 },
    ];
    expect(tellOneFate(both)).toEqual(both);
  });
  it('"10 picked, all gone" did not drop', () => {
    expect(tellOneFate([{ ...ate, count: 10 }, gone])).toEqual([{ ...ate, count: 10 }]);
  });
  it('brebas and the main crop are different figs', () => {
    const both: ReadEvent[] = [{ ...ate, crop: 'breba' }, figs];
    expect(tellOneFate(both)).toEqual(both);
  });
});
