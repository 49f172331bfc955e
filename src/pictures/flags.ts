import { type Box, boxOf, type Label, line, type Mark, overlap, type Stroke, text } from './marks.ts';
import type { Measure } from './measure.ts';
import { SIZE } from './picture.ts';

/** A day worth a vertical line, with words above the chart. */
export interface Flag {
  readonly x: number;
  readonly words: string;
  readonly style: Omit<Stroke, 'kind' | 'd'> & { readonly ink: NonNullable<Stroke['ink']> };
}

export interface FlagRoom {
  readonly left: number;
  readonly right: number;
}

export interface PlacedFlags {
  /** Height of all lanes together, px. */
  readonly height: number;
  /** The words in lanes that end at `floor`, and a line from each down to `bottom`. */
  place(
    floor: number,
    bottom: number,
  ): { readonly marks: readonly Mark[]; readonly labels: readonly Label[] };
}

const LANE_PX = 42;
const GAP_PX = 14;
/** Between a line and words clear of it. */
const CLEAR_PX = 8;

interface Placing {
  readonly flag: Flag;
  readonly lane: number;
  readonly left: number;
  readonly right: number;
}

/**
 * Flags in as few lanes as do: no words over other words, and no line through the words of another flag.
 * Words stand over their line, or to its right or left. Tries every way; there are never more than five.
 */
export function placeFlags(flags: readonly Flag[], room: FlagRoom, measure: Measure): PlacedFlags {
  const placings = best(flags, room, measure);
  const lanes = Math.max(0, ...placings.map(({ lane }) => lane + 1));
  return {
    height: lanes * LANE_PX,
    place(floor, bottom) {
      // Lane 0 is the lowest, next to the chart.
      const yOf = (lane: number) => floor - (lane + 0.5) * LANE_PX;
      const labels = placings.map(({ flag, lane, left }) =>
        text(flag.words, left, yOf(lane), { size: SIZE.text, ink: flag.style.ink, bold: true }),
      );
      const lines = placings.map(({ flag, lane }) =>
        line(flag.x, yOf(lane) + SIZE.text * 0.6, flag.x, bottom, flag.style),
      );
      return { marks: [...lines, ...labels], labels };
    },
  };
}

type Clashes = (a: Placing, b: Placing) => boolean;

function best(flags: readonly Flag[], room: FlagRoom, measure: Measure): readonly Placing[] {
  if (flags.length === 0) return [];
  // Should lines stand too close for any way without a line through words, every date is still shown.
  for (const clashes of [clash, wordsMeet]) {
    for (let lanes = 1; lanes <= flags.length; lanes++) {
      const found = place(flags, [], lanes, room, measure, clashes);
      if (found) return found;
    }
  }
  throw new Error('a lane for each flag leaves no words to meet');
}

function place(
  rest: readonly Flag[],
  placed: readonly Placing[],
  lanes: number,
  room: FlagRoom,
  measure: Measure,
  clashes: Clashes,
): readonly Placing[] | null {
  const [flag, ...others] = rest;
  if (flag === undefined) return placed;
  const width = measure.width(flag.words, SIZE.text, true);
  const clamp = (left: number) => Math.max(room.left, Math.min(left, room.right - width));
  for (let lane = 0; lane < lanes; lane++) {
    // Over its line, across it, or clear of it to one side, for lines that stand close.
    const ways = [
      flag.x - width / 2,
      flag.x - 12,
      flag.x - width + 12,
      flag.x + CLEAR_PX,
      flag.x - width - CLEAR_PX,
    ];
    for (const left of ways.map(clamp)) {
      const placing = { flag, lane, left, right: left + width };
      if (placed.some((other) => clashes(placing, other) || clashes(other, placing))) continue;
      const found = place(others, [...placed, placing], lanes, room, measure, clashes);
      if (found) return found;
    }
  }
  return null;
}

/** Whether the words of `a` meet those of `b`, or the line of `b` runs through them on its way down. */
function clash(a: Placing, b: Placing): boolean {
  if (a.lane === b.lane) return wordsMeet(a, b);
  return b.lane > a.lane && b.flag.x > a.left - GAP_PX / 2 && b.flag.x < a.right + GAP_PX / 2;
}

function wordsMeet(a: Placing, b: Placing): boolean {
  return a.lane === b.lane && a.left < b.right + GAP_PX && b.left < a.right + GAP_PX;
}

/** Pairs of labels that lie over each other; empty in a good picture. */
export function overlaps(labels: readonly Label[], measure: Measure): readonly [string, string][] {
  const boxes = labels.map((label) => [label.text, boxOf(label, measure)] as const);
  return boxes.flatMap(([a, boxA]: readonly [string, Box], i) =>
    boxes.slice(i + 1).flatMap(([b, boxB]): [string, string][] => (overlap(boxA, boxB) ? [[a, b]] : [])),
  );
}
