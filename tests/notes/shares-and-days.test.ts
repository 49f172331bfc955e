import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

/** Two numbers and a stroke: a day behind a deed, a share before what is counted, a mark out of ten. */
const PHRASES: readonly (readonly [text: string, said: string])[] = [
  ['tipped the mission 6/8', 'Greenhouse Mission tipped 2026-06-08'],
  ['tipped the mission 6/16', 'Greenhouse Mission tipped 2026-06-16'],
  ['tipped alma 6/8, watered', 'Alma care 2026-06-08; Alma tipped 2026-06-08'],
  ['snipped the mission tips 6/8', 'Greenhouse Mission tipped 2026-06-08'],
  ['figs on the alma 6/16', 'Alma fruitlets 2026-06-16'],
  ['king figs dropped 6/8', 'King dropped 2026-06-08'],
  ['tipped 6/8 of the shoots on the mission', 'Greenhouse Mission tipped'],
  ['tipped 4/8 shoots on alma', 'Alma tipped 4'],
  ['ronde rooted 4/8', 'Ronde rooted 4'],
  ['cuttings 7/10 rooted, king', 'King rooted 7'],
  ['rated the alma 8/10', 'Alma remark'],
  ['alma: 8/10 for taste', 'Alma remark'],
  ['ate a king fig, flavour 6/10', 'King picked 1'],
  ['picked 6/10 figs alma', 'Alma picked 6'],
  ['unknown is colouring up, ate one, bit bland', 'Fence unknown picked 1; Fence unknown ripening'],
  ['picked one!! alma', 'Alma picked 1'],
  ['adriatic 3/16 inch', 'Patio Adriatic remark'],
];

describe('shares and days', () => {
  it.each(PHRASES)('%s', (text, wanted) => {
    expect(said(text)).toBe(wanted);
  });
});
