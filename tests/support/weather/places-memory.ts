import { setTimeout as wait } from 'node:timers/promises';
import { completePlaces, findPlace, warmPlaces } from '../../../src/weather/places.ts';

/** Run with --expose-gc: prints the bytes that the towns take once they are loaded and asked. */
async function settled(): Promise<number> {
  for (let i = 0; i < 4; i++) {
    globalThis.gc?.();
    await wait(20);
  }
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

const before = await settled();
await warmPlaces();
await completePlaces('san');
await findPlace('Portland, Oregon, US');
process.stdout.write(String((await settled()) - before));
