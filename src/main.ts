import 'dotenv/config';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { systemClock } from './clock.ts';
import { StartError } from './errors.ts';
import { createLog, describeError } from './log.ts';
import { openDatabase } from './records/open.ts';
import { readSettings, type Settings } from './settings.ts';

/** Settings, then the database, then the services, then one channel. */
async function main(): Promise<void> {
  const settings = readSettings(process.env, process.argv.slice(2));
  tellFirstStart(settings);
  // The database opens while the rest of the code is read, which takes about as long.
  const [opened, { createServices }, terminal] = await Promise.all([
    openDatabase(settings),
    import('./services.ts'),
    settings.discordToken === null ? import('./channels/terminal/start.ts') : null,
  ]);
  const services = createServices({ settings, db: opened.db, clock: systemClock });
  if (terminal !== null) {
    const log = createLog('error', process.stderr);
    try {
      const onError = (number: string, error: unknown) =>
        log.error({ number, error: describeError(error) }, 'a line failed');
      await terminal.startTerminal({ settings, opened, services, onError });
    } finally {
      await opened.close();
    }
    return;
  }
  const { startDiscord } = await import('./channels/discord/start.ts');
  await startDiscord({ settings, opened, clock: systemClock, services });
}

/** Making the embedded database takes some seconds once; silence would look like a fault. */
function tellFirstStart({ databaseUrl, dataFolder }: Settings): void {
  if (databaseUrl !== undefined || existsSync(join(dataFolder, 'pg'))) return;
  const where = dataFolder === 'memory' ? 'in memory' : `in ${dataFolder}`;
  process.stderr.write(`Preparing the club's database ${where}; this takes some seconds the first time…\n`);
}

main().catch((error: unknown) => {
  if (error instanceof StartError) process.stderr.write(`${error.message}\n`);
  else
    process.stderr.write(
      `Ostiole could not start: ${error instanceof Error ? error.stack : String(error)}\n`,
    );
  process.exit(1);
});
