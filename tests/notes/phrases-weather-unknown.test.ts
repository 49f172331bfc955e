import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** What is not known, what the weather did, cuttings that came to nothing, days in a list (labelling guide §2–§7). */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['kadota, the one thats not tall, 5 figs', 'Little Kadota fruitlets 5'],
  ['unknown number of figs on the ronde', 'ask kind'],
  ['unknown pest on the ronde', 'Ronde remark'],
  ['the unknown has figs', 'Fence unknown fruitlets'],
  ['did the gale take every fig off the alma?', 'Alma remark'],
  ['the wind nearly took every fig off the alma', 'Alma remark'],
  ['last year a gale took every fig off the alma', 'Alma remark'],
  ['birds took every fig off the alma', 'Alma trouble'],
  ['gale took all the leaves off the alma', 'Alma trouble'],
  ['adriatic lost all its figs but the king is loaded', 'King fruitlets; Patio Adriatic dropped'],
  ['no brebas on the king but the new growth is loaded', 'King fruitlets; King no-fruitlets breba'],
  ['9 came in from the unknown, sticky hands', 'Fence unknown picked 9'],
  ['king cuttings didnt take', 'King remark'],
  ['king cuttings have failed', 'King remark'],
  ['left the king unpruned', 'King remark'],
  ['feed the little kadota less', 'Little Kadota remark'],
  ['squirrels 4 me 0. ronde', 'Ronde trouble'],
  ['ronde went up to a 15 gal', 'Ronde care'],
  ['went over the unknown w a torch, zilch', 'Fence unknown no-fruitlets; Fence unknown remark'],
  ['3 ripe on the king, not picked yet', 'King remark; King ripening 3'],
  ['3 ripe on the king, havent picked them', 'King remark; King ripening 3'],
  ['3 ripe on the king, picked them', 'King picked 3'],
  ['5 ripe on the king, should have picked them', 'King remark; King ripening 5'],
  ['5 ripe on the king, will have picked them by friday', 'King remark; King ripening 5'],
  ['5 ripe on the king, picked none', 'King remark; King ripening 5'],
  ['5 ripe on the king, best eaten warm', 'King remark; King ripening 5'],
  ['picking list: king 3, alma 2', 'Alma remark; King remark'],
  ['picked so far: king 3', 'King picked 3'],
  ['picked: none. king', 'King remark'],
  ['unknown if i tipped the alma', 'Alma remark'],
  ['someone nicked the lot off the fence fig', 'Fence unknown trouble'],
  ['late frost on apr 20 took the brebas off the king', 'King frost 2026-04-20'],
  ['topped up the mulch on the king', 'King care'],
  ['valentines: bagged up 7 mission cuttings', 'Greenhouse Mission cuttings 2026-02-14 7'],
  ['gave the king its winter cut new years day', 'King pruned 2026-01-01'],
  ['6/3 tipped, 6/24 figs. alma', 'Alma fruitlets 2026-06-24; Alma tipped 2026-06-03'],
  [
    'no idea which crop these figlets on the mission belong to. watered it anyway',
    'Greenhouse Mission care; ask crop',
  ],
];

describe('weather, the unknown and days in a list', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
