import { type DailyRow, type DailySeries, fromRows } from '../engine/climate.ts';
import type { Day } from '../engine/day.ts';
import { HIGHEST_TENTHS, LOWEST_TENTHS } from './file-values.ts';
import { ServiceError } from './service-client.ts';

/** More impossible readings than this share and the whole answer is not to be trusted. Ours. */
const MOST_NONSENSE = 0.02;

/** Days of a service's answer that can be; throws ServiceError when too many cannot. */
export function trustworthy(
  rows: readonly DailyRow[],
  window: { from: Day; to: Day },
  service: string,
): DailySeries {
  const kept = rows.filter((row) => {
    if (row.day < window.from || row.day > window.to) return false;
    if (!isAirTemperature(row.tmaxC) || !isAirTemperature(row.tminC)) return false;
    return row.tmaxC === null || row.tminC === null || row.tminC <= row.tmaxC;
  });
  if (rows.length - kept.length > Math.max(3, rows.length * MOST_NONSENSE)) {
    throw new ServiceError('nonsense', `${service} answered temperatures that cannot be.`);
  }
  return fromRows(kept.filter(({ tmaxC, tminC }) => tmaxC !== null || tminC !== null));
}

/** A reading as services write it, a number or a text; null for none, NaN for what is neither. */
export function readCelsius(value: unknown): number | null {
  if (value === null || value === undefined || value === '') return null;
  if (typeof value === 'number') return value;
  if (typeof value !== 'string') return Number.NaN;
  const text = value.trim();
  return text === '' ? null : Number(text);
}

function isAirTemperature(celsius: number | null): boolean {
  if (celsius === null) return true;
  const tenths = celsius * 10;
  return tenths >= LOWEST_TENTHS && tenths <= HIGHEST_TENTHS;
}
