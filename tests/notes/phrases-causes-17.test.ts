import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** Years by their last digits, where a tree stands, what others left over, the same deed on another day, growth sent out. */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['alma took a beating in the feb freeze of 23', 'Alma remark'],
  ['dropped its figs in the freeze of 24, the king', 'King remark'],
  ['picked 12 of 23 on the alma', 'Alma picked 12'],
  ['mission next to the greenhouse door has fruit', 'Greenhouse Mission fruitlets'],
  ['the mission next to the greenhouse door will have fruit', 'Greenhouse Mission remark'],
  ['the alma by the shed has no fruit', 'Alma no-fruitlets'],
  ['does the mission by the garage have fruit', 'Greenhouse Mission remark'],
  ['branched the drip line out to the fence tree, all hooked up', 'Fence unknown care'],
  ['alma chucked every single fig, unknown went and did the same', 'Alma dropped; Fence unknown dropped'],
  ['stop 2 on the garden tour, the king, 11 figlets', 'King fruitlets 11'],
  ['stopped 2 shoots on the alma', 'Alma tipped 2'],
  ['starlings had 4 of the alma, i got 1', 'Alma picked 1; Alma trouble'],
  ['birds got 3 off the king, will i get 1', 'King remark; King trouble'],
  ['the rats had 4 cuttings of the ronde, i got 2', 'Ronde trouble'],
  ['wasps on the alma, i got 1 sting', 'Alma trouble'],
  [
    'first main crop fig on the tall kadota, its brebas all fell on the 25th',
    'Tall Kadota dropped 2026-06-25 breba; Tall Kadota fruitlets 1',
  ],
  ['4 of 6 ronde cuttings rooted, fed the mother tree while i was out there', 'Ronde care; Ronde rooted 4'],
  ["my mother's alma has 4 figs", 'garden remark'],
  ['24/6 king sent out laterals', 'King branched 2026-06-24'],
  ['alma sent out 3 figs', 'Alma fruitlets 3'],
  ['king put out leaves', 'King leafed-out'],
  ['watered the alma.. nope, the ronde. alma was yday', 'Alma care 2026-07-01; Ronde care'],
  ['tipped the king. alma was monday', 'Alma tipped 2026-06-29; King tipped'],
  ['tipped the king. was alma monday?', 'Alma remark; King tipped'],
  ['tipped the king. alma was not monday', 'Alma remark; King tipped'],
  ['neighbour tipped his king. alma was monday', 'Alma remark'],
  ['no new branches on the alma after the pinch, no figs either', 'Alma no-fruitlets; Alma remark'],
  ['alma has no new branches, no figs', 'Alma no-fruitlets; Alma remark'],
  ['no branches on the alma, no figs on the neighbours', 'Alma remark'],
  ["unknown's a beast, had to hack 3 ft off it", 'Fence unknown pruned; Fence unknown remark'],
  ['would have had to hack 3 ft off the king', 'King remark'],
  ['shed tree cut back hard, 5 bits of it in the propagator', 'Shed Celeste cuttings 5; Shed Celeste pruned'],
  ['5 bits of bark in the compost under the alma', 'Alma care'],
  ['ronde necks like wet noodles', 'Ronde ripening'],
  ['king necks still stiff as pencils', 'King remark'],
  ['celeste scion wood, 9 sticks, in the fridge since jan 20', 'Shed Celeste cuttings 2026-01-20 9'],
];

describe('known causes of the seventeenth set', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
