import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DailySeries, rowsOf } from '../../src/engine/climate.ts';
import { addDays, day } from '../../src/engine/day.ts';
import { summariseRecord } from '../../src/engine/record-summary.ts';
import {
  readWeatherFile,
  type WeatherFile,
  type WeatherFileOptions,
  type WeatherFileProblem,
} from '../../src/weather/files.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string, options?: WeatherFileOptions) => readWeatherFile(bytes(text), options);

async function taken(text: string, options?: WeatherFileOptions): Promise<WeatherFile> {
  const result = await read(text, options);
  if (result.kind === 'problem') throw new Error(result.message);
  return result;
}

async function refused(text: string, options?: WeatherFileOptions): Promise<WeatherFileProblem> {
  const result = await read(text, options);
  if (result.kind === 'file') throw new Error('was taken');
  return result;
}

const rows = (series: DailySeries) => [...rowsOf(series)].map((row) => [row.day, row.tmaxC, row.tminC]);

describe('layouts of weather files', () => {
  it('reads NOAA daily summaries in °F, as NCEI’s past weather tool names its columns', async () => {
    // Column names "TMAX (Degrees Fahrenheit)" as in NCEI's Daily Summaries "Past Weather" export.
    const file = await taken(
      '"RALEIGH STATE UNIV, NC US (USC00317079)"\n' +
        '"Date","TAVG (Degrees Fahrenheit)","TMAX (Degrees Fahrenheit)","TMIN (Degrees Fahrenheit)","PRCP (Inches)"\n' +
        '"2015-07-01","","93","71","0.00"\n"2015-07-02","","","70","0.12"\n',
    );
    expect(rows(file.series)).toEqual([
      ['2015-07-01', 33.9, 21.7],
      ['2015-07-02', null, 21.1],
    ]);
    expect(file).toMatchObject({ unit: 'F', unitFrom: 'file', days: 2, withHigh: 1, withLow: 2 });
    expect(file.remarks).toEqual(['1 day has no high.']);
  });

  it('reads NOAA’s order form (station, name, position, attributes) and asks for the unit it never states', async () => {
    // STATION, NAME, DATE and *_ATTRIBUTES ("measurement,quality,source[,time]") as in NCEI's documentation of
    // the daily summaries CSV, https://www.ncei.noaa.gov/pub/data/cdo/documentation/GHCND_documentation.pdf.
    const text =
      '"STATION","NAME","LATITUDE","LONGITUDE","ELEVATION","DATE","PRCP","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"\n' +
      '"USW00094728","NY CITY CENTRAL PARK, NY US","40.77898","-73.96925","42.7","2012-07-04","0.00","93",",,W,2400","74",",,W,2400"\n' +
      '"USW00094728","NY CITY CENTRAL PARK, NY US","40.77898","-73.96925","42.7","2012-07-05","0.00","192",",X,W,2400","75",",,W,2400"\n';
    expect(await refused(text)).toMatchObject({ problem: 'unit-unknown' });
    const file = await taken(text, { unit: 'F' });
    expect(rows(file.series)).toEqual([
      ['2012-07-04', 33.9, 23.3],
      ['2012-07-05', null, 23.9],
    ]);
    expect(file.station).toEqual({
      id: 'USW00094728',
      name: 'NY CITY CENTRAL PARK, NY US',
      lat: 40.77898,
      lon: -73.96925,
      elevationM: 42.7,
    });
    expect(file.remarks[0]).toMatch(/failing the publisher’s own checks: 1 reading\.$/);
  });

  it('knows whole tenths of °C, as GHCN-Daily’s own files have them', async () => {
    // readme.txt of GHCN-Daily: "TMAX = Maximum temperature (tenths of degrees C)".
    const lines = Array.from(
      { length: 40 },
      (_, i) => `"USW00094728","${addDays(day('2012-06-01'), i)}","  ${250 + i}","  ${-5 + i}"`,
    );
    const file = await taken(`"STATION","DATE","TMAX","TMIN"\n${lines.join('\n')}\n`);
    expect(rows(file.series)[0]).toEqual(['2012-06-01', 25, -0.5]);
    expect(file.remarks[0]).toMatch(/tenths of °C/);
    expect(await taken(`"STATION","DATE","TMAX","TMIN"\n${lines.join('\n')}\n`, { unit: 'C' })).toMatchObject(
      { unit: 'C' },
    );
  });

  it('reads NASA POWER with its header block and days of the year', async () => {
    // Header block as POWER's daily CSV writes it (power.larc.nasa.gov/docs/services/api/temporal/daily/).
    const file = await taken(
      '-BEGIN HEADER-\nNASA/POWER CERES/MERRA2 Native Resolution Daily Data \n' +
        'Dates (month/day/year): 02/28/2020 through 03/01/2020 \nLocation: Latitude  6.6237   Longitude -1.2132 \n' +
        'The value for missing source data that cannot be computed or is outside of the sources availability range: -999 \n' +
        'Parameter(s): \nT2M_MAX         MERRA-2 Temperature at 2 Meters Maximum (C) \n' +
        'T2M_MIN         MERRA-2 Temperature at 2 Meters Minimum (C) \nT2M_RANGE         MERRA-2 Range (C) \n-END HEADER-\n' +
        'YEAR,DOY,T2M_MAX,T2M_MIN,T2M_RANGE\n2020,59,31.25,22.11,9.14\n2020,60,-999.0,22.4,-999.0\n2020,61,30,21,9\n',
    );
    expect(rows(file.series)).toEqual([
      ['2020-02-28', 31.3, 22.1],
      ['2020-02-29', null, 22.4],
      ['2020-03-01', 30, 21],
    ]);
    expect(file.unit).toBe('C');
  });

  it('reads NASA POWER by year, month and day, with or without its header block', async () => {
    const file = await taken('YEAR,MO,DY,T2M_MAX,T2M_MIN\n2020,2,29,11.5,-999\n');
    expect(rows(file.series)).toEqual([['2020-02-29', 11.5, null]]);
  });

  it('reads a reading a line', async () => {
    const file = await taken(
      'station,date,datatype,value,unit\nS1,2020-05-01,TMAX,70,F\nS1,2020-05-01,TMIN,50,F\nS1,2020-05-01,PRCP,3,mm\nS1,2020-05-02,TMAX,71,F\n',
    );
    expect(rows(file.series)).toEqual([
      ['2020-05-01', 21.1, 10],
      ['2020-05-02', 21.7, null],
    ]);
  });

  it.each([
    ['date,high (°F),low (°F)', '2020-05-01,68,50'],
    ['Date;Max Temp °F;Min Temp °F', '2020-05-01;68;50'],
    ['Day\tHigh F\tLow F', '2020-05-01\t68\t50'],
    ['obs_date|tmax_f|tmin_f', '2020-05-01|68|50'],
    ['"Date","Maximum temperature (degF)","Minimum temperature (degF)"', '"2020-05-01","68","50"'],
    ['timestamp,tempMaxF,tempMinF,windMaxMph', '2020-05-01T00:00,68,50,22'],
    ['Datum;Höchsttemperatur (°C);Tiefsttemperatur (°C)', '01.05.2020;20,0;10,0\n13.05.2020;21,5;9,5'],
    [
      'Date/Time,Year,Month,Day,Max Temp (°C),Max Temp Flag,Min Temp (°C),Mean Temp (°C)',
      '2020-05-01,2020,05,01,20.0,,10.0,15.0',
    ],
    ['Date,High (°F),High (°C),Low (°F),Low (°C)', '2020-05-01,68,20,50,10'],
    ['date,high,low', '2020-05-01,68°F,50°F'],
    ['date,high,low', '1 May 2020,20.0 C,10.0 C'],
    ['date,high c,low c', '"May 1, 2020",20,10'],
    ['date,high c,low c', '20200501,20,10'],
    ['date,high c,low c', '2020/5/1,+20.0,10'],
  ])('understands the header %s', async (header, line) => {
    expect(rows((await taken(`${header}\n${line}\n`)).series)[0]).toEqual(['2020-05-01', 20, 10]);
  });

  it('reads UTF-8 with a mark, UTF-16 and Windows-1252, and any line end', async () => {
    const text = 'date,high (°C),low (°C)\r\n2020-05-01,20,10\r\n\r\n2020-05-02,−1,-2\r\n';
    const marked = await taken(`\ufeff${text}`);
    expect(rows(marked.series)[1]).toEqual(['2020-05-02', -1, -2]);
    const utf16 = Buffer.from(`\ufeff${text}`, 'utf16le');
    const bare = Buffer.from(text, 'utf16le');
    const latin = Buffer.from(text.replace('−', '-'), 'latin1');
    const old = bytes(text.replaceAll('\r\n', '\r'));
    for (const encoded of [utf16, bare, Buffer.from(utf16).swap16(), latin, old]) {
      expect(await readWeatherFile(encoded)).toMatchObject({ kind: 'file', days: 2, unit: 'C' });
    }
  });

  it('takes every code for a missing reading as missing', async () => {
    const codes = [
      '',
      '-9999',
      '-999',
      '9999',
      '-999.0',
      '-99.9',
      '9999.9',
      'M',
      'NA',
      'n/a',
      'NaN',
      'null',
      '--',
      'T',
      '.',
    ];
    const lines = codes.map((code, i) => `${addDays(day('2020-01-01'), i)},20,${code}`);
    const file = await taken(`date,high (C),low (C)\n${lines.join('\n')}\n`);
    expect(file).toMatchObject({ days: codes.length, withLow: 0 });
  });

  it('sorts days and takes a repeated line once', async () => {
    const file = await taken(
      'date,max c,min c\n2020-05-02,21,\n2020-05-01,20,10\n2020-05-02,,11\n2020-05-01,20,10\n',
    );
    expect(rows(file.series)).toEqual([
      ['2020-05-01', 20, 10],
      ['2020-05-02', 21, 11],
    ]);
  });

  it('joins the intervals of a home station into days', async () => {
    const file = await taken(
      'Date,Time,Hi Temp F,Low Temp F\n5/1/20,6:00,50,48\n5/1/20,15:00,68,60\n5/13/20,0:30,49,45\n',
    );
    expect(rows(file.series)).toEqual([
      ['2020-05-01', 20, 8.9],
      ['2020-05-13', 9.4, 7.2],
    ]);
    expect(file.remarks.join()).toMatch(/joined/);
  });
});

describe('what a file leaves open is asked, never guessed', () => {
  it('asks for the unit, and lets what the file says win over what is said', async () => {
    const problem = await refused('date,high,low\n2020-05-01,68,50\n');
    expect(problem).toMatchObject({ problem: 'unit-unknown', line: null });
    expect(problem.message).toMatch(/°F or °C/);
    const file = await taken('date,high (°C),low (°C)\n2020-05-01,20,10\n', { unit: 'F' });
    expect(rows(file.series)[0]).toEqual(['2020-05-01', 20, 10]);
    expect(file.remarks).toEqual(['The file says it is in °C, so I read it as that.']);
  });

  it('settles the order of dates by a day above 12, wherever it stands', async () => {
    const lines = (dates: string[]) =>
      `date,high c,low c\n${dates.map((date) => `${date},20,10`).join('\n')}\n`;
    expect(rows((await taken(lines(['03/04/2020', '04/25/2020']))).series)[0]?.[0]).toBe('2020-03-04');
    expect(rows((await taken(lines(['03/04/2020', '25/04/2020']))).series)[0]?.[0]).toBe('2020-04-03');
    // The data settle it, whatever the member is used to.
    expect(rows((await taken(lines(['03.04.2020', '25.04.2020']), { order: 'MDY' })).series)[0]?.[0]).toBe(
      '2020-04-03',
    );
    const open = await refused(lines(['03/04/2020', '04/04/2020']));
    expect(open).toMatchObject({ problem: 'date-order-unknown', line: 2 });
    expect(rows((await taken(lines(['03/04/2020']), { order: 'DMY' })).series)[0]?.[0]).toBe('2020-04-03');
    expect(rows((await taken('Date (DD/MM/YYYY),high c,low c\n03/04/2020,20,10\n')).series)[0]?.[0]).toBe(
      '2020-04-03',
    );
    expect(await refused(lines(['25/04/2020', '04/26/2020']))).toMatchObject({
      problem: 'bad-line',
      line: 3,
    });
  });

  it('asks which of several places is meant', async () => {
    const text =
      'place,date,high c,low c\nHilltop,2020-05-01,20,10\nValley,2020-05-01,22,8\nValley,2020-05-02,22,8\n';
    expect(await refused(text)).toMatchObject({
      problem: 'several-places',
      places: [
        { name: 'Valley', days: 2 },
        { name: 'Hilltop', days: 1 },
      ],
    });
    expect(await taken(text, { place: ' hilltop' })).toMatchObject({ days: 1, station: { name: 'Hilltop' } });
    expect(await refused(text, { place: 'Lakeside' })).toMatchObject({ problem: 'several-places' });
  });

  it('only ever vetoes a unit by its numbers', async () => {
    const year = (high: (i: number) => number) =>
      `date,high,low\n${Array.from({ length: 365 }, (_, i) => `${addDays(day('2019-01-01'), i)},${high(i)},${high(i) - 9}`).join('\n')}\n`;
    const celsius = year((i) => Math.round(15 - 14 * Math.cos(((i - 25) / 365) * 2 * Math.PI)));
    const fahrenheit = year((i) => Math.round(60 - 30 * Math.cos(((i - 25) / 365) * 2 * Math.PI)));
    expect(await refused(celsius, { unit: 'F' })).toMatchObject({ problem: 'unit-implausible' });
    expect(await refused(fahrenheit, { unit: 'C' })).toMatchObject({ problem: 'unit-implausible' });
    expect(await refused(celsius)).toMatchObject({ problem: 'unit-unknown' });
    expect((await taken(fahrenheit, { unit: 'F' })).days).toBe(365);
  });
});

describe('a file that cannot be read says which line and why', () => {
  const lines = (from: number, to: number) =>
    Array.from({ length: to - from + 1 }, (_, i) => `${addDays(day('2012-01-01'), from + i)},20,10`).join(
      '\n',
    );

  it.each([
    [
      `date,high (C),low (C)\n${lines(1, 212)}\n2013-01-01,12.0,31.2\n`,
      'line 214: the low 31.2 °C is above the high 12 °C.',
      214,
    ],
    ['date,high (C),low (C)\n2020-02-30,20,10\n', 'line 2: “2020-02-30” is not a date.', 2],
    ['date,high (C),low (C)\n2020-02-03,warm,10\n', 'line 2: the high “warm” is not a temperature.', 2],
    [
      'date,high (C),low (C)\n\n# a remark\n2020-02-03,75,10\n',
      'line 4: the high 75 °C is not an air temperature.',
      4,
    ],
    ['date,high (F),low (F)\n2020-02-03,30,-80\n', 'line 2: the low -80 °F is not an air temperature.', 2],
    [
      'date,high (C),low (C)\n2020-02-03,12,5,3,1\n',
      /^line 2: 5 values where the header names 3\. If its numbers have decimal commas/,
      2,
    ],
    [
      'date,high (C),low (C)\n2020-02-03,12,3\n2020-02-03,13,3\n',
      'line 3: 2020-02-03 has other readings here than on line 2. Keep one of them.',
      3,
    ],
    [
      'date,high (C),low (C)\n2020-02-03,"12,3\n2020-02-04,13,3\n',
      'line 2: a quotation mark is opened and not closed.',
      2,
    ],
    ['date,high (C),low (C)\n2027-02-03,12,3\n', 'line 2: 2027-02-03 is still to come.', 2],
    [
      'date,type,value\n2020-01-01,tmax,20 C\n2020-01-01,tmin,25 C\n',
      /^I found no line that names the columns/,
      1,
    ],
    [
      'date,element,value\n2020-01-01,tmax,20 C\n2020-01-01,tmin,25 C\n',
      'line 2: on 2020-01-01 the low (25 °C) is above the high (20 °C).',
      2,
    ],
    [
      'date,high c,high of the day c,low c\n2020-01-01,1,2,0\n',
      /^Line 1 names more than one high: “high c”, “high of the day c”/,
      1,
    ],
    [
      'when,wind\n2020-01-01,3\n',
      /^I found no line that names the columns\. I need a date, a high and a low/,
      1,
    ],
    [
      'date,max,min\n12/01/01,5,3\n12/01/02,6,3\n',
      /^line 3: the year has two digits and seems to come first/,
      3,
    ],
  ])('%#', async (text, message, line) => {
    const problem = await refused(text, { today: day('2026-07-05') });
    if (typeof message === 'string') expect(problem.message).toBe(message);
    else expect(problem.message).toMatch(message);
    expect(problem.line).toBe(line);
  });

  it.each([
    ['empty', new Uint8Array(), 'empty'],
    ['blank', bytes(' \n \n'), 'empty'],
    ['a header alone', bytes('date,high (C),low (C)\n'), 'no-readings'],
    ['nothing but missing days', bytes('date,high (C),low (C)\n2020-01-01,M,M\n'), 'no-readings'],
    ['a zip or spreadsheet', Buffer.from('PK\u0003\u0004 and more'), 'not-text'],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a]), 'not-text'],
    ['bytes', Buffer.from([1, 0, 2, 3, 4, 0, 5, 6, 7, 8, 250, 251]), 'not-text'],
    ['a web page', bytes('<!doctype html><title>Not found</title>'), 'not-a-table'],
    ['JSON', bytes('{"results": []}'), 'not-a-table'],
    ['JSON rows', bytes('[{"DATE": "2020-01-01"}]'), 'not-a-table'],
    ['eleven megabytes', new Uint8Array(11 * 1024 * 1024).fill(65), 'too-large'],
  ])('refuses %s in a sentence', async (_what, content, kind) => {
    const problem = await readWeatherFile(content);
    expect(problem).toMatchObject({ kind: 'problem', problem: kind });
    expect(problem.kind === 'problem' && problem.message).toMatch(/\.$/);
  });

  it('takes forty years and refuses forty-one', async () => {
    const span = (days: number) =>
      `date,high c,low c\n${Array.from({ length: days }, (_, i) => `${addDays(day('1986-07-06'), i)},20,10`).join('\n')}\n`;
    expect(await taken(span(14_610))).toMatchObject({ from: '1986-07-06', to: '2026-07-05' });
    expect(await refused(span(14_980))).toMatchObject({ problem: 'too-long' });
  });

  it('tells how far it is and lets other work in between', async () => {
    const text = `date,high c,low c,remark\n${Array.from({ length: 14_000 }, (_, i) => `${addDays(day('1986-07-06'), i)},20,10,${'x'.repeat(40)}`).join('\n')}\n`;
    const told: string[] = [];
    let turns = 0;
    const ticking = setInterval(() => turns++, 1);
    await taken(text, { progress: (line) => told.push(line) });
    clearInterval(ticking);
    expect(told.length).toBeGreaterThan(5);
    expect(told.at(-1)).toMatch(/^reading line [\d,]+ of about 1[345],\d{3}$/);
    expect(turns).toBeGreaterThan(1);
  });
});

describe('real records', () => {
  /** Derived data of the US Government, from the npm package vega-datasets (weather.csv). */
  const vega = readFileSync('node_modules/vega-datasets/data/weather.csv');

  it('asks for place and unit of a file with two cities, then has every day of both', async () => {
    expect(await readWeatherFile(vega)).toMatchObject({ problem: 'several-places' });
    for (const [place, heatEnd] of [
      ['New York', '09-10'],
      ['Seattle', '08-16'],
    ] as const) {
      expect(await readWeatherFile(vega, { place })).toMatchObject({ problem: 'unit-unknown' });
      const file = await readWeatherFile(vega, { place, unit: 'C' });
      if (file.kind !== 'file') throw new Error(file.message);
      expect(file).toMatchObject({
        from: '2012-01-01',
        to: '2015-12-31',
        days: 1461,
        withHigh: 1461,
        withLow: 1461,
      });
      const summary = summariseRecord(file.series, { mark: { value: 80, unit: 'F' }, hemisphere: 'N' });
      expect(summary.heat).toMatchObject({ kind: 'date', heatEnd });
    }
  });

  it('keeps every reading as it stands in the file', async () => {
    const file = await readWeatherFile(vega, { place: 'New York', unit: 'C' });
    if (file.kind !== 'file') throw new Error(file.message);
    const expected = vega
      .toString()
      .trim()
      .split('\n')
      .filter((line) => line.startsWith('New York'))
      .map((line) => line.split(','))
      .map(([, date, , high, low]) => [date, Number(high), Number(low)]);
    expect(rows(file.series)).toEqual(expected);
  });
});

describe('any file at all', () => {
  const valid = `date;high (°F);low (°F)\n${Array.from({ length: 60 }, (_, i) => `${addDays(day('2020-01-20'), i)};"${40 + (i % 30)},5";${20 + (i % 15)}`).join('\n')}\n`;

  it('never throws, and says a sentence', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (content) => {
        const result = await readWeatherFile(content);
        expect(result.kind === 'problem' ? result.message : result.series).not.toBe('');
      }),
      { numRuns: 300 },
    );
  });

  it('reads a cut file or names the line, but never half of it as something else', async () => {
    const whole = await taken(valid);
    const before = new Map(rows(whole.series).map(([on, high, low]) => [on, [high, low]]));
    await fc.assert(
      fc.asyncProperty(fc.nat(valid.length), async (cut) => {
        const result = await read(valid.slice(0, cut));
        if (result.kind === 'problem') {
          const lines = valid.slice(0, cut).split('\n').length;
          if (result.problem === 'bad-line') expect(result.line).toBe(lines);
          return;
        }
        // Only the last line can differ: it may end in the middle of a number.
        for (const [on, high, low] of rows(result.series).slice(0, -1))
          expect([high, low]).toEqual(before.get(on!));
      }),
      { numRuns: 200 },
    );
  });

  it('survives any change of one character', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(valid.length - 1),
        fc.string({ unit: 'binary', minLength: 0, maxLength: 2 }),
        async (at, other) => {
          const result = await read(valid.slice(0, at) + other + valid.slice(at + 1), {
            unit: 'F',
            order: 'MDY',
          });
          if (result.kind === 'problem') expect(result.message).toMatch(/[.?]$/);
          else expect(result.days).toBeGreaterThan(50);
        },
      ),
      { numRuns: 120 },
    );
  });
});
