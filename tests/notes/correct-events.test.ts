import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/engine/day.ts';
import type { ReadEvent } from '../../src/notes/contract.ts';
import { correctEvents } from '../../src/notes/correct-events.ts';

const DAY = '2026-07-02' as Day;
const EVE = '2026-07-01' as Day;
const oak = { tree: 1, kind: 'tipped', on: DAY, count: 3 } as const satisfies ReadEvent;
const ash = { tree: 2, kind: 'tipped', on: DAY, count: 4 } as const satisfies ReadEvent;
const fed = { tree: 2, kind: 'care', on: DAY } as const satisfies ReadEvent;

describe('a correction', () => {
  it('of a note with one event changes that', () => {
    expect(correctEvents([oak], { tree: 2 }, DAY)).toEqual([{ ...oak, tree: 2 }]);
  });
  it('that names a tree of the note changes only what was said of it', () => {
    expect(correctEvents([oak, ash], { tree: 2, count: 5 }, DAY)).toEqual([oak, { ...ash, count: 5 }]);
  });
  it('of a number is of the event that has one', () => {
    expect(correctEvents([oak, fed], { count: 5 }, DAY)).toEqual([{ ...oak, count: 5 }, fed]);
  });
  it('of the day is of all', () => {
    expect(correctEvents([oak, fed], { on: EVE }, DAY)).toEqual([
      { ...oak, on: EVE },
      { ...fed, on: EVE },
    ]);
  });
  it('of the day is only of what was dated, where some of it was', () => {
    expect(correctEvents([{ ...oak, on: EVE }, fed], { on: '2026-06-30' as Day }, DAY)).toEqual([
      { ...oak, on: '2026-06-30' },
      fed,
    ]);
  });
  it('counts from the day on which the note was written, not from its own', () => {
    const eve = [
      { ...oak, on: '2026-06-30' as Day },
      { ...fed, on: EVE },
    ];
    expect(correctEvents(eve, { on: '2026-06-29' as Day }, EVE)).toEqual([
      { ...oak, on: '2026-06-29' },
      { ...fed, on: EVE },
    ]);
  });
  it('that says what is wrong changes only that', () => {
    expect(correctEvents([oak, ash], { tree: 3, instead: { tree: 2 } }, DAY)).toEqual([
      oak,
      { ...ash, tree: 3 },
    ]);
    expect(correctEvents([oak, ash], { count: 9, instead: { count: 4 } }, DAY)).toEqual([
      oak,
      { ...ash, count: 9 },
    ]);
    expect(correctEvents([oak, ash], { count: 9, instead: { count: 5 } }, DAY)).toBeNull();
  });
  it('to a kind that has no number takes the number away', () => {
    const seen = { tree: 1, kind: 'fruitlets', on: DAY, count: 3 } as const satisfies ReadEvent;
    expect(correctEvents([seen], { kind: 'no-fruitlets' }, DAY)).toEqual([
      { tree: 1, kind: 'no-fruitlets', on: DAY },
    ]);
  });
  it('that adds a tree tells the same of it, without the number', () => {
    expect(correctEvents([oak], { also: [2] }, DAY)).toEqual([oak, { tree: 2, kind: 'tipped', on: DAY }]);
  });
  it('"5 off the ash" after tips speaks of tips', () => {
    expect(correctEvents([oak, ash], { tree: 2, count: 5, kind: 'picked' }, DAY)).toEqual([
      oak,
      { ...ash, count: 5 },
    ]);
  });
  it.each([
    ['a number of two that have one', { count: 5 }],
    ['a third tree', { tree: 3 }],
    ['one of its trees and nothing else', { tree: 2 }],
  ])('that gives only %s is not clear', (_, correction) => {
    expect(correctEvents([oak, ash], correction, DAY)).toBeNull();
  });
});
