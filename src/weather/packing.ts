import { type DailySeries, MISSING, SLOTS } from '../engine/climate.ts';

const BYTES = SLOTS * 2;

/** A year's tenths of °C as `SLOTS` little-endian int16, whatever the host's byte order. */
export function packTenths(tenths: Int16Array): Uint8Array {
  const bytes = new Uint8Array(BYTES);
  const view = new DataView(bytes.buffer);
  for (let slot = 0; slot < SLOTS; slot++) view.setInt16(slot * 2, tenths[slot] ?? MISSING, true);
  return bytes;
}

/** What `packTenths` packed. A row cut short ends in MISSING. */
export function unpackTenths(bytes: Uint8Array): Int16Array {
  const tenths = new Int16Array(SLOTS).fill(MISSING);
  // A driver's buffer may begin at an odd address, where an Int16Array cannot lie.
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let slot = 0; slot * 2 + 1 < bytes.byteLength && slot < SLOTS; slot++) {
    tenths[slot] = view.getInt16(slot * 2, true);
  }
  return tenths;
}

export interface PackedYear {
  readonly year: number;
  readonly tmax: Uint8Array;
  readonly tmin: Uint8Array;
}

export function packYears(series: DailySeries): PackedYear[] {
  return series.map(({ year, tmax, tmin }) => ({ year, tmax: packTenths(tmax), tmin: packTenths(tmin) }));
}

export function unpackYears(rows: readonly PackedYear[]): DailySeries {
  return rows
    .map(({ year, tmax, tmin }) => ({ year, tmax: unpackTenths(tmax), tmin: unpackTenths(tmin) }))
    .sort((a, b) => a.year - b.year);
}
