import { describe, expect, it } from 'vitest';
import { correctEvents, readCorrection, readNote } from '../../src/notes/index.ts';
import { notesOf, SETTING } from './setting.ts';

const names = new Map(SETTING.roster.map(({ id, name }) => [id, name]));

/** What stands after a note and a message that follows it: "King tipped 06-29"; null where it is no correction. */
function standing(note: string, message: string): string | null {
  const { logged } = readNote(note, SETTING);
  const correction = readCorrection(message, SETTING, logged);
  const events = correction && correctEvents(logged, correction, SETTING.today);
  if (!events) return null;
  return events
    .map(({ tree, kind, on, count, unit, crop }) =>
      [
        names.get(tree ?? 0),
        kind,
        count === undefined ? '' : `${count}${unit ?? ''}`,
        crop ?? '',
        on === SETTING.today ? '' : on.slice(5),
      ]
        .filter((part) => part !== '')
        .join(' '),
    )
    .join(', ');
}

const TABLE: readonly (readonly [note: string, messages: readonly string[], stands: string])[] = [
  [
    'tipped the king sunday',
    [
      'no, monday',
      '*monday',
      'monday i mean',
      'monday, sorry',
      'oops wrong day, monday',
      'make it monday',
      'monday not sunday',
      'not sunday, monday',
      'that was monday',
      'monday',
    ],
    'King tipped 06-29',
  ],
  [
    'tipped the king sunday',
    [
      'wrong tree, the alma',
      'alma not king',
      'not the king, the alma',
      'the alma, not the king',
      '*alma',
      'i meant the alma',
      'the alma i mean',
      'change that to alma',
      'sorry alma',
      'no it was the alma',
      'alma instead of king',
    ],
    'Alma tipped 06-28',
  ],
  ['tipped the king sunday', ['no, that was last year'], 'King remark'],
  [
    '3 figs on the alma',
    [
      'no 4',
      'no, four',
      '4 not 3',
      'sorry 4',
      'make that 4',
      'it was 4',
      '4 i mean',
      '*4',
      'miscounted, 4',
      'should be 4',
      '4',
    ],
    'Alma fruitlets 4',
  ],
  ['3 figs on the alma', ["they're brebas", 'brebas i mean', 'brebas, actually'], 'Alma fruitlets 3 breba'],
  ['3 figs on the alma', ['main crop, not brebas'], 'Alma fruitlets 3 main'],
  ['3 figs on the alma', ['no figs actually', 'i meant no figs'], 'Alma no-fruitlets'],
  ['3 figs on the alma', ['no, picked', 'i meant picked', 'i picked them i mean'], 'Alma picked 3'],
  ['3 figs on the alma', ['they were leaf buds'], 'Alma buds-single'],
  ['picked 6 off the king', ['yesterday', 'that was yesterday', 'yesterday that was'], 'King picked 6 07-01'],
  ['picked 6 off the king', ['6 lb, not 6 figs'], 'King picked 6lb'],
  [
    'tipped the tall kadota',
    [
      'no, the little one',
      'the other one, sorry',
      'no the other',
      'not the tall one the little one',
      'sorry, the other kadota',
    ],
    'Little Kadota tipped',
  ],
  [
    'tipped 3 shoots on the tall kadota',
    ['both', 'both of them', 'both kadotas actually', 'little kadota too', 'and the little one'],
    'Tall Kadota tipped 3, Little Kadota tipped',
  ],
  // Only what was dated has another day, only what is named another number.
  [
    'pinched the king sunday & 4 off the alma',
    ['no, it was monday', 'king was monday', 'monday for the king'],
    'King tipped 06-29, Alma picked 4',
  ],
  [
    'pinched the king sunday & 4 off the alma',
    ['make the alma 5', 'alma was 5', 'it was 5', '5 not 4'],
    'King tipped 06-28, Alma picked 5',
  ],
  [
    'pinched the king sunday & 4 off the alma',
    ['the ronde, not the alma'],
    'King tipped 06-28, Ronde picked 4',
  ],
];

describe('what puts the note before right', () => {
  it.each(TABLE)('after "%s"', (note, messages, stands) => {
    for (const message of messages) expect(standing(note, message), message).toBe(stands);
  });

  it.each([
    ['pinched the king sunday & 4 off the alma', '5 off the alma'],
    ['watered the ronde', "that's 30-odd off the ronde today"],
    ['tipped the king sunday', 'alma'],
    ['tipped the king sunday', 'the little one'],
    ['tipped the king sunday', 'no figs'],
    ['3 figs on the alma', '5 not 4'],
    ['3 figs on the alma', 'nope nothing on the brunswick either'],
    ['3 figs on the alma', 'tall kadota buds in twos, not figs yet'],
    ['picked 6 off the king', '4 brebas'],
    ['picked 6 off the king', 'nope. nothing. zilch. king'],
    ['tipped the king sunday', 'maybe monday'],
    ['tipped the king sunday', 'monday?'],
    ['tipped the king sunday', 'next monday'],
    ['tipped the king sunday', 'was it monday'],
    ['tipped the king sunday', 'dave says monday'],
  ])('"%s" is left alone by "%s"', (note, message) => {
    expect(standing(note, message)).toBeNull();
  });

  it('is never a note that stands by itself', () => {
    const before = [
      'tipped the tall kadota sunday',
      '3 figs on the alma',
      'picked 6 off the king',
      'pinched the king & 4 off the alma',
    ];
    for (const file of ['notes-public.jsonl', 'notes-dev-16.jsonl', 'notes-dev-17.jsonl'])
      for (const { text } of notesOf(file).items)
        for (const note of before) expect(standing(note, text), `${note} / ${text}`).toBeNull();
  });
});
