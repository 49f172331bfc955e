import { type Client, Status } from 'discord.js';
import type { Clock } from '../../clock.ts';
import { features } from '../../club/features.ts';
import type { Services } from '../../club/services.ts';
import { StartError } from '../../errors.ts';
import { createLog, describeError, type Log } from '../../log.ts';
import { postRoundups } from '../../nudges/roundups.ts';
import { topUpWeather } from '../../nudges/weather-top-up.ts';
import { type PeriodicTask, startWorker, type Worker } from '../../nudges/worker.ts';
import type { OpenedDatabase } from '../../records/database.ts';
import type { Settings } from '../../settings.ts';
import { warmPlaces } from '../../weather/places.ts';
import { forgetHandled } from './claims.ts';
import { createClient } from './client.ts';
import { eraseLeftClubs } from './clubs.ts';
import { isEmptyDiff } from './command-diff.ts';
import { commandBodies } from './commands.ts';
import { readDiff } from './deployment.ts';
import { DirectClubs } from './direct-clubs.ts';
import { listen } from './gateway.ts';
import { startHealth } from './health.ts';
import { fatalClose, logIn } from './login.ts';
import { forgetLongReplies } from './long-replies.ts';
import { DiscordMessenger } from './messenger.ts';
import { createRest, waitOf, watchRest } from './rest.ts';
import { Turns } from './turns.ts';
import { watchGateway } from './watchdog.ts';

export interface DiscordStart {
  readonly settings: Settings;
  readonly opened: OpenedDatabase;
  readonly clock: Clock;
  readonly services: Services;
  /** For tests; standard output otherwise. */
  readonly log?: Log;
  readonly restTimeoutMs?: number;
  readonly attachmentTimeoutMs?: number;
}

export interface Running {
  readonly client: Client | null;
  readonly healthPort: number | null;
  /** What became of it that it cannot go on with; never settles while all is well. */
  readonly failed: Promise<string>;
  /** Lets what is under way come to its end. The database stays open. */
  stop(): Promise<void>;
}

const ATTACHMENT_TIMEOUT_MS = 30_000;
/** One request of a nudge, within a claim's lease. */
const NUDGE_TIMEOUT_MS = 8000;
const WAIT_REFUSED_MS = 5000;
const STOP_WITHIN_MS = 10_000;

/** Runs the club on Discord until the process is told to end; then ends it. */
export async function startDiscord(start: Omit<DiscordStart, 'log'>): Promise<void> {
  const log = createLog(start.settings.logLevel);
  const running = await runDiscord({ ...start, log });
  let ending = false;
  const end = async (code: number) => {
    if (ending) return;
    ending = true;
    await Promise.race([
      running.stop(),
      new Promise((resolve) => setTimeout(resolve, STOP_WITHIN_MS).unref()),
    ]);
    await start.opened.close();
    process.exit(code);
  };
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      log.info({ signal }, 'ending');
      void end(0);
    });
  }
  void running.failed.then((reason) => {
    log.fatal({ reason }, 'cannot go on');
    process.stderr.write(`${reason}\n`);
    void end(1);
  });
}

/** Everything `startDiscord` does, without signals and without ending the process. */
export async function runDiscord(start: DiscordStart): Promise<Running> {
  const { settings, opened } = start;
  const token = settings.discordToken;
  if (token === null) throw new StartError('DISCORD_TOKEN is not set.');
  const log = start.log ?? createLog(settings.logLevel);
  const ends: (() => unknown)[] = [];
  let fail: (reason: string) => void = () => {};
  const failed = new Promise<string>((resolve) => {
    fail = resolve;
  });
  const stop = async () => {
    for (const end of ends.splice(0).reverse()) await end();
  };
  try {
    const client = settings.role === 'worker' ? null : await startGateway(start, token, log, fail, ends);
    if (settings.role !== 'gateway') {
      const worker = await startNudges(start, token, log, fail);
      ends.push(() => worker.stop());
    }
    const health = await serveHealth(settings, opened, client);
    if (health !== null) ends.push(health.stop);
    log.info({ role: settings.role, servers: client?.guilds.cache.size }, 'started');
    return { client, healthPort: health?.port ?? null, failed, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

async function startGateway(
  { settings, opened, clock, services, restTimeoutMs, attachmentTimeoutMs }: DiscordStart,
  token: string,
  log: Log,
  fail: (reason: string) => void,
  ends: (() => unknown)[],
): Promise<Client> {
  const client = createClient(settings, { ...(restTimeoutMs !== undefined && { restTimeoutMs }) });
  watchRest(client.rest, log);
  const turns = new Turns();
  const { stop: stopListening } = listen(client, {
    rest: client.rest,
    opened,
    clock,
    services,
    log,
    logChannel: settings.logChannel,
    attachments: { cdn: settings.discordCdn, timeoutMs: attachmentTimeoutMs ?? ATTACHMENT_TIMEOUT_MS },
    turns,
    directClubs: new DirectClubs(clock),
  });
  ends.push(async () => {
    stopListening();
    client.removeAllListeners('interactionCreate');
    client.removeAllListeners('messageCreate');
    await turns.idle();
    await client.destroy();
  });
  await logIn(client, token, settings.discordApi);
  client.on('shardDisconnect', ({ code }) => {
    fail(fatalClose(code) ?? `Discord closed the connection for good (${code}).`);
  });
  client.on('invalidated', () => fail('Discord ended the session for good.'));
  ends.push(
    watchGateway(client, () => fail('Nothing was heard of Discord for minutes; ended, to be started again.')),
  );
  void sayWhatDiffers(client, settings, log);
  // The first to type a place would wait for the towns longer than Discord waits for completions.
  void warmPlaces().catch((error: unknown) =>
    log.warn({ error: describeError(error) }, 'the towns could not be read'),
  );
  return client;
}

/** `npm start` never deploys, since several processes may start at once; it says what there is to do. */
async function sayWhatDiffers(client: Client, { discordGuild: guildId }: Settings, log: Log): Promise<void> {
  try {
    const applicationId = client.application?.id ?? client.user?.id ?? '';
    const wanted = commandBodies(features.map(({ command }) => command));
    const diff = await readDiff(client.rest, { applicationId, guildId }, wanted);
    if (isEmptyDiff(diff)) return;
    log.warn(
      {
        missing: diff.create.map(({ name }) => name),
        changed: diff.update.map(({ body }) => body.name),
        leftOver: diff.remove.map(({ name }) => name),
      },
      'the deployed commands differ from this version; run: npm run commands',
    );
  } catch (error) {
    log.warn({ error: describeError(error) }, 'the deployed commands could not be read');
  }
}

function startNudges(
  { settings, opened, clock, services }: DiscordStart,
  token: string,
  log: Log,
  fail: (reason: string) => void,
): Promise<Worker> {
  const rest = createRest(
    {
      token,
      api: settings.discordApi,
      timeoutMs: NUDGE_TIMEOUT_MS,
      retries: 1,
      // The queue waits better than a request in hand.
      rejects: (limit) => waitOf(limit) > WAIT_REFUSED_MS,
    },
    log,
  );
  const messenger = new DiscordMessenger({ rest, db: opened.db, clock, log });
  const tasks: PeriodicTask[] = [
    {
      name: 'roundups',
      everyMinutes: 15,
      run: async () => {
        await postRoundups(opened.db, clock, messenger);
      },
    },
    {
      name: 'weather',
      everyMinutes: 6 * 60,
      run: async () => {
        await topUpWeather(opened.db, clock, services);
      },
    },
    {
      name: 'sweep-discord',
      everyMinutes: 12 * 60,
      run: async () => {
        await eraseLeftClubs(opened.db, clock.now());
        await forgetHandled(opened.db, clock.now());
        await forgetLongReplies(opened.db, clock.now());
      },
    },
  ];
  return startWorker({ opened, clock, messenger, log, tasks, onRefused: fail });
}

async function serveHealth({ healthPort: port }: Settings, opened: OpenedDatabase, client: Client | null) {
  if (port === null) return null;
  const gatewayConnected =
    client === null
      ? null
      : () => client.ws.status === Status.Ready && client.ws.shards.every((s) => s.status === Status.Ready);
  try {
    return await startHealth({ port, raw: opened.raw, gatewayConnected });
  } catch (error) {
    throw new StartError(`HEALTH_PORT ${port} cannot be listened on; choose a free one.`, { cause: error });
  }
}
