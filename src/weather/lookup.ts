import { eq } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import { addDays, type Day, dayInYear, later, yearOf } from '../engine/day.ts';
import type { Database } from '../records/database.ts';
import { type WeatherSeries, weatherSeries } from '../records/schema.ts';
import { Gate, type Progress, SharedWork } from './gate.ts';
import { fetchHeights, fetchStation, searchStations } from './noaa.ts';
import { cellAt, fetchCell, POWER_REMARK } from './power.ts';
import { extendSeries, findSeries, loadSeries, type SeriesIdentity, saveSeries } from './series.ts';
import { type ClientOptions, ServiceClient, ServiceError, type ServiceTrouble } from './service-client.ts';
import {
  distanceKm,
  FARTHEST_KM,
  farness,
  GOOD_COMPLETENESS,
  heightDifferenceM,
  type RankedStation,
  rankStations,
  type Spot,
} from './stations.ts';
import { dueForTopUp } from './top-up.ts';

/** Seasons behind the present one that a record is fetched for. */
export const SEASONS_BACK = 30;
/** Services correct their latest days for some weeks, so a top-up begins before the last one it has. */
const OVERLAP_DAYS = 60;
const FRESH_DAYS = 7;
/** Candidates whose height is asked for before one is chosen. */
const SHORTLIST = 6;
const AT_ONCE = 2;

/** A record that is now in the database, shared by all who garden near. */
export interface FoundRecord {
  readonly kind: 'found';
  readonly seriesId: number;
  readonly source: 'noaa' | 'power';
  readonly name: string;
  /** From the garden, km. */
  readonly distanceKm: number;
  /** Of the station above the garden, m; null where a height is not known. */
  readonly heightDifferenceM: number | null;
  /** It was here already and fresh. */
  readonly cached: boolean;
  /** What a reader should know of the record, a sentence each. */
  readonly remarks: readonly string[];
}

/** Nothing was found, and nothing was changed. */
export interface LookUpProblem {
  readonly kind: 'problem';
  readonly problem: ServiceTrouble | 'cancelled' | 'no-readings';
  /** A sentence for the member. */
  readonly message: string;
}

export interface LookUpOptions {
  readonly onProgress?: Progress;
  /** Stops waiting; work that others share goes on. */
  readonly signal?: AbortSignal;
}

export interface WeatherService {
  /** Finds and stores the daily record for a position. Never throws for what a service does. */
  lookUp(spot: Spot, options?: LookUpOptions): Promise<FoundRecord | LookUpProblem>;
  /** Tops up what is due (see `dueForTopUp`); ids of the series that have new days. Never throws for a service. */
  topUpDue(): Promise<readonly number[]>;
}

export interface WeatherServiceOptions {
  readonly db: Database;
  readonly clock: Pick<Clock, 'now' | 'today'>;
  /** Bases of the services, see settings.ts. */
  readonly addresses: { readonly noaa: string; readonly power: string };
  readonly client?: ClientOptions;
}

export function createWeatherService(options: WeatherServiceOptions): WeatherService {
  return new LookUp(options);
}

class LookUp implements WeatherService {
  #db: Database;
  #clock: Pick<Clock, 'now' | 'today'>;
  #noaa: ServiceClient;
  #power: ServiceClient;
  #gate = new Gate(AT_ONCE);
  #spots = new SharedWork<FoundRecord>();
  #series = new SharedWork<Fetched>();

  constructor({ db, clock, addresses, client }: WeatherServiceOptions) {
    this.#db = db;
    this.#clock = clock;
    this.#noaa = new ServiceClient('NOAA’s weather service', addresses.noaa, client);
    this.#power = new ServiceClient('NASA’s weather service', addresses.power, client);
  }

  async lookUp(spot: Spot, { onProgress, signal }: LookUpOptions = {}): Promise<FoundRecord | LookUpProblem> {
    const key = `${spot.lat},${spot.lon}`;
    const work = this.#spots.run(key, onProgress ?? (() => {}), (progress) =>
      this.#gate.through(() => this.#find(spot, progress)),
    );
    try {
      return await (signal ? orAborted(work, signal) : work);
    } catch (error) {
      return toProblem(error);
    }
  }

  async topUpDue(): Promise<readonly number[]> {
    const due = await dueForTopUp(this.#db, this.#clock.now(), this.#today());
    const changed: number[] = [];
    for (const series of due) {
      try {
        await this.#gate.through(() => this.#topUp(series, () => {}));
        changed.push(series.id);
      } catch (error) {
        if (!(error instanceof ServiceError)) throw error;
        await this.#db
          .update(weatherSeries)
          .set({ triedAt: this.#clock.now() })
          .where(eq(weatherSeries.id, series.id));
      }
    }
    return changed;
  }

  async #find(spot: Spot, progress: Progress): Promise<FoundRecord> {
    progress('looking for a weather station');
    const window = this.#window();
    for (const station of await this.#shortlist(spot, window)) {
      const { id: stationId, name, lat, lon, elevationM } = station;
      const identity = { source: 'noaa' as const, stationId, name, lat, lon, elevationM };
      const fetched = await this.#series.run(`noaa:${station.id}`, progress, (tell) =>
        this.#fetch(identity, async () => fetchStation(this.#noaa, station.id, window, tell)),
      );
      // The catalogue promised more than the station has; the next one may keep its promise.
      if (fetched === 'empty') continue;
      return found(fetched, station, spot, heightDifferenceM(station, spot), []);
    }
    const cell = cellAt(spot.lat, spot.lon);
    const { id: stationId, ...at } = cell;
    const identity = { source: 'power' as const, stationId, ...at, elevationM: null };
    const fetched = await this.#series.run(`power:${cell.id}`, progress, (tell) =>
      this.#fetch(identity, async () => {
        tell('no good station near; fetching the grid estimate');
        return (await fetchCell(this.#power, cell, window)).series;
      }),
    );
    if (fetched === 'empty') throw new NothingThere();
    return found(fetched, cell, spot, null, [POWER_REMARK]);
  }

  /** Stations worth trying, best first, their heights known where the service tells them. */
  async #shortlist(spot: Spot, window: Window): Promise<readonly RankedStation[]> {
    // Whoever reported in the last half year is still there, allowing for late reports.
    const lately = { from: addDays(window.to, -180), to: window.to };
    const stations = await searchStations(this.#noaa, spot, FARTHEST_KM, lately);
    const ranked = rankStations(stations, spot, window).slice(0, SHORTLIST);
    if (ranked.length < 2 || spot.elevationM === null) return ranked;
    const ids = ranked.map(({ id }) => id);
    const heights = await fetchHeights(this.#noaa, ids, addDays(window.to, -14));
    const better = (a: RankedStation, b: RankedStation) =>
      Number(b.completeness >= GOOD_COMPLETENESS) - Number(a.completeness >= GOOD_COMPLETENESS) ||
      farness(a, spot) - farness(b, spot);
    return ranked
      .map((station) => ({ ...station, elevationM: heights.get(station.id) ?? null }))
      .sort(better);
  }

  /** The stored series if it is fresh, else all of it anew. */
  async #fetch(identity: FetchedIdentity, fetchAll: FetchAll): Promise<Fetched> {
    const known = await findSeries(this.#db, identity.source, identity.stationId);
    if (known?.fetchedAt && this.#daysSince(known.fetchedAt) < FRESH_DAYS) {
      return { seriesId: known.id, source: identity.source, name: known.name, cached: true };
    }
    const series = await fetchAll();
    if (series.length === 0) return 'empty';
    const seriesId = await this.#db.transaction((tx) => saveSeries(tx, identity, series, this.#clock.now()));
    return { seriesId, source: identity.source, name: identity.name, cached: false };
  }

  async #topUp(series: WeatherSeries, progress: Progress): Promise<void> {
    const window = this.#window();
    const last = (await loadSeries(this.#db, series.id)).at(-1);
    // A year holds days past its last reading, so going back from its end alone would miss some.
    const start = last ? addDays(dayInYear(last.year, 0), -OVERLAP_DAYS) : window.from;
    const from = later(window.from, start);
    const fresh =
      series.source === 'noaa'
        ? await fetchStation(this.#noaa, series.stationId, { from, to: window.to }, progress)
        : (await fetchCell(this.#power, cellAt(series.lat ?? 0, series.lon ?? 0), { from, to: window.to }))
            .series;
    await this.#db.transaction((tx) => extendSeries(tx, series.id, fresh, this.#clock.now()));
  }

  #window(): Window {
    const to = this.#today();
    return { from: dayInYear(yearOf(to) - SEASONS_BACK, 0), to };
  }

  #today(): Day {
    return this.#clock.today('UTC');
  }

  #daysSince(instant: Date): number {
    return (this.#clock.now().getTime() - instant.getTime()) / 86_400_000;
  }
}

type Window = { readonly from: Day; readonly to: Day };
type FetchAll = () => ReturnType<typeof fetchStation>;
type FetchedIdentity = SeriesIdentity & { readonly source: 'noaa' | 'power' };
type Fetched = 'empty' | Pick<FoundRecord, 'seriesId' | 'source' | 'name' | 'cached'>;

/** Neither service has a reading there. */
class NothingThere extends Error {}

function found(
  fetched: Exclude<Fetched, 'empty'>,
  at: { readonly lat: number; readonly lon: number },
  spot: Spot,
  difference: number | null,
  remarks: readonly string[],
): FoundRecord {
  return {
    kind: 'found',
    ...fetched,
    distanceKm: distanceKm(at, spot),
    heightDifferenceM: difference,
    remarks,
  };
}

function orAborted<T>(work: Promise<T>, signal: AbortSignal): Promise<T> {
  return new Promise((resolve, reject) => {
    const stop = () => reject(new DOMException('stopped waiting', 'AbortError'));
    if (signal.aborted) stop();
    signal.addEventListener('abort', stop, { once: true });
    work.then(resolve, reject).finally(() => signal.removeEventListener('abort', stop));
  });
}

function toProblem(error: unknown): LookUpProblem {
  if (error instanceof ServiceError) {
    return {
      kind: 'problem',
      problem: error.trouble,
      message: `${error.message} Try again later, or send a file of daily temperatures.`,
    };
  }
  if (error instanceof NothingThere) {
    const message = 'No service has daily temperatures for that position. Send a file of your own instead.';
    return { kind: 'problem', problem: 'no-readings', message };
  }
  if (error instanceof DOMException && error.name === 'AbortError') {
    return { kind: 'problem', problem: 'cancelled', message: 'The look-up was stopped.' };
  }
  throw error;
}
