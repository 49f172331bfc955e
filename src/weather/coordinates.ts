/** Degrees, rounded to 0.01: closer than that is nobody's business. */
export interface Coordinates {
  readonly lat: number;
  readonly lon: number;
}

const NUMBER = String.raw`[+-]?\d{1,3}(?:[.,]\d+)?`;
const ANGLE = String.raw`(${NUMBER})\s*(?:°|º|deg(?:rees?)?)?\s*(?:(\d{1,2}(?:[.,]\d+)?)\s*['’′]\s*)?(?:(\d{1,2}(?:[.,]\d+)?)\s*(?:"|”|″|'')\s*)?`;
const HALF = String.raw`(?:(?:lat(?:itude)?|lon(?:g(?:itude)?)?|lng)\s*[:=]?\s*)?([NSEW])?\s*${ANGLE}([NSEW])?`;
const PAIR = new RegExp(String.raw`^${HALF}\s*(?:[,;/]|\s)\s*${HALF}$`, 'i');

/**
 * "35.78, -78.64", "35.78N 78.64W", "35°46′N, 78°38′W" or "lat 35.78 lon -78.64"; latitude first unless
 * letters say otherwise. Null when the text is no position on earth.
 */
export function parseCoordinates(text: string): Coordinates | null {
  const match = PAIR.exec(text.trim().replace(/[−–]/g, '-'));
  if (!match) return null;
  const first = angle(match.slice(1, 6));
  const second = angle(match.slice(6, 11));
  if (!first || !second) return null;
  // Two whole numbers alone are as likely a house number or a date.
  if (!first.marked && !second.marked && !/[.°º]|\d,\d+\s*[;/]/.test(text)) return null;
  const swapped = first.axis === 'lon' || second.axis === 'lat';
  const [lat, lon] = swapped ? [second, first] : [first, second];
  if (lat.axis === 'lon' || lon.axis === 'lat') return null;
  if (Math.abs(lat.degrees) > 90 || Math.abs(lon.degrees) > 180) return null;
  return { lat: roundHundredths(lat.degrees), lon: roundHundredths(lon.degrees) };
}

export function roundHundredths(degrees: number): number {
  // + 0 turns the −0 of a rounding into 0.
  return Math.round(degrees * 100) / 100 + 0;
}

interface Angle {
  readonly degrees: number;
  readonly axis: 'lat' | 'lon' | null;
  readonly marked: boolean;
}

function angle(parts: readonly (string | undefined)[]): Angle | null {
  const [before, degrees = '', minutes, seconds, after] = parts;
  const letter = (after ?? before)?.toUpperCase();
  if (before && after) return null;
  const value = (text: string | undefined) => Number((text ?? '0').replace(',', '.'));
  if (value(minutes) >= 60 || value(seconds) >= 60) return null;
  const size = Math.abs(value(degrees)) + value(minutes) / 60 + value(seconds) / 3600;
  const negative = degrees.startsWith('-');
  if (negative && letter) return null;
  const south = letter === 'S' || letter === 'W';
  const axis = letter === undefined ? null : letter === 'N' || letter === 'S' ? 'lat' : 'lon';
  return { degrees: negative || south ? -size : size, axis, marked: letter !== undefined };
}
