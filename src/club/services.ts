import type { WeatherService } from '../weather/lookup.ts';

/** What handlers use besides the database. Made at start, replaced by stand-ins in tests. */
export interface Services {
  readonly weather: WeatherService;
}
