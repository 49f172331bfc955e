import { strToU8, zipSync } from 'fflate';
import { type DailySeries, rowsOf } from '../engine/climate.ts';
import type { MemberRecords } from '../records/erase.ts';
import type { Club, Member } from '../records/schema.ts';
import { type Cell, toCsv } from './spreadsheet.ts';

export interface Takeout {
  readonly club: Club;
  readonly member: Member;
  readonly records: MemberRecords;
  /** The member's own readings; null when they gave none. */
  readonly readings: DailySeries | null;
  readonly now: Date;
}

/**
 * Everything on record of a member as one ZIP: `records.json` with all of it, and the parts people look at as
 * CSV. Ids join them: an observation's `noteId` is a note's `id`.
 */
export function zipTakeout({ club, member, records, readings, now }: Takeout): Uint8Array {
  const files: Record<string, Uint8Array> = {
    'records.json': strToU8(JSON.stringify(everything(club, member, records), null, 2)),
    'trees.csv': strToU8(treesCsv(records)),
    'observations.csv': strToU8(observationsCsv(records)),
    'notes.csv': strToU8(notesCsv(records)),
    'nudges.csv': strToU8(nudgesCsv(records)),
  };
  if (readings !== null) files['temperatures.csv'] = strToU8(readingsCsv(readings));
  return zipSync(files, { mtime: now, level: 6 });
}

/** All columns but those that only serve the assistant's own work on a message. */
function everything(club: Club, member: Member, records: MemberRecords): Record<string, unknown> {
  return {
    club: club.name,
    member,
    trees: records.trees,
    notes: records.notes,
    observations: records.observations,
    nudges: records.nudges.map(({ token, leasedUntil, nonce, ...nudge }) => nudge),
  };
}

function treesCsv({ trees }: MemberRecords): string {
  const nameOf = new Map(trees.map(({ id, name }) => [id, name]));
  return toCsv(
    [
      'id',
      'name',
      'cultivar',
      'ripening',
      'span_from',
      'span_to',
      'started',
      'kept',
      'cover_days',
      'for',
      'pollinated',
      'from',
      'spare',
      'added',
      'retired',
    ],
    trees.map((tree): Cell[] => [
      tree.id,
      tree.name,
      tree.cultivar,
      tree.ripening,
      tree.spanFrom,
      tree.spanTo,
      tree.startedOn,
      tree.kept,
      tree.coverDays,
      tree.purpose,
      tree.pollinated,
      tree.parentTreeId === null ? tree.origin : (nameOf.get(tree.parentTreeId) ?? null),
      tree.spareWood,
      tree.addedOn,
      tree.retiredOn,
    ]),
  );
}

function observationsCsv({ trees, observations }: MemberRecords): string {
  const nameOf = new Map(trees.map(({ id, name }) => [id, name]));
  return toCsv(
    ['id', 'tree', 'day', 'kind', 'count', 'unit', 'crop', 'shoots', 'note_id', 'taken_back', 'text'],
    observations.map((row): Cell[] => [
      row.id,
      row.treeId === null ? null : (nameOf.get(row.treeId) ?? null),
      row.day,
      row.kind,
      row.count,
      row.unit,
      row.crop,
      row.shoots,
      row.noteId,
      row.undoneAt !== null,
      row.text,
    ]),
  );
}

function notesCsv({ notes }: MemberRecords): string {
  return toCsv(
    ['id', 'written', 'taken_back', 'text'],
    notes.map((note): Cell[] => [note.id, note.writtenOn, note.undoneAt !== null, note.text]),
  );
}

function nudgesCsv({ trees, nudges }: MemberRecords): string {
  const nameOf = new Map(trees.map(({ id, name }) => [id, name]));
  return toCsv(
    ['tree', 'season', 'kind', 'due', 'state', 'sent', 'answer'],
    nudges.map((nudge): Cell[] => [
      nameOf.get(nudge.treeId) ?? null,
      nudge.season,
      nudge.kind,
      nudge.due,
      nudge.state,
      nudge.sentAt?.toISOString() ?? null,
      nudge.answer,
    ]),
  );
}

function readingsCsv(series: DailySeries): string {
  return toCsv(
    ['date', 'high_c', 'low_c'],
    [...rowsOf(series)].map(({ day, tmaxC, tminC }): Cell[] => [day, tmaxC, tminC]),
  );
}
