import type { Clock } from '../clock.ts';
import type { Database } from '../records/database.ts';
import type { Club, Member } from '../records/schema.ts';
import type { Services } from './services.ts';

/** Who asks, where, when, and what a handler may use to answer. Made afresh for every call. */
export interface Context {
  readonly db: Database;
  readonly clock: Clock;
  readonly club: Club;
  readonly member: Member;
  readonly managesClub: boolean;
  readonly services: Services;
  /** The platform's id of the message that asks, where it was one. */
  readonly messageId?: string;
  /** The platform's id of the assistant's message that this one replies to. */
  readonly repliesTo?: string;
  /** Order of numeric dates by the platform's locale, for a member who has not said. */
  readonly localeDates?: 'MDY' | 'DMY';
  /** Tells the member how far long work has come: "year 12 of 40". */
  readonly progress: (text: string) => void;
}
