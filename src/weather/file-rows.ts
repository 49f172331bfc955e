import { type Columns, elementOf } from './file-columns.ts';
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
  const cell = (at: number | null) => (at === null ? '' : (cells[at] ?? '').trim());
  const written = writtenDate(columns, cell);
  if (!written) return lineProblem(line, `“${dateText(columns, cell).slice(0, 40)}” is not a date.`);
  const rowUnit = rowUnitOf(cell(columns.unit));
  let high: WrittenValue | null = null;
  let low: WrittenValue | null = null;
  if (columns.long) {
    const element = elementOf(cell(columns.long.element));
    if (element === null) return null;
    const value = readValue(cell(columns.long.value));
    if (value === undefined) return notANumber(line, cell(columns.long.value), 'value');
    if (element === 'high') high = value;
    else low = value;
  } else {
    const read = { high: temperature('high'), low: temperature('low') };
    if (read.high === undefined) return notANumber(line, cell(columns.high?.at ?? null), 'high');
    if (read.low === undefined) return notANumber(line, cell(columns.low?.at ?? null), 'low');
    ({ high, low } = read);
  }
  if (cell(columns.quality) !== '') {
    notes.rejected += Number(high !== null) + Number(low !== null);
    high = null;
    low = null;
  }
  const place = notePlace(columns, cell, notes);
  return {
    line,
    written,
    high: withUnit(high, rowUnit),
    low: withUnit(low, rowUnit),
    place,
    timed: written.timed || cell(columns.time) !== '',
  };

  function temperature(which: 'high' | 'low'): WrittenValue | null | undefined {
    const column = columns[which];
    if (!column) return null;
    const value = withUnit(readValue(cell(column.at)), column.unit);
    // NOAA's attributes are "measurement,quality,source"; any quality flag means a failed check.
    const flag = cell(column.attributes).split(',')[1] ?? '';
    if (!value || flag.trim() === '') return value;
    notes.rejected++;
    return null;
  }
}

function withUnit(value: WrittenValue | null, unit: TemperatureUnit | null): WrittenValue | null;
function withUnit(
  value: WrittenValue | null | undefined,
  unit: TemperatureUnit | null,
): WrittenValue | null | undefined;
function withUnit(
  value: WrittenValue | null | undefined,
  unit: TemperatureUnit | null,
): WrittenValue | null | undefined {
  return value && unit !== null && value.unit === null ? { value: value.value, unit } : value;
}

function writtenDate(columns: Columns, cell: (at: number | null) => string): WrittenDate | null {
  const { date } = columns;
  if (date.kind === 'date') return readDate(cell(date.at));
  const number = (at: number) => (/^\d{1,4}$/.test(cell(at)) ? Number(cell(at)) : Number.NaN);
  if (date.kind === 'doy') {
    const day = ordinalDay(number(date.year), number(date.doy));
    return day && { kind: 'day', day, timed: false };
  }
  const [year, month, day] = [cell(date.year), cell(date.month), cell(date.day)];
  return readDate(`${year}-${month}-${day}`);
}

function dateText(columns: Columns, cell: (at: number | null) => string): string {
  const { date } = columns;
  if (date.kind === 'date') return cell(date.at);
  if (date.kind === 'doy') return `${cell(date.year)}, day ${cell(date.doy)}`;
  return `${cell(date.year)}-${cell(date.month)}-${cell(date.day)}`;
}

function rowUnitOf(text: string): TemperatureUnit | null {
  if (/^(°|º|deg(rees?)?[ .]?)?(c|celsius)$/i.test(text)) return 'C';
  return /^(°|º|deg(rees?)?[ .]?)?(f|fahrenheit)$/i.test(text) ? 'F' : null;
}

function notePlace(columns: Columns, cell: (at: number | null) => string, notes: FileNotes): string {
  const name = cell(columns.stationName);
  const place = cell(columns.stationId) || name;
  if (place === '' || notes.names.has(place)) return place;
  notes.names.set(place, name || place);
  notes.positions.set(place, {
    lat: decimal(cell(columns.lat), 90),
    lon: decimal(cell(columns.lon), 180),
    elevationM: decimal(cell(columns.elevation), 9000),
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
