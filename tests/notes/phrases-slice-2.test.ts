import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/**
 * Brackets, slashes and nothing-counts in lists, weather that tips, fruit that is the subject and no harvest, work told
 * by the way, questions without a mark, each with a denied or planned neighbour (labelling guide §2–§7).
 */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['gale last night took the top off the celeste', 'Shed Celeste trouble 2026-07-01'],
  ['wind last night snapped the leader off the king', 'King trouble 2026-07-01'],
  ['took the top off the celeste last night', 'Shed Celeste tipped 2026-07-01'],
  [
    'done: tall kadota (tips out, 4), little kadota (tips out, 2), alma (left alone)',
    'Alma remark; Little Kadota tipped 2; Tall Kadota tipped 4',
  ],
  ['tips out on the alma (4), king (left alone)', 'Alma tipped 4; King remark'],
  ['picked: alma (3), ronde (not ready), king (2)', 'Alma picked 3; King picked 2; Ronde remark'],
  ['alma (tips off), ronde (tips off), king (no)', 'Alma tipped; King remark; Ronde tipped'],
  [
    'ronde 10 figs / adriatic 0 / celeste 3 / pot 3 didnt look',
    'Patio Adriatic no-fruitlets; Pot 3 remark; Ronde fruitlets 10; Shed Celeste fruitlets 3',
  ],
  ['no figs on the alma / celeste 3', 'Alma no-fruitlets; Shed Celeste fruitlets 3'],
  ['no figs on alma or ronde', 'Alma no-fruitlets; Ronde no-fruitlets'],
  ['adri 4 figs lil k 0', 'Little Kadota no-fruitlets; Patio Adriatic fruitlets 4'],
  ['adriatic 4 figs alma 2 king none', 'Alma fruitlets 2; King no-fruitlets; Patio Adriatic fruitlets 4'],
  ['little kadota 1, tall kadota 0 (figs that is)', 'Little Kadota fruitlets 1; Tall Kadota no-fruitlets'],
  ['brebas never showed on the celeste', 'Shed Celeste no-fruitlets breba'],
  ['figs never came on the alma', 'Alma no-fruitlets'],
  ['figs never dropped on the alma', 'Alma remark'],
  ['a few brebas off the king have gone soft and fallen, plenty hanging', 'King remark'],
  ['3 figs off the alma were lovely', 'Alma picked 3'],
  ['two off the king have gone mouldy', 'King trouble'],
  [
    'so the celeste, which i tipped on the 15th, has 4 figlets, and the alma, which i tipped the same day, has bupkis',
    'Alma no-fruitlets; Alma tipped 2026-06-15; Shed Celeste fruitlets 4; Shed Celeste tipped 2026-06-15',
  ],
  ['the alma, which i pinched monday, has nothing', 'Alma no-fruitlets; Alma tipped 2026-06-29'],
  ['the king, which dropped its brebas, has new figs', 'King dropped breba; King fruitlets'],
  ['twenty-one figs, celeste, one sitting, no shame', 'Shed Celeste picked 21'],
  ['ate the lot in one sitting, alma', 'Alma picked'],
  ['plan to eat the alma figs in one sitting', 'Alma remark'],
  ['still bald of fruit, the celeste', 'Shed Celeste no-fruitlets'],
  ['king is bare', 'King dormant'],
  ['first alma of the year, eaten over the sink', 'Alma picked 1'],
  ['mission gave up its first, a beauty', 'Greenhouse Mission picked 1'],
  ["mission hasn't given up its first yet", 'Greenhouse Mission remark'],
  ['gave up on the mission', 'Greenhouse Mission remark'],
  ['king breba crop finished, stripped the last 5 yesterday', 'King picked 2026-07-01 5 breba; King remark'],
  ['stripped the last 4 yesterday, ronde', 'Ronde picked 2026-07-01 4'],
  ['loads of alma gathered in the dusk', 'Alma picked'],
  ['6 adriatic picked on 9/10', 'ask date'],
  ['picked over the alma', 'Alma remark'],
  ['picked 3 at dawn off the king', 'King picked 3'],
  ['300g celeste plus 5 adriatic in the basket', 'Patio Adriatic picked 5; Shed Celeste picked 300 g'],
  [
    'adriatic 1 ripe 1 picked 1 rotten',
    'Patio Adriatic picked 1; Patio Adriatic ripening 1; Patio Adriatic trouble',
  ],
  ['2 ripe, picked 3, ronde', 'Ronde picked 3; Ronde ripening 2'],
  ['one soft breba on the mission', 'Greenhouse Mission ripening 1 breba'],
  ['king: brebas (4) softening, main crop just pinheads', 'King fruitlets; King ripening 4 breba'],
  ['king brebas all dropped bar none, gutted', 'King dropped breba'],
  [
    'breba: king 6, alma 2, mission nil',
    'Alma fruitlets 2 breba; Greenhouse Mission no-fruitlets breba; King fruitlets 6 breba',
  ],
  [
    'celeste: leafed out 4/9, pinched 6/1, 5 figlets 6/20, all gone today',
    'Shed Celeste dropped; Shed Celeste fruitlets 2026-06-20 5; Shed Celeste leafed-out 2026-04-09; Shed Celeste tipped 2026-06-01',
  ],
  ['had 3 figs on the alma, all on the ground now', 'Alma dropped 3'],
  [
    'someone pinched my figs!!! whole ripe batch gone off the adriatic, thieving gits',
    'Patio Adriatic trouble',
  ],
  ['figs gone off on the ronde', 'Ronde trouble'],
  ['whole crop gone off the ronde', 'Ronde dropped'],
  ['woke from dormancy april 5, the mission, leaves and all', 'Greenhouse Mission leafed-out 2026-04-05'],
  ['april 31 leafout on the celeste', 'ask date'],
  [
    'fence unknown - leaves: yes, since may 1. figs: no',
    'Fence unknown leafed-out 2026-05-01; Fence unknown no-fruitlets',
  ],
  ['took tips first week of june on the king. 5 shoots', 'King tipped 2026-06-04 5'],
  ['got most of the ronde leaders, 6, ran out of ladder for the rest', 'Ronde tipped 6'],
  ['didnt get most of the king tips', 'King remark'],
  ['alma. nipped. sunday. done', 'Alma tipped 2026-06-28'],
  ['rhonde tiped, 3 shots', 'Ronde tipped 3'],
  ['sheds celest prooned of suckrs', 'Shed Celeste pruned'],
  ['sawed a big limb off the celeste back in feb, the 8th', 'Shed Celeste pruned 2026-02-08'],
  ['fished 6 dried-up leaves off the ronde and gave it a drink', 'Ronde care'],
  ['culled the yellow leaves on the little kadota', 'Little Kadota care'],
  ['bagged the adriatic fruit against wasps', 'Patio Adriatic care'],
  ['fed the thing by the shed', 'Shed Celeste care'],
  ['watered at 6 sharp, alma and king', 'Alma care; King care'],
  ['watered at 7am, ronde and celeste 3 figs', 'Ronde care; Shed Celeste fruitlets 3'],
  ['ronde picking up nicely after its feed on monday', 'Ronde care 2026-06-29'],
  ['king perking up since its repot on the 20th', 'King care 2026-06-20'],
  ['whenever it was, spring sometime, i repotted the ronde', 'ask date'],
  [
    'took cuttings off pot 3 on march 1 (6), 5 days later they were in perlite, 2 have rooted now',
    'Pot 3 cuttings 2026-03-01 6; Pot 3 rooted 2',
  ],
  ['stuck 4 sticks of the king in perlite', 'King cuttings 4'],
  ['king got moved, king got fed, king got nipped. spoiled rotten', 'King care; King tipped'],
  [
    'fri: fed the ronde. sat: fed the alma. sun: fed nobody, it rained',
    'Alma care 2026-06-27; Alma remark; Ronde care 2026-06-26',
  ],
  ['bloke at the nursery says my fence tree is an hourani, with figs by august', 'Fence unknown remark'],
  ['any tips for stopping mites on the adriatic', 'Patio Adriatic remark'],
  ['any ideas for the ants on the king', 'King remark'],
  ['what spray for scale, its on the mission', 'Greenhouse Mission remark'],
  ['what a day for the alma, 5 figs picked', 'Alma picked 5; Alma remark'],
  ['would it hurt to repot the alma with figs on', 'Alma remark'],
  ['alma has 8 figs not sure if breba or the other sort', 'ask crop'],
  ['4 ripening on the king. old wood? new wood? i cant see for leaves', 'ask crop'],
  ['not sure if its breba or not, 3 figs on the king', 'ask crop'],
  ['hi all, just to say the alma has 4 figs', 'Alma fruitlets 4'],
];

describe('a phrase in a list, in brackets or in passing', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
