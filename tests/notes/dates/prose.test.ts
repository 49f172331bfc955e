import { describe, expect, it } from 'vitest';
import { findDates, findVagueDates } from '../../../src/notes/dates/index.ts';
import { found, NOTE } from './support.ts';

describe('dates inside notes', () => {
  // RULES §7; today is Thursday 2026-07-02.
  it.each([
    ['king pinched a month ago to the day', ['a month ago=2026-06-02']],
    ['tipped the alma sat, figlets mon', ['sat=2026-06-27']],
    ['sat tipped the alma', ['sat=2026-06-27']],
    ['fed alma mon', ['mon=2026-06-29']],
    ['sun: fed alma', ['sun=2026-06-28']],
    ['sun 28 june tipped it', ['sun 28 june=2026-06-28']],
    ['monday: fed alma. tuesday: dropped all', ['monday=2026-06-29', 'tuesday=2026-06-30']],
    ['pnched teh rnode ystrday', ['ystrday=2026-07-01']],
    ['leafed out april 28 then a frost on may 2', ['april 28=2026-04-28', 'may 2=2026-05-02']],
    ['not till 4 may', ['4 may=2026-05-04']],
    ['pot 3 june 5', ['june 5=2026-06-05']],
    ['picked 6 july 1st', ['july 1st=2026-07-01']],
    ['tipped on the 3rd alma on the 4th', ['the 3rd=2026-06-03', 'the 4th=2026-06-04']],
    ['28th: tipped alma', ['28th=2026-06-28']],
    ['tipped june 3, figs a week later', ['june 3=2026-06-03', 'a week later=2026-06-10']],
    ['tipped 10th of june, tall one same day', ['10th of june=2026-06-10', 'same day=2026-06-10']],
    ['repotted over the weekend', ['over the weekend=2026-06-27']],
    [
      'wk ago sunday... no wait, sunday just gone',
      ['wk ago sunday=2026-06-21', 'sunday just gone=2026-06-28'],
    ],
    ['tipped pot 3 6/14', ['6/14=2026-06-14']],
    ['tipped on 22.6.', ['22.6.=2026-06-22']],
    ['last night’s frost got it', ['last night’s=2026-07-01']],
    ['between june 3 and 10 it set figs', ['between june 3 and 10=2026-06-03']],
    ['back in 2023 it fruited', ['2023=2023-01-01']],
    ['june 31 tipped', ['june 31!impossible']],
    ['feb 30 pruned', ['feb 30!impossible']],
    ['monday june 7 tipped', ['monday june 7!weekday']],
    ['10 days later figlets', ['10 days later!unanchored']],
    ['in june 5 dropped', ['june=2026-06-15']],
    ['pruned feb, rooted april-ish', ['feb=2026-02-15', 'april-ish=2026-04-15']],
    ['3 weeks since i tipped it', ['3 weeks since=2026-06-11']],
    ['tipped fri/sat', ['fri/sat=2026-06-26']],
    ['fed mission tuesday. scratch that, sunday', ['tuesday=2026-06-30', 'sunday=2026-06-28']],
    ['early july tipped', ['early july=2026-07-02']],
    ['sat 20th tipped alma', ['sat 20th=2026-06-20']],
    ['tipped fri 6/25', ['fri 6/25!weekday']],
  ])('%s', (note, expected) => {
    expect(found(note)).toEqual(expected);
  });

  it('say where in the text they stand', () => {
    const note = 'İ tipped it 🎉 on the 20th, 3 figlets';
    const [hit] = findDates(note, NOTE);
    expect(hit && note.slice(hit.index, hit.index + hit.length)).toBe('the 20th');
  });

  it('tell when a date without a year comes round again, for a finished event that cannot be meant for last year', () => {
    const [hit] = findDates('dropped everything the 20th of july', NOTE);
    expect(hit).toMatchObject({ on: '2025-07-20', coming: '2026-07-20' });
  });

  it('read the same words by the member’s order', () => {
    expect(found('tipped on 6/5', NOTE)).toEqual(['6/5=2026-06-05']);
    expect(found('tipped on 6/5', { ...NOTE, order: 'DMY' })).toEqual(['6/5=2026-05-06']);
  });
});

describe('words that only look like dates', () => {
  it.each([
    'alma sat in the rain all week',
    'it just sat there',
    'moved pot 3 to full sun',
    'mission gets morning sun only',
    'sun scald on the kadota',
    'fed it, needs more sun',
    'come on mon figs',
    'ripe yet mon',
    'wed like figs',
    'we’d like figs',
    'fri-able soil',
    'dec-orative pot',
    'one sec',
    'give it a second',
    'second crop coming',
    'the second one dropped',
    'the 2nd shoot tipped',
    'tipped the 3rd node',
    'the 1st fig is ripe',
    'on the 5th node',
    '5th leaf stage',
    'first fig of the season',
    'marched the alma out',
    'march on little fig',
    'alma may have fruitlets',
    'may be figlets',
    'may 2 figlets',
    'pot 3 may be dead',
    '2 may have dropped',
    'june drop on the alma',
    'the august sun',
    'leaves fall off',
    'spring growth',
    'christmas came early, 6 figs',
    'easter cactus, no fig',
    '2 on one shoot',
    'node 5',
    'pot 3',
    '4 of 6',
    '4/6 cuttings rooted',
    '3/4 ripe',
    'dropped 2/3 of its figs',
    '1/2 lb off the alma',
    '9/10 for taste',
    'watered 24/7',
    '20-20-20 feed',
    'fed 12-4-8',
    'repotted in 5-1-1',
    '22.8 c in the tunnel',
    '1.5 kilos',
    '101f',
    '10-15 figs',
    'about 12 nodes',
    'around the corner',
    'over the fence',
    'a week in the greenhouse',
    '2 years old',
    'day after day',
    'every other day',
    '10 days after i tipped it',
    'this summer',
    'weekend job',
    'mid tree',
    'end of the branch',
    'beginning to ripen',
    '10/10 would pinch again',
    '1/4 turn',
    'put on 4 leaves in a week',
    'in the sun',
    'thanks giving it away',
    'sunday best',
    "three on last year's wood",
    'mayhem in the greenhouse',
    "june's kadota next door is loaded",
    'dec off a few leaves',
    'april from the club took 2 sticks',
    'sundried',
    'overwintered well',
    'for 3 weeks',
    'after a week it branched',
    '50/50 mix',
    '7-11',
    'an august tree',
  ])('%s', (note) => {
    expect(found(note)).toEqual([]);
  });
});

describe('pasts too vague to place', () => {
  it.each([
    ['pinched the king ages ago', ['ages ago']],
    ['fed it a while back', ['a while back']],
    ['tipped a few weeks ago', ['a few weeks ago']],
    ['tipped it the other day', ['the other day']],
    ['weeks ago', ['weeks ago']],
    ['3 weeks ago', []],
    ['a couple of weeks ago', []],
    ['every other day', []],
  ])('%s', (note, expected) => {
    expect(findVagueDates(note).map((hit) => hit.text)).toEqual(expected);
  });
});
