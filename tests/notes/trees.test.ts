import { describe, expect, it } from 'vitest';
import { findTree, matchTrees } from '../../src/notes/index.ts';
import { SETTING } from './setting.ts';

const names = (phrase: string): string[] =>
  matchTrees(phrase, SETTING.roster).map(
    ({ id }) => SETTING.roster.find((tree) => tree.id === id)?.name ?? '',
  );

describe('matching trees', () => {
  it.each([
    ['pot#3', 'Pot 3'],
    ['p3', 'Pot 3'],
    ['pot three', 'Pot 3'],
    ['brunswick', 'Pot 3'],
    ['RdB', 'Ronde'],
    ['black mission', 'Greenhouse Mission'],
    ['desert king', 'King'],
    ['tall', 'Tall Kadota'],
    ['adraitic', 'Patio Adriatic'],
    ['the unknown', 'Fence unknown'],
  ])('takes "%s" for %s', (phrase, name) => {
    expect(names(phrase)[0]).toBe(name);
    expect(findTree(phrase, SETTING.roster)).toMatchObject({ kind: 'one' });
  });

  it('offers both trees of a cultivar, and none for a stranger', () => {
    expect(findTree('kadota', SETTING.roster)).toEqual({ kind: 'several', ids: [5, 6] });
    expect(findTree('olympian', SETTING.roster)).toEqual({ kind: 'none' });
    expect(findTree('', SETTING.roster)).toEqual({ kind: 'none' });
  });
});
