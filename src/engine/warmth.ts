import { type DailySeries, MISSING } from './climate.ts';
import { type DegreeDayModel, degreeDays } from './degree-days.ts';
import { type FlatSeries, flatten } from './flat-series.ts';

/**
 * Daily mean temperature summed from fruit bud to harvest, °C·days, the same for three nodes and three
 * years, in a cultivar taking 80–89 days: Yahata & Nogata 2000, J. Jpn. Soc. Hort. Sci., Fukuoka.
 */
const FUKUOKA_SUM = 2100;
const FUKUOKA_DAYS = 84.5;

/** The only thresholds estimated for fig, °C: Souza et al., Botucatu, Brazil, 2002–2006. */
export const FIG_BASE_C = 8;
export const FIG_CUTOFF_C = 36;

/** How a fig's warmth is reckoned. The union of the two studies is ours; replies call it an estimate. */
export const FIG_WARMTH: DegreeDayModel = {
  method: 'single-sine',
  base: FIG_BASE_C,
  cutoff: { at: FIG_CUTOFF_C, kind: 'horizontal' },
};

/** Longest run of missing days that is filled in, on a straight line between its neighbours. */
export const LONGEST_FILLED_GAP_DAYS = 3;

/**
 * Warmth a fig of that span needs, °C·days over `baseC`: the span at the mean temperature of the study.
 *
 * `needOf(90) //≈ 1516.7`
 */
export function needOf(spanDays: number, baseC = FIG_BASE_C): number {
  return spanDays * (FUKUOKA_SUM / FUKUOKA_DAYS - baseC);
}

/** A record's warmth, ready to be summed over any of its days. */
export interface DailyWarmth {
  /** Day of slot 0, in days since 1970-01-01. */
  readonly start: number;
  readonly length: number;
  /** Warmth of all days before a slot, °C·days; length + 1 values. */
  readonly sumBefore: Float64Array;
  /** Days before a slot without warmth, because a reading is missing in a gap too long to fill. */
  readonly gapsBefore: Int32Array;
  /** Readings in tenths of °C, short gaps filled; NaN where missing. */
  readonly tmax: Float64Array;
  readonly tmin: Float64Array;
}

/** The warmth of every day of a record; work of a few milliseconds a decade, to be done once a record. */
export function warmthOf(series: DailySeries, model: DegreeDayModel): DailyWarmth {
  const flat: FlatSeries = flatten(series);
  const tmax = filled(flat.tmax);
  const tmin = filled(flat.tmin);
  const length = tmax.length;
  const sumBefore = new Float64Array(length + 1);
  const gapsBefore = new Int32Array(length + 1);
  for (let slot = 0; slot < length; slot++) {
    const max = at(tmax, slot) / 10;
    const min = at(tmin, slot) / 10;
    const tomorrow = at(tmin, slot + 1) / 10;
    const nextMin = Number.isNaN(tomorrow) ? min : tomorrow;
    const isGap = Number.isNaN(max) || Number.isNaN(min);
    const warmth = isGap ? 0 : degreeDays({ min, max, nextMin }, model);
    sumBefore[slot + 1] = (sumBefore[slot] ?? 0) + warmth;
    gapsBefore[slot + 1] = (gapsBefore[slot] ?? 0) + (isGap ? 1 : 0);
  }
  return { start: flat.start, length, sumBefore, gapsBefore, tmax, tmin };
}

/** Readings as numbers, gaps of up to `LONGEST_FILLED_GAP_DAYS` filled, longer ones NaN. */
function filled(tenths: Int16Array): Float64Array {
  const values = Float64Array.from(tenths, (value) => (value === MISSING ? Number.NaN : value));
  let known = -1;
  for (let slot = 0; slot < values.length; slot++) {
    const here = at(values, slot);
    if (Number.isNaN(here)) continue;
    const gap = slot - known - 1;
    if (known >= 0 && gap > 0 && gap <= LONGEST_FILLED_GAP_DAYS) {
      const before = at(values, known);
      for (let i = 1; i <= gap; i++) values[known + i] = before + ((here - before) * i) / (gap + 1);
    }
    known = slot;
  }
  return values;
}

function at(values: Float64Array, slot: number): number {
  return values[slot] ?? Number.NaN;
}
