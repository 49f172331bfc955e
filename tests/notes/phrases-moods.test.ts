import { describe, expect, it } from 'vitest';
import type { ReadEvent } from '../../src/notes/contract.ts';
import { readNote } from '../../src/notes/index.ts';
import { DENIED } from './moods/denied.ts';
import { HOMONYMS } from './moods/homonyms.ts';
import type { MoodLine } from './moods/line.ts';
import { MIXED } from './moods/mixed.ts';
import { PLAIN } from './moods/plain.ts';
import { PLAIN_MORE } from './moods/plain-more.ts';
import { SUPPOSED } from './moods/supposed.ts';
import { TEASERS } from './moods/teasers.ts';
import { TOLD } from './moods/told.ts';
import { SETTING } from './setting.ts';

const GROUPS: readonly (readonly [name: string, lines: readonly MoodLine[]])[] = [
  ['what is denied or planned', DENIED],
  ['what is supposed, regretted or of another season', SUPPOSED],
  ["others' trees, hearsay and questions", TOLD],
  ['words in another sense', HOMONYMS],
  ['announcements', TEASERS],
  ['real and unreal side by side', MIXED],
  ['plain news with asides', [...PLAIN, ...PLAIN_MORE]],
];

function nameOf(event: ReadEvent): string {
  return SETTING.roster.find(({ id }) => id === event.tree)?.name ?? 'garden';
}

function label(event: ReadEvent): string {
  const { kind, count, unit, on, crop } = event;
  return [nameOf(event), kind, count, unit, on === SETTING.today ? null : on, crop]
    .filter((part) => part != null)
    .join(' ');
}

describe.each(GROUPS)('%s', (_, lines) => {
  it.each(lines)('"%s" is read as "%s"', (text, said) => {
    const { logged, ask } = readNote(text, SETTING);
    const parts = said.split('; ');
    const asked = parts.find((part) => part.startsWith('ask '));
    const told = parts.filter((part) => part !== asked);
    expect(ask === null ? undefined : `ask ${ask.what}`).toBe(asked);
    // A remark more on a tree that is told of does no harm (labelling guide, scoring hints).
    const extra = (event: ReadEvent): boolean =>
      event.kind === 'remark' &&
      told.some((part) => part.startsWith(`${nameOf(event)} `)) &&
      !told.includes(label(event));
    expect(
      logged
        .filter((event) => !extra(event))
        .map(label)
        .sort(),
    ).toEqual(told.sort());
  });
});
