import { day } from '../../../src/engine/day.ts';
import type { NoteReading, Setting } from '../../../src/notes/contract.ts';
import { readDates } from '../../../src/notes/dates/index.ts';
import { readMessage, readNote } from '../../../src/notes/index.ts';
import type { DateItem, LabelEvent, NoteItem, NoteLabel, QuestionItem } from './corpus.ts';
import { toLabel } from './corpus.ts';

/** Kinds that settle a tree's fate; a wrong one is worse than any question (labelling guide, §10). */
const DECISIVE = new Set(['fruitlets', 'no-fruitlets', 'tipped', 'dropped', 'picked']);

export interface NoteScore {
  readonly item: NoteItem;
  readonly got: NoteLabel;
  readonly right: boolean;
  /** Decisive events recorded that no accepted label holds. */
  readonly falseDecisive: readonly LabelEvent[];
}

export function scoreNote(item: NoteItem, setting: Setting): NoteScore {
  const reading = readNote(item.text, setting);
  const got = labelOf(reading, setting);
  const accepted = [item, ...item.alternatives];
  // While the crop is asked for, logging the event without it is accepted too (labelling guide, §5).
  const right = accepted.some((label) => agrees(got, label) || (label.ask === 'crop' && got.ask === 'crop'));
  const falseDecisive = got.logged.filter(
    (event) =>
      isDecisive(event) &&
      !accepted.some((label) => label.logged.some((other) => sameDecision(event, other))),
  );
  return { item, got, right, falseDecisive };
}

export function labelOf(reading: NoteReading, setting: Setting): NoteLabel {
  return {
    logged: reading.logged.map((event) => toLabel(event, setting.roster)),
    ask: reading.ask?.what ?? null,
  };
}

function isDecisive(event: LabelEvent): boolean {
  return DECISIVE.has(event.kind) || event.crop === 'breba';
}

/** The same decision: tree, kind and crop; a wrong day or number is a miss, not a false record. */
function sameDecision(a: LabelEvent, b: LabelEvent): boolean {
  return a.tree === b.tree && a.kind === b.kind && (a.crop ?? '') === (b.crop ?? '');
}

function agrees(got: NoteLabel, want: NoteLabel): boolean {
  if (got.ask !== want.ask) return false;
  const left = [...want.logged];
  for (const event of got.logged) {
    const at = left.findIndex((other) => sameEvent(event, other));
    if (at >= 0) left.splice(at, 1);
    // A remark more, of a tree that the note names, does no harm (labelling guide, §10).
    else if (event.kind !== 'remark') return false;
  }
  return left.length === 0;
}

function sameEvent(a: LabelEvent, b: LabelEvent): boolean {
  return (
    sameDecision(a, b) && a.on === b.on && sameNumber(a.count, b.count) && (a.unit ?? '') === (b.unit ?? '')
  );
}

function sameNumber(a: number | undefined, b: number | undefined): boolean {
  return a === undefined || b === undefined ? a === b : Math.abs(a - b) < 0.005;
}

export interface QuestionScore {
  readonly item: QuestionItem;
  readonly got: { readonly intent: string; readonly tree: string | null; readonly ask: string | null };
  readonly right: boolean;
}

export function scoreQuestion(item: QuestionItem, setting: Setting): QuestionScore {
  const { intent, tree, ask } = readMessage(item.text, setting);
  const name = tree === null ? null : (setting.roster.find(({ id }) => id === tree)?.name ?? null);
  const right = intent === item.intent && name === item.tree && ask === item.ask;
  return { item, got: { intent, tree: name, ask }, right };
}

export interface DateScore {
  readonly item: DateItem;
  readonly got: { readonly from: string | null; readonly to: string | null };
  readonly right: boolean;
}

export function scoreDate(item: DateItem): DateScore {
  const { text, hemisphere, order, lean } = item;
  const read = readDates(text, { today: day(item.today), hemisphere, order, lean });
  const got = { from: read?.from ?? null, to: read?.to ?? null };
  return { item, got, right: got.from === item.from && got.to === item.to };
}
