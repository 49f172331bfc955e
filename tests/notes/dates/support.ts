import { readFileSync } from 'node:fs';
import { day } from '../../../src/engine/day.ts';
import type { Hemisphere } from '../../../src/engine/season.ts';
import type { DateOrder, Lean } from '../../../src/notes/contract.ts';
import { type DateContext, findDates, readDates } from '../../../src/notes/dates/index.ts';

/** Thursday 2 July 2026, northern hemisphere, month first: the context of the labelled notes. */
export const NOTE: DateContext = { today: day('2026-07-02'), hemisphere: 'N', order: 'MDY', lean: 'past' };
export const DEADLINE: DateContext = { ...NOTE, lean: 'future' };

export interface LabelledPhrase {
  readonly id: string;
  readonly text: string;
  readonly today: string;
  readonly hemisphere: Hemisphere;
  readonly order: DateOrder;
  readonly lean: Lean;
  readonly from: string | null;
  readonly to: string | null;
}

export function labelledPhrases(file: string): LabelledPhrase[] {
  const text = readFileSync(new URL(`../corpus/${file}`, import.meta.url), 'utf8');
  return text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as LabelledPhrase);
}

export function contextOf(phrase: LabelledPhrase): DateContext {
  const { hemisphere, order, lean } = phrase;
  return { today: day(phrase.today), hemisphere, order, lean };
}

/** "2026-08-10", "2026-08-10..2026-08-14", or null. */
export function read(text: string, context: DateContext): string | null {
  const reading = readDates(text, context);
  if (!reading) return null;
  return reading.from === reading.to ? reading.from : `${reading.from}..${reading.to}`;
}

/** What a note's dates come to: "phrase=day", or "phrase!problem". */
export function found(text: string, context: DateContext = NOTE): string[] {
  return findDates(text, context).map((hit) =>
    hit.problem ? `${hit.text}!${hit.problem}` : `${hit.text}=${hit.on}`,
  );
}
