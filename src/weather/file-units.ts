import { unitIn } from './file-columns.ts';
import type { FileRow } from './file-rows.ts';
import { problem, type TemperatureUnit, type WeatherFileProblem } from './file-types.ts';
import { isShortCode } from './file-values.ts';

export interface SettledUnit {
  /** For readings that carry no unit of their own. */
  readonly unit: TemperatureUnit | 'tenths';
  readonly from: 'file' | 'caller';
}

/**
 * The unit of a file's readings: what its cells and headers say, else its preamble, else the caller. Never
 * from how the numbers look, but for NOAA's raw files in whole tenths of °C, whose highs can be nothing else.
 */
export function settleUnit(
  rows: readonly FileRow[],
  preamble: string,
  names: { readonly high: string; readonly low: string },
  stated: TemperatureUnit | undefined,
): SettledUnit | WeatherFileProblem {
  const bare = rows.filter(({ high, low }) => (high && high.unit === null) || (low && low.unit === null));
  if (bare.length === 0) {
    const unit = rows.find(({ high, low }) => high ?? low);
    return { unit: (unit?.high ?? unit?.low)?.unit ?? 'C', from: 'file' };
  }
  if (/0[.,]1\s*(?:(?:°|º|deg(?:rees?)?)\s*)?c/i.test(preamble)) return { unit: 'tenths', from: 'file' };
  const inPreamble = unitIn(preamble);
  if (inPreamble) return { unit: inPreamble, from: 'file' };
  // NASA POWER's temperatures are in °C (its parameter dictionary); the name is POWER's own.
  if (/^t2m_m(ax|in)$/i.test(names.high || names.low)) return { unit: 'C', from: 'file' };
  if (stated !== 'F' && areTenths(bare)) return { unit: 'tenths', from: 'file' };
  if (stated) return implausible(bare, stated) ?? { unit: stated, from: 'caller' };
  const highest = extreme(bare);
  const hint = highest > 60 ? ', which no air temperature in °C reaches' : '';
  return problem(
    'unit-unknown',
    `The file does not say whether it is in °F or °C; its highest value is ${highest}${hint}. Say the unit: F or C.`,
  );
}

/**
 * GHCN-Daily's own files give whole tenths of °C (NOAA's readme.txt for GHCN-Daily: "TMAX = Maximum
 * temperature (tenths of degrees C)"). A quarter of the values above 140 is possible in no other unit.
 */
function areTenths(rows: readonly FileRow[]): boolean {
  let above = 0;
  for (const { high, low } of rows) {
    if (!Number.isInteger(high?.value ?? 0) || !Number.isInteger(low?.value ?? 0)) return false;
    if ((high?.value ?? low?.value ?? 0) > 140) above++;
  }
  return rows.length >= 30 && above >= rows.length / 4;
}

/** Only a veto on what the caller said: a year of highs that could not be in that unit. */
function implausible(rows: readonly FileRow[], unit: TemperatureUnit): WeatherFileProblem | null {
  const highest = extreme(rows);
  if (unit === 'F' && rows.length >= 300 && highest <= 50) {
    return problem(
      'unit-implausible',
      `In °F the warmest day of the file would be ${highest} °F, too cold for any fig. Is the file in °C?`,
    );
  }
  if (unit === 'C' && highest > 60 && rows.filter(({ high }) => (high?.value ?? 0) > 60).length > 3) {
    return problem(
      'unit-implausible',
      `In °C the warmest day of the file would be ${highest} °C, which no place on earth has seen. Is it in °F?`,
    );
  }
  return null;
}

function extreme(rows: readonly FileRow[]): number {
  let highest = Number.NEGATIVE_INFINITY;
  for (const { high, low } of rows) {
    const value = high ?? low;
    if (value && !isShortCode(value.value)) highest = Math.max(highest, value.value);
  }
  return highest;
}
