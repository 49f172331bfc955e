import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** Numbers, harm and days said in the clause beside, near misses, spoken marks, trees told by their place; with their denied and homonym neighbours. */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['hail last night, shredded the alma', 'Alma trouble 2026-07-01'],
  ['king has its first blush, one fig', 'King ripening 1'],
  ['two brebas and one proper fig off the king', 'King picked 1; King picked 2 breba'],
  ['king dropped everything, naked branches now', 'King dropped'],
  ['came within an inch of lopping the fence one down', 'Fence unknown remark'],
  ['was this close to tipping the king', 'King remark'],
  ['alma has figs colon six', 'Alma fruitlets 6'],
  ["celeste's leaders lopped at six leaves", 'Shed Celeste tipped'],
  ['nicked out five shoots on the alma', 'Alma tipped 5'],
  ['wind snapped the top off the king', 'King trouble'],
  ['the tall kadota got its top snapped off deliberately', 'Tall Kadota tipped'],
  ['rain split every ripe fig on the celeste', 'Shed Celeste trouble'],
  ['someone pinched my secateurs so the king stays unpruned', 'King remark'],
  ['pinched the alma and all it did was throw side shoots, not a fig to show for it', 'Alma branched'],
  ['mystery fig on the fence: topped on the 16th', 'Fence unknown remark; Fence unknown tipped 2026-06-16'],
  ['alma fig on the patio, pinched it sunday', 'Alma remark; Alma tipped 2026-06-28'],
  ['fruit dropped off the ronde', 'Ronde dropped'],
  ['dropped off 6 figs at mums', 'garden remark'],
  ['the courier dropped off the new king', 'King remark'],
  ['the kids had all 9 off the mission', 'Greenhouse Mission picked 9'],
  ['saw a ronde at the garden centre with ripe figs on', 'garden remark'],
  ['clst 4 fglts', 'Shed Celeste fruitlets 4'],
  ['topped my fig at last', 'ask tree'],
  ['frost on the 3rd, took the tips off pot 3', 'Pot 3 frost 2026-06-03'],
  ['wasnt till the 12th that i tipped the alma', 'Alma tipped 2026-06-12'],
  ['wasnt until june 20 the king showed any figs', 'King fruitlets 2026-06-20'],
  ['put the little kadota up on bricks so the ants quit climbing', 'Little Kadota care'],
  ['pulled a mess of figs off the celeste for mama, prolly 3 lb', 'Shed Celeste picked 3 lb'],
  ['in the tall kadota i see two small fig', 'Tall Kadota fruitlets 2'],
  ['ripe tomatoes, no ripe figs on the ronde', 'Ronde remark'],
  ['tips of the alma are browning', 'Alma trouble'],
  ['the cat nipped me while i fed the king', 'King care'],
  ['dog ate my sandwich under the king', 'King remark'],
  ['what in the world is growing out of pot 3', 'ask kind'],
  ['hardly any figs dropped off the king', 'King remark'],
  ['starlings this morning, picked the alma clean', 'Alma trouble'],
  ['pinched 2 on the alma, 3 on the ronde and all of the king', 'Alma tipped 2; King tipped; Ronde tipped 3'],
  ['pinched 2 shoots on the alma and found 3 figs on the ronde', 'Alma tipped 2; Ronde fruitlets 3'],
  ['tipped ronde, alma and king, 2 each', 'Alma tipped 2; King tipped 2; Ronde tipped 2'],
  ['lost the lot, king, brebas', 'King dropped breba'],
  ['nothing on the alma to report', 'Alma remark'],
  ['something growing on the ronde', 'ask kind'],
  ['adriatic has gone all yellow on the lower leaves', 'Patio Adriatic trouble'],
  ['king: three brebas left. rest: nothing', 'King fruitlets 3 breba; King remark'],
  ['minus 3 last night', 'garden frost 2026-07-01'],
  ['wasnt till may 11 the unknown had leaves', 'Fence unknown leafed-out 2026-05-11'],
];

describe('what is told beside', () => {
  it.each(PHRASES)('%s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
