import { type DailySeries, type DailyYear, emptyYear, MISSING, SLOTS } from '../engine/climate.ts';
import { type Day, dayInYear, dayOfYear, daysBetween, yearOf } from '../engine/day.ts';
import { resolveDate } from './file-dates.ts';
import type { FileRow } from './file-rows.ts';
import { type DateOrder, lineProblem, problem, type WeatherFileProblem } from './file-types.ts';
import type { SettledUnit } from './file-units.ts';
import { HIGHEST_TENTHS, isShortCode, LOWEST_TENTHS, toTenthsC, type WrittenValue } from './file-values.ts';

export const MAX_YEARS = 40;
/** Forty years from any day have at most this many days. */
const MAX_DAYS = MAX_YEARS * 365 + 10;

export interface FileDays {
  readonly series: DailySeries;
  readonly from: Day;
  readonly to: Day;
  readonly days: number;
  readonly withHigh: number;
  readonly withLow: number;
  /** Lines that said again what an earlier line had said. */
  readonly repeated: number;
  /** Several lines a day were joined to its highest high and lowest low. */
  readonly joined: boolean;
}

interface YearInMaking extends DailyYear {
  /** Line that first spoke of each day; 0 for none. */
  readonly lines: Int32Array;
}

/** Lays the rows of one place out by day. Two lines of one day must agree unless they carry times of day. */
export function layOut(
  rows: readonly FileRow[],
  order: DateOrder | 'any',
  settled: SettledUnit,
  today: Day | null,
): FileDays | WeatherFileProblem {
  const years = new Map<number, YearInMaking>();
  const joined = rows.some(({ timed }) => timed);
  let repeated = 0;
  for (const row of rows) {
    const on = resolveDate(row.written, order);
    if (!on) return lineProblem(row.line, 'there is no such date.');
    if (today && on > today) return lineProblem(row.line, `${on} is still to come.`);
    const high = tenths(row.high, settled, row.line, 'high');
    if (typeof high === 'object') return high;
    const low = tenths(row.low, settled, row.line, 'low');
    if (typeof low === 'object') return low;
    if (high !== MISSING && low !== MISSING && low > high) {
      const said = (value: WrittenValue | null) => written(value, settled);
      return lineProblem(row.line, `the low ${said(row.low)} is above the high ${said(row.high)}.`);
    }
    const year = years.get(yearOf(on)) ?? startYear(years, yearOf(on));
    const slot = dayOfYear(on);
    const before = year.lines[slot] ?? 0;
    if (before === 0) year.lines[slot] = row.line;
    const conflict =
      lay(year.tmax, slot, high, joined && Math.max) ?? lay(year.tmin, slot, low, joined && Math.min);
    if (conflict) {
      return lineProblem(row.line, `${on} has other readings here than on line ${before}. Keep one of them.`);
    }
    if (before !== 0) repeated++;
  }
  return summed([...years.values()], repeated, joined);
}

/** Puts a value in its slot; true when another is there and nothing says how to join them. */
function lay(
  into: Int16Array,
  slot: number,
  value: number,
  join: false | ((a: number, b: number) => number),
): true | null {
  const before = into[slot] ?? MISSING;
  if (value === MISSING || before === value) return null;
  if (before !== MISSING && !join) return true;
  into[slot] = before === MISSING || !join ? value : join(before, value);
  return null;
}

function tenths(
  value: WrittenValue | null,
  settled: SettledUnit,
  line: number,
  what: string,
): number | WeatherFileProblem {
  if (!value) return MISSING;
  const unit = value.unit ?? settled.unit;
  if (unit !== 'tenths' && isShortCode(value.value)) return MISSING;
  const result = toTenthsC(value.value, unit);
  if (result >= LOWEST_TENTHS && result <= HIGHEST_TENTHS) return result;
  return lineProblem(line, `the ${what} ${written(value, settled)} is not an air temperature.`);
}

function written(value: WrittenValue | null, settled: SettledUnit): string {
  const unit = value?.unit ?? settled.unit;
  if (!value) return '';
  return unit === 'tenths' ? `${value.value} (tenths of °C)` : `${value.value} °${unit}`;
}

function startYear(years: Map<number, YearInMaking>, number: number): YearInMaking {
  const year = { ...emptyYear(number), lines: new Int32Array(SLOTS) };
  years.set(number, year);
  return year;
}

interface DaySlot {
  readonly year: number;
  slot: number;
}

function summed(
  made: readonly YearInMaking[],
  repeated: number,
  joined: boolean,
): FileDays | WeatherFileProblem {
  let first = null as DaySlot | null;
  let last = null as DaySlot | null;
  let days = 0;
  let withHigh = 0;
  let withLow = 0;
  const years = made.toSorted((a, b) => a.year - b.year);
  for (const { year, tmax, tmin, lines } of years) {
    for (let slot = 0; slot < SLOTS; slot++) {
      const high = tmax[slot] ?? MISSING;
      const low = tmin[slot] ?? MISSING;
      if (high === MISSING && low === MISSING) continue;
      first ??= { year, slot };
      if (last?.year !== year) last = { year, slot };
      else last.slot = slot;
      if (high !== MISSING && low !== MISSING && low > high) {
        const said = `the low (${low / 10} °C) is above the high (${high / 10} °C)`;
        return lineProblem(lines[slot] ?? 0, `on ${dayInYear(year, slot)} ${said}.`);
      }
      days++;
      if (high !== MISSING) withHigh++;
      if (low !== MISSING) withLow++;
    }
  }
  const from = first && dayInYear(first.year, first.slot);
  const to = last && dayInYear(last.year, last.slot);
  if (!from || !to) {
    return problem('no-readings', 'The file names its columns but holds no reading of a high or a low.');
  }
  if (daysBetween(from, to) >= MAX_DAYS) {
    const latest = yearOf(to) - MAX_YEARS + 1;
    return problem(
      'too-long',
      `The file runs from ${from} to ${to}; I take up to ${MAX_YEARS} years. Keep the lines from ${latest} on.`,
    );
  }
  const series = years.map(({ year, tmax, tmin }) => ({ year, tmax, tmin }));
  return { series, from, to, days, withHigh, withLow, repeated, joined: joined && repeated > 0 };
}
