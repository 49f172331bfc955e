import type { Clock } from './clock.ts';
import type { Services } from './club/services.ts';
import type { Database } from './records/database.ts';
import type { Settings } from './settings.ts';
import { createWeatherService } from './weather/lookup.ts';

export interface ServiceOptions {
  readonly settings: Pick<Settings, 'weather'>;
  readonly db: Database;
  readonly clock: Clock;
}

export function createServices({ settings, db, clock }: ServiceOptions): Services {
  return { weather: createWeatherService({ db, clock, addresses: settings.weather }) };
}
