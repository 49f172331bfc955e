import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** Who did it, what lies about, what was kept off and what was only planned (labelling guide §2–§7). */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['nipped the celeste. well, the frost did', 'Shed Celeste frost'],
  ['pinched the celeste. well, the wife did', 'Shed Celeste tipped'],
  ['the un-pinched ones on the ronde have figs, the pinched ones dont', 'Ronde remark'],
  ['wasps all over the fallen fruit under the king', 'King trouble'],
  ['alma wood in the fridge since january', 'Alma cuttings 2026-01-15'],
  ['bought two alma cuttings online', 'Alma remark'],
  ['tip burn on the mission, salt i reckon', 'Greenhouse Mission remark; Greenhouse Mission trouble'],
  ['stopped feeding the king in june', 'King remark 2026-06-15'],
  [
    'headed out to pinch the mission but it had figs on so left it',
    'Greenhouse Mission fruitlets; Greenhouse Mission remark',
  ],
  ['headed the adriatic back to 5 nodes', 'Patio Adriatic pruned'],
  ['the pinched shoots on the ronde have done nothing', 'Ronde remark'],
  ['pinched shoots on the alma sunday', 'Alma tipped 2026-06-28'],
  ['water shoots all over the unknown', 'Fence unknown remark'],
  ['first to leaf was the ronde on march 25', 'Ronde leafed-out 2026-03-25'],
  ['the alma lost all its leaves to rust', 'Alma trouble'],
  ['king died to the ground over winter, coming back from the roots', 'King leafed-out; King trouble'],
  ['spider mites on the mission again despite the neem', 'Greenhouse Mission trouble'],
  ['mission mite free at last', 'Greenhouse Mission remark'],
  ['kept the birds off the celeste with cds', 'Shed Celeste care'],
  ['one yellow leaf on the ronde, not worried', 'Ronde remark; Ronde trouble'],
  ['covered the adriatic last night as frost was forecast', 'Patio Adriatic care 2026-07-01'],
  ['cuttings of king dried out and died', 'King trouble'],
  ['heeled in 10 ronde cuttings along the fence', 'Ronde cuttings 10'],
  ['in 24 the alma had 30 figs', 'Alma remark'],
];

describe('harm, mishaps and what only looks like work', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
