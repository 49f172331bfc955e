import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day } from '../../src/engine/day.ts';
import type { NoteReading, ReadEvent, Setting } from '../../src/notes/contract.ts';
import { DECISIVE, type DecisiveKind, guardReading, whyDoubtful } from '../../src/notes/doubt.ts';
import { readNote } from '../../src/notes/index.ts';
import { NEGATIVES } from './doubt-negatives.ts';
import { POSITIVES } from './doubt-positives.ts';
import { TRAPS } from './doubt-traps.ts';

const NAMES = [
  ['Shed Celeste', 'Celeste'],
  ['Pot 3', 'Brunswick'],
  ['Alma', 'Alma'],
  ['Ronde', 'Ronde de Bordeaux'],
  ['Tall Kadota', 'Kadota'],
  ['Little Kadota', 'Kadota'],
  ['Patio Adriatic', 'Adriatic'],
  ['Greenhouse Mission', 'Black Mission'],
  ['Fence unknown', null],
  ['King', 'King'],
] as const;
const SETTING: Setting = {
  today: day('2026-07-02'),
  hemisphere: 'N',
  order: 'MDY',
  roster: NAMES.map(([name, cultivar], i) => ({ id: i + 1, name, cultivar })),
};
const ALMA = 3;

function decisive(reading: NoteReading): ReadEvent[] {
  return reading.logged.filter(
    (event) => DECISIVE.includes(event.kind as DecisiveKind) || event.crop === 'breba',
  );
}

function seen(kind: DecisiveKind, tree = ALMA): NoteReading {
  return { logged: [{ tree, kind, on: SETTING.today }], ask: null };
}

describe('a second look at decisive events', () => {
  for (const [why, texts] of [...NEGATIVES, ...TRAPS])
    test.each(texts.map((text) => [text]))(`nothing decisive is logged of what is ${why}: %s`, (text) => {
      expect(decisive(readNote(text, SETTING))).toEqual([]);
    });

  test.each(POSITIVES.map(([text, tree, kind]) => [text, kind, tree] as const))(
    'a plain record stands: %s (%s)',
    (text, kind, tree) => {
      const logged = readNote(text, SETTING).logged.map((event) => [
        event.kind,
        SETTING.roster.find(({ id }) => id === event.tree)?.name,
      ]);
      expect(logged).toContainEqual([kind, tree]);
    },
  );

  test('an event taken back by its own clause becomes a remark on its tree', () => {
    expect(guardReading('i meant to tip the alma', SETTING, seen('tipped'))).toEqual({
      logged: [{ tree: ALMA, kind: 'remark', on: SETTING.today }],
      ask: null,
    });
  });

  test("an event of somebody else's tree becomes a remark on none", () => {
    expect(guardReading('my sister tipped her alma', SETTING, seen('tipped')).logged).toEqual([
      { tree: null, kind: 'remark', on: SETTING.today },
    ]);
  });

  test('an event whose words are not understood becomes the question what was seen', () => {
    const reading = guardReading('alma quixotic fig umbrage', SETTING, seen('fruitlets'));
    expect(reading.logged).toEqual([]);
    expect(reading.ask).toMatchObject({ what: 'kind', open: [{ tree: ALMA, on: SETTING.today }] });
    expect(reading.ask?.kinds[0]).toBe('fruitlets');
  });

  test('what is not decisive is handed back as it came', () => {
    const reading: NoteReading = { logged: [{ tree: ALMA, kind: 'care', on: SETTING.today }], ask: null };
    expect(guardReading('would have fed the alma', SETTING, reading)).toBe(reading);
  });

  test('only the event in doubt is replaced', () => {
    const reading: NoteReading = {
      logged: [
        { tree: ALMA, kind: 'tipped', on: SETTING.today },
        { tree: 4, kind: 'tipped', on: SETTING.today },
      ],
      ask: null,
    };
    expect(guardReading('tipped the alma. will tip the ronde next week', SETTING, reading).logged).toEqual([
      { tree: ALMA, kind: 'tipped', on: SETTING.today },
      { tree: 4, kind: 'remark', on: SETTING.today },
    ]);
  });

  test.each([
    ['havent picked the alma', 'picked', 'denied'],
    ['off to pick the alma', 'picked', 'plan'],
    ['if i tipped the alma', 'tipped', 'if'],
    ['back in 2023 we tipped the alma', 'tipped', 'past'],
    ['hubby says the alma has figs', 'fruitlets', 'told'],
    ['the alma at the nursery has figs', 'fruitlets', 'other'],
    ['are those figs on the alma', 'fruitlets', 'asked'],
    ['picked the alma as my favourite', 'picked', 'figure'],
  ] as const)('the reason can be told: %s', (text, kind, why) => {
    expect(whyDoubtful(text, SETTING, { tree: ALMA, kind, on: SETTING.today })).toBe(why);
  });
});

const DENIALS: Record<DecisiveKind, readonly string[]> = {
  tipped: [
    'i have not tipped the T',
    'havent pinched the T',
    'never tipped the T',
    'T not tipped',
    'did not pinch out the T',
    'nobody tipped the T',
    'the T has not been pinched',
    'T was never stopped',
  ],
  picked: [
    'i have not picked the T',
    'didnt pick any figs off the T',
    'never harvested the T',
    'none picked from the T',
    'have not eaten a single fig off the T',
    'nothing picked off the T',
  ],
  dropped: [
    'the T has not dropped its figs',
    'T hasnt dropped all its fruit',
    'T never dropped a fig',
    'no figs dropped off the T',
    'the T did not shed its crop',
  ],
  fruitlets: [
    'no figs on the T',
    'the T has no figlets',
    'T has not set any figs',
    'not a single fig on the T',
    'there are no fruitlets on the T',
    'zero figs T',
  ],
  'no-fruitlets': ['the T is not bare of figs', 'T is not figless', 'the T is no longer fruitless'],
};
const BEFORE = ['', 'hi all, ', 'update: ', 'sunny day here. ', 'so ', 'ok ', 'watered everything. '];
const AFTER = [
  '',
  ' yet',
  ' this week',
  ' so far',
  ', too hot',
  ' in this heat',
  '. fed it though',
  ' 😩',
  '!!',
];

describe('denials', () => {
  test('a text that denies a decisive kind never logs that kind for that tree', () => {
    const pieces = fc
      .constantFrom(...DECISIVE)
      .chain((kind) =>
        fc.tuple(
          fc.constant(kind),
          fc.constantFrom(...DENIALS[kind]),
          fc.constantFrom(...BEFORE),
          fc.constantFrom(...AFTER),
          fc.constantFrom(...SETTING.roster),
        ),
      );
    fc.assert(
      fc.property(pieces, ([kind, denial, before, after, tree]) => {
        const text = before + denial.replace('T', tree.name.toLowerCase()) + after;
        const events = readNote(text, SETTING).logged;
        return !events.some((event) => event.kind === kind && event.tree === tree.id);
      }),
      { numRuns: 1500 },
    );
  });

  test('no text makes the second look throw or add anything decisive', () => {
    const reading: NoteReading = {
      logged: DECISIVE.map((kind) => ({ tree: ALMA, kind, on: SETTING.today })),
      ask: null,
    };
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'grapheme' })), (text) => {
        const guarded = guardReading(text, SETTING, reading);
        return decisive(guarded).every((event) => reading.logged.includes(event));
      }),
      { numRuns: 500 },
    );
  });
});
