import { addDays, type Day, dayOfYear } from '../engine/day.ts';
import { randomOf, spread } from './random.ts';

/** Yearly mean of the highs in Quillin Vale, °C, and how far summer and winter are from it. Invented. */
const MEAN_HIGH_C = 19;
const SWING_C = 13.5;
/** Day of the year on which highs are greatest: 27 July. */
const WARMEST_DAY = 208;

/**
 * An invented record of daily temperatures, as a file a weather station at home might write: the place does not
 * exist and nothing was measured. `warmer` is what this garden has over the vale, °C.
 */
export function inventedRecord(garden: string, warmer: number, from: Day, to: Day): string {
  const random = randomOf(garden);
  const lines = ['date,high_c,low_c'];
  let weather = 0;
  for (let day = from; day <= to; day = addDays(day, 1)) {
    const phase = (2 * Math.PI * (dayOfYear(day) - WARMEST_DAY)) / 365.25;
    // Warm and cool spells last some days.
    weather = 0.72 * weather + 2.4 * spread(random);
    const high = MEAN_HIGH_C + SWING_C * Math.cos(phase) + warmer + weather;
    const low = high - 10.5 - 1.5 * Math.cos(phase) + 1.3 * spread(random);
    lines.push(`${day},${high.toFixed(1)},${low.toFixed(1)}`);
  }
  return `${lines.join('\n')}\n`;
}
