import { type Day, earlier, inYear, later, type MonthDay, yearOf } from '../engine/day.ts';
import { midSeason, type Season } from '../engine/season.ts';
import type { FrostDates } from './season-input.ts';

/** A frost as days of a season, cut to it. */
export interface FrostDays {
  readonly on: Day;
  readonly from: Day;
  readonly to: Day;
}

/** The last spring frost, before the season's middle; a record's 10th percentile may lie before its first day. */
export function springFrost(frost: FrostDates | null, season: Season): FrostDays | null {
  return frost && cut(frost, season, (of) => lastBefore(of, midSeason(season)));
}

/** The first fall frost, from the season's middle on. */
export function fallFrost(frost: FrostDates | null, season: Season): FrostDays | null {
  return frost && cut(frost, season, (of) => firstFrom(of, midSeason(season)));
}

function cut(frost: FrostDates, season: Season, dayOf: (of: MonthDay) => Day): FrostDays {
  const within = (of: MonthDay) => earlier(season.to, later(season.from, dayOf(of)));
  return { on: within(frost.on), from: within(frost.from ?? frost.on), to: within(frost.to ?? frost.on) };
}

function firstFrom(of: MonthDay, from: Day): Day {
  const same = inYear(of, yearOf(from));
  return same >= from ? same : inYear(of, yearOf(from) + 1);
}

function lastBefore(of: MonthDay, before: Day): Day {
  const same = inYear(of, yearOf(before));
  return same < before ? same : inYear(of, yearOf(before) - 1);
}
