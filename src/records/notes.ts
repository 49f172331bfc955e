import { and, asc, desc, eq, gte, inArray, isNotNull, isNull, lte } from 'drizzle-orm';
import type { Day } from '../engine/day.ts';
import type { Season } from '../engine/season.ts';
import type { Ask, ReadEvent } from '../notes/contract.ts';
import type { Database } from './database.ts';
import { isRowId } from './row-id.ts';
import { type Note, notes, type Observation, observations } from './schema.ts';

export interface NewNote {
  readonly memberId: number;
  readonly text: string;
  readonly messageId?: string | undefined;
  readonly writtenOn: Day;
  readonly ask: Ask | null;
  /** The note that this one puts right. */
  readonly corrects?: number;
  readonly now: Date;
}

/** A new note, or null when this very message has been taken already. */
export async function insertNote(db: Database, note: NewNote): Promise<Note | null> {
  const [row] = await db
    .insert(notes)
    .values({
      memberId: note.memberId,
      text: note.text,
      messageId: note.messageId ?? null,
      writtenOn: note.writtenOn,
      ask: note.ask,
      corrects: note.corrects ?? null,
      createdAt: note.now,
    })
    .onConflictDoNothing()
    .returning();
  return row ?? null;
}

/** Records what a note says; the note stands in the same transaction. */
export async function insertObservations(
  db: Database,
  note: Note,
  events: readonly ReadEvent[],
  by: string,
  now: Date,
): Promise<Observation[]> {
  if (events.length === 0) return [];
  return db
    .insert(observations)
    .values(
      events.map((event) => ({
        memberId: note.memberId,
        treeId: event.tree,
        noteId: note.id,
        kind: event.kind,
        day: event.on,
        count: event.count ?? null,
        unit: event.unit ?? null,
        crop: event.crop ?? null,
        shoots: event.kind === 'tipped' && event.count !== undefined ? Math.round(event.count) : null,
        text: note.text,
        by,
        messageId: note.messageId,
        createdAt: now,
      })),
    )
    .returning();
}

/** The member's own note of that id; another member's is as good as none. */
export async function noteOf(db: Database, memberId: number, noteId: number): Promise<Note | null> {
  if (!isRowId(noteId)) return null;
  const [note] = await db
    .select()
    .from(notes)
    .where(and(eq(notes.id, noteId), eq(notes.memberId, memberId)));
  return note ?? null;
}

export async function observationsOfNote(db: Database, noteId: number): Promise<Observation[]> {
  return db
    .select()
    .from(observations)
    .where(and(eq(observations.noteId, noteId), isNull(observations.undoneAt)))
    .orderBy(asc(observations.id));
}

/** The member's last note that stands, for "no, the tall one". */
export async function lastNote(db: Database, memberId: number): Promise<Note | null> {
  const [note] = await db
    .select()
    .from(notes)
    .where(and(eq(notes.memberId, memberId), isNull(notes.undoneAt)))
    .orderBy(desc(notes.id))
    .limit(1);
  return note ?? null;
}

/** The note that the assistant's message `replyMessageId` answered. */
export async function noteRepliedTo(
  db: Database,
  memberId: number,
  replyMessageId: string,
): Promise<Note | null> {
  const [note] = await db
    .select()
    .from(notes)
    .where(
      and(eq(notes.memberId, memberId), eq(notes.replyMessageId, replyMessageId), isNull(notes.undoneAt)),
    )
    .orderBy(desc(notes.id))
    .limit(1);
  return note ?? null;
}

/** Takes back what a note logged, since another puts it right. */
export async function takeBackEvents(db: Database, noteId: number, now: Date): Promise<void> {
  await db.update(notes).set({ undoneAt: now, ask: null }).where(eq(notes.id, noteId));
  await db
    .update(observations)
    .set({ undoneAt: now })
    .where(and(eq(observations.noteId, noteId), isNull(observations.undoneAt)));
}

/** Closes a note's question; false when it was closed already, so that an answer counts once. */
export async function closeQuestion(db: Database, noteId: number): Promise<boolean> {
  const rows = await db
    .update(notes)
    .set({ ask: null })
    .where(and(eq(notes.id, noteId), isNotNull(notes.ask), isNull(notes.undoneAt)))
    .returning({ id: notes.id });
  return rows.length > 0;
}

/**
 * Takes a note back, and brings back the one it put right; the trees concerned, or null when it had been
 * taken back already.
 */
export async function undoNote(db: Database, note: Note, now: Date): Promise<number[] | null> {
  const undone = await db
    .update(notes)
    .set({ undoneAt: now, ask: null })
    .where(and(eq(notes.id, note.id), isNull(notes.undoneAt)))
    .returning({ id: notes.id });
  if (undone.length === 0) return null;
  const gone = await db
    .update(observations)
    .set({ undoneAt: now })
    .where(and(eq(observations.noteId, note.id), isNull(observations.undoneAt)))
    .returning({ treeId: observations.treeId });
  const back = note.corrects === null ? [] : await bringBack(db, note.corrects);
  return [...new Set([...gone, ...back].flatMap((row) => (row.treeId === null ? [] : [row.treeId])))];
}

async function bringBack(db: Database, noteId: number): Promise<{ treeId: number | null }[]> {
  await db.update(notes).set({ undoneAt: null }).where(eq(notes.id, noteId));
  return db
    .update(observations)
    .set({ undoneAt: null })
    .where(eq(observations.noteId, noteId))
    .returning({ treeId: observations.treeId });
}

export async function setReplyMessage(db: Database, noteId: number, messageId: string): Promise<void> {
  await db.update(notes).set({ replyMessageId: messageId }).where(eq(notes.id, noteId));
}

/** What was seen of these trees in a season, oldest first, undone ones left out. */
export async function observationsOfTrees(
  db: Database,
  treeIds: readonly number[],
  season: Season | null,
): Promise<Observation[]> {
  if (treeIds.length === 0) return [];
  return db
    .select()
    .from(observations)
    .where(
      and(
        inArray(observations.treeId, [...treeIds]),
        isNull(observations.undoneAt),
        ...(season === null ? [] : [gte(observations.day, season.from), lte(observations.day, season.to)]),
      ),
    )
    .orderBy(asc(observations.day), asc(observations.id));
}

/** What was noted of the member's garden as a whole in a season, oldest first, undone ones left out. */
export async function gardenObservations(
  db: Database,
  memberId: number,
  season: Season,
): Promise<Observation[]> {
  return db
    .select()
    .from(observations)
    .where(
      and(
        eq(observations.memberId, memberId),
        isNull(observations.treeId),
        isNull(observations.undoneAt),
        gte(observations.day, season.from),
        lte(observations.day, season.to),
      ),
    )
    .orderBy(asc(observations.day), asc(observations.id));
}

/** A recorded observation as the language reads one. */
export function eventOf(row: Observation): ReadEvent {
  return {
    tree: row.treeId,
    kind: row.kind,
    on: row.day,
    ...(row.count === null ? {} : { count: row.count }),
    ...(row.unit === null ? {} : { unit: row.unit }),
    ...(row.crop === null ? {} : { crop: row.crop }),
  };
}
