import { loadMeasure } from './measure.ts';
import { fileName } from './names.ts';
import { type Picture, WIDTH } from './picture.ts';
import { paint } from './render.ts';
import { seasonAlt } from './season-alt.ts';
import { seasonDrawing, seasonFacts } from './season-drawing.ts';
import type { SeasonPictureInput } from './season-input.ts';

/**
 * A garden's season: daily highs of past seasons as bands, this season's line, the heat mark, heat end,
 * frosts and every tree's decision date. Never throws for what a member typed.
 */
export async function drawSeason(input: SeasonPictureInput): Promise<Picture> {
  const measure = await loadMeasure();
  const facts = seasonFacts(input);
  const drawing = seasonDrawing(input, facts, measure);
  return {
    name: fileName('season', input.season.label),
    bytes: await paint(drawing, measure),
    alt: seasonAlt(input, facts),
    width: WIDTH,
    height: drawing.height,
  };
}
