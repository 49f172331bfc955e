import { toEpochDays } from '../engine/day.ts';
import { toCelsius } from '../engine/record-summary.ts';
import type { Season } from '../engine/season.ts';
import { type Highs, highsOf } from './bands.ts';
import { type DecisionGroup, groupDecisions } from './decision-groups.ts';
import { decisionMarks, decisionTable } from './decision-table.ts';
import { type Flag, placeFlags } from './flags.ts';
import { type FrostDays, fallFrost, springFrost } from './frost-days.ts';
import { header } from './header.ts';
import { type LegendItem, legend } from './legend.ts';
import { type Box, hatch, type Label, line, type Mark, rect, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { monthAxis, monthLines } from './month-axis.ts';
import { DASH, PALETTE } from './palette.ts';
import { MARGIN, SIZE, type Units, WIDTH } from './picture.ts';
import type { Drawing } from './render.ts';
import type { SeasonPictureInput } from './season-input.ts';
import { type TimeScale, xOf } from './time-scale.ts';
import { inUnits, shortDate } from './words.ts';

/** What a season picture shows, worked out once for the drawing and for its text alternative. */
export interface SeasonFacts {
  readonly highs: Highs | null;
  readonly groups: readonly DecisionGroup[];
  readonly lastFrost: FrostDays | null;
  readonly firstFrost: FrostDays | null;
}

/** A season picture before it is painted: where everything stands, px. */
export interface SeasonDrawing extends Drawing {
  readonly scale: TimeScale;
  /** The temperatures; its height is 0 without any. */
  readonly plot: Box;
  readonly labels: readonly Label[];
}

const PLOT_HEIGHT = 430;
/** Below the temperatures: the spread of frost dates and the numbers of the decision dates. */
const STRIP_HEIGHT = 78;
const AXIS_HEIGHT = 64;

export function seasonFacts(input: SeasonPictureInput): SeasonFacts {
  const { series, season, trees } = input;
  const highs = series && highsOf(series, season);
  const known = highs !== null && (highs.past.length > 0 || highs.thisSeason.some((high) => high !== null));
  return {
    highs: known ? highs : null,
    groups: groupDecisions(trees),
    lastFrost: springFrost(input.lastFrost, season),
    firstFrost: fallFrost(input.firstFrost, season),
  };
}

export function seasonDrawing(
  input: SeasonPictureInput,
  facts: SeasonFacts,
  measure: Measure,
): SeasonDrawing {
  const { season, dates } = input;
  const { highs, groups } = facts;
  const scale = { from: season.from, to: season.to, left: highs ? 112 : MARGIN, right: WIDTH - MARGIN };

  const head = header(input.garden, subtitle(input, facts), measure);
  const key = legend(legendItems(season, facts), head.bottom + 8, measure);
  const flags = placeFlags(
    flagsOf(input, facts, scale),
    { left: MARGIN, right: WIDTH - MARGIN, top: head.bottom + key.height + 20 },
    measure,
  );
  const top = head.bottom + key.height + flags.height + 34;
  const bottom = top + (highs ? PLOT_HEIGHT : 0);
  const floor = bottom + STRIP_HEIGHT;
  const plot = { left: scale.left, right: scale.right, top, bottom };
  const table = decisionTable(groups, input.trees, floor + AXIS_HEIGHT, dates, measure);
  const decisions = decisionMarks(groups, scale, plot, floor);
  const mark = highs ? heatMarkMarks(input, plot, rangeOf(highs, input), flags.xs, measure) : [];
  const labels = [...head.labels, ...key.labels, ...flags.labels, ...table.labels, ...decisions.labels];

  return {
    height: floor + AXIS_HEIGHT + table.height + 28,
    scale,
    plot,
    labels: [...labels, ...mark.filter((each) => each.kind === 'text')],
    chart: chartOf(input, highs, scale, plot),
    marks: [
      ...head.labels,
      ...key.marks,
      ...monthLines(scale, bottom, floor),
      ...frostStrips(facts, scale, bottom, floor),
      ...flags.marks(floor),
      ...mark,
      ...decisions.marks,
      ...table.marks,
    ],
  };
}

function subtitle({ season, units, heat, series }: SeasonPictureInput, { highs }: SeasonFacts): string[] {
  const lines = [highs ? `Season ${season.label}: daily highs in °${units}` : `Season ${season.label}`];
  if (!highs) {
    lines.push(
      series
        ? 'No daily highs up to this season: stated dates only.'
        : 'No temperatures yet: stated dates only.',
    );
  }
  if (heat.kind === 'never-ends') lines.push('Heat does not end here: there are no decision dates by heat.');
  if (heat.kind === 'none') lines.push('No reliable heat at this mark.');
  return lines;
}

function legendItems(season: Season, { highs, lastFrost, firstFrost }: SeasonFacts): LegendItem[] {
  const items: LegendItem[] = [];
  if (highs?.thisSeason.some((high) => high !== null)) {
    items.push({
      words: season.label,
      sample: ({ left, right, top, bottom }) => [
        line(left, (top + bottom) / 2, right, (top + bottom) / 2, { ink: 'fig', width: 6 }),
      ],
    });
  }
  if (highs && highs.bands.length > 0) {
    const span = `${highs.past[0]?.label}–${highs.past.at(-1)?.label}`;
    items.push(
      {
        words: `median ${span}`,
        sample: ({ left, right, top, bottom }) => [
          line(left, (top + bottom) / 2, right, (top + bottom) / 2, medianStyle),
        ],
      },
      { words: 'half of past days', sample: (box) => [rect(box, { fill: 'innerBand' })] },
      { words: '8 in 10 past days', sample: (box) => [rect(box, { fill: 'outerBand' })] },
    );
  }
  for (const { season: past } of highs?.single ?? []) {
    items.push({
      words: past.label,
      sample: ({ left, right, top, bottom }) => [
        line(left, (top + bottom) / 2, right, (top + bottom) / 2, medianStyle),
      ],
    });
  }
  if ([lastFrost, firstFrost].some((frost) => frost && frost.from < frost.to)) {
    items.push({ words: 'frost, 8 seasons in 10', sample: (box) => frostHatch(box) });
  }
  return items;
}

const medianStyle = { ink: 'median', width: 4, dash: DASH.median } as const;

function flagsOf(input: SeasonPictureInput, facts: SeasonFacts, scale: TimeScale): Flag[] {
  const { heat, today, season, dates } = input;
  const flags: Flag[] = [];
  const frostStyle = { ink: 'frost', width: 5, dash: DASH.frost } as const;
  if (facts.lastFrost) {
    const words = `last frost ${shortDate(facts.lastFrost.on, dates)}`;
    flags.push({ x: xOf(scale, facts.lastFrost.on), words, style: frostStyle });
  }
  if (heat.kind === 'date' && heat.day >= season.from && heat.day <= season.to) {
    const words = `heat end ${shortDate(heat.day, dates)}`;
    flags.push({ x: xOf(scale, heat.day), words, style: { ink: 'heat', width: 6 } });
  }
  if (facts.firstFrost) {
    const words = `first frost ${shortDate(facts.firstFrost.on, dates)}`;
    flags.push({ x: xOf(scale, facts.firstFrost.on), words, style: frostStyle });
  }
  if (today && today >= season.from && today <= season.to) {
    const words = `today ${shortDate(today, dates)}`;
    flags.push({ x: xOf(scale, today), words, style: { ink: 'ink', width: 3, dash: DASH.today } });
  }
  return flags;
}

function frostStrips(facts: SeasonFacts, scale: TimeScale, top: number, bottom: number): readonly Mark[] {
  return [facts.lastFrost, facts.firstFrost].flatMap((frost) =>
    frost && frost.from < frost.to
      ? frostHatch({
          left: xOf(scale, frost.from),
          right: xOf(scale, frost.to),
          top: top + 4,
          bottom: bottom - 4,
        })
      : [],
  );
}

function frostHatch(box: Box): readonly Mark[] {
  return [
    rect(box, { fill: 'frostFill', ink: 'frost', width: 2 }),
    hatch(box, 14, { ink: 'frost', width: 2 }),
  ];
}

interface Range {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** Whole steps around everything drawn, in the member's unit. */
function rangeOf(highs: Highs, { units, mark }: SeasonPictureInput): Range {
  const step = units === 'F' ? 20 : 10;
  const values = [toCelsius(mark.value, mark.unit)];
  for (const high of [...highs.thisSeason, ...highs.single.flatMap((past) => past.highs)]) {
    if (high !== null) values.push(high);
  }
  for (const band of highs.bands) if (band) values.push(band.p10, band.p90);
  const shown = values.map((value) => inUnits(value, units));
  // The words of the mark stand above its line.
  const isTop = Math.ceil(Math.max(...shown) / step) * step - (shown[0] ?? 0) < step / 2;
  return {
    min: Math.floor(Math.min(...shown) / step) * step,
    max: Math.ceil(Math.max(...shown) / step) * step + (isTop ? step : 0),
    step,
  };
}

/** The mark as a line, with its words where no other line runs, at the season's cool ends if possible. */
function heatMarkMarks(
  { mark, units }: SeasonPictureInput,
  plot: Box,
  { min, max }: Range,
  taken: readonly number[],
  measure: Measure,
): readonly Mark[] {
  const value = inUnits(toCelsius(mark.value, mark.unit), units);
  const y = plot.bottom - ((value - min) / (max - min)) * (plot.bottom - plot.top);
  const words = `heat mark ${mark.value} °${mark.unit}`;
  const width = measure.width(words, SIZE.text, true);
  const edges = [plot.left, ...taken, plot.right];
  const free = [plot.left + 12, plot.right - 12 - width, ...edges.map((x) => x + 12)].find(
    (left) => left + width < plot.right && !taken.some((x) => x > left - 10 && x < left + width + 10),
  );
  return [
    line(plot.left, y, plot.right, y, { ink: 'heat', width: 4, dash: DASH.heatMark }),
    text(words, free ?? plot.left + 12, y - 24, { size: SIZE.text, ink: 'heat', bold: true, halo: true }),
  ];
}

function chartOf(
  input: SeasonPictureInput,
  highs: Highs | null,
  scale: TimeScale,
  plot: Box,
): Drawing['chart'] {
  const grid = {
    left: plot.left,
    top: plot.top,
    width: plot.right - plot.left,
    height: plot.bottom - plot.top,
  };
  const xAxis = monthAxis(scale, STRIP_HEIGHT);
  if (!highs) {
    // A line of no temperatures keeps the axis where it belongs.
    return { grid: { ...grid, height: 1 }, xAxis, yAxis: { show: false, min: 0, max: 1 }, series: [] };
  }
  const { min, max, step } = rangeOf(highs, input);
  return {
    grid,
    xAxis,
    yAxis: {
      type: 'value',
      min,
      max,
      interval: step,
      axisLabel: { fontSize: SIZE.text, color: PALETTE.ink, formatter: '{value}°', margin: 12 },
      splitLine: { lineStyle: { color: PALETTE.grid, width: 2 } },
    },
    series: seriesOf(highs, scale, input.units),
  };
}

function seriesOf(highs: Highs, scale: TimeScale, units: Units) {
  const first = toEpochDays(scale.from);
  const points = (values: readonly (number | null | undefined)[]) =>
    values.map((value, i): [number, number | null] => [
      first + i,
      value == null ? null : inUnits(value, units),
    ]);
  const plain = { type: 'line' as const, symbol: 'none', silent: true };
  const layer = (stack: string, z: number, fill: string, low: 'p10' | 'p25', high: 'p90' | 'p75') => {
    const base = highs.bands.map((band) => (band ? inUnits(band[low], units) : null));
    const rise = highs.bands.map((band) =>
      band ? inUnits(band[high], units) - inUnits(band[low], units) : null,
    );
    const along = (values: readonly (number | null)[]) =>
      values.map((value, i): [number, number | null] => [first + i, value]);
    const shared = { ...plain, stack, stackStrategy: 'all' as const, z, lineStyle: { width: 0, opacity: 0 } };
    return [
      { ...shared, data: along(base) },
      { ...shared, data: along(rise), areaStyle: { color: fill, opacity: 1 } },
    ];
  };
  const median = { color: PALETTE.median, width: 4, type: [...DASH.median] };
  return [
    ...layer('outer', 2, PALETTE.outerBand, 'p10', 'p90'),
    ...layer('inner', 3, PALETTE.innerBand, 'p25', 'p75'),
    { ...plain, z: 4, data: points(highs.bands.map((band) => band?.p50)), lineStyle: median },
    ...highs.single.map((past) => ({
      ...plain,
      z: 4,
      data: points(past.highs),
      lineStyle: { ...median, width: 2 },
    })),
    {
      ...plain,
      z: 5,
      data: points(highs.thisSeason),
      lineStyle: { color: PALETTE.fig, width: 4, join: 'round' as const },
    },
  ];
}
