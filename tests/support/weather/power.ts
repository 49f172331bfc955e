import { addDays, type Day, parseDay } from '../../../src/engine/day.ts';
import { highOn } from './noaa.ts';
import { type Answer, json } from './stand-in.ts';

/**
 * Answers in the shape of NASA POWER's daily point service, https://power.larc.nasa.gov/docs/services/api/:
 * a GeoJSON feature with the values of each parameter by YYYYMMDD, the fill value in the header, and the
 * parameters' units.
 */
export function powerAnswer(high: (on: Day) => number = highOn): Answer {
  return (request, response, url) => {
    const asked = (name: string) => url.searchParams.get(name) ?? '';
    const from = parseDay(asked('start').replace(/^(\d{4})(\d{2})(\d{2})$/, '$1-$2-$3'));
    const to = parseDay(asked('end').replace(/^(\d{4})(\d{2})(\d{2})$/, '$1-$2-$3'));
    if (!from || !to) return void response.writeHead(422).end();
    const highs: Record<string, number> = {};
    const lows: Record<string, number> = {};
    for (let on = from; on <= to; on = addDays(on, 1)) {
      const key = on.replaceAll('-', '');
      highs[key] = high(on);
      lows[key] = high(on) === -999 ? -999 : high(on) - 7;
    }
    json({
      type: 'Feature',
      geometry: {
        type: 'Point',
        coordinates: [Number(asked('longitude')), Number(asked('latitude')), 228.15],
      },
      properties: { parameter: { T2M_MAX: highs, T2M_MIN: lows } },
      header: { title: 'NASA/POWER Source Native Resolution Daily Data', fill_value: -999.0 },
      messages: [],
      parameters: { T2M_MAX: { units: 'C', longname: 'Temperature at 2 Meters Maximum' } },
      times: { data: 1.2, process: 0.1 },
    })(request, response, url);
  };
}
