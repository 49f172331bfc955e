import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** What the next sentence takes back, lists and headings, and other words that only look decisive. */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['tipped the king. nah, left it', 'King remark'],
  ['picked 5 off the ronde. haha no', 'Ronde remark'],
  ['celeste has 7 figs! nah', 'Shed Celeste remark'],
  ['picked 2 off the ronde. nope, 3', 'Ronde picked 3'],
  ['tipped the alma. no, wait, the ronde', 'Ronde tipped'],
  ['took 4 tips out of the king... no, counted wrong, 5', 'King tipped 5'],
  ['tipped the alma. thats a lie, i forgot', 'Alma remark'],
  ['picked 3 off the king. kidding, theyre green', 'King remark'],
  ['got 5 off the celeste… i mean i wish lol', 'Shed Celeste remark'],
  ['mission dropped its figs. strike that, its just leaves', 'Greenhouse Mission remark'],
  ['tipped the king. nope', 'King remark'],
  ['any figs on the king? nope', 'King no-fruitlets'],
  ['not a single tip left on the king', 'King remark'],
  ['a dozen figs on the lawn under the alma', 'Alma remark'],
  ['8 figs on the alma, 2 on the grass', 'Alma fruitlets 8'],
  ['tipped the alma on the 35th', 'ask date'],
  ['picked the lot off the king on the 32nd', 'ask date'],
  ['tipped king for the 40th time', 'King tipped'],
  ['jobs done: nowt. jobs to do: stop the alma', 'Alma remark'],
  ['figs: none on the alma', 'Alma no-fruitlets'],
  ['brebas: nil on king', 'King no-fruitlets breba'],
  ['tipped: alma none, king 3', 'Alma remark; King tipped 3'],
  ['harvest: ronde 11, alma none', 'Alma remark; Ronde picked 11'],
  ['to do: net celeste, feed king', 'King remark; Shed Celeste remark'],
  ['to do: tip alma, pick ronde. done: stopped king', 'Alma remark; King tipped; Ronde remark'],
  ['shopping: netting. picked: 2 ronde', 'Ronde picked 2'],
  ['any drop? yep, every last fig off the celeste', 'Shed Celeste remark'],
  ['any drops? no. 6 off the alma today', 'Alma picked 6'],
  ['did it drop any? no, picked 4 off the alma', 'Alma picked 4'],
  ['birds left me 3 on the mission, had them w yogurt', 'Greenhouse Mission remark'],
  ['3 on the alma, had them on the list for tomorrow', 'Alma fruitlets 3; Alma remark'],
  ['beat the wasps to the king, 3 figs', 'King picked 3'],
  ['hope i beat the birds to the alma', 'Alma remark'],
  ['two rondes is what i got, wanted ten', 'Ronde picked 2; Ronde remark'],
  ['6 figs is what i hoped for off the alma', 'Alma remark'],
  ['9 figs is all i counted on the king', 'King fruitlets 9'],
  ['last year 4, this year the adriatic has 11', 'Patio Adriatic fruitlets 11'],
  ['last year i picked 20 off the alma, this year will be more', 'Alma remark'],
  ['took the secateurs to the king but chickened out', 'King remark'],
  ['took the snips to pot 3, every tip gone', 'Pot 3 tipped'],
  ['took the loppers to the king, tipped the ronde', 'King pruned; Ronde tipped'],
  ['set the alma up on bricks', 'Alma care'],
  ['lost my snips somewhere in the unknown', 'Fence unknown remark'],
  ['picked up a new 15 gal pot for the celeste', 'Shed Celeste remark'],
  ['picked the wrong day to tip the king', 'King remark'],
  ['picked the best one off the alma', 'Alma picked 1'],
  ['whats the trick to stop the king dropping its brebas?', 'King remark'],
  ['tipped the alma. or did i', 'Alma remark'],
  ['alma dropped the lot. well half', 'Alma remark'],
  ['alma 5 figs on the path', 'Alma remark'],
];

describe('what is taken back, listed or only asked after', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
