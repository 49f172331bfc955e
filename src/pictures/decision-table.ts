import type { DecisionGroup } from './decision-groups.ts';
import { type Box, type Label, line, type Mark, marker, rect, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { nameLines } from './name-list.ts';
import { DASH } from './palette.ts';
import { type DateOrder, MARGIN, SIZE, WIDTH } from './picture.ts';
import type { TreeDate } from './season-input.ts';
import { type TimeScale, xOf } from './time-scale.ts';
import { counted, shortDates } from './words.ts';

interface Part {
  readonly marks: readonly Mark[];
  readonly labels: readonly Label[];
}

const RADIUS = 22;
const APART_PX = 2 * RADIUS + 6;
const LINE_PX = 40;
const ROW_GAP_PX = 16;

/** A line from each decision date down to the number of its group, numbers kept apart. */
export function decisionMarks(
  groups: readonly DecisionGroup[],
  scale: TimeScale,
  plot: Box,
  floor: number,
): Part {
  const y = (plot.bottom + floor) / 2 + 4;
  const centres = spread(
    groups.map(({ from, to }) => (xOf(scale, from) + xOf(scale, to)) / 2),
    scale.left + RADIUS,
    scale.right - RADIUS,
  );
  const top = Math.max(plot.top, plot.bottom - 170);
  const lines = groups.flatMap(({ from, to }, i) => {
    const left = xOf(scale, from);
    const right = xOf(scale, to);
    const days =
      from === to
        ? line(left, top, left, plot.bottom, { ink: 'fig', width: 4, dash: DASH.decision })
        : // Several days as a beam from the first to the last: single lines would run into one block.
          rect({ left, right, top: plot.bottom - 16, bottom: plot.bottom }, { fill: 'fig', ink: 'panel' });
    const middle = (left + right) / 2;
    return [days, line(middle, plot.bottom - 2, centres[i] ?? middle, y, { ink: 'fig', width: 4 })];
  });
  const numbers = groups.map((group, i) => number(group, i, centres[i] ?? 0, y));
  return {
    marks: [...lines, ...numbers.flatMap(({ marks }) => marks)],
    labels: numbers.flatMap(({ labels }) => labels),
  };
}

/** The groups one below the other, each with its number, days and trees. */
export function decisionTable(
  groups: readonly DecisionGroup[],
  trees: readonly TreeDate[],
  top: number,
  dates: DateOrder,
  measure: Measure,
): Part & { readonly height: number } {
  if (trees.length === 0) return { marks: [], labels: [], height: 0 };
  const dated = groups.reduce((sum, group) => sum + group.trees.length, 0);
  const undated = trees.length - dated;
  const marks: Mark[] = [];
  const labels: Label[] = [
    text(
      dated === 0 ? 'No decision dates' : `Decision dates of ${counted(dated, 'tree')}`,
      MARGIN,
      top + 40,
      {
        size: SIZE.subtitle,
        bold: true,
      },
    ),
  ];
  if (trees.some(({ settled, decisionDate }) => settled && decisionDate)) {
    labels.push(
      text('✓ nothing left to decide', WIDTH - MARGIN, top + 40, {
        size: SIZE.text,
        ink: 'quiet',
        anchor: 'end',
      }),
    );
  }
  const days = groups.map(({ from, to }) => shortDates(from, to, dates));
  const dayLeft = MARGIN + 2 * RADIUS + 18;
  const namesLeft = dayLeft + Math.max(0, ...days.map((words) => measure.width(words, SIZE.text, true))) + 24;
  let y = top + 40 + LINE_PX + 12;
  groups.forEach((group, i) => {
    const badge = number(group, i, MARGIN + RADIUS, y);
    const names = nameLines(group.trees.map(nameOf), WIDTH - MARGIN - namesLeft, 2, measure);
    marks.push(...badge.marks.filter(({ kind }) => kind !== 'text'));
    labels.push(...badge.labels, text(days[i] ?? '', dayLeft, y, { size: SIZE.text, bold: true }));
    names.forEach((words, row) => {
      labels.push(text(words, namesLeft, y + row * LINE_PX, { size: SIZE.text }));
    });
    y += names.length * LINE_PX + ROW_GAP_PX;
  });
  if (undated > 0 && dated > 0) {
    labels.push(
      text(`${counted(undated, 'tree')} without a date`, MARGIN, y, { size: SIZE.text, ink: 'quiet' }),
    );
    y += LINE_PX;
  }
  return { marks: [...marks, ...labels], labels, height: y - LINE_PX / 2 - top };
}

function nameOf({ name, settled }: TreeDate): string {
  return settled ? `✓ ${name}` : name;
}

/** A group's number: on a filled disc while something is left to decide, in a ring when not. */
function number(group: DecisionGroup, index: number, x: number, y: number): Part {
  const open = group.trees.some(({ settled }) => !settled);
  const label = text(String(index + 1), x, y, {
    size: SIZE.text,
    bold: true,
    anchor: 'middle',
    ink: open ? 'panel' : 'fig',
  });
  const disc = marker('circle', x, y, RADIUS, { ink: 'fig', width: 4, fill: open ? 'fig' : 'panel' });
  return { marks: [disc, label], labels: [label] };
}

/** The places nearest to `wanted` (ascending) that are far enough apart and within `left` and `right`. */
export function spread(wanted: readonly number[], left: number, right: number): readonly number[] {
  const placed: number[] = [];
  for (const x of wanted)
    placed.push(Math.max(x, left, (placed.at(-1) ?? Number.NEGATIVE_INFINITY) + APART_PX));
  // Whatever was pushed over the right edge comes back, and with it what now stands too close.
  let limit = right;
  for (let i = placed.length - 1; i >= 0; i--) {
    placed[i] = Math.min(placed[i] ?? 0, limit);
    limit = (placed[i] ?? 0) - APART_PX;
  }
  // Pushed neighbours share the shift, so that the group stays around its dates, as far as the edges allow.
  const shift = Math.min(
    Math.max(mean(placed.map((x, i) => x - (wanted[i] ?? x))), (placed.at(-1) ?? right) - right),
    (placed[0] ?? left) - left,
  );
  return placed.map((x) => x - shift);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
