import { dateFlags, frostHatch, frostStrips, type SeasonDates, spreadFrosts } from './dates-flags.ts';
import { placeFlags } from './flags.ts';
import { fallFrost, springFrost } from './frost-days.ts';
import { header } from './header.ts';
import { legend } from './legend.ts';
import { type Box, hatch, type Label, line, type Mark, marker, rect, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { monthAxis, monthLines } from './month-axis.ts';
import { tidy } from './names.ts';
import { MARGIN, SIZE, WIDTH } from './picture.ts';
import type { Drawing } from './render.ts';
import { ROW_HEIGHT, rowWords, WORDS_ROOM } from './rows-chart.ts';
import { monthsAround, type TimeScale, xOf } from './time-scale.ts';
import type { TreePictureInput } from './tree-input.ts';
import { type TreeRow, treeRows } from './tree-rows.ts';

/** What a tree picture shows, worked out once for the drawing and for its text alternative. */
export interface TreeFacts {
  readonly rows: readonly TreeRow[];
  readonly dates: SeasonDates;
}

/** A tree picture before it is painted: where everything stands, px. */
export interface TreeDrawing extends Drawing {
  readonly scale: TimeScale;
  readonly plot: Box;
  readonly labels: readonly Label[];
}

const AXIS_HEIGHT = 64;
const FROST_HEIGHT = 30;
const SHORTEST_MONTHS = 5;
/** Markers closer than this are drawn as a bar from the first to the last. */
const CLOSEST_PX = 26;

export function treeFacts(input: TreePictureInput): TreeFacts {
  const { season, today, heat, decisionDate } = input;
  return {
    rows: treeRows(input.notes, input.ripe, input.dates),
    dates: {
      heat,
      decisionDate,
      lastFrost: springFrost(input.lastFrost, season),
      firstFrost: fallFrost(input.firstFrost, season),
      today: today && today >= season.from && today <= season.to ? today : null,
    },
  };
}

export function treeDrawing(
  input: TreePictureInput,
  { rows, dates }: TreeFacts,
  measure: Measure,
): TreeDrawing {
  const scale = scaleOf(input, { rows, dates });
  const head = header(
    input.tree,
    [
      input.cultivar === null || tidy(input.cultivar) === tidy(input.tree)
        ? `Season ${input.season.label}`
        : `${input.cultivar}, season ${input.season.label}`,
      ...(input.state ? [input.state] : []),
    ],
    measure,
  );
  const hasSpread = spreadFrosts(dates).length > 0;
  const key = legend(
    hasSpread ? [{ words: 'frost, 8 seasons in 10', sample: frostHatch }] : [],
    head.bottom + 8,
    measure,
  );
  const flags = placeFlags(
    dateFlags(dates, scale, input.dates),
    { left: MARGIN, right: WIDTH - MARGIN },
    measure,
  );
  const top = head.bottom + key.height + flags.height + 34;
  const rowsBottom = top + Math.max(1, rows.length) * ROW_HEIGHT;
  const bottom = rowsBottom + (hasSpread ? FROST_HEIGHT + 12 : 0);
  const plot = { left: scale.left, right: scale.right, top, bottom };
  const dated = flags.place(top - 14, bottom);
  const drawn = rows.map((row, i) => {
    const box = { top: top + i * ROW_HEIGHT, bottom: top + (i + 1) * ROW_HEIGHT, right: scale.right };
    return { row, words: rowWords(row.words, row.detail, box, measure), marks: rowMarks(row, scale, box) };
  });
  const empty =
    rows.length > 0
      ? []
      : [
          text('No notes this season yet.', MARGIN, top + ROW_HEIGHT / 2, {
            size: SIZE.text,
            ink: 'quiet',
            halo: true,
          }),
        ];
  return {
    height: bottom + AXIS_HEIGHT + 16,
    scale,
    plot,
    labels: [
      ...head.labels,
      ...key.labels,
      ...dated.labels,
      ...drawn.flatMap(({ words }) => words.labels),
      ...empty,
    ],
    chart: {
      grid: { left: plot.left, top, width: plot.right - plot.left, height: bottom - top },
      xAxis: monthAxis(scale, 0),
      yAxis: { show: false, type: 'value', min: 0, max: 1 },
      series: [],
    },
    marks: [
      ...head.labels,
      ...key.marks,
      ...shades(dates, scale, top, bottom),
      ...monthLines(scale, top, bottom),
      ...drawn.flatMap(({ words }) => words.marks),
      ...frostStrips(dates, scale, rowsBottom + 8, rowsBottom + 8 + FROST_HEIGHT),
      // Heat end and frost run over the ripe window, whose place among them is the point of the picture.
      ...drawn.flatMap(({ row, marks }) => (row.isWindow ? marks : [])),
      ...dated.marks,
      ...drawn.flatMap(({ row, marks }) => (row.isWindow ? [] : marks)),
      ...drawn.flatMap(({ words }) => words.labels),
      ...empty,
    ],
  };
}

/** Whole months around everything there is to see, within the season. */
function scaleOf({ season }: TreePictureInput, { rows, dates }: TreeFacts): TimeScale {
  const { heat, lastFrost, firstFrost, today, decisionDate } = dates;
  const days = [
    ...rows.flatMap((row) => row.days),
    ...[lastFrost, firstFrost].flatMap((frost) => (frost ? [frost.from, frost.to] : [])),
    ...(heat.kind === 'date' ? [heat.day] : []),
    ...(decisionDate ? [decisionDate] : []),
    ...(today ? [today] : []),
  ];
  return {
    ...monthsAround(days, SHORTEST_MONTHS, season),
    left: MARGIN + WORDS_ROOM + 24,
    right: WIDTH - MARGIN,
  };
}

/** The time after the heat, and the time after the first frost, as backgrounds. */
function shades(
  { heat, firstFrost }: SeasonDates,
  scale: TimeScale,
  top: number,
  bottom: number,
): readonly Mark[] {
  const shade = (from: number, to: number, fill: 'outerBand' | 'frostFill'): Mark[] =>
    to > from ? [rect({ left: from, right: to, top, bottom }, { fill })] : [];
  const frost = firstFrost ? xOf(scale, firstFrost.on) : scale.right;
  return [
    ...(heat.kind === 'date' ? shade(xOf(scale, heat.day), frost, 'outerBand') : []),
    ...(firstFrost ? shade(frost, scale.right, 'frostFill') : []),
  ];
}

function rowMarks(
  row: TreeRow,
  scale: TimeScale,
  { top, bottom }: { top: number; bottom: number },
): readonly Mark[] {
  const y = (top + bottom) / 2;
  const xs = row.days.map((on) => xOf(scale, on));
  const left = xs[0] ?? scale.left;
  const right = xs.at(-1) ?? left;
  if (row.isWindow) {
    const box = { left, right: Math.max(right, left + 8), top: y - 24, bottom: y + 24 };
    return [
      rect(box, { fill: 'leafFill' }),
      hatch(box, 18, { ink: 'leaf', width: 3 }),
      rect(box, { ink: 'leaf', width: 5 }),
    ];
  }
  const isDense = xs.some((x, i) => i > 0 && x - (xs[i - 1] ?? x) < CLOSEST_PX);
  const box = { left, right, top: y - 11, bottom: y + 11 };
  const thread: Mark[] = isDense
    ? [
        rect(box, { fill: 'panel' }),
        hatch(box, 12, { ink: row.ink, width: 4 }),
        rect(box, { ink: row.ink, width: 4 }),
      ]
    : [line(left, y, right, y, { ink: row.ink, width: 4 })];
  const shown = isDense ? [left, right] : xs;
  return [
    ...thread,
    ...shown.map((x) =>
      row.isFilled
        ? // Its own edge tells it from the next one over it.
          marker(row.shape, x, y, 18, { ink: 'panel', width: 3, fill: row.ink })
        : marker(row.shape, x, y, 16, { ink: row.ink, width: 5, fill: 'panel' }),
    ),
  ];
}
