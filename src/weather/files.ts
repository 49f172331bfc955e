import type { Columns } from './file-columns.ts';
import { settleOrder } from './file-dates.ts';
import { type FileDays, layOut } from './file-days.ts';
import { type FileNotes, type FileRow, readRow } from './file-rows.ts';
import { findTable, readTable } from './file-table.ts';
import { decodeFile } from './file-text.ts';
import {
  type FilePlace,
  type FileStation,
  problem,
  type WeatherFile,
  type WeatherFileOptions,
  type WeatherFileProblem,
} from './file-types.ts';
import { type SettledUnit, settleUnit } from './file-units.ts';

export { MAX_YEARS } from './file-days.ts';
export { MAX_FILE_BYTES } from './file-text.ts';
export type {
  DateOrder,
  FilePlace,
  FileStation,
  TemperatureUnit,
  WeatherFile,
  WeatherFileOptions,
  WeatherFileProblem,
  WeatherFileProblemKind,
} from './file-types.ts';

/**
 * Reads a table of daily highs and lows as the open services and home stations write it: NOAA daily
 * summaries (wide, or a reading a line), NASA POWER with its header block, or any table whose header names a
 * date with a high or a low. Never throws and never guesses: what the file leaves open and the options do
 * not say comes back as a problem to ask about.
 */
export async function readWeatherFile(
  bytes: Uint8Array,
  options: WeatherFileOptions = {},
): Promise<WeatherFile | WeatherFileProblem> {
  const text = decodeFile(bytes);
  if (typeof text !== 'string') return text;
  const table = findTable(text);
  if ('kind' in table) return table;
  const { columns, preamble } = table;
  const rows: FileRow[] = [];
  const notes: FileNotes = { names: new Map(), positions: new Map(), rejected: 0 };
  const trouble = await readTable(
    text,
    table,
    (cells, line) => {
      const row = readRow(cells, line, columns, notes);
      if (row && 'kind' in row) return row;
      if (row) rows.push(row);
      return null;
    },
    options.progress ?? (() => {}),
  );
  if (trouble) return trouble;
  const chosen = choosePlace(rows, notes, options.place);
  if ('kind' in chosen) return chosen;
  if (chosen.rows.length === 0) {
    return problem('no-readings', 'The file names its columns but has no lines under them.');
  }
  const stated = columns.date.kind === 'date' ? columns.date.order : null;
  const order = settleOrder(chosen.rows, stated ?? options.order ?? null);
  if (typeof order === 'object') return order;
  const unit = settleUnit(chosen.rows, preamble, namesOf(columns), options.unit);
  if ('kind' in unit) return unit;
  const days = layOut(chosen.rows, order, unit, options.today ?? null);
  if ('kind' in days) return days;
  return {
    kind: 'file',
    series: days.series,
    from: days.from,
    to: days.to,
    days: days.days,
    withHigh: days.withHigh,
    withLow: days.withLow,
    unit: unit.unit === 'tenths' ? 'C' : unit.unit,
    unitFrom: unit.from,
    station: stationOf(chosen.place, notes),
    remarks: remarksOn(days, unit, notes, options),
  };
}

interface ChosenPlace {
  readonly place: string;
  readonly rows: readonly FileRow[];
}

function choosePlace(
  rows: readonly FileRow[],
  notes: FileNotes,
  wanted: string | undefined,
): ChosenPlace | WeatherFileProblem {
  const counts = new Map<string, number>();
  for (const { place } of rows) counts.set(place, (counts.get(place) ?? 0) + 1);
  const [only] = counts.keys();
  if (counts.size <= 1) return { place: only ?? '', rows };
  const nameOf = (place: string) => notes.names.get(place) ?? place;
  const key = wanted?.trim().toLowerCase();
  const matches = [...counts.keys()].filter(
    (place) => key && (place.toLowerCase() === key || nameOf(place).toLowerCase() === key),
  );
  const [match] = matches;
  if (match !== undefined && matches.length === 1) {
    return { place: match, rows: rows.filter(({ place }) => place === match) };
  }
  const places: FilePlace[] = [...counts]
    .map(([place, days]) => ({ name: nameOf(place) || 'lines without a place', days }))
    .sort((a, b) => b.days - a.days);
  const named = places.slice(0, 5).map(({ name, days }) => `${name} (${days.toLocaleString('en')} lines)`);
  const more = places.length > 5 ? ` and ${places.length - 5} more` : '';
  return {
    ...problem(
      'several-places',
      `The file holds ${places.length} places: ${named.join(', ')}${more}. Send one that holds your place only.`,
    ),
    places,
  };
}

function namesOf({ high, low }: Columns): { high: string; low: string } {
  return { high: high?.header ?? '', low: low?.header ?? '' };
}

function stationOf(place: string, { names, positions }: FileNotes): FileStation | null {
  const name = names.get(place);
  if (name === undefined) return null;
  const position = positions.get(place) ?? { lat: null, lon: null, elevationM: null };
  return { id: name === place ? null : place, name, ...position };
}

function remarksOn(
  days: FileDays,
  unit: SettledUnit,
  notes: FileNotes,
  options: WeatherFileOptions,
): readonly string[] {
  const remarks: string[] = [];
  if (unit.unit === 'tenths') remarks.push('Its numbers are tenths of °C, as NOAA’s own files have them.');
  else if (unit.from === 'file' && options.unit && options.unit !== unit.unit) {
    remarks.push(`The file says it is in °${unit.unit}, so I read it as that.`);
  }
  if (days.joined) remarks.push('Several lines a day were joined to the day’s highest high and lowest low.');
  else if (days.repeated > 0 && days.withHigh + days.withLow < 2 * days.days + days.repeated * 2) {
    remarks.push(`${days.repeated.toLocaleString('en')} lines speak of a day that an earlier line had.`);
  }
  if (notes.rejected > 0) {
    const count = notes.rejected === 1 ? '1 reading' : `${notes.rejected.toLocaleString('en')} readings`;
    remarks.push(`Left out as failing the publisher’s own checks: ${count}.`);
  }
  if (days.withHigh < days.days) remarks.push(missing(days.days - days.withHigh, 'high'));
  if (days.withLow < days.days) remarks.push(missing(days.days - days.withLow, 'low'));
  return remarks;
}

function missing(count: number, what: string): string {
  return count === 1 ? `1 day has no ${what}.` : `${count.toLocaleString('en')} days have no ${what}.`;
}
