import type { Day } from '../engine/day.ts';
import type { Ask, ReadEvent } from '../notes/contract.ts';
import { replanMember, replanTree } from '../nudges/plan.ts';
import { learnedBefore, replanLearned } from '../nudges/plan-learned.ts';
import { updateMember } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { insertNote, insertObservations } from '../records/notes.ts';
import type { Note, Observation } from '../records/schema.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';

/** What is to be put on record, all of it or nothing. */
export interface NoteToRecord {
  readonly text: string;
  readonly events: readonly ReadEvent[];
  readonly ask: Ask | null;
  readonly corrects?: number;
  /** More to do in the same transaction, such as taking back what this note puts right. */
  readonly first?: (tx: Database) => Promise<void>;
  /** False for what a button logs: only the message itself is taken once. */
  readonly isMessage?: boolean;
}

export interface RecordedNote {
  readonly note: Note;
  readonly observations: readonly Observation[];
}

/**
 * Puts a note and what it says on record with everything that follows from it (each tree's next dates, its
 * waiting nudges) in one transaction. Null when this very message was taken before.
 */
export async function recordNote(context: Context, toRecord: NoteToRecord): Promise<RecordedNote | null> {
  const now = context.clock.now();
  const today = todayOf(context);
  return context.db.transaction(async (tx) => {
    const learned = await learnedBefore(tx, context.member, today);
    const note = await insertNote(tx, {
      memberId: context.member.id,
      text: toRecord.text,
      messageId: toRecord.isMessage === false ? undefined : context.messageId,
      writtenOn: today,
      ask: toRecord.ask,
      now,
      ...(toRecord.corrects === undefined ? {} : { corrects: toRecord.corrects }),
    });
    if (note === null) return null;
    await toRecord.first?.(tx);
    const rows = await insertObservations(tx, note, toRecord.events, context.member.platformUserId, now);
    await replanLearned(tx, learned, context.clock);
    await replanAfter(tx, context, treesOfEvents(toRecord.events), toRecord.events);
    await markSeen(tx, context, today);
    return { note, observations: rows };
  });
}

/** Brings the plans of these trees in step, or all of them when the garden as a whole was noted on. */
export async function replanAfter(
  tx: Database,
  context: Context,
  treeIds: readonly number[],
  events: readonly Pick<ReadEvent, 'tree' | 'kind'>[],
): Promise<void> {
  // A remark on the garden changes no tree; a leafing-out or frost of the garden bears on each.
  const ofGarden = events.some((event) => event.tree === null && event.kind !== 'remark');
  if (ofGarden) await replanMember(tx, context.member.id, context.clock);
  else for (const treeId of treeIds) await replanTree(tx, treeId, context.clock);
}

function treesOfEvents(events: readonly ReadEvent[]): number[] {
  return [...new Set(events.flatMap((event) => (event.tree === null ? [] : [event.tree])))];
}

async function markSeen(tx: Database, context: Context, today: Day): Promise<void> {
  if (context.member.lastSeenOn !== today) await updateMember(tx, context.member.id, { lastSeenOn: today });
}
