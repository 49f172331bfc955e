import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** Tallies, numbers put right, skins, buds told by pairs and figs brought in, each with a harmless neighbour (labelling guide §2–§7). */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['fig tally: alma zero, ronde 2', 'Alma no-fruitlets; Ronde fruitlets 2'],
  ['pick tally: ronde 2, celeste 25', 'Ronde picked 2; Shed Celeste picked 25'],
  ['rounded up 10 ronde figs for the neighbours', 'Ronde picked 10'],
  ['need to round up 10 ronde figs', 'Ronde remark'],
  ['rounded up the kids to pick the alma', 'Alma remark'],
  ['scrounged some compost for the king', 'King care'],
  ['3 kg celeste hauled in', 'Shed Celeste picked 3 kg'],
  ['hauled in two kilos of brunswick this arvo', 'Pot 3 picked 2 kg'],
  ['a kilo on the nose from tall kadota', 'Tall Kadota picked 1 kg'],
  ['wasps chewed two celestes, grabbed the other 9 quick', 'Shed Celeste picked 9; Shed Celeste trouble'],
  ['15 alma figs on the drying rack', 'Alma picked 15'],
  ['last year i had 15 alma figs on the drying rack', 'Alma remark'],
  ['3 of 8 almas are purple', 'Alma ripening 3'],
  ['4 of the alma figs are dark now', 'Alma ripening 4'],
  ['old wood on alma: 2 gone a lovely colour', 'Alma remark; Alma ripening 2 breba'],
  ['leaves on the alma going a nasty colour', 'Alma trouble'],
  ['2 kings are soft, one picked', 'King picked 1; King ripening 2'],
  ['alma has forked out below the cut tip', 'Alma branched'],
  ['2 of 3 shoots on the king tipped', 'King tipped 2'],
  ['took 3 tips off the mission to root', 'Greenhouse Mission cuttings 3'],
  [
    'one bump per node on the little kadota, pairs on the tall',
    'Little Kadota buds-single; Tall Kadota buds-double',
  ],
  [
    'little kadota has one bump per node, the tall has two',
    'Little Kadota buds-single; Tall Kadota buds-double',
  ],
  ['alma single bumps at each node, adriatic has two figs', 'Alma buds-single; Patio Adriatic fruitlets 2'],
  ['mission softening, beats me which crop it is', 'ask crop'],
  ['little kadota figlets right where old wood meets new, which crop do i call that', 'ask crop'],
  ['which crop is best to tip for on the king', 'King remark'],
  ['6 figlets on alma, no 8, missed two behind a leaf', 'Alma fruitlets 8'],
  ['6 figs on the alma, no 4 on the king', 'Alma fruitlets 6; King remark'],
  ['mission tipped mon... ugh tues, holiday brain', 'Greenhouse Mission tipped 2026-06-30'],
  ['alma has wasps, ugh, picked 3', 'Alma picked 3; Alma trouble'],
  ['pot 3 lost its top on 6/1, er 6/10', 'Pot 3 tipped 2026-06-10'],
  ['ronde skins are splitting', 'Ronde trouble'],
  ['skin split on 3 of the alma figs', 'Alma trouble'],
  ['split 3 alma figs with the kids', 'Alma picked 3'],
  ['pulled the torn leaves off the king', 'King care'],
  ['picked the adriatic for the front step', 'Patio Adriatic care'],
  ['picked the mission for dinner', 'Greenhouse Mission picked'],
  ['the ronde was pinched from my porch', 'Ronde trouble'],
  ['had 2 celestes near ready, now gone', 'Shed Celeste remark'],
  ['mission brebas in the bin', 'Greenhouse Mission remark'],
  ['mission brebas in the belly', 'Greenhouse Mission picked breba'],
  ['topped out at 3 figs on the king', 'King fruitlets 3'],
  ['unknown cuttings, still rootless', 'Fence unknown remark'],
  ['is july too late for little kadota cuttings', 'Little Kadota remark'],
  ['went out with the snips for the ronde tops, bottled it', 'Ronde remark'],
  ['went out with the snips and took the tips off the ronde', 'Ronde tipped'],
  ['gathered 4 pots round the alma', 'Alma remark'],
  ['half the celeste is yellow', 'Shed Celeste remark'],
  ['ronde brebas are toast', 'Ronde remark'],
  ['knocked 2 figs off the alma', 'Alma remark'],
  ['king dropped everything but 2', 'King remark'],
  ['mission shoots were pinched by the shade cloth', 'Greenhouse Mission care'],
];

describe('tallies and numbers put right', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
