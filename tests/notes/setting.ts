import { fileURLToPath } from 'node:url';
import type { Setting } from '../../src/notes/contract.ts';
import { readNote } from '../../src/notes/index.ts';
import type { NoteItem, QuestionItem } from './corpus/corpus.ts';
import { readCorpus } from './corpus/corpus.ts';
import { labelOf } from './corpus/score.ts';

export function corpusFile(name: string): string {
  return fileURLToPath(new URL(`./corpus/${name}`, import.meta.url));
}

export function notesOf(name: string): { setting: Setting; items: readonly NoteItem[] } {
  const corpus = readCorpus(corpusFile(name));
  if (corpus.sort !== 'notes') throw new Error(`${name} holds no notes`);
  return corpus;
}

export function questionsOf(name: string): { setting: Setting; items: readonly QuestionItem[] } {
  const corpus = readCorpus(corpusFile(name));
  if (corpus.sort !== 'questions') throw new Error(`${name} holds no questions`);
  return corpus;
}

/** The labelling guide's own context: Thursday 2 July 2026, ten trees. */
export const SETTING = notesOf('notes-public.jsonl').setting;

/** "Alma tipped 2026-07-02; ask tree" */
export function said(text: string, setting: Setting = SETTING): string {
  const { logged, ask } = labelOf(readNote(text, setting), setting);
  const events = logged.map(({ tree, kind, on, count, unit, crop }) =>
    [tree ?? 'garden', kind, on === setting.today ? undefined : on, count, unit, crop]
      .filter((part) => part !== undefined)
      .join(' '),
  );
  return [...events.sort(), ...(ask ? [`ask ${ask}`] : [])].join('; ');
}
