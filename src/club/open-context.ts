import type { Clock } from '../clock.ts';
import { openClub, openMember } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import type { Platform } from '../records/schema.ts';
import type { Context } from './context.ts';
import type { Services } from './services.ts';

export interface Caller {
  readonly db: Database;
  readonly clock: Clock;
  readonly services: Services;
  readonly platform: Platform;
  readonly clubPlatformId: string;
  readonly clubName: string;
  readonly userId: string;
  readonly userName: string;
  readonly managesClub: boolean;
  readonly messageId?: string;
  readonly repliesTo?: string;
  readonly localeDates?: 'MDY' | 'DMY';
  readonly progress?: (text: string) => void;
}

/** The context of one call: finds or makes the club and the member who speaks. */
export async function openContext(caller: Caller): Promise<Context> {
  const now = caller.clock.now();
  const key = { platform: caller.platform, platformId: caller.clubPlatformId };
  const club = await openClub(caller.db, key, caller.clubName, now);
  const member = await openMember(caller.db, club.id, caller.userId, caller.userName, now);
  return {
    db: caller.db,
    clock: caller.clock,
    services: caller.services,
    club,
    member,
    managesClub: caller.managesClub,
    progress: caller.progress ?? (() => {}),
    ...(caller.messageId === undefined ? {} : { messageId: caller.messageId }),
    ...(caller.repliesTo === undefined ? {} : { repliesTo: caller.repliesTo }),
    ...(caller.localeDates === undefined ? {} : { localeDates: caller.localeDates }),
  };
}
