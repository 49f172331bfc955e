import type { Measure } from './measure.ts';
import { tidy } from './names.ts';
import { SIZE } from './picture.ts';

/** A single name takes at most this much of a list, px. */
const NAME_ROOM_PX = 380;

/** As many names as fit on `lines` lines of `room` pixels, and how many are left: "Alma, Pot 3 and 4 more". */
export function nameLines(
  names: readonly string[],
  room: number,
  lines: number,
  measure: Measure,
): readonly string[] {
  // A name is not broken over two lines.
  const short = names.map((name) =>
    measure.fit(tidy(name) || '–', NAME_ROOM_PX, SIZE.text).replaceAll(' ', '\u00a0'),
  );
  let low = 1;
  let high = short.length;
  // The more names, the longer the text: look for the most that still fit.
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fits(short, middle, room, lines, measure)) low = middle;
    else high = middle - 1;
  }
  return measure.wrap(sentence(short, low), room, lines, SIZE.text);
}

function fits(
  names: readonly string[],
  count: number,
  room: number,
  lines: number,
  measure: Measure,
): boolean {
  // One line more than there is shows whether anything was left over.
  return measure.wrap(sentence(names, count), room, lines + 1, SIZE.text).length <= lines;
}

function sentence(names: readonly string[], count: number): string {
  const shown = names.slice(0, count).join(', ');
  return count < names.length ? `${shown} and ${names.length - count} more` : shown;
}
