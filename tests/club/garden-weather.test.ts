import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Clock } from '../../src/clock.ts';
import type { Day } from '../../src/engine/day.ts';
import { addDays, day } from '../../src/engine/day.ts';
import { topUpWeather } from '../../src/nudges/weather-top-up.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, trees, weatherSeries } from '../../src/records/schema.ts';
import { createServices } from '../../src/services.ts';
import { createWeatherService } from '../../src/weather/lookup.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';
import { dataAnswer, type FakeStation, highOn, searchAnswer } from '../support/weather/noaa.ts';
import { powerAnswer } from '../support/weather/power.ts';
import { flood, hang, json, openStandIn, type StandIn, status } from '../support/weather/stand-in.ts';

const SEARCH = '/access/services/search/v1/data';
const DATA = '/access/services/data/v1';
const POWER = '/api/temporal/daily/point';

/** An invented garden near Raleigh, and stations about it. */
const PLACE = '/garden set lat:35.78 lon:-78.64';
const NEAR: FakeStation = { id: 'USC00000001', name: 'MILL CREEK', lat: 35.79, lon: -78.7, elevationM: 122 };

let opened: OpenedDatabase;
let club: TerminalClub;
let noaa: StandIn;
let power: StandIn;
let folder: string;
let today: Day;

/** The services' clock; the club's own is moved by its lines. */
const clock: Clock = {
  now: () => new Date(`${today}T12:00:00Z`),
  today: () => today,
  hasCome: (on) => on <= today,
};

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
});
afterAll(() => opened.close());
beforeEach(async () => {
  today = day('2026-07-05');
  folder = mkdtempSync(join(tmpdir(), 'ostiole-weather-'));
  [noaa, power] = await Promise.all([openStandIn(), openStandIn()]);
  stations(NEAR);
  power.answer(POWER, powerAnswer());
  await opened.db.delete(clubs);
  await opened.db.delete(weatherSeries);
  const weather = createWeatherService({
    db: opened.db,
    clock,
    addresses: { noaa: noaa.base, power: power.base },
    client: { timeoutMs: 400, retryDelaysMs: [5, 5] },
  });
  club = await openTerminalClub(opened, today, { weather });
});
afterEach(async () => {
  club.close();
  rmSync(folder, { recursive: true });
  await Promise.all([noaa.close(), power.close()]);
});

function stations(...known: FakeStation[]) {
  noaa.answer(SEARCH, json(searchAnswer(known)));
  noaa.answer(DATA, dataAnswer(known));
}

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** Days of `from` to `to` in °C as a home station writes them. */
function csv(from: string, to: string, high: (on: Day) => number): string {
  const lines = ['date,high_C,low_C'];
  for (let on = day(from); on <= to; on = addDays(on, 1)) {
    lines.push(`${on},${high(on).toFixed(1)},${(high(on) - 8).toFixed(1)}`);
  }
  return `${lines.join('\n')}\n`;
}

const garden = () => club.data('/garden show');

describe('/garden weather without a file', () => {
  it('asks where the garden is when nobody has said', async () => {
    const reply = await club.ask('/garden weather');
    expect(reply).toMatchObject({ ok: false, data: { error: 'no-place' } });
    expect(reply.text).toContain('/garden set place:');
    expect(noaa.asked).toEqual([]);
  });

  it('finds the station, names it with its distance, and gives the season', async () => {
    const set = await club.ask(PLACE);
    expect(set.buttons.map(({ label }) => label)).toContain('Look up its weather');
    const reply = await club.ask('/garden weather');
    expect(reply).toMatchObject({
      ok: true,
      data: { basis: 'record', seasons: 31, source: { kind: 'noaa', name: 'MILL CREEK' } },
    });
    expect(reply.text).toContain('weather station MILL CREEK, 6 km away');
    expect(club.progress).toEqual(
      expect.arrayContaining(['fetching year 1 of 31', 'fetching year 31 of 31']),
    );
    // The stand-in's highs are 15 − 13 cos(2π (n − 25) / 365) °C on the n-th day of the year, rounded to a
    // tenth: 26.7 °C, the tenth that 80 °F comes to, from the 182nd day on which cos ≤ −0.896 to its end.
    const last = lastDayAt(26.7);
    expect(reply.data.heatEnd).toBe(last);
    expect((await club.ask('/garden set units:F')).buttons).toEqual([]);
  });

  it('tells of each tree how it stands and how the past thirty seasons would have ended', async () => {
    await club.type(PLACE, '/tree add name:Pot 3 ripening:early', '/tree add name:Alma ripening:late');
    const reply = await club.ask('/garden weather');
    const tips = (await club.data('/tip')).items;
    expect(reply.data.trees).toEqual(tips);
    expect(tips).toMatchObject([
      { outlook: { seasons: 30, if: 'tip-today' } },
      { outlook: { seasons: 30, if: 'tip-today' } },
    ]);
    expect(reply.fields.find(({ name }) => name === 'Pot 3')?.value).toMatch(
      /outlook \d+ of 30 seasons in the heat, \d+ before frost$/,
    );
    expect(await garden()).toMatchObject({ trees: tips });
    expect(await club.data('/garden set caution:3')).toHaveProperty('trees');
    expect(await club.data('/garden set nudge_hour:9')).not.toHaveProperty('trees');
  });

  it('does the same at the press of the button under /garden set', async () => {
    await club.type(PLACE);
    expect(await club.data('#1')).toMatchObject({ basis: 'record', source: { name: 'MILL CREEK' } });
  });

  it('says that the grid is an estimate and usually cooler in its highs than a garden', async () => {
    stations();
    await club.type(PLACE);
    const reply = await club.ask('/garden weather');
    expect(club.progress).toContain('looking for a weather station');
    expect(reply.data).toMatchObject({ basis: 'record', source: { kind: 'power' } });
    expect(reply.text).toMatch(/No good weather station is near.*estimate.*usually cooler than a garden’s/s);
  });

  it.each([
    ['refuses', status(400)],
    ['fails', status(500)],
    ['is too busy', status(503)],
    ['says nothing', hang],
    ['sends a hundred megabytes', flood],
    ['sends a web page', json('<html>')],
    ['points elsewhere', status(302, { location: 'http://127.0.0.1:9/elsewhere' })],
  ] as const)('leaves the garden as it was and says so when the service %s', async (_what, answer) => {
    await club.type(`${PLACE} heat_end:October 10 first_frost:November 4`, '/tree add name:Pot 3');
    const before = await garden();
    const planned = await opened.db.select().from(trees);
    noaa.answer(SEARCH, answer);
    const reply = await club.ask('/garden weather');
    expect(reply.ok).toBe(false);
    expect(reply.text).toMatch(/^NOAA’s weather service .*Your garden is as it was\.$/);
    expect(await garden()).toEqual(before);
    expect(await opened.db.select().from(trees)).toEqual(planned);
    expect(await opened.db.select().from(weatherSeries)).toEqual([]);
  });

  it('fetches a station once for two members who garden near it', async () => {
    await club.type(PLACE, 'maria> /garden set lat:35.80 lon:-78.65');
    await club.type('/garden weather', 'maria> /garden weather');
    const firstYears = noaa.asked.filter(
      ({ pathname, searchParams }) => pathname === DATA && searchParams.get('startDate') === '1996-01-01',
    );
    expect(firstYears).toHaveLength(1);
    expect(await opened.db.select().from(weatherSeries)).toHaveLength(1);
  });

  it('connects to the configured services and to nothing else', async () => {
    const connected = new Set<string>();
    const connect = vi.spyOn(Socket.prototype, 'connect').mockImplementation(function (
      this: Socket,
      ...args: Parameters<Socket['connect']>
    ) {
      connected.add(addressOf(args));
      return Reflect.apply(original, this, args);
    } as Socket['connect']);
    try {
      await club.type(PLACE, '/garden weather', '/tree add name:Pot 3', '/garden show', '/tip tree:Pot 3');
      stations();
      await club.type('/garden set place:Portland, Maine, US', '/garden weather');
    } finally {
      connect.mockRestore();
    }
    expect([...connected].sort()).toEqual([noaa.base, power.base].map((base) => new URL(base).host).sort());
  });

  it('takes the addresses from the settings', async () => {
    const { weather } = createServices({
      settings: { weather: { noaa: noaa.base, power: power.base } },
      db: opened.db,
      clock,
    });
    expect(await weather.lookUp({ lat: 35.78, lon: -78.64, elevationM: null })).toMatchObject({
      kind: 'found',
      source: 'noaa',
    });
  });
});

describe('a record topped up weekly', () => {
  it('works out the season anew and moves decision dates with it', async () => {
    const fromOn = (first: string, warmer: number) =>
      noaa.answer(
        DATA,
        dataAnswer([NEAR], (row, on) =>
          on < first ? null : { ...row, TMAX: (highOn(on) + (on >= '2026-01-01' ? warmer : 0)).toFixed(1) },
        ),
      );
    fromOn('2025-01-01', 0);
    await club.type(PLACE, '/garden weather', '/tree add name:Pot 3 ripening:early');
    expect(await garden()).toMatchObject({ heatEnd: lastDayAt(26.7), seasons: 2 });
    const [was] = await opened.db.select().from(trees);
    // This year turns out 6 °C warmer. Of the days of two seasons about a day half must reach the mark: where
    // the year before is long below it, all fifteen of this year, to a week before its last.
    await club.type('@2026-10-05');
    today = day('2026-10-05');
    fromOn('2025-01-01', 6);
    const weather = createWeatherService({
      db: opened.db,
      clock,
      addresses: { noaa: noaa.base, power: power.base },
    });
    expect(await topUpWeather(opened.db, clock, { weather })).toBe(1);
    const heatEnd = addDays(day(`2026-${lastDayAt(20.7)}`), -7);
    expect(await garden()).toMatchObject({ heatEnd: heatEnd.slice(5), seasons: 2 });
    const [is] = await opened.db.select().from(trees);
    // An early kind: 70 + 10 days before the end of the heat.
    expect(was?.decisionOn).toBe(addDays(day(`2026-${lastDayAt(26.7)}`), -80));
    expect(is?.decisionOn).toBe(addDays(heatEnd, -80));
    expect(await topUpWeather(opened.db, clock, { weather })).toBe(0);
  });
});

describe('one’s own station file', () => {
  it('wins over the record that was looked up, day by day, and tells what it changed', async () => {
    await club.type(PLACE, '/garden weather');
    const before = await garden();
    // 5 °C warmer than the station through 2020–2025, and the same in 1996; 2,192 + 366 days.
    const warmer = csv('2020-01-01', '2025-12-31', (on) => highOn(on) + 5);
    const same = csv('1996-01-01', '1996-12-31', highOn).split('\n').slice(1).join('\n');
    const reply = await club.ask(`/garden weather file:${file('mine.csv', warmer + same)} unit:C`);
    expect(reply.data.imported).toMatchObject({ added: 0, replaced: 2192, unchanged: 366 });
    expect(reply.text).toContain('2192 days replaced by yours, 366 days the same as before');
    // A fifth of the seasons is warmer: the shares around the end of the heat move it out by some days.
    expect(days(String(reply.data.heatEnd))).toBeGreaterThanOrEqual(days(String(before.heatEnd)));
    expect(reply.text).toMatch(/In the record that moves heat end from|The dates of your season stay/);
    // The station's days stand behind it still: 31 seasons, not 6.
    expect(reply.data.seasons).toBe(31);
  });

  it('adds days before the record, and keeps its readings when another station is looked up', async () => {
    await club.type(PLACE);
    const mine = file(
      'mine.csv',
      csv('2023-01-01', '2025-12-31', (on) => highOn(on) + 6),
    );
    const first = await club.ask(`/garden weather file:${mine} unit:C`);
    expect(first.data).toMatchObject({ seasons: 3, imported: { added: 1096, replaced: 0 } });
    const looked = await club.ask('/garden weather');
    expect(looked.text).toContain('Your own readings stand before it');
    expect(looked.data.seasons).toBe(31);
    const again = await club.ask(`/garden weather file:${mine} unit:C`);
    expect(again.data.imported).toMatchObject({ added: 0, replaced: 0, unchanged: 1096 });
    expect(again.text).toContain('The dates of your season stay as they were');
  });

  it('leaves a stated heat end as it stands, says what the record says, and follows it when asked to', async () => {
    await club.type('/garden set heat_end:September 20');
    const mine = file('mine.csv', csv('2021-01-01', '2025-12-31', highOn));
    const reply = await club.ask(`/garden weather file:${mine} unit:C`);
    expect(reply.data).toMatchObject({ heatEnd: '09-20', basis: 'stated' });
    expect(reply.text).toContain('as you said');
    expect(reply.text).toMatch(/The weather record says .*; to follow it type \/garden set heat_end:record/);
    expect(await club.data('/garden set heat_end:record')).toMatchObject({
      heatEnd: lastDayAt(26.7),
      basis: 'record',
    });
  });

  it('offers the places of a file that holds several, and takes the one pressed', async () => {
    const rows = (name: string, more: number) =>
      csv('2021-01-01', '2024-12-31', (on) => highOn(on) + more)
        .trim()
        .split('\n')
        .slice(1)
        .map((line) => `${name},${line}`);
    const both = file(
      'both.csv',
      `station,date,high_C,low_C\n${[...rows('North field', 0), ...rows('South field', 3).slice(1)].join('\n')}\n`,
    );
    const asked = await club.ask(`/garden weather file:${both} unit:C`);
    expect(asked).toMatchObject({ ok: false, data: { error: 'weather-several-places' } });
    expect(asked.buttons.map(({ label }) => label)).toEqual(['North field', 'South field']);
    expect(await garden()).toMatchObject({ seasons: 0 });
    // Nobody else can take the file.
    expect(await club.ask('maria> #1')).toMatchObject({ ok: false, data: { error: 'file-not-kept' } });
    const taken = await club.ask('#2');
    expect(taken.text).toContain('both.csv, South field,');
    expect(taken.data).toMatchObject({ seasons: 4, basis: 'record' });
    expect(taken.data.heatEnd).toBe(lastDayAt(23.7));
    await club.type('@2026-07-06');
    expect(await club.ask('#2')).toMatchObject({ ok: false, data: { error: 'file-not-kept' } });
  });
});

/** Last day of a common year whose high by the stand-in's formula is at least so warm, with its week to both sides half so. */
function lastDayAt(celsius: number): string {
  let last = '';
  for (let on = day('2025-01-01'); on <= '2025-12-31'; on = addDays(on, 1)) {
    // On a falling slope half of the fifteen days about a day are at the mark when the day itself is, and
    // 8 of 15 is at least half; 7 of 15 is not.
    if (highOn(on) >= celsius) last = on.slice(5);
  }
  return last;
}

function days(monthDay: string): number {
  return Date.parse(`2025-${monthDay}T00:00Z`) / 86_400_000;
}

const original = Socket.prototype.connect;

function addressOf(args: readonly unknown[]): string {
  const [first] = args;
  const options = (Array.isArray(first) ? first[0] : first) as {
    host?: string;
    port?: number;
    path?: string;
  };
  return options.path ?? `${options.host}:${options.port}`;
}
