import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { day } from '../../../src/engine/day.ts';
import type { DateOrder, Lean, ReadEvent, RosterTree, Setting } from '../../../src/notes/contract.ts';

/** One event of a label: as `ReadEvent`, with the tree by name. */
export interface LabelEvent {
  readonly tree: string | null;
  readonly kind: string;
  readonly on: string;
  readonly count?: number;
  readonly unit?: string;
  readonly crop?: string;
}

export interface NoteLabel {
  readonly logged: readonly LabelEvent[];
  readonly ask: string | null;
}

export interface NoteItem extends NoteLabel {
  readonly id: string;
  readonly text: string;
  readonly tags: readonly string[];
  readonly alternatives: readonly NoteLabel[];
}

export interface QuestionItem {
  readonly id: string;
  readonly text: string;
  readonly intent: string;
  readonly tree: string | null;
  readonly ask: string | null;
}

export interface DateItem {
  readonly id: string;
  readonly text: string;
  readonly today: string;
  readonly hemisphere: 'N' | 'S';
  readonly order: DateOrder;
  readonly lean: Lean;
  readonly from: string | null;
  readonly to: string | null;
}

export type Corpus =
  | { readonly sort: 'notes'; readonly setting: Setting; readonly items: readonly NoteItem[] }
  | { readonly sort: 'questions'; readonly setting: Setting; readonly items: readonly QuestionItem[] }
  | { readonly sort: 'dates'; readonly items: readonly DateItem[] };

interface Header {
  readonly today: string;
  readonly hemisphere: 'N' | 'S';
  readonly date_order: DateOrder;
  readonly roster: readonly { readonly name: string; readonly cultivar: string | null }[];
}

function readLines(file: string): unknown[] {
  return readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => JSON.parse(line) as unknown);
}

/** A corpus file of any of the three forms; a notes file with the alternatives beside it. */
export function readCorpus(file: string): Corpus {
  const lines = readLines(file);
  const header = (lines[0] as { header?: Header }).header;
  if (!header) return { sort: 'dates', items: lines as DateItem[] };
  const setting = settingOf(header);
  const items = lines.slice(1);
  if ((items[0] as { intent?: string }).intent !== undefined) {
    return { sort: 'questions', setting, items: items as QuestionItem[] };
  }
  const alternatives = readAlternatives(file);
  const notes = (items as (NoteItem & { id: string })[]).map((item) => ({
    ...item,
    tags: item.tags ?? [],
    alternatives: alternatives.get(item.id) ?? [],
  }));
  return { sort: 'notes', setting, items: notes };
}

export function settingOf(header: Header): Setting {
  return {
    today: day(header.today),
    hemisphere: header.hemisphere,
    order: header.date_order,
    roster: header.roster.map(({ name, cultivar }, i) => ({ id: i + 1, name, cultivar })),
  };
}

function readAlternatives(file: string): Map<string, NoteLabel[]> {
  const beside = join(dirname(file), basename(file).replace(/^notes-/, 'notes-alternatives-'));
  const map = new Map<string, NoteLabel[]>();
  if (beside === file || !existsSync(beside)) return map;
  for (const line of readLines(beside) as (NoteLabel & { id: string })[]) {
    map.set(line.id, [...(map.get(line.id) ?? []), { logged: line.logged, ask: line.ask }]);
  }
  return map;
}

export function toLabel(event: ReadEvent, roster: readonly RosterTree[]): LabelEvent {
  return {
    tree:
      event.tree === null ? null : (roster.find((tree) => tree.id === event.tree)?.name ?? `#${event.tree}`),
    kind: event.kind,
    on: event.on,
    ...(event.count === undefined ? {} : { count: event.count }),
    ...(event.unit === undefined ? {} : { unit: event.unit }),
    ...(event.crop === undefined ? {} : { crop: event.crop }),
  };
}
