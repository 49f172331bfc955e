import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** Tips and branches, fruit kept and cooked, harm, days half remembered and names cut short, each with a denied or planned neighbour (labelling guide §2–§7). */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['pockets full of celeste figs again', 'Shed Celeste picked'],
  ['bucket full of alma cuttings', 'Alma cuttings'],
  ['wish i had a bowl full of almas', 'Alma remark'],
  ['4 adriatics wrapped in bacon', 'Patio Adriatic picked 4'],
  ['4 adriatics wrapped in fleece', 'Patio Adriatic care'],
  ['300 grams of fence unknown turned into jam', 'Fence unknown picked 300 g'],
  ['a few little kadotas went down very nicely with honey', 'Little Kadota picked'],
  ['a few almas went down with rust', 'Alma trouble'],
  ['bagged up 600g of alma for the neighbours', 'Alma picked 600 g'],
  ['cropped the tall kadota, 40 figs, arms ache', 'Tall Kadota picked 40'],
  ['should have cropped the alma', 'Alma remark'],
  ['whole crop came off the alma last night in the wind', 'Alma dropped 2026-07-01'],
  ['afraid the whole crop will come off the alma', 'Alma remark'],
  ['figs hanging on the alma', 'Alma fruitlets'],
  ['mission in its second flush of figs already, 8 i think', 'Greenhouse Mission fruitlets 8'],
  ['second round of figs on the king would be nice', 'King remark'],
  ['no breba on the celeste but 6 mains', 'Shed Celeste fruitlets 6; Shed Celeste no-fruitlets breba'],
  ['tipped 3 mains on the alma', 'Alma tipped 3'],
  ['took all 4 tips out of the king', 'King tipped 4'],
  ['didnt take all the tips off the king', 'King remark'],
  ["off came the alma's top", 'Alma tipped'],
  ["off came the alma's label", 'Alma remark'],
  ['ronde threw 2 new limbs where i stopped it', 'Ronde branched'],
  ["branches had come out of the alma's cut by jun 22", 'Alma branched 2026-06-22'],
  ['two fat limbs gone off the king', 'King pruned'],
  ['alma fruit still green', 'Alma remark'],
  ['dropped by the shed to feed the celeste', 'Shed Celeste care'],
  ['ronde drooping, alma drooping, hosed the pair', 'Alma care; Alma trouble; Ronde care; Ronde trouble'],
  ['alma rusty', 'Alma trouble'],
  ['since monday the adriatic has been going brown at the edges', 'Patio Adriatic trouble 2026-06-29'],
  ['picked today to repot the tall kadota', 'Tall Kadota remark'],
  [
    'mission branching now, i topped it on the 9th',
    'Greenhouse Mission branched; Greenhouse Mission tipped 2026-06-09',
  ],
  ['first fig of the year off the brunswick, wife stole half', 'Pot 3 picked 1'],
  ['stopped the mission, some day in spring i guess', 'ask date'],
  ['tipped the alma monday i think', 'Alma tipped 2026-06-29'],
  ['squishy celestes by the weekend i reckon', 'Shed Celeste remark'],
  ['in 23 the adriatic was bare by oct and had 15 figs before that', 'Patio Adriatic remark'],
  ['mate at work has an adriatic thats dripping with figs', 'garden remark'],
  ['the brunswick at the community garden is riddled with rust', 'garden remark'],
  [
    'tip of the day: dont reverse into your adriatic. trunk is split',
    'Patio Adriatic remark; Patio Adriatic trouble',
  ],
  ['fence tree: 6 picked, wasps got the rest', 'Fence unknown picked 6; Fence unknown trouble'],
  ['king lost all its fruit, every single one on the deck', 'King dropped'],
  ['king breba picked, just the one', 'King picked 1 breba'],
  [
    'chopped the ronde back hard in february on the 9th, leaves came apr 19',
    'Ronde leafed-out 2026-04-19; Ronde pruned 2026-02-09',
  ],
  ['took 3 air layers.. no, cuttings, off the celeste last saturday', 'Shed Celeste cuttings 2026-06-27 3'],
  ['figs hanging on the alma, early lot or main lot? dunno', 'ask crop'],
  [
    'thrips on the little kadota, whole lot of figs aborted after',
    'Little Kadota dropped; Little Kadota trouble',
  ],
  ['brebas went mouldy on the king and all dropped', 'King dropped breba'],
  ['first hard frost nov 12, everything went to sleep', 'garden dormant 2025-11-12; garden frost 2025-11-12'],
  ['grabbed some missions on my way to work', 'Greenhouse Mission picked'],
  ['pulled some kadotas into the shade', 'ask tree'],
  ['tl kadota tipd mon', 'Tall Kadota tipped 2026-06-29'],
  ['ronde d b 3 figlts', 'Ronde fruitlets 3'],
  ['potthree wtred n fd', 'Pot 3 care'],
  ['brunny has a few fruits sizing up', 'Pot 3 fruitlets'],
  ['took 5 figs (0.4 lb) off the celeste', 'Shed Celeste picked 5'],
  ['2 lb 0ff the tall kadota today', 'Tall Kadota picked 2 lb'],
  ['tall kadoat froot dropd evry last 1', 'Tall Kadota dropped'],
  ['lunch was bread, ham and the lone ripe tall kadota', 'Tall Kadota picked 1'],
];

describe('shoots, harvests, harm and the trees they are told of', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
