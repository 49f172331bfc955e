import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/**
 * What is left over, headings with their trees, hauls by the vessel, wind and raiders that do the grower's work,
 * growers of the north of England and of other languages; each with denied, planned and others' neighbours.
 */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ["wind's had the top out of the tall kadota", 'Tall Kadota trouble'],
  ['the gale had the leader out of the king', 'King trouble'],
  ['i had the tips off the celeste in april', 'Shed Celeste tipped 2026-04-15'],
  ['nipped the alma an fed the ronde', 'Alma tipped; Ronde care'],
  ["nipped t'top out of t'ronde", 'Ronde tipped'],
  ["t'alma's got 4 figs", 'Alma fruitlets 4'],
  ['except for the king they all got fed', 'garden care'],
  ['they all got watered except the king', 'garden care'],
  ['two small beads at each node of the king', 'King buds-double'],
  ['alma figs all dropped except one', 'Alma remark'],
  ['alma dropped all but two figs', 'Alma remark'],
  ['alma dropped everything bar the breba', 'Alma remark'],
  ['the 5 figs on the alma are now 3', 'Alma fruitlets 3'],
  ['alma went from 8 figs to 3', 'Alma fruitlets 3'],
  ['alma down to 3 figs', 'Alma fruitlets 3'],
  ['tipped: alma, ronde. not tipped: king', 'Alma tipped; King remark; Ronde tipped'],
  ['not watered: king, ronde. watered: alma', 'Alma care; King remark; Ronde remark'],
  [
    'both kadotas have figs, the tall one 6 the little one 3',
    'Little Kadota fruitlets 3; Tall Kadota fruitlets 6',
  ],
  ['had a gander at the ronde: 4 pea sized uns', 'Ronde fruitlets 4; Ronde remark'],
  ['from king tree we eat two figs very sweet', 'King picked 2'],
  ['we pick figs from the ronde every august', 'Ronde remark'],
  ['i eat 2 figs in the shop', 'garden remark'],
  ['in my country the alma gives 100 figs', 'garden remark'],
  ['record six figs picked from tall kadota', 'Tall Kadota picked 6'],
  ["grand bowl o figs off t'mission, jam tomorrow", 'Greenhouse Mission picked'],
  ['ate 2 missions, the rest tomorrow', 'Greenhouse Mission picked 2'],
  ['roast lamb with 4 kings tomorrow', 'King remark'],
  ['counted 14, maybe 15, on the adriatic', 'Patio Adriatic fruitlets 14'],
  ['all figs of celeste fell down because of hot wind', 'Shed Celeste dropped'],
  ['most figs of king fell because of the heat', 'King remark'],
  ['yesterday i was cutting top of alma', 'Alma tipped 2026-07-01'],
  ['stripped the king, loads, lost count', 'King picked'],
  ['stripped the king of its lower leaves', 'King care'],
  ['relieved the king of 3 figs', 'King picked 3'],
  ['relieved the alma of its tips', 'Alma tipped'],
  ['raided the alma, two bowls', 'Alma picked'],
  ['cleared the mission, buckets', 'Greenhouse Mission picked'],
  ['squirrel cleared the mission', 'Greenhouse Mission trouble'],
  ['the celeste has stopped', 'Shed Celeste remark'],
  ['the alma has stopped dropping figs', 'Alma remark'],
  ['has anyone stopped the celeste', 'Shed Celeste remark'],
  ['celeste got stopped', 'Shed Celeste tipped'],
  ["topped the alma, topped up the king's mulch", 'Alma tipped; King care'],
  ['clipped 5 off the mission for rooting', 'Greenhouse Mission cuttings 5'],
  ['clipped 5 off the mission for lunch', 'Greenhouse Mission picked 5'],
  ['struck 6 from the celeste in february', 'Shed Celeste cuttings 2026-02-15 6'],
  ['rooted for the king, it fruited! 3 figs', 'King fruitlets 3; King remark'],
  ['king cuttings have 2 leaves no roots', 'King remark'],
  ['took in the king before the frost', 'King care'],
  ['took in the washing and 3 figs off the alma', 'Alma picked 3'],
  ['nipped to the shop for netting, ronde is now covered', 'Ronde care'],
  ['frost tonight so the ronde is covered', 'Ronde care; garden frost'],
  ['ronde covered', 'Ronde fruitlets'],
  ['king: 2 brebas dropped, main crop 6', 'King fruitlets 6; King remark'],
  ['jealous of your figs, my king has none', 'King no-fruitlets'],
  ['i love your ronde, my alma has 4 figs', 'Alma fruitlets 4'],
  ['king brebas picked clean by starlings', 'King trouble'],
  ['king brebas picked clean', 'King picked breba'],
  ['ronde picking, 2 punnets', 'Ronde picked'],
  ['picking the alma can wait', 'ask kind'],
];

describe('a phrase of leftovers, hauls and other voices', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
