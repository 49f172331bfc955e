import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { StartError } from '../errors.ts';

/** Folders this very process has open. After a restart in a container another process may bear its number. */
const openHere = new Set<string>();

/**
 * Keeps a second process out of an embedded database: the file `in-use` holds the process number of whoever
 * has the folder open. A file left behind by a process that is gone does not count. Returns the release.
 */
export function lockFolder(folder: string): () => void {
  const file = join(resolve(folder), 'in-use');
  for (let attempt = 0; attempt < 2; attempt++) {
    try {
      writeFileSync(file, String(process.pid), { flag: 'wx' });
      openHere.add(file);
      return () => {
        openHere.delete(file);
        rmSync(file, { force: true });
      };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      const holder = Number(readFileSync(file, 'utf8'));
      if (openHere.has(file) || (holder !== process.pid && isAlive(holder))) {
        throw new StartError(
          `The data folder ${folder} is open in another Ostiole (process ${holder}); close that one, or use --data with another folder.`,
        );
      }
      rmSync(file, { force: true });
    }
  }
  throw new StartError(`The data folder ${folder} could not be locked; try again.`);
}

function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
