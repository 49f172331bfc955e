import type { DailySeries } from '../../src/engine/climate.ts';
import { addDays, type Day, day, monthDay } from '../../src/engine/day.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import type { CultivarSeason, RoundupPictureInput } from '../../src/pictures/roundup-input.ts';
import type { SeasonPictureInput, TreeDate } from '../../src/pictures/season-input.ts';
import type { TreePictureInput } from '../../src/pictures/tree-input.ts';
import { observed, seriesOf } from '../engine/observed.ts';

/** New York 2012 to `last`; see `observed` for its source. */
export function newYorkUntil(last: string): DailySeries {
  return seriesOf(observed('New York').filter(({ date }) => date <= last));
}

const NAMES = ['Alma', 'Pot 3', 'Brunswick by the wall', 'Big one', 'Ronde', 'No. 12', 'Greenhouse'];

/** Trees whose decision dates are `stepDays` apart, starting again after 60 days. */
export function trees(count: number, from: Day, stepDays: number): readonly TreeDate[] {
  return Array.from({ length: count }, (_, i) => ({
    name: i < NAMES.length ? (NAMES[i] ?? '') : `${NAMES[i % NAMES.length]} ${i}`,
    decisionDate: addDays(from, (i * stepDays) % 60),
    settled: i % 5 === 0,
  }));
}

/** An invented garden with the record of New York. */
export function hillGarden(changes: Partial<SeasonPictureInput> = {}): SeasonPictureInput {
  return {
    garden: 'Hill garden',
    season: seasonStarting(2015, 'N'),
    today: day('2015-07-05'),
    units: 'F',
    dates: 'MDY',
    mark: { value: 80, unit: 'F' },
    series: newYorkUntil('2015-07-05'),
    heat: { kind: 'date', day: day('2015-09-10'), basis: 'record' },
    lastFrost: { on: monthDay('03-29'), from: monthDay('03-14'), to: monthDay('04-08') },
    firstFrost: { on: monthDay('11-10'), from: monthDay('10-28'), to: monthDay('11-19') },
    trees: [
      { name: 'Alma', decisionDate: day('2015-05-12'), settled: false },
      { name: 'Pot 3', decisionDate: day('2015-06-12'), settled: true },
      { name: 'Brunswick by the wall', decisionDate: day('2015-06-12'), settled: false },
      { name: 'Ronde', decisionDate: day('2015-06-22'), settled: false },
      { name: 'Young one', decisionDate: null, settled: false },
    ],
    ...changes,
  };
}

export function potThree(changes: Partial<TreePictureInput> = {}): TreePictureInput {
  return {
    tree: 'Pot 3',
    cultivar: 'Brunswick',
    season: seasonStarting(2026, 'N'),
    today: day('2026-09-08'),
    dates: 'MDY',
    state: 'Fruitlets since July 7: ripe about September 20 to October 5.',
    notes: [
      { on: day('2026-04-28'), kind: 'leafed-out' },
      { on: day('2026-06-02'), kind: 'fruitlets', crop: 'breba', count: 2 },
      { on: day('2026-06-18'), kind: 'buds-double' },
      { on: day('2026-06-24'), kind: 'tipped' },
      { on: day('2026-07-07'), kind: 'fruitlets', crop: 'main', count: 5 },
      { on: day('2026-08-20'), kind: 'picked', crop: 'breba', count: 1 },
      { on: day('2026-08-24'), kind: 'picked', crop: 'breba', count: 1 },
    ],
    heat: { kind: 'date', day: day('2026-09-24'), basis: 'record' },
    lastFrost: { on: monthDay('04-12'), from: monthDay('04-01'), to: monthDay('04-25') },
    firstFrost: { on: monthDay('10-25'), from: monthDay('10-12'), to: monthDay('11-08') },
    decisionDate: day('2026-06-26'),
    ripe: { from: day('2026-09-20'), to: day('2026-10-05'), basis: 'fruitlets' },
    ...changes,
  };
}

const CULTIVARS = ['Brunswick', 'Alma', 'Celeste', 'Adriatic', 'Kadota', 'Pastilière', 'Panachée', 'Osborn'];

/** Cultivars of an invented club, each with its own dates. */
export function cultivars(count: number): readonly CultivarSeason[] {
  const start = day('2026-06-20');
  return Array.from({ length: count }, (_, i) => {
    const shown = 1 + ((i * 7) % 5);
    const fruitlets = Array.from({ length: shown }, (__, k) => addDays(start, ((i * 5) % 30) + k * 4));
    const picks = i % 4 === 3 ? [] : [0, 5, 10, 25].map((k) => addDays(start, 80 + ((i * 5) % 30) + k));
    return {
      cultivar: i < CULTIVARS.length ? (CULTIVARS[i] ?? '') : `Seedling ${i}`,
      trees: shown + 1,
      fruitlets,
      tips: Array.from({ length: (i * 3) % 4 }, (__, k) => ({
        on: addDays(start, ((i * 5) % 25) + k * 6 - 8),
        worked: [true, false, null][k] ?? null,
      })),
      picks,
      figs: picks.length > 0 ? 10 + i : null,
    };
  });
}

export function hollowLane(changes: Partial<RoundupPictureInput> = {}): RoundupPictureInput {
  return {
    club: 'Hollow Lane Fig Growers',
    heading: 'Season 2026',
    season: seasonStarting(2026, 'N'),
    week: null,
    today: day('2026-11-02'),
    dates: 'DMY',
    cultivars: cultivars(8),
    ...changes,
  };
}
