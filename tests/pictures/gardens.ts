import type { DailySeries } from '../../src/engine/climate.ts';
import { addDays, type Day, day, monthDay } from '../../src/engine/day.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import type { SeasonPictureInput, TreeDate } from '../../src/pictures/season-input.ts';
import { observed, seriesOf } from '../engine/observed.ts';

export function vegaWeather(place: 'New York' | 'Seattle'): DailySeries {
  return seriesOf(observed(place));
}

export function trees(count: number, from: Day, stepDays: number): TreeDate[] {
  const names = [
    'Alma',
    'Pot 3',
    'Brunswick by the wall',
    'Big one',
    'Desert King',
    'Ronde',
    'No. 12',
    'Greenhouse',
  ];
  return Array.from({ length: count }, (_, i) => ({
    name: i < names.length ? (names[i] ?? '') : `${names[i % names.length]} ${i}`,
    decisionDate: addDays(from, (i * stepDays) % 60),
    settled: i % 5 === 0,
  }));
}

export function newYork(overrides: Partial<SeasonPictureInput> = {}): SeasonPictureInput {
  return {
    garden: 'Hill garden, New York',
    season: seasonStarting(2015, 'N'),
    today: day('2015-07-05'),
    units: 'F',
    dates: 'MDY',
    mark: { value: 80, unit: 'F' },
    series: vegaWeather('New York'),
    heat: { kind: 'date', day: day('2015-09-10'), basis: 'record' },
    lastFrost: { on: monthDay('03-29'), from: monthDay('03-14'), to: monthDay('04-08') },
    firstFrost: { on: monthDay('11-10'), from: monthDay('10-28'), to: monthDay('11-19') },
    trees: [
      { name: 'Alma', decisionDate: day('2015-06-02'), settled: false },
      { name: 'Pot 3', decisionDate: day('2015-06-12'), settled: true },
      { name: 'Brunswick by the wall', decisionDate: day('2015-06-12'), settled: false },
      { name: 'Ronde', decisionDate: day('2015-06-22'), settled: false },
    ],
    ...overrides,
  };
}
