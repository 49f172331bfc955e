import { toEpochDays } from '../engine/day.ts';
import { toCelsius } from '../engine/record-summary.ts';
import { type Highs, highsOf } from './bands.ts';
import { dateFlags, frostHatch, frostStrips, type SeasonDates, spreadFrosts } from './dates-flags.ts';
import { type DecisionGroup, groupDecisions } from './decision-groups.ts';
import { decisionMarks, decisionTable } from './decision-table.ts';
import { placeFlags } from './flags.ts';
import { type FrostDays, fallFrost, springFrost } from './frost-days.ts';
import { header } from './header.ts';
import { type LegendItem, legend } from './legend.ts';
import { type Box, type Label, line, type Mark, rect } from './marks.ts';
import type { Measure } from './measure.ts';
import { monthAxis, monthLines } from './month-axis.ts';
import { DASH, PALETTE } from './palette.ts';
import { MARGIN, SIZE, type Units, WIDTH } from './picture.ts';
import type { Drawing } from './render.ts';
import type { SeasonPictureInput } from './season-input.ts';
import type { TimeScale } from './time-scale.ts';
import { inUnits } from './words.ts';

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
  /** The temperatures; low and empty without any. */
  readonly plot: Box;
  readonly labels: readonly Label[];
}

const PLOT_HEIGHT = 430;
/** The same without temperatures: room for the lines alone. */
const BARE_HEIGHT = 70;
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
  const key = legend(legendItems(input, facts), head.bottom + 8, measure);
  const flags = placeFlags(
    dateFlags(seasonDates(input, facts), scale, dates),
    { left: MARGIN, right: WIDTH - MARGIN },
    measure,
  );
  const top = head.bottom + key.height + flags.height + 34;
  const bottom = top + (highs ? PLOT_HEIGHT : BARE_HEIGHT);
  const floor = bottom + STRIP_HEIGHT;
  const plot = { left: scale.left, right: scale.right, top, bottom };
  const dated = flags.place(top - 14, floor);
  const table = decisionTable(groups, input.trees, floor + AXIS_HEIGHT, dates, measure);
  const decisions = decisionMarks(groups, scale, plot, floor);
  const labels = [...head.labels, ...key.labels, ...dated.labels, ...table.labels, ...decisions.labels];

  return {
    height: floor + AXIS_HEIGHT + table.height + 28,
    scale,
    plot,
    labels,
    chart: chartOf(input, highs, scale, plot),
    marks: [
      ...head.labels,
      ...key.marks,
      ...monthLines(scale, highs ? bottom : top, floor),
      ...frostStrips(seasonDates(input, facts), scale, bottom + 4, floor - 4),
      ...(highs ? [heatMarkLine(input, plot, rangeOf(highs, input))] : []),
      ...dated.marks,
      ...decisions.marks,
      ...table.marks,
    ],
  };
}

/** The days to mark; `today` only while it falls in this season. */
export function seasonDates({ heat, today, season }: SeasonPictureInput, facts: SeasonFacts): SeasonDates {
  const isNow = today !== null && today >= season.from && today <= season.to;
  return { heat, today: isNow ? today : null, lastFrost: facts.lastFrost, firstFrost: facts.firstFrost };
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

function legendItems(input: SeasonPictureInput, facts: SeasonFacts): LegendItem[] {
  const { season, mark } = input;
  const { highs } = facts;
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
  if (highs) {
    items.push({
      words: `heat mark ${mark.value} °${mark.unit}`,
      sample: ({ left, right, top, bottom }) => [
        line(left, (top + bottom) / 2, right, (top + bottom) / 2, heatMarkStyle),
      ],
    });
  }
  if (spreadFrosts(seasonDates(input, facts)).length > 0) {
    items.push({ words: 'frost, 8 seasons in 10', sample: (box) => frostHatch(box) });
  }
  return items;
}

const heatMarkStyle = { ink: 'heat', width: 4, dash: DASH.heatMark } as const;
const medianStyle = { ink: 'median', width: 4, dash: DASH.median } as const;

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
  return {
    min: Math.floor(Math.min(...shown) / step) * step,
    max: Math.ceil(Math.max(...shown) / step) * step,
    step,
  };
}

function heatMarkLine({ mark, units }: SeasonPictureInput, plot: Box, { min, max }: Range): Mark {
  const value = inUnits(toCelsius(mark.value, mark.unit), units);
  const y = plot.bottom - ((value - min) / (max - min)) * (plot.bottom - plot.top);
  return line(plot.left, y, plot.right, y, heatMarkStyle);
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
    return { grid, xAxis, yAxis: { show: false, min: 0, max: 1 }, series: [] };
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
