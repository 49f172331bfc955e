import { parseArgs } from 'node:util';
import { startPostgresServer, TEMPLATE } from '../support/postgres-server.ts';
import { crashTest } from './crash-test.ts';

/** `npm run crash-test`: at least 1,000 nudges, 200 kills; ends with status 1 unless each stands exactly once. */
const { values } = parseArgs({
  options: {
    members: { type: 'string', default: '1000' },
    kills: { type: 'string', default: '200' },
    rate: { type: 'string', default: '5' },
  },
});

const server = await startPostgresServer();
try {
  const report = await crashTest({
    databaseUrl: server.url(TEMPLATE),
    members: Number(values.members),
    kills: Number(values.kills),
    rate: Number(values.rate),
    say: (line) => process.stdout.write(`${line}\n`),
  });
  process.stdout.write(`${JSON.stringify(report, null, 2)}\n`);
  const exact = report.storedOnce === report.nudges && report.storedTwice === 0 && report.lost === 0;
  process.stdout.write(
    exact ? 'Every nudge stands exactly once.\n' : 'NOT every nudge stands exactly once.\n',
  );
  process.exitCode = exact ? 0 : 1;
} finally {
  await server.stop();
}
