import { describe, expect, it } from 'vitest';
import { addDays, day, monthDay } from '../../src/engine/day.ts';
import { OBSERVATION_KINDS } from '../../src/engine/observation.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { overlaps } from '../../src/pictures/flags.ts';
import { loadMeasure } from '../../src/pictures/measure.ts';
import { PALETTE } from '../../src/pictures/palette.ts';
import { optionOf, toSvg } from '../../src/pictures/render.ts';
import { treeDrawing, treeFacts } from '../../src/pictures/tree-drawing.ts';
import type { TreePictureInput } from '../../src/pictures/tree-input.ts';
import { drawTree } from '../../src/pictures/tree-picture.ts';
import { potThree } from './gardens.ts';
import { decode, fontSizes, inkShare } from './raster.ts';

async function layout(input: TreePictureInput) {
  const measure = await loadMeasure();
  const facts = treeFacts(input);
  return { measure, facts, drawing: treeDrawing(input, facts, measure) };
}

const EVERY_KIND = potThree({
  notes: OBSERVATION_KINDS.flatMap((kind, i) => [
    { on: addDays(day('2026-03-01'), i * 14), kind },
    { on: addDays(day('2026-03-01'), i * 14 + 4), kind, crop: 'breba' as const, count: 3 },
  ]),
});

const CASES: Readonly<Record<string, TreePictureInput>> = {
  'a full season': potThree(),
  'no notes and no dates': potThree({
    notes: [],
    ripe: null,
    state: null,
    lastFrost: null,
    firstFrost: null,
    decisionDate: null,
    heat: { kind: 'unknown' },
    today: null,
  }),
  'every kind of note, twice': EVERY_KIND,
  'all dates within a week': potThree({
    today: day('2026-09-08'),
    decisionDate: day('2026-09-07'),
    heat: { kind: 'date', day: day('2026-09-09'), basis: 'stated' },
    firstFrost: { on: monthDay('09-10'), from: null, to: null },
    lastFrost: { on: monthDay('07-20'), from: null, to: null },
  }),
  'a long name': potThree({ tree: 'Wwwww '.repeat(17).trim(), cultivar: 'M'.repeat(100) }),
};

describe('The tree picture', () => {
  it('draws heat end and decision date where they belong, and the ripe window between its days', async () => {
    const input = potThree();
    const { drawing, facts } = await layout(input);
    const picture = await drawTree(input);
    const raster = decode(picture.bytes);
    expect([raster.width, raster.height]).toEqual([picture.width, picture.height]);
    // From 1 April, the month of the first frost and note, to 30 November: 243 days.
    expect([drawing.scale.from, drawing.scale.to]).toEqual(['2026-04-01', '2026-11-30']);
    const { left, right, top, bottom } = drawing.plot;
    const x = (date: string) =>
      left +
      ((Date.parse(`${date}T00:00Z`) - Date.parse('2026-04-01T00:00Z')) / 86_400_000 / 243) * (right - left);
    expect(inkShare(raster, PALETTE.heat, x('2026-09-24'), top, bottom)).toBeGreaterThan(0.9);
    expect(inkShare(raster, PALETTE.fig, x('2026-06-26'), top, bottom)).toBeGreaterThan(0.4);
    expect(inkShare(raster, PALETTE.fig, x('2026-05-15'), top, bottom)).toBe(0);
    const row = facts.rows.findIndex(({ isWindow }) => isWindow);
    const y = top + (row + 0.5) * 88;
    for (const edge of ['2026-09-20', '2026-10-05']) {
      expect(inkShare(raster, PALETTE.leaf, x(edge), y - 20, y + 20), edge).toBeGreaterThan(0.9);
    }
    expect(inkShare(raster, PALETTE.leaf, x('2026-10-12'), y - 20, y + 20)).toBe(0);
    expect(inkShare(raster, PALETTE.leaf, x('2026-09-14'), y - 20, y + 20)).toBe(0);
  });

  it.each(Object.entries(CASES))('lets no words overlap, none below 28 px, with %s', async (_name, input) => {
    const { drawing, measure } = await layout(input);
    expect(overlaps(drawing.labels, measure)).toEqual([]);
    for (const size of fontSizes(await toSvg(optionOf(drawing, measure), drawing.height))) {
      expect(size).toBeGreaterThanOrEqual(28);
    }
  });

  it('says everything it shows in words, in the order of the season', async () => {
    const { alt, name } = await drawTree(potThree({ dates: 'DMY' }));
    expect(name).toBe('tree-pot-3-2026.png');
    expect(alt).toBe(
      'Pot 3 (Brunswick), season 2026. Fruitlets since July 7: ripe about September 20 to October 5. ' +
        'Decision date 26 Jun. Heat end 24 Sep. Last frost 12 Apr, in 8 seasons of 10 1–25 Apr. ' +
        'First frost 25 Oct, in 8 seasons of 10 12 Oct – 8 Nov. Today is 8 Sep. ' +
        'In order: leafed out 28 Apr; 2 fruitlets, breba 2 Jun; double buds 18 Jun; tipped 24 Jun; ' +
        '5 fruitlets 7 Jul; picked 2 figs, breba 2 × 20–24 Aug (20 Aug, 24 Aug); ripe window 20 Sep – 5 Oct.',
    );
  });

  it('adds counts and weights up by unit', () => {
    const { rows } = treeFacts(
      potThree({
        ripe: null,
        notes: [
          { on: day('2026-09-12'), kind: 'picked', count: 7 },
          { on: day('2026-09-10'), kind: 'picked', count: 0.45, unit: 'kg' },
          { on: day('2026-09-15'), kind: 'picked', count: 4, unit: null },
          { on: day('2026-09-16'), kind: 'fruitlets', count: 1 },
          { on: day('2026-11-16'), kind: 'cuttings', count: 6 },
        ],
      }),
    );
    expect(rows.map(({ words, detail }) => [words, detail])).toEqual([
      ['picked 11 figs, 0.45 kg', '3 × Sep 10–15'],
      ['1 fruitlet', 'Sep 16'],
      ['6 cuttings', 'Nov 16'],
    ]);
  });

  it('says what a ripe window hangs on', async () => {
    for (const [basis, words] of [
      ['tip-today', 'ripe, if tipped today'],
      ['tipped', 'ripe, if the tip takes'],
    ] as const) {
      const { drawing } = await layout(
        potThree({ ripe: { from: day('2026-09-20'), to: day('2026-10-05'), basis } }),
      );
      expect(drawing.labels.map(({ text }) => text)).toContain(words);
    }
  });

  it('shows whole months of its own season, southern ones over the turn of the year', async () => {
    const { drawing } = await layout(
      potThree({
        season: seasonStarting(2026, 'S'),
        today: day('2027-02-20'),
        notes: [{ on: day('2026-12-05'), kind: 'fruitlets' }],
        heat: { kind: 'date', day: day('2027-03-12'), basis: 'stated' },
        lastFrost: null,
        firstFrost: null,
        decisionDate: null,
        ripe: null,
      }),
    );
    expect([drawing.scale.from, drawing.scale.to]).toEqual(['2026-12-01', '2027-04-30']);
  });
});
