import { parse } from 'csv-parse/sync';
import { bench, describe } from 'vitest';
import { addDays, day } from '../../src/engine/day.ts';
import { summariseRecord } from '../../src/engine/record-summary.ts';
import { readWeatherFile } from '../../src/weather/files.ts';
import { completePlaces, findPlace, warmPlaces } from '../../src/weather/places.ts';

/** Forty years as NOAA's daily summaries give them; made up, for size and shape only. */
const text = `"STATION","NAME","LATITUDE","LONGITUDE","ELEVATION","DATE","PRCP","SNOW","TMAX","TMIN","TOBS"\n${Array.from(
  { length: 14_610 },
  (_, i) => {
    const high = Math.round(60 - 30 * Math.cos(((i - 25) / 365.25) * 2 * Math.PI) + ((i * 7919) % 13));
    return `"USC00317079","RALEIGH STATE UNIV, NC US","35.7944","-78.6989","121.9","${addDays(day('1986-07-06'), i)}","0.00","0.0","${high}","${high - 18}","${high - 9}"`;
  },
).join('\n')}\n`;
const bytes = Buffer.from(text);

/** To hold: the second at most three times the first. */
describe('a 40-year file', () => {
  bench('merely parsed by the CSV library', () => {
    parse(bytes);
  });

  bench('imported, and its season computed', async () => {
    const file = await readWeatherFile(bytes, { unit: 'F' });
    if (file.kind !== 'file') throw new Error(file.message);
    summariseRecord(file.series, { mark: { value: 80, unit: 'F' }, hemisphere: 'N' });
  });
});

/** To hold: at most 50 ms each. */
describe('places', async () => {
  await warmPlaces();

  bench('one letter', async () => {
    await completePlaces('s');
  });

  bench('a name that is nowhere', async () => {
    await completePlaces('zzyzx road');
  });

  bench('a town by name and state', async () => {
    await findPlace('Portland, Oregon, US');
  });
});
