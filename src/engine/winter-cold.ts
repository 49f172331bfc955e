import { MISSING } from './climate.ts';
import { addDays, type Day, daysBetween, fromEpochDays, type MonthDay, monthDayOf } from './day.ts';
import { type FlatSeries, slotOf } from './flat-series.ts';
import { quantile } from './percentile.ts';
import { type Hemisphere, midSeason, nextSeason, type Season, seasonStarting } from './season.ts';
import { seasonsIn } from './seasons-in.ts';

/** Overwintering brebas drop after a day at −4 °C, and young plants are hurt at −2 to −4 °C: planetfig survey. */
export const BREBA_KILL_C = -4;

/** 20 °F, −6.7 °C: most edible cultivars are killed to the ground at or below: Ohio State HYG-1439, 2020. */
export const WOOD_KILL_C = -6.7;

/** A winter tells of its cold only when at most this share of its lows is missing. Ours. */
const MISSING_ALLOWED = 0.1;

/** How often and when the winters of a record reached a temperature. A winter runs from midsummer to midsummer. */
export interface ColdStat {
  /** Daily minimum at or below which a day counts, °C. */
  readonly atC: number;
  /** Winters that could tell. */
  readonly winters: number;
  /** Of those, winters with such a day. */
  readonly reached: number;
  /** First such day: one winter in ten had it by `firstP10`, one in two by `firstP50`; null without any. */
  readonly firstP10: MonthDay | null;
  readonly firstP50: MonthDay | null;
  /** Last such day: nine winters in ten had it by this day; null without any. */
  readonly lastP90: MonthDay | null;
}

/** When the lows of a record reached `atC`, over all its whole winters. */
export function coldStatOf(flat: FlatSeries, hemisphere: Hemisphere, atC: number): ColdStat {
  const firsts: number[] = [];
  const lasts: number[] = [];
  let winters = 0;
  for (const season of seasonsIn(flat, hemisphere)) {
    const days = coldDaysIn(flat, season, atC);
    if (days === null) continue;
    winters += 1;
    const [first, last] = [days[0], days.at(-1)];
    if (first === undefined || last === undefined) continue;
    firsts.push(daysBetween(midSeason(season), first));
    lasts.push(daysBetween(midSeason(season), last));
  }
  // A common year on both sides of the turn, so that no 29 February shifts the answer.
  const parting = midSeason(seasonStarting(2001, hemisphere));
  const at = (days: readonly number[], p: number, round: (value: number) => number) =>
    days.length === 0 ? null : monthDayOf(addDays(parting, round(quantile(ascending(days), p))));
  return {
    atC,
    winters,
    reached: firsts.length,
    firstP10: at(firsts, 0.1, Math.floor),
    firstP50: at(firsts, 0.5, Math.floor),
    lastP90: at(lasts, 0.9, Math.ceil),
  };
}

/** The days of a winter with a low at or below `atC`; null when too many lows are missing to tell. */
function coldDaysIn(flat: FlatSeries, season: Season, atC: number): Day[] | null {
  const from = slotOf(flat, midSeason(season));
  const to = slotOf(flat, midSeason(nextSeason(season))) - 1;
  const found: Day[] = [];
  let missing = 0;
  for (let slot = from; slot <= to; slot++) {
    const low = flat.tmin[slot] ?? MISSING;
    if (low === MISSING) missing++;
    else if (low <= atC * 10) found.push(fromEpochDays(flat.start + slot));
  }
  return missing > MISSING_ALLOWED * (to - from + 1) ? null : found;
}

function ascending(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}
