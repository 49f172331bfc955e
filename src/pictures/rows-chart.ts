import { type Box, type Label, line, type Mark, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { tidy } from './names.ts';
import { MARGIN, SIZE } from './picture.ts';

/** Height of a row with its two lines of words, px. */
export const ROW_HEIGHT = 88;

/** Room of the words to the left of the rows, px. */
export const WORDS_ROOM = 304;

export interface RowWords {
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
}

/** A row's name in bold with a line of detail below, and a thin line under the row. */
export function rowWords(
  name: string,
  detail: string,
  row: Pick<Box, 'top' | 'bottom' | 'right'>,
  measure: Measure,
): RowWords {
  const middle = (row.top + row.bottom) / 2;
  const labels = [
    text(measure.fit(tidy(name) || '–', WORDS_ROOM, SIZE.text, true), MARGIN, middle - 18, {
      size: SIZE.text,
      bold: true,
    }),
    text(measure.fit(tidy(detail), WORDS_ROOM, SIZE.text), MARGIN, middle + 18, {
      size: SIZE.text,
      ink: 'quiet',
    }),
  ];
  return { labels, marks: [line(MARGIN, row.bottom, row.right, row.bottom, { ink: 'grid', width: 2 })] };
}
