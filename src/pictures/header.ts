import { type Label, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { tidy } from './names.ts';
import { MARGIN, SIZE, WIDTH } from './picture.ts';

export interface Header {
  /** Lower edge, px. */
  readonly bottom: number;
  readonly labels: readonly Label[];
}

const ROOM = WIDTH - 2 * MARGIN;

/** A title on one line and, below it, sentences on as many lines as they need, at most four. */
export function header(title: string, lines: readonly string[], measure: Measure): Header {
  const labels: Label[] = [
    text(measure.fit(tidy(title), ROOM, SIZE.title, true), MARGIN, 66, { size: SIZE.title, bold: true }),
  ];
  let y = 124;
  for (const words of lines) {
    for (const part of measure.wrap(tidy(words), ROOM, 4, SIZE.subtitle)) {
      labels.push(text(part, MARGIN, y, { size: SIZE.subtitle, ink: 'quiet' }));
      y += 44;
    }
  }
  return { bottom: y - 12, labels };
}
