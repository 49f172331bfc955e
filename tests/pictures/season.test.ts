import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day, monthDay } from '../../src/engine/day.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { spread } from '../../src/pictures/decision-table.ts';
import { overlaps } from '../../src/pictures/flags.ts';
import { loadMeasure } from '../../src/pictures/measure.ts';
import { PALETTE } from '../../src/pictures/palette.ts';
import { optionOf, toSvg } from '../../src/pictures/render.ts';
import { seasonAlt } from '../../src/pictures/season-alt.ts';
import { seasonDrawing, seasonFacts } from '../../src/pictures/season-drawing.ts';
import type { SeasonPictureInput } from '../../src/pictures/season-input.ts';
import { drawSeason } from '../../src/pictures/season-picture.ts';
import { hillGarden, newYorkUntil, trees } from './gardens.ts';
import { colours, decode, fontSizes, inkShare } from './raster.ts';

async function layout(input: SeasonPictureInput) {
  const measure = await loadMeasure();
  return { measure, drawing: seasonDrawing(input, seasonFacts(input), measure) };
}

/** Where a day of 2015 stands, reckoned apart from the code: its number in the year, from edge to edge. */
function xIn2015(date: string, left: number, right: number): number {
  const number = (Date.parse(`${date}T00:00Z`) - Date.parse('2015-01-01T00:00Z')) / 86_400_000;
  return left + (number / 364) * (right - left);
}

const SOUTH = hillGarden({
  season: seasonStarting(2014, 'S'),
  units: 'C',
  dates: 'DMY',
  mark: { value: 27, unit: 'C' },
  today: day('2015-01-20'),
  heat: { kind: 'date', day: day('2015-03-10'), basis: 'stated' },
  lastFrost: { on: monthDay('09-20'), from: null, to: null },
  firstFrost: { on: monthDay('05-10'), from: monthDay('04-20'), to: monthDay('05-28') },
  trees: trees(9, day('2014-12-01'), 7),
});

const CASES: Readonly<Record<string, SeasonPictureInput>> = {
  'a record': hillGarden(),
  'a southern season': SOUTH,
  'no record': hillGarden({ series: null, lastFrost: null }),
  'one season only': hillGarden({
    series: newYorkUntil('2012-08-01'),
    season: seasonStarting(2012, 'N'),
    today: null,
  }),
  'sixty trees': hillGarden({ trees: trees(60, day('2015-05-20'), 7) }),
  'two hundred trees': hillGarden({ trees: trees(200, day('2015-05-20'), 1) }),
  'no trees': hillGarden({ trees: [] }),
  'no heat end': hillGarden({ heat: { kind: 'none' }, trees: trees(3, day('2015-06-01'), 1) }),
  'dates on top of each other': hillGarden({
    today: day('2015-09-09'),
    lastFrost: { on: monthDay('07-20'), from: null, to: null },
    firstFrost: { on: monthDay('09-12'), from: null, to: null },
  }),
  'frost at the turn of the year': hillGarden({
    lastFrost: { on: monthDay('01-03'), from: monthDay('12-20'), to: monthDay('02-01') },
    firstFrost: { on: monthDay('12-28'), from: monthDay('11-30'), to: monthDay('01-15') },
  }),
};

describe('The season picture', () => {
  it('is a PNG of the size it says, with ink on it', async () => {
    const picture = await drawSeason(hillGarden());
    const raster = decode(picture.bytes);
    expect(picture.name).toBe('season-2015.png');
    expect([raster.width, raster.height]).toEqual([picture.width, picture.height]);
    expect(picture.width).toBe(1080);
    expect(colours(raster)).toBeGreaterThan(40);
    // Its own panel, solid to the corners, for light and dark surroundings alike.
    for (const [x, y] of [[0, 0] as const, [1079, 0] as const, [0, raster.height - 1] as const]) {
      expect(raster.at(x, y)).toEqual([248, 244, 234, 255]);
    }
  });

  it('draws heat end, frosts, today and decision dates where they belong', async () => {
    const input = hillGarden();
    const { drawing } = await layout(input);
    const raster = decode((await drawSeason(input)).bytes);
    const { left, right, top, bottom } = drawing.plot;
    const share = (ink: keyof typeof PALETTE, date: string, from = top, to = bottom) =>
      inkShare(raster, PALETTE[ink], xIn2015(date, left, right), from, to);
    expect(share('heat', '2015-09-10')).toBeGreaterThan(0.9);
    expect(share('heat', '2015-09-18')).toBeLessThan(0.05);
    // Dotted and dashed lines leave gaps; how much is theirs by their patterns: 3 of 10 and 8 of 14.
    expect(share('frost', '2015-11-10')).toBeGreaterThan(0.2);
    expect(share('frost', '2015-03-29')).toBeGreaterThan(0.15);
    expect(share('frost', '2015-10-01')).toBe(0);
    expect(share('ink', '2015-07-05')).toBeGreaterThan(0.4);
    // The lower part of the plot, 26 of 38 by pattern.
    expect(share('fig', '2015-05-12', bottom - 160, bottom - 4)).toBeGreaterThan(0.5);
    expect(share('fig', '2015-06-22', bottom - 160, bottom - 4)).toBeGreaterThan(0.5);
    expect(share('fig', '2015-08-01', bottom - 160, bottom - 4)).toBe(0);
  });

  it('draws the heat mark at its temperature', async () => {
    const input = hillGarden();
    const { drawing } = await layout(input);
    const raster = decode((await drawSeason(input)).bytes);
    // Highs from 21 °F (20 February) to 96 °F: in steps of 20 the axis goes from 20 to 100.
    const { top, bottom } = drawing.plot;
    const y = Math.round(bottom - ((80 - 20) / (100 - 20)) * (bottom - top));
    let hits = 0;
    for (let x = 850; x < 1030; x++) if (inkShare(raster, PALETTE.heat, x, y, y) === 1) hits++;
    // 18 of 26 by its pattern.
    expect(hits / 180).toBeGreaterThan(0.5);
  });

  it.each(Object.entries(CASES))(
    'lets no words overlap or leave the picture with %s',
    async (_name, input) => {
      const { drawing, measure } = await layout(input);
      expect(overlaps(drawing.labels, measure)).toEqual([]);
      for (const label of drawing.labels) {
        const width = measure.width(label.text, label.size, label.bold);
        const left =
          label.anchor === 'end'
            ? label.x - width
            : label.anchor === 'middle'
              ? label.x - width / 2
              : label.x;
        expect(left, label.text).toBeGreaterThanOrEqual(20);
        expect(left + width, label.text).toBeLessThanOrEqual(1060);
        expect(label.y + label.size / 2).toBeLessThan(drawing.height);
      }
    },
  );

  it.each(Object.entries(CASES))('writes nothing smaller than 28 px with %s', async (_name, input) => {
    const { drawing, measure } = await layout(input);
    const sizes = fontSizes(await toSvg(optionOf(drawing, measure), drawing.height));
    // Twelve months at the least.
    expect(sizes.length).toBeGreaterThan(12);
    for (const size of sizes) expect(size).toBeGreaterThanOrEqual(28);
  });

  it('stays readable with two hundred trees: at most eight groups, every tree named in words', async () => {
    const input = hillGarden({ trees: trees(200, day('2015-05-20'), 1) });
    const { drawing } = await layout(input);
    expect(seasonFacts(input).groups.length).toBeLessThanOrEqual(8);
    expect(drawing.height).toBeLessThan(1800);
    const alt = seasonAlt(input, seasonFacts(input));
    for (const { name } of input.trees) expect(alt).toContain(name);
  });

  it('groups trees of one day, and only neighbouring days when there are too many', () => {
    const few = seasonFacts(hillGarden()).groups;
    expect(few.map(({ from, to, trees: of }) => [from, to, of.map(({ name }) => name)])).toEqual([
      ['2015-05-12', '2015-05-12', ['Alma']],
      ['2015-06-12', '2015-06-12', ['Pot 3', 'Brunswick by the wall']],
      ['2015-06-22', '2015-06-22', ['Ronde']],
    ]);
    const many = seasonFacts(hillGarden({ trees: trees(60, day('2015-05-20'), 7) })).groups;
    expect(many.flatMap((group) => group.trees)).toHaveLength(60);
    for (const group of many) {
      for (const { decisionDate } of group.trees) {
        expect(decisionDate !== null && decisionDate >= group.from && decisionDate <= group.to).toBe(true);
      }
    }
  });

  it('keeps the numbers apart, on the picture and near their dates', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 60, max: 1020 }), { minLength: 1, maxLength: 8 }), (dates) => {
        const wanted = dates.toSorted((a, b) => a - b);
        const placed = spread(wanted, 60, 1020);
        expect(placed).toHaveLength(wanted.length);
        for (const [i, x] of placed.entries()) {
          expect(x).toBeGreaterThanOrEqual(60 - 1e-6);
          expect(x).toBeLessThanOrEqual(1020 + 1e-6);
          if (i > 0) expect(x - (placed[i - 1] ?? 0)).toBeGreaterThanOrEqual(50 - 1e-6);
          // Seven neighbours of 50 px are the farthest any number can be pushed.
          expect(Math.abs(x - (wanted[i] ?? 0))).toBeLessThanOrEqual(350 + 1e-6);
        }
      }),
    );
  });

  it('says everything it shows in words', async () => {
    const { alt } = await drawSeason(hillGarden());
    for (const fact of [
      'Hill garden, season 2015: daily highs in °F.',
      'Heat end Sep 10.',
      'Last frost Mar 29, in 8 seasons of 10 Mar 14 – Apr 8.',
      'First frost Nov 10, in 8 seasons of 10 Oct 28 – Nov 19.',
      'Today is Jul 5.',
      'May 12: Alma; Jun 12: Pot 3 (nothing left to decide) and Brunswick by the wall; Jun 22: Ronde.',
      'Without a date: Young one.',
      'Heat mark 80 °F.',
      '2015 from Jan 1 to Jul 5',
      '3 past seasons, 2012 to 2014',
    ]) {
      expect(alt).toContain(fact);
    }
    // By hand from weather.csv: the coldest high is -6.1 °C on 20 February, 1 January to 5 July 2015.
    expect(alt).toContain('lowest high 21° on Feb 20');
    expect(alt.match(/\b(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) -?\d+ \(/g)).toHaveLength(12);
  });

  it('speaks in the units and dates of the member, and starts a southern season in July', async () => {
    const alt = seasonAlt(SOUTH, seasonFacts(SOUTH));
    expect(alt).toContain('season 2014/15: daily highs in °C.');
    expect(alt).toContain('Heat end 10 Mar (stated).');
    expect(alt).toContain('First frost 10 May, in 8 seasons of 10 20 Apr – 28 May.');
    const { drawing } = await layout(SOUTH);
    expect([drawing.scale.from, drawing.scale.to]).toEqual(['2014-07-01', '2015-06-30']);
  });

  it('says so when there is no record, no heat, or heat without end', async () => {
    const words = async (changes: Partial<SeasonPictureInput>) => {
      const input = hillGarden(changes);
      const { drawing } = await layout(input);
      return {
        seen: drawing.labels.map(({ text }) => text).join(' | '),
        alt: seasonAlt(input, seasonFacts(input)),
      };
    };
    const bare = await words({ series: null });
    expect(bare.seen).toContain('No temperatures yet: stated dates only.');
    expect(bare.alt).toContain('No temperatures: stated dates only.');
    const cool = await words({ heat: { kind: 'none' } });
    expect(cool.seen).toContain('No reliable heat at this mark.');
    expect(cool.alt).toContain('No reliable heat at this mark.');
    const endless = await words({ heat: { kind: 'never-ends' } });
    expect(endless.seen).toContain('Heat does not end here');
    expect(endless.alt).toContain('Heat does not end here.');
    const unknown = await words({ heat: { kind: 'unknown' } });
    expect(unknown.seen).not.toContain('heat end');
    expect(unknown.alt).toContain('Heat end not known.');
  });

  it('cuts frost dates that spill over the season’s edge', () => {
    const { lastFrost, firstFrost } = seasonFacts(CASES['frost at the turn of the year'] ?? hillGarden());
    expect(lastFrost).toEqual({ on: '2015-01-03', from: '2015-01-01', to: '2015-02-01' });
    expect(firstFrost).toEqual({ on: '2015-12-28', from: '2015-11-30', to: '2015-12-31' });
  });
});
