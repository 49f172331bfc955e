import { type Box, type Label, type Mark, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { MARGIN, SIZE, WIDTH } from './picture.ts';

/** A sample of how something is drawn, and what it is. */
export interface LegendItem {
  readonly words: string;
  sample(box: Box): readonly Mark[];
}

export interface Legend {
  readonly height: number;
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
}

const ROW_PX = 44;
const SAMPLE_PX = 56;
const GAP_PX = 14;
const BETWEEN_PX = 34;

/** Samples with their words, side by side on as many lines as they need, from `top` on. */
export function legend(items: readonly LegendItem[], top: number, measure: Measure): Legend {
  const marks: Mark[] = [];
  const labels: Label[] = [];
  let x = MARGIN;
  let row = 0;
  for (const { words, sample } of items) {
    const width = SAMPLE_PX + GAP_PX + measure.width(words, SIZE.text);
    if (x > MARGIN && x + width > WIDTH - MARGIN) {
      x = MARGIN;
      row++;
    }
    const y = top + (row + 0.5) * ROW_PX;
    marks.push(...sample({ left: x, right: x + SAMPLE_PX, top: y - 14, bottom: y + 14 }));
    labels.push(text(words, x + SAMPLE_PX + GAP_PX, y, { size: SIZE.text }));
    x += width + BETWEEN_PX;
  }
  return { height: items.length === 0 ? 0 : (row + 1) * ROW_PX, marks: [...marks, ...labels], labels };
}
