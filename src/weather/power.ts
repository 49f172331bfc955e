import { z } from 'zod';
import type { DailySeries } from '../engine/climate.ts';
import { type Day, dayOf } from '../engine/day.ts';
import { readCelsius, trustworthy } from './fetched-rows.ts';
import { type ServiceClient, ServiceError } from './service-client.ts';

/** NASA POWER's daily point service: https://power.larc.nasa.gov/docs/services/api/temporal/daily/. */
const DAILY = '/api/temporal/daily/point';
/** Its temperatures come from MERRA-2's cells of so many degrees. */
const CELL_LAT = 0.5;
const CELL_LON = 0.625;

/** What a reader has to know of it. */
export const POWER_REMARK =
  'It is an estimate for a whole grid cell of some 50 km, and its highs are usually cooler than a garden’s: ' +
  'take its heat end as early.';

export interface GridCell {
  /** The same for every spot in the cell. */
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly lon: number;
}

const days = z.record(z.string(), z.number().nullable());
const answerShape = z.object({
  geometry: z.object({ coordinates: z.array(z.number()).min(2) }),
  properties: z.object({ parameter: z.object({ T2M_MAX: days, T2M_MIN: days }) }),
  header: z.object({ fill_value: z.number() }),
});

/** The cell a spot lies in, so that neighbours share one record. */
export function cellAt(lat: number, lon: number): GridCell {
  const centre = (degrees: number, size: number) => Math.round(degrees / size) * size + 0;
  const at = { lat: centre(lat, CELL_LAT), lon: centre(lon, CELL_LON) };
  const name = `${Math.abs(at.lat)}° ${at.lat < 0 ? 'S' : 'N'}, ${Math.abs(at.lon)}° ${at.lon < 0 ? 'W' : 'E'}`;
  return { id: `${at.lat},${at.lon}`, name, ...at };
}

export interface GridRecord {
  readonly series: DailySeries;
  /** Mean height of the cell in metres. */
  readonly elevationM: number | null;
}

/** A cell's daily highs and lows over a window, in °C. */
export async function fetchCell(
  client: ServiceClient,
  cell: GridCell,
  window: { readonly from: Day; readonly to: Day },
): Promise<GridRecord> {
  const answer = answerShape.safeParse(
    await client.getJson(DAILY, {
      parameters: 'T2M_MAX,T2M_MIN',
      community: 'AG',
      longitude: String(cell.lon),
      latitude: String(cell.lat),
      start: window.from.replaceAll('-', ''),
      end: window.to.replaceAll('-', ''),
      format: 'JSON',
    }),
  );
  if (!answer.success) throw nonsense(client, answer.error);
  const { T2M_MAX: highs, T2M_MIN: lows } = answer.data.properties.parameter;
  const fill = answer.data.header.fill_value;
  const reading = (value: unknown) => {
    const celsius = readCelsius(value);
    return celsius === fill ? null : celsius;
  };
  const rows = [];
  for (const key of new Set([...Object.keys(highs), ...Object.keys(lows)])) {
    const day = dayOf(Number(key.slice(0, 4)), Number(key.slice(4, 6)), Number(key.slice(6)));
    if (day === null) throw nonsense(client);
    rows.push({ day, tmaxC: reading(highs[key]), tminC: reading(lows[key]) });
  }
  const elevation = answer.data.geometry.coordinates[2];
  return { series: trustworthy(rows, window, client.name), elevationM: elevation ?? null };
}

function nonsense(client: ServiceClient, cause?: unknown): ServiceError {
  return new ServiceError('nonsense', `${client.name} answered something that is no weather record.`, {
    cause,
  });
}
