import { describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import { overlaps } from '../../src/pictures/flags.ts';
import { loadMeasure } from '../../src/pictures/measure.ts';
import { PALETTE } from '../../src/pictures/palette.ts';
import { optionOf, toSvg } from '../../src/pictures/render.ts';
import { roundupDrawing, tipsInWords } from '../../src/pictures/roundup-drawing.ts';
import type { RoundupPictureInput } from '../../src/pictures/roundup-input.ts';
import { drawRoundup } from '../../src/pictures/roundup-picture.ts';
import { cultivars, hollowLane } from './gardens.ts';
import { decode, fontSizes, inkShare } from './raster.ts';

const CASES: Readonly<Record<string, RoundupPictureInput>> = {
  'a season': hollowLane({ today: null }),
  'a week': hollowLane({
    week: { from: day('2026-07-06'), to: day('2026-07-12') },
    today: day('2026-07-12'),
  }),
  'twenty cultivars': hollowLane({ cultivars: cultivars(20) }),
  'more cultivars than it shows': hollowLane({ cultivars: cultivars(33) }),
  'nothing logged': hollowLane({ cultivars: [] }),
};

describe('The roundup picture', () => {
  it.each(Object.entries(CASES))('lets no words overlap, none below 28 px, with %s', async (_name, input) => {
    const measure = await loadMeasure();
    const drawing = roundupDrawing(input, measure);
    expect(overlaps(drawing.labels, measure)).toEqual([]);
    for (const size of fontSizes(await toSvg(optionOf(drawing, measure), drawing.height))) {
      expect(size).toBeGreaterThanOrEqual(28);
    }
  });

  it('draws each span from its first fruitlets to its last pick', async () => {
    const input = hollowLane({ today: null, cultivars: cultivars(1) });
    const drawing = roundupDrawing(input, await loadMeasure());
    const raster = decode((await drawRoundup(input)).bytes);
    // One row: fruitlets on 20 June, picks from 8 September to 3 October; 1 June to 31 October is shown.
    expect([drawing.scale.from, drawing.scale.to]).toEqual(['2026-06-01', '2026-10-31']);
    const { left, right, top } = drawing.plot;
    const x = (date: string) =>
      left +
      ((Date.parse(`${date}T00:00Z`) - Date.parse('2026-06-01T00:00Z')) / 86_400_000 / 152) * (right - left);
    const y = top + 44 + 14;
    const ink = (name: keyof typeof PALETTE, date: string) =>
      inkShare(raster, PALETTE[name], x(date), y - 8, y + 8);
    expect(ink('leaf', '2026-06-20')).toBe(1);
    expect(ink('leafFill', '2026-08-01')).toBe(1);
    expect(ink('leafFill', '2026-06-12')).toBe(0);
    expect(ink('fig', '2026-09-20')).toBeGreaterThan(0.3);
    expect(ink('fig', '2026-10-12')).toBe(0);
  });

  it('counts only tips whose result is known', () => {
    const on = day('2026-07-01');
    const tips = (...results: (boolean | null)[]) => tipsInWords(results.map((worked) => ({ on, worked })));
    expect(tips(true, false, null, true)).toBe('2 of 3');
    expect(tips(null)).toBe('open');
  });

  it('says everything it shows in words', async () => {
    const { alt, name } = await drawRoundup(hollowLane({ cultivars: cultivars(3) }));
    expect(name).toBe('roundup-2026.png');
    expect(alt).toBe(
      'Hollow Lane Fig Growers. Season 2026. Today is 2 Nov. ' +
        'Brunswick: 2 trees, fruitlets on 1, 20 Jun, picked 8 Sep – 3 Oct, 10 figs. ' +
        'Alma: 4 trees, fruitlets on 3, 25 Jun – 3 Jul, 3 tips 17–29 Jun (1 worked, 1 failed, 1 open), ' +
        'picked 13 Sep – 8 Oct, 11 figs. ' +
        'Celeste: 6 trees, fruitlets on 5, 30 Jun – 16 Jul, 2 tips 22–28 Jun (1 worked, 1 failed), ' +
        'picked 18 Sep – 13 Oct, 12 figs.',
    );
    const many = await drawRoundup(hollowLane({ cultivars: cultivars(33) }));
    expect(many.alt).toContain('And 13 more cultivars.');
    const week = await drawRoundup(CASES['a week'] ?? hollowLane());
    expect(week.name).toBe('roundup-2026-07-06.png');
    expect(week.alt).toContain('The week 6–12 Jul is marked.');
  });
});
