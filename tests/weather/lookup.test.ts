import { eq } from 'drizzle-orm';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { rowsOf, tmaxOn } from '../../src/engine/climate.ts';
import { addDays, type Day, day } from '../../src/engine/day.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, members, weatherSeries } from '../../src/records/schema.ts';
import { createWeatherService, type WeatherService } from '../../src/weather/lookup.ts';
import { loadSeries } from '../../src/weather/series.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { dataAnswer, type FakeStation, highOn, searchAnswer } from '../support/weather/noaa.ts';
import { powerAnswer } from '../support/weather/power.ts';
import { flood, hang, inTurn, json, openStandIn, type StandIn, status } from '../support/weather/stand-in.ts';

const SEARCH = '/access/services/search/v1/data';
const DATA = '/access/services/data/v1';
const POWER = '/api/temporal/daily/point';
const SPOT = { lat: 35.78, lon: -78.64, elevationM: 96 };

const NEAR = {
  id: 'USC00317079',
  name: 'RALEIGH STATE UNIV, NC US',
  lat: 35.79,
  lon: -78.7,
  elevationM: 122,
};
const FAR: FakeStation = {
  id: 'USW00013722',
  name: 'RALEIGH AIRPORT, NC US',
  lat: 35.89,
  lon: -78.78,
  elevationM: 132,
};

describe('looking up the weather of a place', () => {
  let opened: OpenedDatabase;
  let noaa: StandIn;
  let power: StandIn;
  let elsewhere: StandIn;
  let service: WeatherService;
  let today: Day = day('2026-07-05');

  const clock = { now: () => new Date(`${today}T12:00:00Z`), today: () => today };
  const stations = (...known: FakeStation[]) => {
    noaa.answer(SEARCH, json(searchAnswer(known)));
    noaa.answer(DATA, dataAnswer(known));
  };
  const stored = () => opened.db.select().from(weatherSeries);

  beforeAll(async () => {
    opened = await openTestDatabase('embedded');
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    today = day('2026-07-05');
    [noaa, power, elsewhere] = await Promise.all([openStandIn(), openStandIn(), openStandIn()]);
    power.answer(POWER, powerAnswer());
    service = createWeatherService({
      db: opened.db,
      clock,
      addresses: { noaa: noaa.base, power: power.base },
      client: { timeoutMs: 400, retryDelaysMs: [5, 5] },
    });
  });
  afterEach(async () => {
    await Promise.all([noaa.close(), power.close(), elsewhere.close()]);
    await opened.db.delete(members);
    await opened.db.delete(weatherSeries);
  });

  it('takes the nearest complete station and thirty past seasons with this one', async () => {
    stations(FAR, NEAR);
    const told: string[] = [];
    const found = await service.lookUp(SPOT, { onProgress: (text) => told.push(text) });
    expect(found).toMatchObject({
      kind: 'found',
      source: 'noaa',
      name: NEAR.name,
      cached: false,
      heightDifferenceM: 26,
    });
    if (found.kind !== 'found') return;
    expect(found.distanceKm).toBeCloseTo(5.5, 0);
    const rows = [...rowsOf(await loadSeries(opened.db, found.seriesId))];
    expect(rows[0]?.day).toBe('1996-01-01');
    expect(rows.at(-1)?.day).toBe('2026-07-05');
    expect(rows.find((row) => row.day === '2012-08-01')?.tmaxC).toBe(highOn(day('2012-08-01')));
    expect(told).toContain('fetching year 1 of 31');
    expect(told).toContain('fetching year 31 of 31');
    expect(power.asked).toEqual([]);
  });

  it('asks as the services document it', async () => {
    stations(NEAR);
    await service.lookUp(SPOT);
    const search = noaa.asked.find(({ pathname }) => pathname === SEARCH);
    const [north, west, south, east] = (search?.searchParams.get('bbox') ?? '').split(',').map(Number);
    expect(north).toBeGreaterThan(SPOT.lat);
    expect(west).toBeLessThan(SPOT.lon);
    expect(south).toBeLessThan(SPOT.lat);
    expect(east).toBeGreaterThan(SPOT.lon);
    expect(Object.fromEntries(search?.searchParams ?? [])).toMatchObject({
      dataset: 'daily-summaries',
      dataTypes: 'TMAX,TMIN',
      startDate: '2026-01-06',
      endDate: '2026-07-05',
    });
    const data = noaa.asked.find(({ pathname }) => pathname === DATA);
    expect(Object.fromEntries(data?.searchParams ?? [])).toMatchObject({
      dataset: 'daily-summaries',
      dataTypes: 'TMAX,TMIN',
      units: 'metric',
      format: 'json',
      startDate: '1996-01-01',
      endDate: '2000-12-31',
    });
  });

  it('prefers a complete station to a nearer one with gaps', async () => {
    stations({ ...NEAR, coverage: 75 }, FAR);
    expect(await service.lookUp(SPOT)).toMatchObject({ name: FAR.name });
  });

  it('does not take a station that ended, lacks lows or lies far off', async () => {
    stations(
      { ...NEAR, id: 'A', to: '2005-12-31' },
      { ...NEAR, id: 'B', highsOnly: true },
      { ...NEAR, id: 'C', lat: 36.7 },
      FAR,
    );
    expect(await service.lookUp(SPOT)).toMatchObject({ name: FAR.name });
  });

  it('counts height as distance', async () => {
    stations({ ...NEAR, elevationM: 900 }, FAR);
    expect(await service.lookUp(SPOT)).toMatchObject({ name: FAR.name, heightDifferenceM: 36 });
  });

  it('goes on to the next station when the first has nothing after all', async () => {
    noaa.answer(SEARCH, json(searchAnswer([NEAR, FAR])));
    noaa.answer(DATA, dataAnswer([FAR]));
    expect(await service.lookUp(SPOT)).toMatchObject({ name: FAR.name });
  });

  it('falls back to the grid where there is no station, and says what that means', async () => {
    stations();
    const found = await service.lookUp(SPOT);
    expect(found).toMatchObject({ kind: 'found', source: 'power' });
    if (found.kind !== 'found') return;
    expect(found.remarks.join(' ')).toMatch(/estimate for a whole grid cell.*usually cooler/);
    const [asked] = power.asked;
    expect(Object.fromEntries(asked?.searchParams ?? [])).toEqual({
      parameters: 'T2M_MAX,T2M_MIN',
      community: 'AG',
      longitude: '-78.75',
      latitude: '36',
      start: '19960101',
      end: '20260705',
      format: 'JSON',
    });
  });

  it('reads missing values of either service as missing', async () => {
    noaa.answer(SEARCH, json(searchAnswer([NEAR])));
    noaa.answer(
      DATA,
      dataAnswer([NEAR], (row, on) => {
        if (on === '2001-05-01') return null;
        const { TMIN: _low, ...highOnly } = row;
        return on === '2001-05-02' ? highOnly : row;
      }),
    );
    const found = await service.lookUp(SPOT);
    if (found.kind !== 'found') throw new Error(found.message);
    const series = await loadSeries(opened.db, found.seriesId);
    expect(tmaxOn(series, day('2001-05-01'))).toBeNull();
    expect([...rowsOf(series)].find((row) => row.day === '2001-05-02')).toMatchObject({ tminC: null });

    stations();
    power.answer(
      POWER,
      powerAnswer((on) => (on > '2026-07-01' ? -999 : 20)),
    );
    const grid = await service.lookUp({ ...SPOT, lat: 10 });
    if (grid.kind !== 'found') throw new Error(grid.message);
    expect([...rowsOf(await loadSeries(opened.db, grid.seriesId))].at(-1)?.day).toBe('2026-07-01');
  });

  it('leaves out a few impossible days and refuses an answer full of them', async () => {
    noaa.answer(SEARCH, json(searchAnswer([NEAR])));
    noaa.answer(
      DATA,
      dataAnswer([NEAR], (row, on) => (on === '2001-05-01' ? { ...row, TMAX: '280.0' } : row)),
    );
    const found = await service.lookUp(SPOT);
    if (found.kind !== 'found') throw new Error(found.message);
    expect(tmaxOn(await loadSeries(opened.db, found.seriesId), day('2001-05-01'))).toBeNull();

    noaa.answer(SEARCH, json(searchAnswer([FAR])));
    noaa.answer(
      DATA,
      dataAnswer([FAR], (row) => ({ ...row, TMAX: 'warm' })),
    );
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'problem', problem: 'nonsense' });
    expect(await stored()).toHaveLength(1);
  });

  it('fetches a station once for members who ask at the same time or later', async () => {
    stations(NEAR);
    const told: string[] = [];
    const [first, second] = await Promise.all([
      service.lookUp(SPOT),
      service.lookUp({ ...SPOT, lat: 35.79 }, { onProgress: (text) => told.push(text) }),
    ]);
    const third = await service.lookUp(SPOT);
    expect(
      new Set([first, second, third].map((found) => found.kind === 'found' && found.seriesId)).size,
    ).toBe(1);
    expect(third).toMatchObject({ cached: true });
    const years = noaa.asked.filter(
      ({ pathname, searchParams }) => pathname === DATA && searchParams.get('startDate') === '1996-01-01',
    );
    expect(years).toHaveLength(1);
    expect(told).toContain('looking for a weather station');
  });

  it.each([
    ['400', status(400), 'refused'],
    ['500 for good', status(500), 'failed'],
    ['503', status(503), 'busy'],
    ['429 with a long pause', status(429, { 'retry-after': '3600' }), 'busy'],
    ['silence', hang, 'slow'],
    ['a hundred megabytes', flood, 'too-large'],
    ['a web page', json('<html>'), 'nonsense'],
    ['another shape', json({ results: [{ stations: 'none' }] }), 'nonsense'],
  ] as const)('says so when NOAA answers %s, and changes nothing', async (_what, answer, trouble) => {
    noaa.answer(SEARCH, answer);
    const problem = await service.lookUp(SPOT);
    expect(problem).toMatchObject({ kind: 'problem', problem: trouble });
    expect(problem.kind === 'problem' && problem.message).toMatch(
      /^NOAA’s weather service .*\. Try again later/,
    );
    expect(await stored()).toEqual([]);
    expect(power.asked).toEqual([]);
  });

  it('says so when nobody listens at the address', async () => {
    await noaa.close();
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'problem', problem: 'unreachable' });
    noaa = await openStandIn();
  });

  it('tries again after trouble that passes', async () => {
    noaa.answer(SEARCH, inTurn(status(503), status(502), json(searchAnswer([NEAR]))));
    noaa.answer(DATA, dataAnswer([NEAR]));
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'found' });
  });

  it('keeps nothing of a record whose later years fail', async () => {
    noaa.answer(SEARCH, json(searchAnswer([NEAR])));
    noaa.answer(DATA, inTurn(dataAnswer([NEAR]), dataAnswer([NEAR]), status(500)));
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'problem', problem: 'failed' });
    expect(await stored()).toEqual([]);
  });

  it('never follows a service to another address', async () => {
    noaa.answer(SEARCH, status(302, { location: `${elsewhere.base}/secret` }));
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'problem', problem: 'redirected' });
    expect(elsewhere.asked).toEqual([]);
  });

  it('follows a service within its own address, but not for ever', async () => {
    noaa.answer('/moved', json(searchAnswer([NEAR])));
    noaa.answer(SEARCH, status(301, { location: '/moved' }));
    noaa.answer(DATA, dataAnswer([NEAR]));
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'found' });
    noaa.answer('/moved', status(302, { location: '/moved' }));
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'problem', problem: 'redirected' });
  });

  it('says so when neither service has the place', async () => {
    stations();
    power.answer(
      POWER,
      powerAnswer(() => -999),
    );
    expect(await service.lookUp(SPOT)).toMatchObject({ kind: 'problem', problem: 'no-readings' });
  });

  it('stops waiting when told to', async () => {
    noaa.answer(SEARCH, hang);
    const stop = new AbortController();
    const waiting = service.lookUp(SPOT, { signal: stop.signal });
    stop.abort();
    expect(await waiting).toMatchObject({ kind: 'problem', problem: 'cancelled' });
  });

  describe('topping up', () => {
    const garden = async () => {
      stations(NEAR);
      const found = await service.lookUp(SPOT);
      if (found.kind !== 'found') throw new Error(found.message);
      const [club] = await opened.db
        .insert(clubs)
        .values({
          platform: 'terminal',
          platformId: `${Math.random()}`,
          name: 'Club',
          createdAt: clock.now(),
        })
        .returning();
      await opened.db.insert(members).values({
        clubId: club!.id,
        platformUserId: 'me',
        name: 'me',
        createdAt: clock.now(),
        seriesId: found.seriesId,
      });
      noaa.asked.length = 0;
      return found.seriesId;
    };

    it('adds the days since, a week later', async () => {
      const id = await garden();
      today = addDays(today, 6);
      expect(await service.topUpDue()).toEqual([]);
      today = addDays(today, 2);
      expect(await service.topUpDue()).toEqual([id]);
      const rows = [...rowsOf(await loadSeries(opened.db, id))];
      expect(rows.at(-1)?.day).toBe(today);
      expect(rows[0]?.day).toBe('1996-01-01');
      expect(noaa.asked.map(({ searchParams }) => searchParams.get('startDate'))).toEqual(['2025-11-02']);
      expect(await service.topUpDue()).toEqual([]);
    });

    it('rests in winter, and leaves alone what nobody gardens by', async () => {
      await garden();
      today = day('2027-01-20');
      expect(await service.topUpDue()).toEqual([]);
      await opened.db.delete(members);
      today = day('2027-05-20');
      expect(await service.topUpDue()).toEqual([]);
    });

    it('tries a day later when the service fails, and keeps the record', async () => {
      const id = await garden();
      today = addDays(today, 8);
      noaa.answer(DATA, status(500));
      expect(await service.topUpDue()).toEqual([]);
      const failed = noaa.asked.length;
      expect(await service.topUpDue()).toEqual([]);
      expect(noaa.asked).toHaveLength(failed);
      noaa.answer(DATA, dataAnswer([NEAR]));
      today = addDays(today, 2);
      expect(await service.topUpDue()).toEqual([id]);
      const [row] = await opened.db.select().from(weatherSeries).where(eq(weatherSeries.id, id));
      expect(row?.fetchedAt).toEqual(clock.now());
    });
  });
});
