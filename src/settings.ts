import { parseArgs } from 'node:util';
import { z } from 'zod';
import { type Day, parseDay } from './engine/day.ts';
import { StartError } from './errors.ts';

/** Everything that can be set, in one place: the environment (see .env.example) and the command line. */
export interface Settings {
  /** Null: the club opens in the terminal. */
  readonly discordToken: string | null;
  /** Commands go to this guild alone instead of everywhere. */
  readonly discordGuild: string | null;
  /** Base of Discord's REST interface without version, e.g. `https://discord.com/api`. */
  readonly discordApi: string;
  /** Where attachments may be fetched from instead of Discord's own hosts; an origin. */
  readonly discordCdn: string | null;
  readonly logChannel: LogChannelSetting;
  /** Undefined: the embedded database in `dataFolder`. */
  readonly databaseUrl: string | undefined;
  /** Folder of the embedded database, or `memory`. */
  readonly dataFolder: string;
  readonly role: Role;
  /** Number of shards, or `auto`: as many as Discord recommends. One unless set. */
  readonly shards: number | 'auto';
  /** Port of /healthz; null: none. 0 takes any free port. */
  readonly healthPort: number | null;
  readonly logLevel: LogLevel;
  readonly weather: WeatherAddresses;
  /** The terminal's day to begin with; null: the host's. */
  readonly today: Day | null;
  /** Who speaks in the terminal. */
  readonly member: string;
  readonly json: boolean;
}

/** Whether messages are read without a mention: everywhere `/club` says so, and in `channelId` if given. */
export interface LogChannelSetting {
  readonly allowed: boolean;
  readonly channelId: string | null;
}

/** What this process does: everything, only talking to members, or only sending nudges. */
export type Role = 'all' | 'gateway' | 'worker';

/** Bases of the services that daily temperatures come from. */
export interface WeatherAddresses {
  /** NOAA NCEI access services: `/access/services/search/v1` and `/access/services/data/v1` follow. */
  readonly noaa: string;
  /** NASA POWER: `/api/temporal/daily/point` follows. */
  readonly power: string;
}

const LOG_LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];

const SNOWFLAKE = /^\d{15,20}$/;

const address = (example: string) =>
  z
    .string()
    .refine(isHttpAddress, `should be an address such as ${example}`)
    .transform((text) => text.replace(/(?<!\/)\/+$/, ''));

const logChannel = z.string().transform((text, context): LogChannelSetting => {
  if (/^(on|yes|true|1)$/i.test(text)) return { allowed: true, channelId: null };
  if (/^(off|no|false|0)$/i.test(text)) return { allowed: false, channelId: null };
  if (SNOWFLAKE.test(text)) return { allowed: true, channelId: text };
  context.addIssue('should be on, off or the id of a channel');
  return z.NEVER;
});

const shards = z.string().transform((text, context): number | 'auto' => {
  if (text === 'auto') return 'auto';
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1) return count;
  context.addIssue('should be auto or a whole number from 1');
  return z.NEVER;
});

const environment = z.object({
  // A token is written in a header: no spaces, nothing beyond ASCII.
  DISCORD_TOKEN: z
    .string()
    .regex(/^[\x21-\x7e]+$/, 'holds spaces or characters that no Discord token has; copy it again')
    .optional(),
  DISCORD_GUILD: z.string().regex(SNOWFLAKE, 'should be the number of a server, 15 to 20 digits').optional(),
  DISCORD_API: address('https://discord.com/api').default('https://discord.com/api'),
  DISCORD_CDN: address('https://cdn.discordapp.com').optional(),
  DISCORD_LOG_CHANNEL: logChannel.default({ allowed: false, channelId: null }),
  DATABASE_URL: z
    .string()
    .regex(/^postgres(ql)?:\/\//, 'should be a PostgreSQL address that begins with postgres://')
    .optional(),
  ROLE: z.enum(['all', 'gateway', 'worker'], 'should be all, gateway or worker').default('all'),
  SHARDS: shards.default(1),
  HEALTH_PORT: z
    .string()
    .regex(/^\d{1,5}$/, 'should be a port, 0 to 65535')
    .transform(Number)
    .refine((port) => port <= 65_535, 'should be a port, 0 to 65535')
    .optional(),
  LOG_LEVEL: z.enum(LOG_LEVELS, `should be one of ${LOG_LEVELS.join(', ')}`).default('info'),
  NOAA_API: address('https://www.ncei.noaa.gov').default('https://www.ncei.noaa.gov'),
  POWER_API: address('https://power.larc.nasa.gov').default('https://power.larc.nasa.gov'),
});

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Reads and checks all settings. `argv` is what follows the script's name. Throws StartError with one sentence
 * that names the setting, never its value, since it may be a secret.
 */
export function readSettings(env: Environment, argv: readonly string[]): Settings {
  const flags = readFlags(argv);
  const given = Object.entries(env).filter(([, value]) => value !== undefined && value.trim() !== '');
  const parsed = environment.safeParse(Object.fromEntries(given.map(([k, v]) => [k, v?.trim()])));
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    throw new StartError(`${String(issue?.path[0])} ${issue?.message}.`);
  }
  const set = parsed.data;
  if (set.ROLE !== 'all' && set.DATABASE_URL === undefined) {
    throw new StartError(
      `ROLE=${set.ROLE} needs DATABASE_URL, since the embedded database serves one process only.`,
    );
  }
  return {
    discordToken: set.DISCORD_TOKEN ?? null,
    discordGuild: set.DISCORD_GUILD ?? null,
    // discord.js appends the version itself.
    discordApi: set.DISCORD_API.replace(/\/v\d+$/, ''),
    discordCdn: set.DISCORD_CDN === undefined ? null : new URL(set.DISCORD_CDN).origin,
    logChannel: set.DISCORD_LOG_CHANNEL,
    databaseUrl: set.DATABASE_URL,
    dataFolder: flags.data,
    role: set.ROLE,
    shards: set.SHARDS,
    healthPort: set.HEALTH_PORT ?? null,
    logLevel: set.LOG_LEVEL,
    weather: { noaa: set.NOAA_API, power: set.POWER_API },
    today: flags.today,
    member: flags.member,
    json: flags.json,
  };
}

function readFlags(argv: readonly string[]) {
  const values = parseFlags(argv);
  const today = values.today === undefined ? null : parseDay(values.today);
  if (values.today !== undefined && today === null) {
    throw new StartError(`--today should be a day written like 2026-07-05, not "${values.today}".`);
  }
  const data = values.data ?? '.data';
  if (data.trim() === '') throw new StartError('--data should name a folder, or be "memory".');
  const member = (values.member ?? 'me').trim();
  if (member === '') throw new StartError('--member should be a name.');
  return { today, data, member, json: values.json ?? false };
}

function parseFlags(argv: readonly string[]) {
  try {
    return parseArgs({
      args: [...argv],
      options: {
        today: { type: 'string' },
        data: { type: 'string' },
        member: { type: 'string' },
        json: { type: 'boolean' },
      },
    }).values;
  } catch (error) {
    const reason = error instanceof Error ? (error.message.split(/[.\n]/)[0] ?? '') : String(error);
    throw new StartError(`${reason}; the flags are --today DATE, --data DIR, --member NAME and --json.`, {
      cause: error,
    });
  }
}

function isHttpAddress(text: string): boolean {
  return URL.canParse(text) && /^https?:\/\//i.test(text);
}
