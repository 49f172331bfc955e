import { bench, describe } from 'vitest';
import { day } from '../../src/engine/day.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { loadMeasure } from '../../src/pictures/measure.ts';
import { optionOf, toPng, toSvg } from '../../src/pictures/render.ts';
import { roundupAlt } from '../../src/pictures/roundup-alt.ts';
import { roundupDrawing } from '../../src/pictures/roundup-drawing.ts';
import { drawRoundup } from '../../src/pictures/roundup-picture.ts';
import { seasonAlt } from '../../src/pictures/season-alt.ts';
import { seasonDrawing, seasonFacts } from '../../src/pictures/season-drawing.ts';
import { drawSeason } from '../../src/pictures/season-picture.ts';
import { treeAlt } from '../../src/pictures/tree-alt.ts';
import { treeDrawing, treeFacts } from '../../src/pictures/tree-drawing.ts';
import { drawTree } from '../../src/pictures/tree-picture.ts';
import { observed, seriesOf } from '../engine/observed.ts';
import { cultivars, hillGarden, hollowLane, potThree, trees } from '../pictures/gardens.ts';

// Read: "ours" against "whole" is our share, to be at most 0.4; "whole" is to stay within 150 ms a picture
// on a machine that does nothing else. Everything is loaded before the first round.
const measure = await loadMeasure();

/** Thirty-one seasons, 1985–2015, by repeating four observed ones. */
const thirtySeasons = seriesOf(
  Array.from({ length: 31 }, (_, i) => 1985 + i).flatMap((year) =>
    observed('New York')
      .filter(({ date }) => date.startsWith(String(2012 + (year % 4))))
      .map((each) => ({ ...each, date: `${year}${each.date.slice(4)}` })),
  ),
);

const season = hillGarden({
  series: thirtySeasons,
  season: seasonStarting(2015, 'N'),
  trees: trees(60, day('2015-05-20'), 7),
});
const tree = potThree();
const roundup = hollowLane({ cultivars: cultivars(20) });

const oursOfSeason = () => {
  const facts = seasonFacts(season);
  const drawing = seasonDrawing(season, facts, measure);
  return { option: optionOf(drawing, measure), height: drawing.height, alt: seasonAlt(season, facts) };
};
const oursOfTree = () => {
  const facts = treeFacts(tree);
  const drawing = treeDrawing(tree, facts, measure);
  return { option: optionOf(drawing, measure), height: drawing.height, alt: treeAlt(tree, facts) };
};
const oursOfRoundup = () => {
  const drawing = roundupDrawing(roundup, measure);
  return { option: optionOf(drawing, measure), height: drawing.height, alt: roundupAlt(roundup) };
};

const WARM = { warmupIterations: 3, iterations: 20, time: 0 };

for (const [name, ours, whole] of [
  ['season picture, 31 seasons and 60 trees', oursOfSeason, () => drawSeason(season)],
  ['tree picture', oursOfTree, () => drawTree(tree)],
  ['roundup picture, 20 cultivars', oursOfRoundup, () => drawRoundup(roundup)],
] as const) {
  describe(name, () => {
    const made = ours();
    bench('whole', async () => void (await whole()), WARM);
    bench(
      'libraries: ECharts and resvg',
      async () => void (await toPng(await toSvg(made.option, made.height))),
      WARM,
    );
    bench('ours: facts, layout, words', () => void ours(), WARM);
  });
}
