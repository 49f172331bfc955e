import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** What is said of shoots, leaves, harm and cuttings by growers of other places, each with a denied or harmless neighbour (labelling guide §2–§7). */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  [
    "y'all i finally topped that celeste by the shed, took about six inches off the leader",
    'Shed Celeste tipped',
  ],
  ['thumb and finger job on the adriatic, every leader done', 'Patio Adriatic tipped'],
  [
    'the celeste got its tops lopped 12 june and now has 3 side shoots per cut',
    'Shed Celeste branched; Shed Celeste tipped 2026-06-12',
  ],
  ['the celeste got its label clipped', 'Shed Celeste remark'],
  [
    'where i pinched the mission two new leaders have shot up',
    'Greenhouse Mission branched; Greenhouse Mission remark',
  ],
  ['green showing on the unknown at last, had given it up for dead', 'Fence unknown leafed-out'],
  [
    'whitewashed the trunk on the fence unknown, sunscald worries',
    'Fence unknown care; Fence unknown remark',
  ],
  ['tall kadota droopy at noon, perked up after a drink', 'Tall Kadota care; Tall Kadota trouble'],
  ['celeste slips all rotted', 'Shed Celeste trouble'],
  ['cuttings from the alma still sulking, no roots', 'Alma remark'],
  ['the alma cutting in the cup has leaves but no roots', 'Alma remark'],
  ['broke a tip off the king carrying it in', 'King trouble'],
  ['broke the tips off the king', 'King tipped'],
  ['leaf buds on the alma cracked open easter sunday', 'Alma leafed-out 2026-04-05'],
  ['the ronde finally got dressed', 'Ronde leafed-out'],
  ["theives had the adriatic's pot away in the night", 'Patio Adriatic trouble'],
  ['sun scorched the little kadota through the glass', 'Little Kadota trouble'],
  ['sun picked 5 off the alma', 'Alma picked 2026-06-28 5'],
  ['roots coming out the bottom of pot 3', 'Pot 3 remark'],
  ['took cuttings, 5 king 3 celeste', 'King cuttings 5; Shed Celeste cuttings 3'],
  ['lost all the king cuttings to mold', 'King trouble'],
  ['ground layer on the alma has taken', 'Alma rooted'],
  ['no ground layer on the alma has taken', 'Alma remark'],
  ['would have taken everything above the fifth leaf off the alma', 'Alma remark'],
  ['cut everything above the fifth leaf off the alma', 'ask kind'],
];

describe('growth, harm and cuttings', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
