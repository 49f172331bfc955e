import { count } from 'drizzle-orm';
import wrapAnsi from 'wrap-ansi';
import type { Day } from '../../engine/day.ts';
import type { Database } from '../../records/database.ts';
import { trees } from '../../records/schema.ts';

const FIRST_STEPS: readonly (readonly [line: string, what: string])[] = [
  ['/garden set heat_end:October 15', 'last day of reliable 80 °F highs'],
  ['/tree add name:Pot 3 cultivar:Brunswick', 'a tree'],
  ['3 fruitlets on pot 3', 'a note, as you would say it'],
  ['should I tip pot 3?', 'the question'],
  ['@2026-07-05', 'moves the day; /help tells more'],
];

const LINE_COLUMNS = Math.max(...FIRST_STEPS.map(([line]) => line.length)) + 2;

/** What stands on the screen before the first line: how to begin, in five lines, while there are no trees. */
export async function welcome(db: Database, today: Day, columns: number): Promise<string> {
  const [row] = await db.select({ trees: count() }).from(trees);
  const title = `Ostiole, the fig growers' club assistant. Today is ${today}.`;
  if ((row?.trees ?? 0) > 0) return wrapAnsi(`${title} Type a note, a question or /help.`, columns);
  const steps = FIRST_STEPS.map(([line, what]) => {
    const told = `  ${line.padEnd(LINE_COLUMNS)}${what}`;
    return told.length <= columns ? told : `  ${line}`;
  });
  return [wrapAnsi(title, columns), 'To begin, type lines like these:', ...steps].join('\n');
}
