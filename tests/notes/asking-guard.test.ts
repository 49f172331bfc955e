import { describe, expect, it } from 'vitest';
import type { Ask, ReadEvent } from '../../src/notes/contract.ts';
import { DECISIVE, type DecisiveKind } from '../../src/notes/doubt.ts';
import { answerAsk, readAnswer, readCorrection, readNote } from '../../src/notes/index.ts';
import { NEGATIVES } from './doubt-negatives.ts';
import { SETTING } from './setting.ts';

function askOf(text: string): Ask {
  const { ask } = readNote(text, SETTING);
  if (!ask) throw new Error(`nothing is asked of: ${text}`);
  return ask;
}

/** The decisive kinds that a typed answer would log. */
function logs(text: string, ask: Ask): string[] {
  const answer = readAnswer(text, ask, SETTING);
  if (answer === null) return [];
  return answerAsk(ask, answer, SETTING)
    .logged.filter((event) => DECISIVE.includes(event.kind as DecisiveKind) || event.crop === 'breba')
    .map((event) => (event.crop === 'breba' ? 'breba' : event.kind));
}

/** Words for the decisive kinds, and ways to deny, plan, suppose or retell them. */
const SAID: readonly (readonly [DecisiveKind, readonly string[]])[] = [
  ['tipped', ['tipped', 'pinched', 'stopped', 'nipped out']],
  ['picked', ['picked', 'ate 3', 'harvested', 'got 2 figs']],
  ['dropped', ['dropped', 'dropped all its figs', 'lost the lot']],
  ['fruitlets', ['figs', 'fruitlets', 'tiny figs', 'figlets']],
];
const FRAMES: readonly ((said: string) => string)[] = [
  (said) => `not ${said}`,
  (said) => `never ${said}`,
  (said) => `not ${said} yet`,
  (said) => `no, not ${said}`,
  (said) => `it was never ${said}`,
  (said) => `hasn't ${said}`,
  (said) => `not yet ${said}`,
  (said) => `almost ${said}`,
  (said) => `should have ${said}`,
  (said) => `maybe ${said}`,
  (said) => `if only ${said}`,
  (said) => `last year ${said}`,
  (said) => `dave says ${said}`,
  (said) => `my neighbour ${said}`,
  (said) => `hope ${said} soon`,
  (said) => `will be ${said} tomorrow`,
];
const LEADS = [
  '',
  'no, ',
  'sorry, ',
  'oops ',
  'i mean ',
  'actually ',
  'it was ',
  'wait no ',
  'correction: ',
  'edit: ',
];

describe('an answer that is typed', () => {
  it.each(SAID)('never logs %s where it denies, plans or retells it', (kind, words) => {
    const ask = askOf('bumps on the alma');
    for (const said of words) {
      for (const frame of FRAMES) {
        for (const lead of ['', 'oh ', 'they were ', 'sorry, ']) {
          const text = `${lead}${frame(said)}`;
          expect(logs(text, ask), text).not.toContain(kind);
        }
      }
    }
  });

  it('logs nothing decisive out of a note that may not', () => {
    const asks = ['bumps on the alma', 'tipped the kadota', 'pinched the alma ages ago'].map(askOf);
    for (const [, texts] of NEGATIVES)
      for (const text of texts) for (const ask of asks) expect(logs(text, ask), text).toEqual([]);
  });

  it.each([
    'not the tall one',
    'not tall',
    'neither kadota',
    'never the little kadota',
    'maybe tall',
    'the tall one, next week',
    'if it was the tall one',
    "my neighbour's kadota",
    'dave says the tall one',
  ])('takes no tree from "%s"', (text) => {
    expect(readAnswer(text, askOf('tipped the kadota'), SETTING)).toBeNull();
  });

  it.each(['not sunday', "wasn't monday", 'never', 'next friday', 'last year', 'if not sunday then monday'])(
    'takes no day from "%s"',
    (text) => {
      expect(readAnswer(text, askOf('tipped the alma ages ago'), SETTING)).toBeNull();
    },
  );

  it('takes the crop only as it is said', () => {
    const ask = askOf("3 figs on the king, can't tell if breba or main");
    expect(readAnswer('breba', ask, SETTING)).toEqual({ crop: 'breba' });
    expect(readAnswer('they are brebas', ask, SETTING)).toEqual({ crop: 'breba' });
    expect(readAnswer('main crop', ask, SETTING)).toEqual({ crop: 'main' });
    expect(readAnswer('not brebas', ask, SETTING)).toEqual({ crop: 'main' });
    for (const text of [
      'dave says breba',
      'maybe breba',
      'could be brebas',
      'no brebas last year',
      'not main',
    ])
      expect(readAnswer(text, ask, SETTING), text).toBeNull();
  });

  it('still takes what is plainly said', () => {
    const which = askOf('tipped the kadota');
    for (const text of [
      'the tall one',
      'tall',
      'oh sorry, the tall one',
      'it was the tall kadota',
      'yes the tall one',
    ])
      expect(readAnswer(text, which, SETTING), text).toEqual({ tree: 5 });
    const when = askOf('tipped the alma ages ago');
    for (const text of ['june 12', 'it was june 12', 'maybe june 12', 'i think june 12'])
      expect(readAnswer(text, when, SETTING), text).toEqual({ on: '2026-06-12' });
    const what = askOf('bumps on the alma');
    expect(readAnswer('they are figs', what, SETTING)).toEqual({ kind: 'fruitlets' });
    expect(readAnswer('no figs', what, SETTING)).toEqual({ kind: 'no-fruitlets' });
    expect(readAnswer('not figs', what, SETTING)).toEqual({ kind: 'remark' });
    expect(readAnswer('just leaf buds', what, SETTING)).toEqual({ kind: 'buds-single' });
  });
});

describe('what waits for an answer', () => {
  it.each([
    'should have tipped the kadota',
    'not tipped the kadota yet',
    "my neighbour's kadota dropped all its figs",
    'dave says the kadota dropped its figs',
    'if the kadota drops its figs i will cry',
    'the kadota had 40 figs last year',
    'picked 6 off the kadota at work',
  ])('is nothing decisive: %s', (text) => {
    const { ask, logged } = readNote(text, SETTING);
    const open = [...logged, ...(ask?.open ?? [])].map((event) => event.kind);
    for (const kind of DECISIVE) expect(open).not.toContain(kind);
  });
});

describe('a correction', () => {
  const last: readonly ReadEvent[] = readNote('watered the little kadota', SETTING).logged;
  const tipped: readonly ReadEvent[] = readNote('tipped 3 shoots on the little kadota', SETTING).logged;

  it.each(SAID)('never makes %s of what it denies, plans or retells', (kind, words) => {
    for (const said of words) {
      for (const frame of FRAMES) {
        for (const lead of LEADS) {
          const text = `${lead}${frame(said)}`;
          expect(readCorrection(text, SETTING, last)?.kind, text).not.toBe(kind);
        }
      }
    }
  });

  it.each([
    'no, not the tall one',
    'sorry, not the tall one',
    'no, the tall one was not tipped',
    'the tall one was not tipped',
    "no, the tall one hasn't been tipped",
    'no, maybe the tall one',
    'no it should have been tipped',
    'no, dave says the tall one',
    'oops no brebas',
    'wait no figs',
    "sorry, wasn't saturday",
    'no, not saturday',
    'no, not 5',
    'actually the tall one next week',
    'no, the tall one last year',
    'no, never the tall one',
  ])('is not "%s"', (text) => {
    expect(readCorrection(text, SETTING, tipped)).toBeNull();
  });

  it.each([
    ['no, the tall one not the little one', { tree: 5, instead: { tree: 6 } }],
    ['it was 5 not 3', { count: 5, instead: { count: 3 } }],
    ['sorry, not brebas', { crop: 'main' }],
    ['no, that was monday', { on: '2026-06-29' }],
    ['oops, tall kadota', { tree: 5 }],
  ])('is "%s"', (text, correction) => {
    expect(readCorrection(text, SETTING, tipped)).toEqual(correction);
  });

  it('changes the kind where it says so', () => {
    expect(readCorrection('no, pinched', SETTING, last)).toMatchObject({ kind: 'tipped' });
    expect(readCorrection('sorry, i meant picked 3', SETTING, last)).toMatchObject({
      kind: 'picked',
      count: 3,
    });
  });
});
