import type { TemperatureUnit } from './file-types.ts';

/** A reading as written: a number and the unit beside it, or null for a code that says there is none. */
export interface WrittenValue {
  readonly value: number;
  readonly unit: TemperatureUnit | null;
}

/** Highs and lows outside these are no air temperatures; the records are −89.2 and 56.7 °C (WMO archive). */
export const LOWEST_TENTHS = -600;
export const HIGHEST_TENTHS = 600;

const PLAIN = /^[+-]?\d{1,5}(?:[.,]\d{1,6})?$/;
const WITH_UNIT = /^([+-]?\d{1,5}(?:[.,]\d{1,6})?)\s*(?:(?:°|º|deg)\s*)?([cf])\.?$/i;
const NO_READING = new Set(
  '|m|na|n/a|nan|null|none|nil|-|--|---|–|—|x|.|..|?|*|t|tr|trace|missing'.split('|'),
);
/** NOAA writes −9999, NASA POWER −999, GSOD 9999.9; home stations write −99 and its like. */
const CODES = new Set([999, 999.9, 999.99, 9999, 9999.9, 99999].flatMap((code) => [code, -code]));
const SHORT_CODES = new Set([-99, -99.9, -99.99]);

/** A temperature cell; null for "no reading", undefined when it is neither. */
export function readValue(text: string): WrittenValue | null | undefined {
  if (PLAIN.test(text)) return plain(text);
  if (text === '' || NO_READING.has(text.toLowerCase())) return null;
  const tidy = text.replace(/[−–](?=\d)/, '-').replace(/(\d)\*$/, '$1');
  if (PLAIN.test(tidy)) return plain(tidy);
  const match = WITH_UNIT.exec(tidy);
  if (!match) return undefined;
  return { value: Number((match[1] ?? '').replace(',', '.')), unit: /c/i.test(match[2] ?? '') ? 'C' : 'F' };
}

function plain(text: string): WrittenValue | null {
  const value = Number(text.includes(',') ? text.replace(',', '.') : text);
  return CODES.has(value) ? null : { value, unit: null };
}

/** Codes that could be readings where the file is in tenths of a degree. */
export function isShortCode(value: number): boolean {
  return SHORT_CODES.has(value);
}

/** Tenths of °C. */
export function toTenthsC(value: number, unit: TemperatureUnit | 'tenths'): number {
  if (unit === 'tenths') return Math.round(value) + 0;
  // + 0 turns the −0 of a rounding into 0.
  return Math.round(unit === 'C' ? value * 10 : ((value - 32) * 50) / 9) + 0;
}
