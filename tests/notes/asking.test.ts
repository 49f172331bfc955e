import { describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import type { Ask } from '../../src/notes/contract.ts';
import { answerAsk, readAnswer, readCorrection, readNote } from '../../src/notes/index.ts';
import { SETTING } from './setting.ts';

function askOf(text: string): Ask {
  const { ask } = readNote(text, SETTING);
  if (!ask) throw new Error(`nothing is asked of: ${text}`);
  return ask;
}

describe('answers', () => {
  it('complete the note with the tree', () => {
    expect(answerAsk(askOf('tipped 2 shoots on the kadota sunday'), { tree: 5 }, SETTING)).toEqual({
      logged: [{ tree: 5, kind: 'tipped', on: day('2026-06-28'), count: 2 }],
      ask: null,
    });
  });

  it('complete the note with the day, the kind or the crop', () => {
    expect(answerAsk(askOf('tipped the alma ages ago'), { on: day('2026-06-01') }, SETTING).logged).toEqual([
      { tree: 3, kind: 'tipped', on: day('2026-06-01') },
    ]);
    expect(answerAsk(askOf('bumps on the alma'), { kind: 'fruitlets' }, SETTING).logged).toMatchObject([
      { tree: 3, kind: 'fruitlets' },
    ]);
    expect(
      answerAsk(askOf("3 figs on the king, can't tell if breba or main"), { crop: 'breba' }, SETTING).logged,
    ).toMatchObject([{ tree: 10, kind: 'fruitlets', crop: 'breba', count: 3 }]);
  });

  it('may be typed', () => {
    expect(readAnswer('the tall one', askOf('tipped the kadota'), SETTING)).toEqual({ tree: 5 });
    expect(readAnswer('last sunday', askOf('tipped the alma ages ago'), SETTING)).toEqual({
      on: '2026-06-28',
    });
    expect(readAnswer('figs', askOf('bumps on the alma'), SETTING)).toEqual({ kind: 'fruitlets' });
  });

  it('are never read out of a message that stands by itself', () => {
    const ask = askOf('tipped the kadota');
    expect(readAnswer('watered the alma', ask, SETTING)).toBeNull();
    expect(readAnswer('should i tip the alma?', ask, SETTING)).toBeNull();
    expect(readAnswer("what's due", ask, SETTING)).toBeNull();
  });
});

describe('corrections', () => {
  const { logged } = readNote('tipped 3 shoots on the little kadota', SETTING);

  it.each([
    ['no, the tall one', { tree: 5 }],
    ['that was saturday', { on: '2026-06-27' }],
    ['it was 5 not 3', { count: 5, instead: { count: 3 } }],
    ['sorry, brebas', { crop: 'breba' }],
  ])('"%s" changes what it names', (text, correction) => {
    expect(readCorrection(text, SETTING, logged)).toEqual(correction);
  });

  it('are not seen in new notes', () => {
    expect(readCorrection('no figs on the alma', SETTING, logged)).toBeNull();
    expect(readCorrection('tipped the alma', SETTING, logged)).toBeNull();
    for (const text of [
      'no fruitlets on pot 3',
      'no sign of figs on the alma',
      'not tipped yet',
      'no ripe figs yet',
      'not the alma',
      'it was watered today',
      'wait for the alma',
    ]) {
      expect(readCorrection(text, SETTING, logged), text).toBeNull();
    }
  });
});
