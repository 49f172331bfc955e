import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** Everyday wordings of growers: rows of days, what became of figs, denials and whose figs they are. */
const NOTES: readonly (readonly [text: string, says: string])[] = [
  ['off came the growing point on the ronde', 'Ronde tipped'],
  ['alma is packed', 'Alma fruitlets'],
  ['alma is packed in straw', 'Alma care'],
  ['couldnt move for figs on the alma last year', 'Alma remark'],
  ['off came the growing point on the ronde last year', 'Ronde remark'],
  ['off come the tips of the alma tomorrow', 'Alma remark'],
  [
    'both kadotas watered, the big one tipped as well',
    'Little Kadota care; Tall Kadota care; Tall Kadota tipped',
  ],
  ['he tipped as the favourite, alma', 'Alma remark'],
  ['mission is figging', 'Greenhouse Mission fruitlets'],
  ['mission isnt figging', 'Greenhouse Mission no-fruitlets'],
  ['mission should be figging soon', 'Greenhouse Mission remark'],
  ['last year the mission was figging by june', 'Greenhouse Mission remark'],
  ['moved pot 3 into shade, its leaves were scorching', 'Pot 3 care; Pot 3 trouble'],
  ['ronde figs are colouring up, birds got 2 so netted it', 'Ronde care; Ronde ripening; Ronde trouble'],
  [
    'mission dropped its brebas while the king held all of his',
    'Greenhouse Mission dropped breba; King remark',
  ],
  ['grabbed the last one off the alma', 'Alma picked 1'],
  ['did not grab the last one off the alma', 'Alma remark'],
  ['will grab the last one off the alma', 'Alma remark'],
  ['grabbed the last pot off the alma', 'Alma remark'],
  ['punnet and a half of celestes', 'Shed Celeste picked'],
  ['plucked a pair, alma', 'Alma picked 2'],
  ['6 came away in my hand, ronde, perfect', 'Ronde picked 6'],
  ['nicked a cheeky one off the mission on the way past', 'Greenhouse Mission picked 1'],
  ['the cuttings off the king never took', 'King remark'],
  ['gotta take cuttings off the king this autumn', 'King remark'],
  ['nowt on the ronde bar leaves', 'Ronde no-fruitlets'],
  ['not a bean on the ronde', 'Ronde no-fruitlets'],
  ['no more figs left on the celeste', 'Shed Celeste no-fruitlets'],
  ['no figs left behind on the celeste', 'Shed Celeste remark'],
];

describe('everyday wordings', () => {
  it.each(NOTES)('reads %j', (text, says) => {
    expect(said(text)).toBe(says);
  });
});

describe('rows of days', () => {
  it.each([
    [
      'pinch on king sat, ronde sun, alma mon',
      'Alma tipped 2026-06-29; King tipped 2026-06-27; Ronde tipped 2026-06-28',
    ],
    ['picked 3 alma sat and 4 ronde sun', 'Alma picked 2026-06-27 3; Ronde picked 2026-06-28 4'],
    ['tipped king sat, ronde in full sun', 'King tipped 2026-06-27; Ronde care'],
  ])('reads %j', (text, says) => {
    expect(said(text)).toBe(says);
  });
});
