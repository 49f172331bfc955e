import { describe, expect, it } from 'vitest';
import { mendWord } from '../../src/notes/lexicon/vocabulary.ts';
import { said } from './setting.ts';

const MENDED: readonly (readonly [meant: string, typed: string])[] = [
  ['pinched', 'piched pinhed pinchedd pnched'],
  ['tipped', 'tiped tippd tippped tpped tipd'],
  ['picked', 'pickd pikced picekd pciked'],
  ['dropped', 'droped drpped dorpped'],
  ['figlets', 'figlts fglets figletts'],
  ['branched', 'brnchd brached branchd'],
  ['leafed', 'leefd leafd leafeed'],
  ['rooted', 'rootd rooetd'],
  ['cuttings', 'ctngs cuttins cutttings'],
  ['first', 'frist fisrt'],
  ['wednesday', 'wensday wednesdy'],
];

/** Words that look like a slip and are none. */
const RIGHT = [
  'figless',
  'pitched',
  'piled',
  'ripped',
  'tripped',
  'gripped',
  'noone',
  'rotted',
  'figgy',
  'tinned',
];

const NOTES: readonly (readonly [text: string, said: string])[] = [
  ['blk mission brnchd aftr pinch', 'Greenhouse Mission branched'],
  ['lttle kadota pot blwn ovr', 'Little Kadota trouble'],
  ['unkown leefd out apr 30', 'Fence unknown leafed-out 2026-04-30'],
  ['celste piched out', 'Shed Celeste tipped'],
  ['celste not piched out', 'Shed Celeste remark'],
  ['will pich out the celste', 'Shed Celeste remark'],
  ['pot3 cut bk', 'Pot 3 pruned'],
  ['littel kdota ctngs rootd, 3', 'Little Kadota rooted 3'],
  ['adriatic hs 3 figlts', 'Patio Adriatic fruitlets 3'],
  ['no figlts on ronde', 'Ronde no-fruitlets'],
  ['tippd the celest satruday', 'Shed Celeste tipped 2026-06-27'],
];

describe('slips of the thumb', () => {
  it.each(MENDED)('%s is meant by %s', (meant, typed) => {
    for (const word of typed.split(' ')) expect(mendWord(word, ['alma', 'king'])).toBe(meant);
  });

  it.each(RIGHT)('%s stands as typed', (word) => {
    expect(mendWord(word, ['alma', 'king'])).toBe(word);
  });

  it("leaves a member's own names to win over the words of the trade", () => {
    expect(mendWord('pinchr', ['pincher'])).toBe('pincher');
    expect(mendWord('figlet', ['figlet'])).toBe('figlet');
  });

  it.each(NOTES)('%s', (text, wanted) => {
    expect(said(text)).toBe(wanted);
  });
});
