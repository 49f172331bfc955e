import tzlookup from '@photostructure/tz-lookup';
import type { Hemisphere } from '../engine/season.ts';
import { parseCoordinates, roundHundredths } from './coordinates.ts';
import { fold } from './fold.ts';
import { type Gazetteer, loadGazetteer } from './gazetteer.ts';
import {
  countryCodeOf,
  labelOf,
  nameOf,
  type PlaceQuery,
  queriesOf,
  regionOf,
  scan,
} from './place-search.ts';
import { SOUTHERN_ZONES } from './southern-zones.ts';

export { type Coordinates, parseCoordinates } from './coordinates.ts';
export { PLACES_CREDIT } from './gazetteer.ts';

/** A town, or a position near one. */
export interface Place {
  readonly name: string;
  /** First-level division: a state, a province. */
  readonly region: string | null;
  /** ISO 3166-1 alpha-2. */
  readonly country: string;
  /** "Portland, Oregon, US"; given to `findPlace` it finds this place again. */
  readonly label: string;
  /** Degrees, rounded to 0.01. */
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number | null;
  readonly population: number;
  readonly zone: string;
  readonly hemisphere: Hemisphere;
}

export type FoundPlace =
  /** `others` bear the same name and are so much smaller that this one was taken; worth a word in the reply. */
  | { readonly kind: 'one'; readonly place: Place; readonly others: readonly Place[] }
  | { readonly kind: 'several'; readonly places: readonly Place[] }
  /** `near` are towns whose name begins like it. */
  | { readonly kind: 'none'; readonly near: readonly Place[] };

/** Of towns of one name the largest is meant when it has so many times the people of the next. Ours. */
const DOMINANT = 50;
const MOST_CANDIDATES = 25;

/** Loads the towns ahead of the first question; safe to call and forget. */
export async function warmPlaces(): Promise<void> {
  await loadGazetteer();
}

/** Towns whose name begins as typed, those of exactly that name first, then the most populous first. */
export async function completePlaces(typed: string, limit = MOST_CANDIDATES): Promise<Place[]> {
  const gazetteer = await loadGazetteer();
  return placesOf(gazetteer, search(gazetteer, typed.slice(0, 100), limit), limit);
}

/** The town meant by a text such as "Raleigh", "Portland, Oregon", "portland or", or a position. */
export async function findPlace(text: string): Promise<FoundPlace> {
  const gazetteer = await loadGazetteer();
  const coordinates = parseCoordinates(text);
  if (coordinates)
    return { kind: 'one', place: near(gazetteer, coordinates.lat, coordinates.lon), others: [] };
  for (const query of queriesOf(text.slice(0, 100).replace(/^near /i, ''))) {
    const found = placesOf(gazetteer, called(gazetteer, query), MOST_CANDIDATES);
    const [first, second] = found;
    if (!first) continue;
    const labelled = found.find(({ label }) => fold(label) === fold(text));
    if (labelled) return { kind: 'one', place: labelled, others: [] };
    const dominant = !second || first.population >= DOMINANT * Math.max(1, second.population);
    return dominant
      ? { kind: 'one', place: first, others: found.slice(1) }
      : { kind: 'several', places: found };
  }
  return { kind: 'none', near: await completePlaces(text, 6) };
}

/**
 * Towns of exactly that name. A further name counts where no town has it as its own, or where its town is so
 * much larger that it is the one people mean.
 */
function called(gazetteer: Gazetteer, query: PlaceQuery): number[] {
  const own = scan(gazetteer, query, { name: 'own', how: 'exact' }, MOST_CANDIDATES);
  const further = scan(gazetteer, query, { name: 'further', how: 'exact' }, MOST_CANDIDATES);
  const peopleIn = (place: number | undefined) => gazetteer.population[place ?? -1] ?? 0;
  const least = own.length === 0 ? 0 : DOMINANT * Math.max(1, peopleIn(own[0]));
  return [...further.filter((place) => peopleIn(place) >= least && !own.includes(place)), ...own];
}

/** A position, named after the nearest town. */
export async function placeNear(lat: number, lon: number): Promise<Place> {
  return near(await loadGazetteer(), roundHundredths(lat), roundHundredths(lon));
}

/** IANA zone of a position in degrees; near a border it may be the neighbour's. */
export function zoneAt(lat: number, lon: number): string {
  return tzlookup(lat, lon);
}

let southern: ReadonlySet<string> | null = null;

/** The hemisphere most towns of a zone lie in; null for a zone that is no place, such as UTC. */
export function hemisphereOfZone(zone: string): Hemisphere | null {
  southern ??= new Set(SOUTHERN_ZONES.map(canonical));
  const name = canonical(zone);
  if (southern.has(name)) return 'S';
  return /^(Africa|America|Asia|Atlantic|Australia|Europe|Indian|Pacific|Arctic)\//.test(name) ? 'N' : null;
}

/** Zones have had several names; the host knows which are the same. */
function canonical(zone: string): string {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
  } catch {
    return zone;
  }
}

function search(gazetteer: Gazetteer, typed: string, limit: number): number[] {
  const found = new Set<number>();
  const take = (places: readonly number[]) => {
    for (const place of places) found.add(place);
  };
  for (const [i, query] of queriesOf(typed).entries()) {
    take(scan(gazetteer, query, { name: 'own', how: 'exact' }, limit));
    const further = scan(gazetteer, query, { name: 'further', how: 'exact' }, limit);
    // A name cut short is only looked for where nothing was split off it.
    const longer = i > 0 ? [] : scan(gazetteer, query, { name: 'own', how: 'prefix' }, limit);
    take([...further, ...longer].sort((a, b) => a - b));
    if (i === 0 && found.size < limit)
      take(scan(gazetteer, query, { name: 'further', how: 'prefix' }, limit));
    if (found.size >= limit) break;
  }
  return [...found];
}

/** One place a label: of two hamlets of one name in one division the larger. */
function placesOf(gazetteer: Gazetteer, found: readonly number[], limit: number): Place[] {
  const places = new Map<string, Place>();
  for (const index of found) {
    if (places.size >= limit) break;
    const place = placeOf(gazetteer, index);
    if (!places.has(place.label)) places.set(place.label, place);
  }
  return [...places.values()];
}

function placeOf(gazetteer: Gazetteer, index: number): Place {
  const lat = (gazetteer.lat[index] ?? 0) / 100;
  const lon = (gazetteer.lon[index] ?? 0) / 100;
  const elevation = gazetteer.elevationM[index] ?? -9999;
  return {
    name: nameOf(gazetteer, index),
    region: regionOf(gazetteer, index),
    country: countryCodeOf(gazetteer, index),
    label: labelOf(gazetteer, index),
    lat,
    lon,
    elevationM: elevation < -500 ? null : elevation,
    population: gazetteer.population[index] ?? 0,
    // GeoNames knows each town's zone; the look-up by position errs at borders.
    zone: gazetteer.zones[gazetteer.zone[index] ?? 0] ?? zoneAt(lat, lon),
    hemisphere: lat < 0 ? 'S' : 'N',
  };
}

function near(gazetteer: Gazetteer, lat: number, lon: number): Place {
  const narrowing = Math.cos((lat * Math.PI) / 180);
  let nearest = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < gazetteer.count; i++) {
    const north = (gazetteer.lat[i] ?? 0) / 100 - lat;
    const turn = Math.abs((gazetteer.lon[i] ?? 0) / 100 - lon);
    const east = Math.min(turn, 360 - turn) * narrowing;
    const distance = north * north + east * east;
    if (distance < least) [least, nearest] = [distance, i];
  }
  const town = placeOf(gazetteer, nearest);
  const hemisphere = lat < 0 ? 'S' : 'N';
  return {
    ...town,
    label: `near ${town.label}`,
    lat,
    lon,
    elevationM: null,
    zone: zoneAt(lat, lon),
    hemisphere,
  };
}
