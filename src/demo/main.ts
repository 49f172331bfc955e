import { resolve } from 'node:path';
import { SteppedClock } from '../clock.ts';
import { openEmbedded } from '../records/open.ts';
import type { WeatherService } from '../weather/lookup.ts';
import { DemoSeason, FIRST_DAY } from './season.ts';

/** The invented club brings its own record; no service is asked for anything. */
const NO_WEATHER: WeatherService = {
  lookUp: async () => ({
    kind: 'problem',
    problem: 'unreachable',
    message: 'The demo asks no weather service.',
  }),
  topUpDue: async () => [],
};

/** `npm run demo [-- --out FOLDER]`: an invented club's season in the terminal; its pictures go to the folder. */
async function main(): Promise<void> {
  const at = process.argv.indexOf('--out');
  const outFolder = resolve(process.argv[at < 0 ? process.argv.length : at + 1] ?? '.data/demo');
  process.stdout.write(
    'A season of an invented club: Quillin Vale, its growers and its weather do not exist.\nPreparing a database in memory…\n',
  );
  const opened = await openEmbedded('memory');
  try {
    const season = new DemoSeason({
      db: opened.db,
      clock: new SteppedClock(FIRST_DAY),
      services: { weather: NO_WEATHER },
      outFolder,
      print: (text) => process.stdout.write(`${text}\n`),
      columns: process.stdout.columns ?? 88,
      colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
    });
    await season.play();
    for (const failure of season.failures) process.stderr.write(`Not as expected: ${failure}\n`);
    process.stdout.write(`\nThe pictures are in ${outFolder}.\n`);
    if (season.failures.length > 0) process.exitCode = 1;
  } finally {
    await opened.close();
  }
}

await main();
