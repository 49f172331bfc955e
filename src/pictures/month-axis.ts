import { type Day, daysInMonth, monthOf, toEpochDays, yearOf } from '../engine/day.ts';
import { line, type Mark } from './marks.ts';
import { PALETTE } from './palette.ts';
import { SIZE } from './picture.ts';
import { firstOfMonth, monthStarts, type TimeScale, xOf } from './time-scale.ts';
import { shortMonth } from './words.ts';

/** The axis of months for ECharts: a tick at each first, its name in the middle of the month. */
export function monthAxis(scale: TimeScale, offset: number, position: 'top' | 'bottom' = 'bottom') {
  const starts = monthStarts(scale);
  const middles = starts.map((start) => toEpochDays(start) + daysInMonth(yearOf(start), monthOf(start)) / 2);
  const names = new Map(middles.map((middle, i) => [middle, shortMonth(monthOf(starts[i] ?? scale.from))]));
  return {
    type: 'value' as const,
    position,
    offset,
    min: toEpochDays(scale.from),
    max: toEpochDays(scale.to),
    splitLine: { show: false },
    axisLine: { show: true, onZero: false, lineStyle: { color: PALETTE.ink, width: 2 } },
    axisTick: {
      show: true,
      length: 10,
      customValues: starts.map(toEpochDays),
      lineStyle: { color: PALETTE.ink, width: 2 },
    },
    axisLabel: {
      customValues: middles,
      formatter: (value: number) => names.get(value) ?? '',
      fontSize: SIZE.text,
      color: PALETTE.ink,
      margin: 16,
      hideOverlap: false,
      showMinLabel: true,
      showMaxLabel: true,
    },
  };
}

/** Faint lines at the first of each month. */
export function monthLines(scale: TimeScale, top: number, bottom: number): readonly Mark[] {
  return monthStarts(scale)
    .filter((start: Day) => start !== firstOfMonth(scale.from))
    .map((start) => line(xOf(scale, start), top, xOf(scale, start), bottom, { ink: 'grid', width: 2 }));
}
