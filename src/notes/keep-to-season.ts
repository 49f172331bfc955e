import { daysBetween } from '../engine/day.ts';
import { seasonOf } from '../engine/season.ts';
import type { NoteReading, ReadEvent, Setting } from './contract.ts';

/** What belongs to one growing season; winter's work counts to the season after it. */
const OF_SEASON: ReadonlySet<ReadEvent['kind']> = new Set([
  'leafed-out',
  'buds-single',
  'buds-double',
  'fruitlets',
  'no-fruitlets',
  'tipped',
  'branched',
  'ripening',
  'dropped',
  'picked',
]);

/** Around the turn of a year last season's late figs are still news. */
const STILL_NEWS_DAYS = 120;

/** "remember last july? 50 on it": what fruit did in another season is a remark, and decides nothing in this one. */
export function keepToSeason(reading: NoteReading, { today, hemisphere }: Setting): NoteReading {
  const season = seasonOf(today, hemisphere).label;
  const isPast = ({ kind, on }: ReadEvent): boolean =>
    OF_SEASON.has(kind) &&
    seasonOf(on, hemisphere).label !== season &&
    daysBetween(on, today) > STILL_NEWS_DAYS;
  if (!reading.logged.some(isPast)) return reading;
  return {
    ...reading,
    logged: reading.logged.map((event) =>
      isPast(event) ? { tree: event.tree, kind: 'remark', on: today } : event,
    ),
  };
}
