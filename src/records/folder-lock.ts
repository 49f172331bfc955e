import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { StartError } from '../errors.ts';

/** Folders this very process has open. After a restart in a container another process may bear its number. */
const openHere = new Set<string>();

/** Makes the data folder where it is not there yet. Throws StartError when it cannot be made or is a file. */
export function makeFolder(folder: string): void {
  try {
    makeFolderAt(resolve(folder));
  } catch (error) {
    throw unusable(folder, error);
  }
}

/** Level by level: Node's own recursive way never comes back from a folder such as /proc. */
function makeFolderAt(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  if (dirname(path) !== path) makeFolderAt(dirname(path));
  mkdirSync(path);
}

function unusable(folder: string, error: unknown): StartError {
  const why = error instanceof Error ? error.message : String(error);
  return new StartError(`The data folder ${folder} cannot be used (${why}); use --data with another folder.`);
}

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
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw unusable(folder, error);
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
