import { type Day, daysBetween, earlier, later } from '../engine/day.ts';

/** A position a record is wanted for. Degrees; height above the sea where it is known. */
export interface Spot {
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number | null;
}

/** What a station's catalogue entry says. */
export interface Station {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number | null;
  readonly highs: Coverage;
  readonly lows: Coverage;
}

export interface Coverage {
  readonly from: Day;
  readonly to: Day;
  /** Share of the days between that have a reading, 0 to 1. */
  readonly share: number;
}

export interface RankedStation extends Station {
  readonly distanceKm: number;
  /** Expected share of the window's days with both a high and a low. */
  readonly completeness: number;
}

/** Further than this a station's season is another place's. Ours. */
export const FARTHEST_KM = 60;
/** Stations at least so complete are as good as each other, and nearness decides. */
export const GOOD_COMPLETENESS = 0.9;
/** Less than this makes no record worth having. */
export const LEAST_COMPLETENESS = 0.7;
/** A hundred metres of height count as ten kilometres: 0.65 °C by the ICAO standard atmosphere's 6.5 °C a km. */
const KM_PER_METRE = 0.1;
const EARTH_KM = 6371.0088;

/** Great-circle distance in km on a sphere of the earth's mean radius (IUGG). */
export function distanceKm(a: { lat: number; lon: number }, b: { lat: number; lon: number }): number {
  const radians = Math.PI / 180;
  const north = Math.sin(((b.lat - a.lat) * radians) / 2) ** 2;
  const east = Math.sin(((b.lon - a.lon) * radians) / 2) ** 2;
  const half = north + Math.cos(a.lat * radians) * Math.cos(b.lat * radians) * east;
  return 2 * EARTH_KM * Math.asin(Math.min(1, Math.sqrt(half)));
}

/** Stations good enough for the spot over a window, best first: completeness, then nearness and height. */
export function rankStations(
  stations: readonly Station[],
  spot: Spot,
  window: { readonly from: Day; readonly to: Day },
): RankedStation[] {
  return stations
    .map((station) => ({
      ...station,
      distanceKm: distanceKm(station, spot),
      completeness: Math.min(shareOf(station.highs, window), shareOf(station.lows, window)),
    }))
    .filter((station) => station.distanceKm <= FARTHEST_KM && station.completeness >= LEAST_COMPLETENESS)
    .sort(
      (a, b) =>
        Number(b.completeness >= GOOD_COMPLETENESS) - Number(a.completeness >= GOOD_COMPLETENESS) ||
        farness(a, spot) - farness(b, spot),
    );
}

/** Kilometres, with the difference in height turned into them. */
export function farness(station: RankedStation, spot: Spot): number {
  return station.distanceKm + KM_PER_METRE * Math.abs(heightDifferenceM(station, spot) ?? 0);
}

export function heightDifferenceM(station: { elevationM: number | null }, spot: Spot): number | null {
  return station.elevationM === null || spot.elevationM === null
    ? null
    : station.elevationM - spot.elevationM;
}

/** How much of the window is covered, taking gaps to be spread evenly over the station's years. */
function shareOf({ from, to, share }: Coverage, window: { from: Day; to: Day }): number {
  const days = daysBetween(later(from, window.from), earlier(to, window.to)) + 1;
  return (Math.max(0, days) / (daysBetween(window.from, window.to) + 1)) * share;
}
