import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** What a tree had once is no fruitlet of today: a wrong one would keep the nudge from being sent. */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['the alma had 8 figs, none now', 'Alma no-fruitlets'],
  ['king: 3 figs, none now', 'King no-fruitlets'],
  ['the ronde was loaded, now nothing', 'Ronde no-fruitlets'],
  ['there were 4 on the ronde, gone now', 'Ronde remark'],
  ['king had 3 figs but they are gone now', 'King dropped'],
  ['had 6 figs on the king, all fell off', 'King dropped'],
  ['alma had no figs, now 5', 'Alma fruitlets 5'],
  ['nothing left on the king', 'King no-fruitlets'],
  ['no scale left on the king', 'King remark'],
  ['there are 2 brebas left on the king', 'King fruitlets 2 breba'],
  ['left the figs on the king', 'King remark'],
  ['i left 2 on the alma', 'Alma remark'],
  ['a fortnight ago pot 3 showed its first fruitlets', 'Pot 3 fruitlets 2026-06-18'],
  ['showed my mate the first figs of the king', 'garden remark'],
  ['growing tip of the tall kadota has gone mouldy', 'Tall Kadota trouble'],
  ['tips on the ronde all gone monday', 'Ronde tipped 2026-06-29'],
  ['tipped the mission 6/8. wrong, that was the celeste', 'Shed Celeste tipped 2026-06-08'],
  ['tipped the mission. wrong! the celeste', 'Shed Celeste tipped'],
  ['something wrong, alma wilting', 'Alma trouble'],
  ['9 king sticks cut, in the fridge since jan 20', 'King cuttings 2026-01-20 9'],
  ['took 9 king cuttings, 4 figs in the fridge', 'King cuttings 9; King picked 4'],
  ['king had 6 figs, 3 fell off', 'King fruitlets 6'],
  ['alma had 6 figs, now has 4', 'Alma fruitlets 4'],
  ['alma had 6 figs now it has 4', 'Alma fruitlets 4'],
  ['alma was at 6 figs, down to 4 now', 'Alma fruitlets 4'],
  ['alma had 6 figs, now has none', 'Alma no-fruitlets'],
  ['alma was loaded, now its got nothing', 'Alma no-fruitlets'],
  ['king had 5 figs, not any more sadly', 'King no-fruitlets'],
  ['king has 5 figs, alma has none now', 'Alma no-fruitlets; King fruitlets 5'],
  ['alma: 6 figs to 0', 'Alma no-fruitlets'],
  ['alma had no figs, now there are 4', 'Alma fruitlets 4'],
  ['alma had no figs, its got 4 now', 'Alma fruitlets 4'],
  ['alma had no figs, has 4 leaves', 'Alma no-fruitlets'],
  ['no figs on the alma last week, now 4', 'Alma fruitlets 4; Alma no-fruitlets 2026-06-25'],
  ['got 3 more off the alma this morning', 'Alma picked 3'],
  ['could get 3 more off the king', 'King remark'],
  ['king has 2 new', 'King remark'],
];

describe('figs that are there no more, those that are left, and what was put right', () => {
  it.each(PHRASES)('%s', (text, wanted) => {
    expect(said(text)).toBe(wanted);
  });
});
