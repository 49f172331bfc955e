import type { Hemisphere } from '../../engine/season.ts';

/**
 * Mean instants of equinox and solstice as polynomials in millennia from 2000: J. Meeus, Astronomical Algorithms,
 * 2nd ed., table 27.B. Without the periodic terms they are good to half an hour, enough for the day in UTC.
 */
const TURNS = {
  march: [2451623.80984, 365242.37404, 0.05169, -0.00411, -0.00057],
  june: [2451716.56767, 365241.62603, 0.00325, 0.00888, -0.0003],
  september: [2451810.21715, 365242.01767, -0.11575, 0.00337, 0.00078],
  december: [2451900.05952, 365242.74049, -0.06223, -0.00823, 0.00032],
} as const;

const JULIAN_DAY_OF_EPOCH = 2440587.5;

/** Day of the epoch of a turn of the sun. */
export function turnOfSun(turn: keyof typeof TURNS, year: number): number {
  const y = (year - 2000) / 1000;
  const julianDay = TURNS[turn].reduce((sum, term, power) => sum + term * y ** power, 0);
  return Math.floor(julianDay - JULIAN_DAY_OF_EPOCH);
}

const BY_SEASON = {
  spring: ['march', 'september'],
  summer: ['june', 'december'],
  autumn: ['september', 'march'],
  winter: ['december', 'june'],
} as const;

/** The turn that begins a season: the summer solstice is in December in the south. */
export function turnBySeason(season: keyof typeof BY_SEASON, year: number, hemisphere: Hemisphere): number {
  return turnOfSun(BY_SEASON[season][hemisphere === 'N' ? 0 : 1], year);
}
