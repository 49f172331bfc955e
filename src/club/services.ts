/** What handlers use besides the database: weather, places. Filled in at start, faked in tests. */
export type Services = Record<never, never>;
