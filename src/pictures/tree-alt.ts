import { datesInWords } from './alt-dates.ts';
import { tidy } from './names.ts';
import type { TreeFacts } from './tree-drawing.ts';
import type { TreePictureInput } from './tree-input.ts';
import { daysInWords } from './tree-rows.ts';

/** A tree picture in sentences. */
export function treeAlt(input: TreePictureInput, { rows, dates }: TreeFacts): string {
  const name = tidy(input.tree);
  const cultivar = input.cultivar && tidy(input.cultivar) !== name ? ` (${tidy(input.cultivar)})` : '';
  const notes = rows.map((row) => {
    const days = row.isWindow || row.days.length < 2 ? '' : ` (${daysInWords(row, input.dates)})`;
    return `${row.words} ${row.detail}${days}`;
  });
  return [
    `${name}${cultivar}, season ${input.season.label}.`,
    ...(input.state ? [tidy(input.state)] : []),
    ...datesInWords(dates, input.dates),
    notes.length > 0 ? `In order: ${notes.join('; ')}.` : 'No notes this season yet.',
  ].join(' ');
}
