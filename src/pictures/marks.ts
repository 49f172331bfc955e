import type { Measure } from './measure.ts';
import type { PALETTE } from './palette.ts';

export type Ink = keyof typeof PALETTE;

/** One line of text. `y` is the middle of the line. */
export interface Label {
  readonly kind: 'text';
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly ink: Ink;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  /** Keeps lines from running through the letters. */
  readonly halo?: boolean;
}

export interface Stroke {
  readonly kind: 'path';
  /** SVG path data, px. */
  readonly d: string;
  readonly ink?: Ink;
  readonly width?: number;
  readonly dash?: readonly number[] | null;
  readonly fill?: Ink;
}

/** What a picture consists of besides its data series, in px, painted in order. */
export type Mark = Label | Stroke;

/** Left, top, right, bottom, px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function boxOf(label: Label, measure: Measure): Box {
  const width = measure.width(label.text, label.size, label.bold);
  const left =
    label.anchor === 'end' ? label.x - width : label.anchor === 'middle' ? label.x - width / 2 : label.x;
  // Ascender to descender of the face is 1.24 em; capitals and digits take the middle 0.7.
  return { left, right: left + width, top: label.y - label.size * 0.6, bottom: label.y + label.size * 0.6 };
}

export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

export function text(
  words: string,
  x: number,
  y: number,
  options: Partial<Omit<Label, 'kind' | 'text' | 'x' | 'y'>> & { size: number },
): Label {
  return { kind: 'text', text: words, x, y, ink: 'ink', ...options };
}

export function line(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  style: Omit<Stroke, 'kind' | 'd'>,
): Stroke {
  return { kind: 'path', d: `M${px(x1)} ${px(y1)}L${px(x2)} ${px(y2)}`, ...style };
}

export function rect({ left, top, right, bottom }: Box, style: Omit<Stroke, 'kind' | 'd'>): Stroke {
  return { kind: 'path', d: `M${px(left)} ${px(top)}H${px(right)}V${px(bottom)}H${px(left)}Z`, ...style };
}

/** Parallel diagonals within a box. */
export function hatch(box: Box, stepPx: number, style: Omit<Stroke, 'kind' | 'd'>): Stroke {
  const { left, top, right, bottom } = box;
  const height = bottom - top;
  let d = '';
  for (let x = left - height; x < right; x += stepPx) {
    // From the lower edge up to the right, cut at both sides.
    const startX = Math.max(x, left);
    const endX = Math.min(x + height, right);
    if (endX > startX)
      d += `M${px(startX)} ${px(bottom - (startX - x))}L${px(endX)} ${px(bottom - (endX - x))}`;
  }
  return { kind: 'path', d, ...style };
}

export type MarkerShape = 'circle' | 'diamond' | 'up' | 'down' | 'square' | 'cross' | 'bar';

export function marker(
  shape: MarkerShape,
  x: number,
  y: number,
  radius: number,
  style: Omit<Stroke, 'kind' | 'd'>,
): Stroke {
  return { kind: 'path', d: OUTLINES[shape](x, y, radius), ...style };
}

const OUTLINES: Readonly<Record<MarkerShape, (x: number, y: number, r: number) => string>> = {
  circle: (x, y, r) =>
    `M${px(x - r)} ${px(y)}A${px(r)} ${px(r)} 0 1 1 ${px(x + r)} ${px(y)}A${px(r)} ${px(r)} 0 1 1 ${px(x - r)} ${px(y)}Z`,
  diamond: (x, y, r) =>
    `M${px(x)} ${px(y - r)}L${px(x + r)} ${px(y)}L${px(x)} ${px(y + r)}L${px(x - r)} ${px(y)}Z`,
  up: (x, y, r) => `M${px(x)} ${px(y - r)}L${px(x + r)} ${px(y + r * 0.8)}H${px(x - r)}Z`,
  down: (x, y, r) => `M${px(x)} ${px(y + r)}L${px(x - r)} ${px(y - r * 0.8)}H${px(x + r)}Z`,
  square: (x, y, r) => `M${px(x - r)} ${px(y - r)}H${px(x + r)}V${px(y + r)}H${px(x - r)}Z`,
  cross: (x, y, r) =>
    `M${px(x - r)} ${px(y - r)}L${px(x + r)} ${px(y + r)}M${px(x + r)} ${px(y - r)}L${px(x - r)} ${px(y + r)}`,
  bar: (x, y, r) => `M${px(x)} ${px(y - r)}V${px(y + r)}`,
};

export function px(value: number): number {
  return Math.round(value * 10) / 10;
}
