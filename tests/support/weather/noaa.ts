import { addDays, type Day, day, dayOfYear } from '../../../src/engine/day.ts';
import { type Answer, json } from './stand-in.ts';

/**
 * Answers in the shape of NCEI's access services.
 *
 * Search: https://www.ncei.noaa.gov/support/access-search-service-api-user-documentation; the members here
 * (results, stations, dataTypes with coverage and dateRange, centroid as [lon, lat], location) are those of
 * an answer recorded on 2026-10-06 for dataset=global-summary-of-the-month, which shares the service.
 * Data: https://www.ncei.noaa.gov/support/access-data-service-api-user-documentation; rows with upper-case
 * names and values as texts, in °C under units=metric.
 */
export interface FakeStation {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number;
  readonly from?: string;
  readonly to?: string;
  /** Per cent. */
  readonly coverage?: number;
  /** Without lows. */
  readonly highsOnly?: boolean;
}

export function searchAnswer(stations: readonly FakeStation[]) {
  return {
    count: stations.length,
    totalCount: 127_951,
    results: stations.map((station) => {
      const start = `${station.from ?? '1950-01-01'}T00:00:00`;
      const end = `${station.to ?? '2026-06-30'}T23:59:59`;
      const types = station.highsOnly ? ['TMAX', 'PRCP'] : ['TMAX', 'TMIN', 'PRCP'];
      return {
        name: `${station.id}.csv`,
        filePath: `/data/daily-summaries/access/${station.id}.csv`,
        startDate: start,
        endDate: end,
        centroid: [station.lon, station.lat],
        location: { coordinates: [station.lon, station.lat], type: 'point' },
        stations: [
          {
            id: station.id,
            name: station.name,
            dataTypes: types.map((id) => ({
              id,
              coverage: station.coverage ?? 99.5,
              dateRange: { start, end },
              searchWeight: 1,
              startDate: start,
              endDate: end,
            })),
            platforms: [{ startDate: '0001-01-01T00:00:00', endDate: '9996-12-31T23:59:59' }],
          },
        ],
      };
    }),
  };
}

/** Highs that rise and fall with the year, so that a record can be told from another. */
export function highOn(on: Day): number {
  return Math.round((15 - 13 * Math.cos(((dayOfYear(on) - 25) / 365) * 2 * Math.PI)) * 10) / 10;
}

/** The data service: as asked, for every station and day, with what `change` makes of each row. */
export function dataAnswer(
  stations: readonly FakeStation[],
  change: (row: Record<string, string>, on: Day) => Record<string, string> | null = (row) => row,
): Answer {
  return (request, response, url) => {
    const asked = (name: string) => url.searchParams.get(name) ?? '';
    const rows: Record<string, string>[] = [];
    for (const id of asked('stations').split(',')) {
      const station = stations.find((known) => known.id === id);
      if (!station) continue;
      const end = day(asked('endDate'));
      for (let on = day(asked('startDate')); on <= end; on = addDays(on, 1)) {
        const row = {
          DATE: on,
          STATION: id,
          TMAX: highOn(on).toFixed(1).padStart(5),
          TMIN: (highOn(on) - 8).toFixed(1),
          ...(asked('includeStationLocation') && {
            LATITUDE: String(station.lat),
            LONGITUDE: String(station.lon),
            ELEVATION: String(station.elevationM),
          }),
        };
        const changed = change(row, on);
        if (changed) rows.push(changed);
      }
    }
    json(rows)(request, response, url);
  };
}
