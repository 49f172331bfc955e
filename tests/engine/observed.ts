import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type DailySeries, fromRows } from '../../src/engine/climate.ts';
import { day } from '../../src/engine/day.ts';

/** One observed day, °C. */
export interface ObservedDay {
  /** YYYY-MM-DD */
  readonly date: string;
  readonly high: number;
  readonly low: number;
}

/**
 * Daily temperatures of 2012–2015 from the npm package vega-datasets, `data/weather.csv`: National Oceanic
 * and Atmospheric Administration, a work of the US Government.
 */
export function observed(place: 'New York' | 'Seattle'): readonly ObservedDay[] {
  const url = new URL('../../node_modules/vega-datasets/data/weather.csv', import.meta.url);
  const [head = '', ...lines] = readFileSync(fileURLToPath(url), 'utf8').trim().split('\n');
  const columns = head.split(',');
  const column = (name: string) => columns.indexOf(name);
  return lines
    .map((line) => line.split(','))
    .filter((cells) => cells[column('location')] === place)
    .map((cells) => ({
      date: (cells[column('date')] ?? '').slice(0, 10),
      high: Number(cells[column('temp_max')]),
      low: Number(cells[column('temp_min')]),
    }));
}

export function seriesOf(days: readonly ObservedDay[]): DailySeries {
  return fromRows(days.map(({ date, high, low }) => ({ day: day(date), tmaxC: high, tminC: low })));
}
