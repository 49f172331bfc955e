import { type Day, earlier, later } from '../engine/day.ts';
import { placeFlags } from './flags.ts';
import { header } from './header.ts';
import { type LegendItem, legend } from './legend.ts';
import { type Box, hatch, type Label, type Mark, marker, rect, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { monthAxis, monthLines } from './month-axis.ts';
import { DASH } from './palette.ts';
import { MARGIN, SIZE, WIDTH } from './picture.ts';
import type { Drawing } from './render.ts';
import type { CultivarSeason, RoundupPictureInput, TipResult } from './roundup-input.ts';
import { ROW_HEIGHT, rowWords, WORDS_ROOM } from './rows-chart.ts';
import { isOn, monthsAround, type TimeScale, xOf } from './time-scale.ts';
import { counted, shortDate, shortDates } from './words.ts';

/** A roundup picture before it is painted: where everything stands, px. */
export interface RoundupDrawing extends Drawing {
  readonly scale: TimeScale;
  readonly plot: Box;
  readonly labels: readonly Label[];
}

/** More rows cannot be read on a phone. */
export const MOST_ROWS = 20;

const AXIS_HEIGHT = 64;
const RESULTS_ROOM = 128;
const SHORTEST_MONTHS = 5;
const MARKER_PX = 14;

export function roundupDrawing(input: RoundupPictureInput, measure: Measure): RoundupDrawing {
  const rows = input.cultivars.slice(0, MOST_ROWS);
  const left = input.cultivars.length - rows.length;
  const scale = scaleOf(input);
  const hasTips = rows.some(({ tips }) => tips.length > 0);
  const head = header(input.club, [input.heading], measure);
  const key = legend(legendItems(rows), head.bottom + 8, measure);
  const flags = placeFlags(flagsOf(input, scale), { left: scale.left, right: scale.right }, measure);
  // The heading of the results is two lines high.
  const top = head.bottom + key.height + 20 + Math.max(flags.height, hasTips ? 76 : 0) + 14;
  const bottom = top + Math.max(1, rows.length) * ROW_HEIGHT;
  const plot = { left: scale.left, right: scale.right, top, bottom };
  const dated = flags.place(top - 14, bottom);
  const results = hasTips
    ? [result('tips that', top - 56, 'quiet'), result('worked', top - 22, 'quiet')]
    : [];
  const drawn = rows.map((row, i) => {
    const box = { top: top + i * ROW_HEIGHT, bottom: top + (i + 1) * ROW_HEIGHT, right: WIDTH - MARGIN };
    return {
      words: rowWords(row.cultivar, detailOf(row), box, measure),
      marks: rowMarks(row, input.today, scale, box),
      result: row.tips.length > 0 ? [result(tipsInWords(row.tips), (box.top + box.bottom) / 2, 'ink')] : [],
    };
  });
  const note = noteOf(rows.length, left, bottom + AXIS_HEIGHT + 28, top + ROW_HEIGHT / 2);
  const labels = [
    ...head.labels,
    ...results,
    ...drawn.flatMap(({ words, result: label }) => [...words.labels, ...label]),
    ...note,
  ];
  return {
    height: bottom + AXIS_HEIGHT + (left > 0 ? 64 : 16),
    scale,
    plot,
    labels: [...labels, ...key.labels, ...dated.labels],
    chart: {
      grid: { left: plot.left, top, width: plot.right - plot.left, height: bottom - top },
      xAxis: monthAxis(scale, 0),
      yAxis: { show: false, type: 'value', min: 0, max: 1 },
      series: [],
    },
    marks: [
      ...key.marks,
      ...weekMarks(input, scale, top, bottom),
      ...monthLines(scale, top, bottom),
      ...drawn.flatMap(({ words }) => words.marks),
      ...dated.marks,
      ...drawn.flatMap(({ marks }) => marks),
      ...labels,
    ],
  };
}

/** "2 of 3", of the tips whose result is known; "open" while none is. */
export function tipsInWords(tips: readonly TipResult[]): string {
  const known = tips.filter(({ worked }) => worked !== null);
  if (known.length === 0) return 'open';
  return `${known.filter(({ worked }) => worked).length} of ${known.length}`;
}

function detailOf({ trees, picks, figs }: CultivarSeason): string {
  const picked = figs !== null && figs > 0 ? `, ${counted(figs, 'fig')}` : picks.length > 0 ? ', picked' : '';
  return `${counted(trees, 'tree')}${picked}`;
}

function result(words: string, y: number, ink: 'ink' | 'quiet'): Label {
  return text(words, WIDTH - MARGIN, y, { size: SIZE.text, anchor: 'end', ink, bold: ink === 'ink' });
}

function noteOf(rows: number, left: number, belowY: number, insideY: number): readonly Label[] {
  const style = { size: SIZE.text, ink: 'quiet' } as const;
  if (rows === 0) return [text('Nothing logged yet.', MARGIN, insideY, style)];
  return left > 0 ? [text(`and ${counted(left, 'more cultivar')}`, MARGIN, belowY, style)] : [];
}

function scaleOf({ season, cultivars, week, today }: RoundupPictureInput): TimeScale {
  const days = cultivars.flatMap(({ fruitlets, tips, picks }) => [
    ...fruitlets,
    ...picks,
    ...tips.map(({ on }) => on),
  ]);
  const all = [...days, ...(week ? [week.from, week.to] : []), ...(today ? [today] : [])];
  return {
    ...monthsAround(
      all.map((on) => later(season.from, earlier(season.to, on))),
      SHORTEST_MONTHS,
      season,
    ),
    left: MARGIN + WORDS_ROOM + 24,
    right: WIDTH - MARGIN - RESULTS_ROOM,
  };
}

function flagsOf({ today, week, dates }: RoundupPictureInput, scale: TimeScale) {
  if (week && isOn(scale, week.to)) {
    const middle = (xOf(scale, week.from) + xOf(scale, week.to)) / 2;
    const words = `this week, ${shortDates(week.from, week.to, dates)}`;
    return [{ x: middle, words, style: { ink: 'ink' as const, width: 0.01 } }];
  }
  if (!today || !isOn(scale, today)) return [];
  const style = { ink: 'ink' as const, width: 3, dash: DASH.today };
  return [{ x: xOf(scale, today), words: `today ${shortDate(today, dates)}`, style }];
}

function weekMarks(
  { week }: RoundupPictureInput,
  scale: TimeScale,
  top: number,
  bottom: number,
): readonly Mark[] {
  if (!week || !isOn(scale, week.to)) return [];
  const box = { left: xOf(scale, week.from), right: xOf(scale, week.to), top: top - 8, bottom };
  return [rect(box, { fill: 'outerBand' }), rect({ ...box, bottom: box.top + 8 }, { fill: 'ink' })];
}

/** First fruitlets to first pick as a light bar, first to last pick as a hatched one, tips above them. */
function rowMarks(
  { fruitlets, tips, picks }: CultivarSeason,
  today: Day | null,
  scale: TimeScale,
  { top, bottom }: Pick<Box, 'top' | 'bottom'>,
): readonly Mark[] {
  const y = (top + bottom) / 2 + 14;
  const setFrom = first(fruitlets);
  const pickFrom = first(picks);
  const pickTo = last(picks);
  const until = pickFrom ?? (setFrom && today && today > setFrom ? today : null);
  const bar = (from: Day, to: Day) => ({
    left: xOf(scale, from),
    right: xOf(scale, to),
    top: y - 12,
    bottom: y + 12,
  });
  const marks: Mark[] = [];
  if (setFrom && until && until > setFrom) marks.push(...growing(bar(setFrom, until)));
  if (pickFrom && pickTo) {
    const box = bar(pickFrom, pickTo);
    marks.push(...picking({ ...box, left: box.left - 5, right: box.right + 5 }));
  }
  for (const on of fruitlets) marks.push(seen(xOf(scale, on), y));
  for (const tip of tips) marks.push(tipMark(tip, xOf(scale, tip.on), y - 34));
  return marks;
}

function growing(box: Box): readonly Mark[] {
  return [rect(box, { fill: 'leafFill', ink: 'leaf', width: 3 })];
}

function picking(box: Box): readonly Mark[] {
  return [
    rect(box, { fill: 'panel' }),
    hatch(box, 10, { ink: 'fig', width: 5 }),
    rect(box, { ink: 'fig', width: 4 }),
  ];
}

function seen(x: number, y: number): Mark {
  return marker('circle', x, y, MARKER_PX, { ink: 'panel', width: 3, fill: 'leaf' });
}

function tipMark({ worked }: Pick<TipResult, 'worked'>, x: number, y: number): Mark {
  if (worked === false) return marker('cross', x, y, 10, { ink: 'heat', width: 6 });
  return worked
    ? marker('down', x, y, MARKER_PX, { ink: 'panel', width: 3, fill: 'fig' })
    : marker('down', x, y, 12, { ink: 'fig', width: 4, fill: 'panel' });
}

function legendItems(rows: readonly CultivarSeason[]): readonly LegendItem[] {
  const tips = rows.flatMap((row) => row.tips);
  const middle = ({ left, right, top, bottom }: Box) => [(left + right) / 2, (top + bottom) / 2] as const;
  const item = (words: string, isThere: boolean, sample: LegendItem['sample']): LegendItem[] =>
    isThere ? [{ words, sample }] : [];
  const slim = (box: Box) => ({ ...box, top: box.top + 2, bottom: box.bottom - 2 });
  return [
    ...item(
      'fruitlets seen',
      rows.some(({ fruitlets }) => fruitlets.length > 0),
      (box) => [...growing(slim(box)), seen(box.left + MARKER_PX, (box.top + box.bottom) / 2)],
    ),
    ...item(
      'picked',
      rows.some(({ picks }) => picks.length > 0),
      (box) => picking(slim(box)),
    ),
    ...[true, false, null].flatMap((worked) =>
      item(
        worked ? 'tip that worked' : worked === null ? 'result open' : 'tip that failed',
        tips.some((tip) => tip.worked === worked),
        (box) => [tipMark({ worked }, ...middle(box))],
      ),
    ),
  ];
}

export function first(days: readonly Day[]): Day | null {
  return days.length === 0 ? null : days.reduce(earlier);
}

export function last(days: readonly Day[]): Day | null {
  return days.length === 0 ? null : days.reduce(later);
}
