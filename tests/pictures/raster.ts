import { PNG } from 'pngjs';

export interface Raster {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and opacity, 0–255. */
  at(x: number, y: number): readonly [number, number, number, number];
}

/** Pixels of a PNG, read by a library that had no part in writing it. */
export function decode(bytes: Uint8Array): Raster {
  const { width, height, data } = PNG.sync.read(Buffer.from(bytes));
  return {
    width,
    height,
    at: (x, y) => {
      const i = (Math.round(y) * width + Math.round(x)) * 4;
      return [data[i] ?? 0, data[i + 1] ?? 0, data[i + 2] ?? 0, data[i + 3] ?? 0];
    },
  };
}

export function rgb(hex: string): readonly [number, number, number] {
  const value = Number.parseInt(hex.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

/** Share of the pixels from (x, top) to (x, bottom) that have this colour, give or take antialiasing. */
export function inkShare(raster: Raster, hex: string, x: number, top: number, bottom: number): number {
  const wanted = rgb(hex);
  let hits = 0;
  for (let y = Math.ceil(top); y <= bottom; y++) {
    const pixel = raster.at(x, y);
    if (wanted.every((channel, i) => Math.abs(channel - (pixel[i] ?? 0)) < 24)) hits++;
  }
  return hits / (Math.floor(bottom) - Math.ceil(top) + 1);
}

/** Distinct colours in a raster, every third pixel. */
export function colours(raster: Raster): number {
  const seen = new Set<string>();
  for (let y = 0; y < raster.height; y += 3) {
    for (let x = 0; x < raster.width; x += 3) seen.add(raster.at(x, y).join());
  }
  return seen.size;
}

/** Font sizes of every text element of an SVG, px; NaN where one says none. */
export function fontSizes(svg: string): readonly number[] {
  return [...svg.matchAll(/<text\b([^>]*)>/g)].map(([, attributes = '']) =>
    Number(/font-size:\s*([\d.]+)px/.exec(attributes)?.[1] ?? Number.NaN),
  );
}
