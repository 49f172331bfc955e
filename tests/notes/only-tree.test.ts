import { describe, expect, it } from 'vitest';
import { readNote } from '../../src/notes/index.ts';
import { SETTING } from './setting.ts';

describe('what is told without a tree', () => {
  it.each([
    ['ditched its entire crop, the alma did', [[3, 'dropped']]],
    ['whitefly cloud whenever i brush past the alma', [[3, 'trouble']]],
  ])('is of the one tree named: %j', (text, events) => {
    const { logged, ask } = readNote(text, SETTING);
    expect(logged.map(({ tree, kind }) => [tree, kind])).toEqual(events);
    expect(ask).toBeNull();
  });

  it.each(['fed the thing in the corner', 'dropped the lot. the kadota and the alma look fine'])(
    'is asked about when none or several are named: %j',
    (text) => {
      expect(readNote(text, SETTING).ask?.what).toBe('tree');
    },
  );
});
