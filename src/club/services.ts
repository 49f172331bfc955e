import type { WeatherService } from '../weather/lookup.ts';

/** What handlers use besides the database. Filled in at start, faked in tests. */
export interface Services {
  readonly weather: WeatherService;
}
