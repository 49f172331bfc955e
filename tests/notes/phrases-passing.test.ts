import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/**
 * Words said in passing: how figs were cut or tasted, how far off ripe they are, whose hands took them, what a lost
 * top was lost to; each beside a neighbour that says something else (labelling guide §2–§7).
 */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['do figs on the king ever stay on', 'King remark'],
  ['do brebas on the adriatic ever amount to much', 'Patio Adriatic remark'],
  ['did figs set on the alma', 'Alma remark'],
  ['some so-and-so nicked 4 figs off the king', 'King trouble'],
  ['some so and so pinched 6 figs off the fence tree', 'Fence unknown trouble'],
  ['so and so many figs on the alma', 'Alma fruitlets'],
  ['tipped the alma, dont know when', 'ask date'],
  ['repotted the king on groundhog', 'King care 2026-02-02'],
  ['picked 3 off the alma, cut them into quarters', 'Alma picked 3'],
  ['cut the alma back by half', 'Alma pruned'],
  ['alma cut back hard on groundhog day', 'Alma pruned 2026-02-02'],
  ['alma is 3 days off ripe', 'Alma remark'],
  ['picked 5 ripe off the alma', 'Alma picked 5'],
  ['leaves on the ronde like squirrel ears', 'Ronde leafed-out'],
  ['squirrel on the ronde again, chewed the leaves', 'Ronde trouble'],
  ['half the ronde figs have turned, call it 7', 'Ronde ripening 7'],
  ['alma figs turned out lovely', 'Alma remark'],
  ['not till 12 may did the king show any green', 'King leafed-out 2026-05-12'],
  ['not a fig on the alma and not one on the king either', 'Alma no-fruitlets; King no-fruitlets'],
  ['ate 3 off the alma, not one off the king', 'Alma picked 3; King remark'],
  ['the alma lost its top to the secateurs', 'Alma tipped'],
  ['the alma lost its top to the dog', 'Alma trouble'],
  ['alma was bare by dec 1 and back in leaf mar 8', 'Alma dormant 2025-12-01; Alma leafed-out 2026-03-08'],
  [
    'pruned the ronde feb 3 and stuck 6 of the offcuts',
    'Ronde cuttings 2026-02-03 6; Ronde pruned 2026-02-03',
  ],
  ['binned the prunings off the ronde', 'Ronde remark'],
  [
    'looked under every leaf on the little kadota, bupkis',
    'Little Kadota no-fruitlets; Little Kadota remark',
  ],
  ['podcast fella pinched his at 5 leaves, figs in 3 weeks', 'garden remark'],
  ['pinched the alma at 5 leaves', 'Alma tipped'],
  ['necks drooping nicely on the greenhouse figs', 'Greenhouse Mission ripening'],
  ['saw 3 little figs', 'ask tree'],
  ['shed celeste done. every last one down', 'Shed Celeste dropped'],
  ['one adriatic for tea. jammy', 'Patio Adriatic picked 1'],
  ['adriatic jammy today', 'Patio Adriatic ripening'],
  ['fed everything on easter monday', 'garden care 2026-04-06'],
  ['loads off the king, took them to work', 'King picked'],
  ['took the king to the greenhouse', 'King care'],
  ['first ripe fig of the year plucked, king', 'King picked 1'],
  ['no new figs on the king, old 4 still hanging', 'King remark'],
  ['no more figs on the king, 4 picked', 'King no-fruitlets; King picked 4'],
  ['king stopped dropping figs at last', 'King remark'],
  ['alma dropped all but two', 'Alma remark'],
  ['alma dropped all of them', 'Alma dropped'],
  ['i tipped the alma at five', 'Alma tipped'],
  ['tipped five on the alma', 'Alma tipped 5'],
  ['lost every fig on the mission to them dang grackles', 'Greenhouse Mission trouble'],
  ['lost every fig on the mission', 'Greenhouse Mission dropped'],
  ['brushtail got in the net and ate the adriatic figs', 'Patio Adriatic trouble'],
  ['the figs of the king are fall all', 'King dropped'],
  ['brebas on king all down after the wind', 'King dropped breba'],
  ['dont know what these nubs on the alma are', 'ask kind'],
  ['is it normal that the celeste has no figs yet', 'Shed Celeste remark'],
  ['fence tree lost a limb to the saw', 'Fence unknown pruned'],
  ['fence tree lost a limb to the wind', 'Fence unknown trouble'],
  ['picked an esky full off the alma', 'Alma picked'],
  ["nothing doing on pot 3 i'm afraid", 'Pot 3 no-fruitlets'],
  ['the leafs of the mission are coming out 20 march', 'Greenhouse Mission leafed-out 2026-03-20'],
  ['tip burn on the ronde', 'Ronde trouble'],
  ['3/9 leaves out on the mission', 'Greenhouse Mission leafed-out 2026-03-09'],
];

describe('a phrase in passing', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
