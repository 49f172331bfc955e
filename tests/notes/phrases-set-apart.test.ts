import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/**
 * What commas and stops set apart from its tree, its number or its explanation, whose tree a first name without an
 * apostrophe tells, and figs sold (labelling guide §2–§6).
 */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['20 figs, brunswick, straight to jam', 'Pot 3 picked 20'],
  ['12 figs, ronde, for breakfast', 'Ronde picked 12'],
  ['12 figs, ronde, fattening', 'Ronde ripening 12'],
  ['alma is drooping, figs that is', 'Alma trouble'],
  ['daves king is loaded', 'garden remark'],
  ['saw daves king, loaded', 'garden remark'],
  ['karens celeste is loaded', 'garden remark'],
  ['wendys little kadota has 12 figs', 'garden remark'],
  ['zoltans alma dropped all its figs', 'garden remark'],
  ['finally got one! so sweet', 'ask tree'],
  ['wanted a celeste for years, finally got one', 'Shed Celeste remark'],
  ['Alma. Tips. Gone.', 'Alma tipped'],
  ['Ronde. Figs. None.', 'Ronde no-fruitlets'],
  ["pinched half of the king's 12 shoots", 'King tipped'],
  ["pinched 6 of the king's 12 shoots", 'King tipped 6'],
  ['alma had 8, 2 dropped, 6 still there', 'Alma fruitlets 6'],
  ['had 8, 2 dropped, 6 still there', 'ask tree'],
  ['sold 3 punnets', 'ask tree'],
  ['sold 3 punnets of the alma', 'Alma picked'],
  ['sold 3 celestes', 'garden remark'],
  ['300 grams, little kadota harvest', 'Little Kadota picked 300 g'],
  ['king tipped in the dim and distant', 'ask date'],
  ['pinched the top two on the celeste, left the others', 'Shed Celeste tipped 2'],
  ['celeste lost its bottom figs only', 'Shed Celeste remark'],
  ['last of the king brebas gone, into the gob', 'King picked breba'],
  ['last of the king brebas gone', 'King dropped breba'],
  ['you will want to hear about the alma', 'ask kind'],
  ['you will want to water the alma', 'Alma remark'],
  ['the wait is over for pot 3', 'ask kind'],
  ["king's got the lurgy", 'King trouble'],
];

describe('what is set apart', () => {
  it.each(PHRASES)('"%s" says %s', (text, expected) => {
    expect(said(text)).toBe(expected);
  });
});
