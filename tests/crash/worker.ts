import { writeSync } from 'node:fs';
import { silentLog } from '../../src/log.ts';
import { startWorker } from '../../src/nudges/worker.ts';
import type { Database, OpenedDatabase } from '../../src/records/database.ts';
import { openPostgres } from '../../src/records/open.ts';
import { InstantClock } from '../support/instant-clock.ts';
import { RestMessenger } from '../support/rest-messenger.ts';

/** A worker that tells each step on its standard output before and after taking it, and is made to be killed. */
const { DATABASE_URL = '', DISCORD_API = '', DISCORD_TOKEN = '', NOW = '' } = process.env;
const { RATE = '50', LEASE_SECONDS = '8', SWEEP_EVERY_MS = '1000' } = process.env;

// Written at once: a step that is only in a buffer is lost with the process.
const tell = (step: string) => writeSync(1, `${step}\n`);

const opened = await openPostgres(DATABASE_URL);
await startWorker({
  opened: told(opened),
  clock: new InstantClock(NOW),
  messenger: new RestMessenger(DISCORD_API, DISCORD_TOKEN, 3000, tell),
  log: silentLog,
  leaseSeconds: Number(LEASE_SECONDS),
  sweepEveryMs: Number(SWEEP_EVERY_MS),
  pollMs: 100,
  requestsASecond: Number(RATE),
});
tell('started');

function told(real: OpenedDatabase): OpenedDatabase {
  const transaction: Database['transaction'] = async (work, config) => {
    tell('begin');
    const result = await real.db.transaction(async (tx) => {
      const done = await work(tx);
      tell('commit');
      return done;
    }, config);
    tell('committed');
    return result;
  };
  const db = new Proxy(real.db, {
    get: (target, name, receiver) =>
      name === 'transaction' ? transaction : Reflect.get(target, name, receiver),
  });
  const raw: OpenedDatabase['raw'] = {
    query: async (text, values) => {
      const name = /SET completed_on/.test(text)
        ? 'end job'
        : /FOR UPDATE SKIP LOCKED/.test(text)
          ? 'take job'
          : 'query';
      if (name !== 'query') tell(name);
      const result = await real.raw.query(text, values);
      if (name !== 'query' && result.rows.length > 0) tell(`${name} done`);
      return result;
    },
  };
  return { ...real, db, raw };
}
