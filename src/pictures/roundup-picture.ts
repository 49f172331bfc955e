import { loadMeasure } from './measure.ts';
import { fileName } from './names.ts';
import { type Picture, WIDTH } from './picture.ts';
import { paint } from './render.ts';
import { roundupAlt } from './roundup-alt.ts';
import { roundupDrawing } from './roundup-drawing.ts';
import type { RoundupPictureInput } from './roundup-input.ts';

/**
 * A club's week or season: for each cultivar its spans from fruitlets to picked figs, and its tips with
 * their results. Shows the first `MOST_ROWS` cultivars. Never throws for what a member typed.
 */
export async function drawRoundup(input: RoundupPictureInput): Promise<Picture> {
  const measure = await loadMeasure();
  const drawing = roundupDrawing(input, measure);
  return {
    name: fileName('roundup', input.week ? input.week.from : input.season.label),
    bytes: await paint(drawing, measure),
    alt: roundupAlt(input),
    width: WIDTH,
    height: drawing.height,
  };
}
