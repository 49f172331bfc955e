import type { REST } from 'discord.js';
import type { Clock } from '../../clock.ts';
import type { Services } from '../../club/services.ts';
import type { Log } from '../../log.ts';
import type { OpenedDatabase } from '../../records/database.ts';
import type { LogChannelSetting } from '../../settings.ts';
import type { DirectClubs } from './direct-clubs.ts';
import type { Turns } from './turns.ts';

/** What everything that talks to members is given. */
export interface Kit {
  readonly rest: REST;
  readonly opened: OpenedDatabase;
  readonly clock: Clock;
  readonly services: Services;
  readonly log: Log;
  readonly logChannel: LogChannelSetting;
  readonly attachments: AttachmentRules;
  readonly turns: Turns;
  readonly directClubs: DirectClubs;
}

export interface AttachmentRules {
  /** Origin to fetch from instead of Discord's own. */
  readonly cdn: string | null;
  readonly timeoutMs: number;
}
