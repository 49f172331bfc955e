import { z } from 'zod';
import type { DailySeries } from '../engine/climate.ts';
import { addDays, type Day, dayInYear, earlier, later, parseDay, yearOf } from '../engine/day.ts';
import { readCelsius, trustworthy } from './fetched-rows.ts';
import { type ServiceClient, ServiceError } from './service-client.ts';
import type { Coverage, Spot, Station } from './stations.ts';

/**
 * NOAA's daily summaries (GHCN-Daily) through NCEI's access services:
 * https://www.ncei.noaa.gov/support/access-search-service-api-user-documentation and
 * https://www.ncei.noaa.gov/support/access-data-service-api-user-documentation.
 */
const SEARCH = '/access/services/search/v1/data';
const DATA = '/access/services/data/v1';
const DATASET = 'daily-summaries';
const MOST_STATIONS = 200;
/** Years asked for at a time, so that progress can be told and no answer is large. */
const YEARS_AT_ONCE = 5;
const KM_PER_DEGREE = 111;

const instant = z.string().transform((text) => parseDay(text.slice(0, 10)));
const position = z.tuple([z.number(), z.number()]).rest(z.number());
const searchAnswer = z.object({
  results: z.array(
    z.object({
      // The service has written it both ways.
      centroid: z.union([position, z.object({ point: position }).transform(({ point }) => point)]),
      stations: z.array(
        z.object({
          id: z.string(),
          name: z.string(),
          dataTypes: z.array(
            z.object({
              id: z.string(),
              /** Per cent of the days in the range. */
              coverage: z.number().optional(),
              dateRange: z.object({ start: instant, end: instant }).partial().optional(),
            }),
          ),
        }),
      ),
    }),
  ),
});
const value = z.union([z.string(), z.number(), z.null()]).optional();
const dataAnswer = z.array(z.object({ DATE: z.string(), TMAX: value, TMIN: value }));
const heightAnswer = z.array(z.object({ STATION: z.string(), ELEVATION: value }));

/** Stations in a box around the spot that have reported highs and lows within `lately`. */
export async function searchStations(
  client: ServiceClient,
  spot: Spot,
  radiusKm: number,
  lately: { readonly from: Day; readonly to: Day },
): Promise<Station[]> {
  const north = radiusKm / KM_PER_DEGREE;
  const east = Math.min(180, north / Math.max(0.05, Math.cos((spot.lat * Math.PI) / 180)));
  const box = [
    Math.min(90, spot.lat + north),
    Math.max(-180, spot.lon - east),
    Math.max(-90, spot.lat - north),
    Math.min(180, spot.lon + east),
  ];
  const answer = checked(
    client,
    searchAnswer,
    await client.getJson(SEARCH, {
      dataset: DATASET,
      // North, west, south, east.
      bbox: box.map((degrees) => degrees.toFixed(4)).join(','),
      dataTypes: 'TMAX,TMIN',
      startDate: lately.from,
      endDate: lately.to,
      limit: String(MOST_STATIONS),
      offset: '0',
    }),
  );
  return answer.results.flatMap(({ centroid: [lon, lat], stations }) =>
    stations.flatMap(({ id, name, dataTypes }) => {
      const coverage = (wanted: string) => coverageOf(dataTypes.find((type) => type.id === wanted));
      const [highs, lows] = [coverage('TMAX'), coverage('TMIN')];
      return highs && lows ? [{ id, name, lat, lon, elevationM: null, highs, lows }] : [];
    }),
  );
}

/** Heights of stations in metres by id; of those that reported on the days around `near`. */
export async function fetchHeights(
  client: ServiceClient,
  ids: readonly string[],
  near: Day,
): Promise<ReadonlyMap<string, number>> {
  const answer = checked(
    client,
    heightAnswer,
    await client.getJson(DATA, {
      dataset: DATASET,
      stations: ids.join(','),
      startDate: addDays(near, -10),
      endDate: near,
      dataTypes: 'TMAX',
      units: 'metric',
      format: 'json',
      includeStationLocation: '1',
    }),
  );
  const heights = new Map<string, number>();
  for (const { STATION, ELEVATION } of answer) {
    const height = readCelsius(ELEVATION);
    if (height !== null && Math.abs(height) < 9000) heights.set(STATION, height);
  }
  return heights;
}

/** A station's daily highs and lows over a window, in °C, a few years at a time. */
export async function fetchStation(
  client: ServiceClient,
  id: string,
  window: { readonly from: Day; readonly to: Day },
  progress: (text: string) => void,
): Promise<DailySeries> {
  const rows = [];
  const first = yearOf(window.from);
  const years = yearOf(window.to) - first + 1;
  for (let done = 0; done < years; done += YEARS_AT_ONCE) {
    progress(`fetching year ${done + 1} of ${years}`);
    const answer = await client.getJson(DATA, {
      dataset: DATASET,
      stations: id,
      startDate: later(window.from, dayInYear(first + done, 0)),
      endDate: earlier(window.to, addDays(dayInYear(first + done + YEARS_AT_ONCE, 0), -1)),
      dataTypes: 'TMAX,TMIN',
      units: 'metric',
      format: 'json',
    });
    for (const row of checked(client, dataAnswer, answer)) {
      const day = parseDay(row.DATE.slice(0, 10));
      if (day === null) throw nonsense(client);
      rows.push({ day, tmaxC: readCelsius(row.TMAX), tminC: readCelsius(row.TMIN) });
    }
  }
  return trustworthy(rows, window, client.name);
}

interface DataType {
  readonly coverage?: number | undefined;
  readonly dateRange?:
    | { readonly start?: Day | null | undefined; readonly end?: Day | null | undefined }
    | undefined;
}

function coverageOf(type: DataType | undefined): Coverage | null {
  const { start, end } = type?.dateRange ?? {};
  if (!start || !end) return null;
  return { from: start, to: end, share: Math.min(1, Math.max(0, (type?.coverage ?? 0) / 100)) };
}

function checked<T>(client: ServiceClient, shape: z.ZodType<T>, answer: unknown): T {
  const read = shape.safeParse(answer);
  if (!read.success) throw nonsense(client, read.error);
  return read.data;
}

function nonsense(client: ServiceClient, cause?: unknown): ServiceError {
  return new ServiceError('nonsense', `${client.name} answered something that is no weather record.`, {
    cause,
  });
}
