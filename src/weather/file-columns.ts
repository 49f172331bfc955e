import type { DateOrder, TemperatureUnit } from './file-types.ts';

/** Where a table keeps what, as 0-based columns; null where it has no such column. */
export interface Columns {
  readonly width: number;
  readonly date:
    | { readonly kind: 'date'; readonly at: number; readonly order: DateOrder | null }
    | { readonly kind: 'ymd'; readonly year: number; readonly month: number; readonly day: number }
    | { readonly kind: 'doy'; readonly year: number; readonly doy: number };
  readonly time: number | null;
  readonly high: TemperatureColumn | null;
  readonly low: TemperatureColumn | null;
  /** A reading a line: what it is, and its value. */
  readonly long: { readonly element: number; readonly value: number } | null;
  readonly unit: number | null;
  readonly quality: number | null;
  readonly stationId: number | null;
  readonly stationName: number | null;
  readonly lat: number | null;
  readonly lon: number | null;
  readonly elevation: number | null;
}

export interface TemperatureColumn {
  readonly at: number;
  readonly header: string;
  readonly unit: TemperatureUnit | null;
  /** NOAA's attributes of the reading: measurement, quality and source flag, comma between. */
  readonly attributes: number | null;
}

/** Two columns that could both be the high, or the low. */
export interface UnclearColumns {
  readonly unclear: 'high' | 'low';
  readonly headers: readonly string[];
}

const HIGH =
  /^(t?max|maxi|maxim(um|al|ale|a|o)|massim[ao]|high(s|est)?|hi|hochst(wert|temperatur)?|tmx|txk?|maxt(emp(erature)?)?|t(emp(erature)?)?max|hightemp|temphigh)$/;
const LOW =
  /^(t?min|mini|minim(um|al|ale|a|o)|low(s|est)?|lo|tiefst(wert|temperatur)?|tmn|tnk?|mint(emp(erature)?)?|t(emp(erature)?)?min|lowtemp|templow)$/;
/** Words that may stand beside those without making it another quantity (as wind, dew point or mean do). */
const NEUTRAL =
  /^(t|temps?|temperature?s?|temperatura|air|airtemp|t2m|2m|daily|day|deg|degrees?|grad|of|the|in|at|obs(erved)?|outdoor|outside|out|value|meters|metres|today|24h|24hr|recorded|reading)$/;
const DATE_WORD = /^(date|datum|fecha|datetime|timestamp|yyyymmdd|valid|ymd|day|data|dato)$/;
const DATE_NEUTRAL =
  /^(time|utc|local|lst|of|the|obs|observation|measurement|mess|calendar|reading|mm|m|dd|d|yyyy|yy|y|iso)$/;
const UNIT_WORD = /^(deg|degrees?)?(c|f|celsius|centigrade|fahrenheit)$/;

const NAMES = {
  year: ['year', 'yr', 'yyyy', 'jahr', 'ano'],
  month: ['month', 'mo', 'mon', 'mm', 'monat'],
  day: ['day', 'dy', 'dd', 'day of month', 'tag'],
  doy: ['doy', 'day of year', 'julian day', 'jday', 'yday'],
  time: ['time', 'hour', 'local time', 'time lst', 'time utc'],
  element: ['element', 'datatype', 'data type', 'datatypeid', 'parameter', 'param', 'variable', 'measure'],
  value: ['value', 'data value', 'measurement'],
  unit: ['unit', 'units'],
  quality: ['q flag', 'qflag', 'quality flag'],
  stationId: [
    'station',
    'station id',
    'stationid',
    'stations id',
    'station number',
    'bureau of meteorology station number',
    'stn',
    'staid',
    'souid',
    'climate id',
    'site id',
    'id',
  ],
  stationName: ['name', 'station name', 'location', 'place', 'city', 'site', 'site name', 'town'],
  lat: ['lat', 'latitude', 'latitude y'],
  lon: ['lon', 'long', 'lng', 'longitude', 'longitude x'],
  elevation: ['elevation', 'elev', 'elevation m', 'altitude', 'alt'],
} as const;

/** What the cells of a header line say, or null when they name no date with a high, a low or a value. */
export function columnsOf(cells: readonly string[]): Columns | UnclearColumns | null {
  const headers = cells.map(wordsOf);
  const find = (names: readonly string[]) => {
    const at = headers.findIndex(({ words }) => names.includes(words.join(' ')));
    return at < 0 ? null : at;
  };
  const date = dateColumns(cells, headers, find);
  if (!date) return null;
  const highs = temperatureColumns(cells, headers, HIGH, LOW);
  const lows = temperatureColumns(cells, headers, LOW, HIGH);
  const element = find(NAMES.element);
  const value = find(NAMES.value);
  const long =
    highs.length + lows.length === 0 && element !== null && value !== null ? { element, value } : null;
  if (highs.length + lows.length === 0 && !long) return null;
  const high = onlyOne(highs);
  if (high === 'unclear') return { unclear: 'high', headers: highs.map(({ header }) => header) };
  const low = onlyOne(lows);
  if (low === 'unclear') return { unclear: 'low', headers: lows.map(({ header }) => header) };
  return {
    width: trimmedLength(cells),
    date,
    time: find(NAMES.time),
    high,
    low,
    long,
    unit: find(NAMES.unit),
    quality: find(NAMES.quality),
    stationId: find(NAMES.stationId),
    stationName: find(NAMES.stationName),
    lat: find(NAMES.lat),
    lon: find(NAMES.lon),
    elevation: find(NAMES.elevation),
  };
}

/** Whether the name of an element of a table with a reading a line means a daily high or low. */
export function elementOf(name: string): 'high' | 'low' | null {
  const { words } = wordsOf(name);
  if (isTemperature(words, HIGH, LOW)) return 'high';
  return isTemperature(words, LOW, HIGH) ? 'low' : null;
}

/** The unit a text speaks of, when it speaks of exactly one. `unitIn('Maximum (°C)') //=> 'C'` */
export function unitIn(text: string): TemperatureUnit | null {
  const c = /[°º]\s*c\b|\bdeg(rees?)?[ .]*c(elsius)?\b|[([]c[)\]]|celsius|centigrade/i.test(text);
  const f = /[°º]\s*f\b|\bdeg(rees?)?[ .]*f(ahrenheit)?\b|[([]f[)\]]|fahrenheit/i.test(text);
  return c === f ? null : c ? 'C' : 'F';
}

interface Header {
  readonly words: readonly string[];
  readonly unit: TemperatureUnit | null;
}

/** "T2M_MAX", "tempMax" and "Höchstwert (°C)" as plain lower-case words, the unit set apart. */
function wordsOf(header: string): Header {
  const plain = header
    .replace(/^#+/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase();
  const all = plain.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
  const words = all.filter((word) => !UNIT_WORD.test(word));
  const units = new Set(all.filter((word) => UNIT_WORD.test(word)).map((word) => unitOfWord(word)));
  const [unit] = units;
  return { words, unit: units.size === 1 && unit ? unit : null };
}

function unitOfWord(word: string): TemperatureUnit {
  return word.endsWith('f') || word.endsWith('fahrenheit') ? 'F' : 'C';
}

function isTemperature(words: readonly string[], wanted: RegExp, other: RegExp): boolean {
  return (
    words.filter((word) => wanted.test(word)).length === 1 &&
    words.every((word) => wanted.test(word) || (NEUTRAL.test(word) && !other.test(word)))
  );
}

function temperatureColumns(
  cells: readonly string[],
  headers: readonly Header[],
  wanted: RegExp,
  other: RegExp,
): TemperatureColumn[] {
  return headers.flatMap(({ words, unit }, at) => {
    if (!isTemperature(words, wanted, other)) return [];
    const next = headers[at + 1];
    const attributes = next?.words.join(' ') === `${words.join(' ')} attributes` ? at + 1 : null;
    return [{ at, header: (cells[at] ?? '').trim(), unit, attributes }];
  });
}

/** The one column; of one in °F and one in °C, that in °C. */
function onlyOne(found: readonly TemperatureColumn[]): TemperatureColumn | null | 'unclear' {
  const [first, second, ...more] = found;
  if (!first) return null;
  if (!second) return first;
  const units = `${first.unit}${second.unit}`;
  if (more.length === 0 && units === 'CF') return first;
  return more.length === 0 && units === 'FC' ? second : 'unclear';
}

function dateColumns(
  cells: readonly string[],
  headers: readonly Header[],
  find: (names: readonly string[]) => number | null,
): Columns['date'] | null {
  const year = find(NAMES.year);
  const month = find(NAMES.month);
  const day = find(NAMES.day);
  const doy = find(NAMES.doy);
  const at = headers.findIndex(
    ({ words }, i) =>
      words.some((word) => DATE_WORD.test(word)) &&
      words.every((word) => DATE_WORD.test(word) || DATE_NEUTRAL.test(word)) &&
      !(i === day && month !== null),
  );
  if (at >= 0) return { kind: 'date', at, order: statedOrder(cells[at] ?? '') };
  if (year !== null && month !== null && day !== null) return { kind: 'ymd', year, month, day };
  return year !== null && doy !== null ? { kind: 'doy', year, doy } : null;
}

/** "Date (MM/DD/YYYY)" says its order. */
function statedOrder(header: string): DateOrder | null {
  if (/\bm{1,2}\W?d{1,2}\W?y{2,4}/i.test(header)) return 'MDY';
  return /\b[dt]{1,2}\W?m{1,2}\W?[yj]{2,4}/i.test(header) ? 'DMY' : null;
}

/** Cells up to the last that is not empty. */
export function trimmedLength(cells: readonly string[]): number {
  let length = cells.length;
  while (length > 0 && (cells[length - 1] ?? '').trim() === '') length--;
  return length;
}
