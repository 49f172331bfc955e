import { type Day, day, fromEpochDays, inYear, type MonthDay, monthOf, toEpochDays, yearOf } from './day.ts';

export type Hemisphere = 'N' | 'S';

/** One growing season. North: a calendar year, "2026". South: 1 July to 30 June, "2026/27". */
export interface Season {
  readonly label: string;
  readonly hemisphere: Hemisphere;
  /** Calendar year in which it begins. */
  readonly startYear: number;
  readonly from: Day;
  readonly to: Day;
}

export function seasonStarting(startYear: number, hemisphere: Hemisphere): Season {
  if (hemisphere === 'N') {
    return {
      label: String(startYear),
      hemisphere,
      startYear,
      from: day(`${startYear}-01-01`),
      to: day(`${startYear}-12-31`),
    };
  }
  return {
    label: `${startYear}/${String((startYear + 1) % 100).padStart(2, '0')}`,
    hemisphere,
    startYear,
    from: day(`${startYear}-07-01`),
    to: day(`${startYear + 1}-06-30`),
  };
}

/** The season `of` falls in. */
export function seasonOf(of: Day, hemisphere: Hemisphere): Season {
  const startYear = hemisphere === 'N' || monthOf(of) >= 7 ? yearOf(of) : yearOf(of) - 1;
  return seasonStarting(startYear, hemisphere);
}

export function nextSeason(season: Season): Season {
  return seasonStarting(season.startYear + 1, season.hemisphere);
}

export function previousSeason(season: Season): Season {
  return seasonStarting(season.startYear - 1, season.hemisphere);
}

/** The season of a label such as "2026" or "2026/27", or null when the label is not one. */
export function parseSeason(label: string, hemisphere: Hemisphere): Season | null {
  const match = /^(\d{4})(?:\/(\d{2}))?$/.exec(label.trim());
  if (!match) return null;
  const season = seasonStarting(Number(match[1]), hemisphere);
  return match[2] === undefined || season.label === label.trim() ? season : null;
}

/** The day within `season` that has this month and day. */
export function inSeason(of: MonthDay, season: Season): Day {
  const first = inYear(of, season.startYear);
  return first >= season.from ? first : inYear(of, season.startYear + 1);
}

/** Middle of the season's cold-free half: spring and fall part on 24 July (north), 24 January (south). */
export function midSeason(season: Season): Day {
  return season.hemisphere === 'N' ? day(`${season.startYear}-07-24`) : day(`${season.startYear + 1}-01-24`);
}

/** Every day of the season, in order. */
export function daysOf(season: Season): Day[] {
  const from = toEpochDays(season.from);
  return Array.from({ length: toEpochDays(season.to) - from + 1 }, (_, i) => fromEpochDays(from + i));
}
