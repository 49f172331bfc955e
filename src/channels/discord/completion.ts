import { setTimeout as wait } from 'node:timers/promises';
import type { Suggestion } from '../../club/complete.ts';
import { desk } from '../../club/desk.ts';
import type { Completion } from '../../club/feature.ts';
import { describeError } from '../../log.ts';
import type { Kit } from './kit.ts';
import { LIMITS } from './limits.ts';
import { openFor, type Speaker } from './who.ts';

/** Discord waits 3 s and cannot be asked for more; nothing offered in time is better than a failure. */
const WITHIN_MS = 2000;

/** What is offered while an option is typed, most likely first. */
export async function suggest(
  kit: Kit,
  speaker: Speaker,
  command: string,
  optionName: string,
  typed: string,
): Promise<Suggestion[]> {
  const option = desk.feature(command)?.command.options.find(({ name }) => name === optionName);
  if (option?.type !== 'text' || option.complete === undefined) return [];
  const ending = new AbortController();
  try {
    const found = await Promise.race([
      find(kit, speaker, option.complete, typed),
      wait(WITHIN_MS, [], { signal: ending.signal }),
    ]);
    return found
      .filter(({ name, value }) => name !== '' && value.length <= LIMITS.choiceValue)
      .map(cutName)
      .slice(0, LIMITS.choices);
  } catch (error) {
    kit.log.warn({ command, error: describeError(error) }, 'nothing offered');
    return [];
  } finally {
    ending.abort();
  }
}

async function find(kit: Kit, speaker: Speaker, kind: Completion, typed: string): Promise<Suggestion[]> {
  const opened = await openFor(kit, speaker);
  return 'instead' in opened ? [] : desk.complete(opened.context, kind, typed);
}

function cutName({ name, value }: Suggestion): Suggestion {
  return {
    name: name.length <= LIMITS.choiceName ? name : `${name.slice(0, LIMITS.choiceName - 1)}…`,
    value,
  };
}
