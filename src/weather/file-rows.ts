import { type Columns, elementOf, type TemperatureColumn } from './file-columns.ts';
import { ordinalDay, readDate, type WrittenDate } from './file-dates.ts';
import { lineProblem, type TemperatureUnit, type WeatherFileProblem } from './file-types.ts';
import { readValue, type WrittenValue } from './file-values.ts';

/** One line of a table, read as far as it can be without knowing the rest of the file. */
export interface FileRow {
  readonly line: number;
  readonly written: WrittenDate;
  readonly high: WrittenValue | null;
  readonly low: WrittenValue | null;
  /** The station's id, or its name where the table has no ids; '' where it has neither. */
  readonly place: string;
  readonly timed: boolean;
}

/** What the lines of a table have in common; grows as they are read. */
export interface FileNotes {
  /** Names of places by id. */
  readonly names: Map<string, string>;
  readonly positions: Map<string, Position>;
  /** Readings that failed the publisher's own checks and are left out. */
  rejected: number;
}

export interface Position {
  readonly lat: number | null;
  readonly lon: number | null;
  readonly elevationM: number | null;
}

/** Reads a record; null for one that holds another element than a daily high or low. */
export function readRow(
  cells: readonly string[],
  line: number,
  columns: Columns,
  notes: FileNotes,
): FileRow | WeatherFileProblem | null {
  const written = writtenDate(columns, cells);
  if (!written) return lineProblem(line, `“${dateText(columns, cells).slice(0, 40)}” is not a date.`);
  const rowUnit = rowUnitOf(cellOf(cells, columns.unit));
  let high: WrittenValue | null | undefined;
  let low: WrittenValue | null | undefined;
  if (columns.long) {
    const element = elementOf(cellOf(cells, columns.long.element));
    if (element === null) return null;
    const text = cellOf(cells, columns.long.value);
    const value = readValue(text);
    if (value === undefined) return notANumber(line, text, 'value');
    high = element === 'high' ? value : null;
    low = element === 'low' ? value : null;
  } else {
    high = temperature(cells, columns.high, notes);
    if (high === undefined) return notANumber(line, cellOf(cells, columns.high?.at ?? null), 'high');
    low = temperature(cells, columns.low, notes);
    if (low === undefined) return notANumber(line, cellOf(cells, columns.low?.at ?? null), 'low');
  }
  if (columns.quality !== null && cellOf(cells, columns.quality) !== '') {
    notes.rejected += Number(high !== null) + Number(low !== null);
    high = null;
    low = null;
  }
  return {
    line,
    written,
    high: withUnit(high, rowUnit) ?? null,
    low: withUnit(low, rowUnit) ?? null,
    place: notePlace(columns, cells, notes),
    timed: written.timed || cellOf(cells, columns.time) !== '',
  };
}

/** The text of a cell, '' where there is none. The parser leaves quotes that have a space behind them. */
function cellOf(cells: readonly string[], at: number | null): string {
  const text = at === null ? '' : (cells[at] ?? '').trim();
  return text.startsWith('"') && text.endsWith('"') ? text.slice(1, -1).trim() : text;
}

function temperature(
  cells: readonly string[],
  column: TemperatureColumn | null,
  notes: FileNotes,
): WrittenValue | null | undefined {
  if (!column) return null;
  const value = withUnit(readValue(cellOf(cells, column.at)), column.unit);
  if (!value || column.attributes === null) return value;
  // NOAA's attributes are "measurement,quality,source"; any quality flag means a failed check.
  const flag = cellOf(cells, column.attributes).split(',')[1] ?? '';
  if (flag.trim() === '') return value;
  notes.rejected++;
  return null;
}

function withUnit(
  value: WrittenValue | null | undefined,
  unit: TemperatureUnit | null,
): WrittenValue | null | undefined {
  return value && unit !== null && value.unit === null ? { value: value.value, unit } : value;
}

function writtenDate({ date }: Columns, cells: readonly string[]): WrittenDate | null {
  if (date.kind === 'date') return readDate(cellOf(cells, date.at));
  if (date.kind === 'doy') {
    const day = ordinalDay(wholeNumber(cellOf(cells, date.year)), wholeNumber(cellOf(cells, date.doy)));
    return day && { kind: 'day', day, timed: false };
  }
  return readDate(`${cellOf(cells, date.year)}-${cellOf(cells, date.month)}-${cellOf(cells, date.day)}`);
}

function wholeNumber(text: string): number {
  return /^\d{1,4}$/.test(text) ? Number(text) : Number.NaN;
}

function dateText({ date }: Columns, cells: readonly string[]): string {
  if (date.kind === 'date') return cellOf(cells, date.at);
  if (date.kind === 'doy') return `${cellOf(cells, date.year)}, day ${cellOf(cells, date.doy)}`;
  return `${cellOf(cells, date.year)}-${cellOf(cells, date.month)}-${cellOf(cells, date.day)}`;
}

function rowUnitOf(text: string): TemperatureUnit | null {
  if (text === '') return null;
  if (/^(°|º|deg(rees?)?[ .]?)?(c|celsius)$/i.test(text)) return 'C';
  return /^(°|º|deg(rees?)?[ .]?)?(f|fahrenheit)$/i.test(text) ? 'F' : null;
}

function notePlace(columns: Columns, cells: readonly string[], notes: FileNotes): string {
  const id = cellOf(cells, columns.stationId);
  if (id !== '' && notes.names.has(id)) return id;
  const name = cellOf(cells, columns.stationName);
  const place = id || name;
  if (place === '' || notes.names.has(place)) return place;
  notes.names.set(place, name || place);
  notes.positions.set(place, {
    lat: decimal(cellOf(cells, columns.lat), 90),
    lon: decimal(cellOf(cells, columns.lon), 180),
    elevationM: decimal(cellOf(cells, columns.elevation), 9000),
  });
  return place;
}

function decimal(text: string, limit: number): number | null {
  const value = /^[+-]?\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
  return Math.abs(value) <= limit ? value : null;
}

function notANumber(line: number, text: string, what: string): WeatherFileProblem {
  return lineProblem(line, `the ${what} “${text.slice(0, 40)}” is not a temperature.`);
}
