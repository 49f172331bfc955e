import { UserError } from '../errors.ts';
import { lastNote, noteOf } from '../records/notes.ts';
import { setShoots } from '../records/nudges.ts';
import type { Note } from '../records/schema.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { type Reply, reply } from './reply.ts';
import { countWords } from './words.ts';

/** More shoots than this on one tree in one day is a slip of the finger. */
const MOST_SHOOTS = 500;

const NUMBER_WORDS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** Adds the question how many shoots were tipped to the reply that says the tip is logged. */
export function askShoots(logged: Reply): Reply {
  const { noteId } = logged;
  if (noteId === undefined) return logged;
  const { brief: _, ...rest } = logged;
  return {
    ...rest,
    text: `${logged.text}\n\nHow many shoots did you tip? Press, or type a number.`,
    buttons: [
      ...logged.buttons.slice(0, 1),
      { label: '1', action: `shoots:${noteId}:1` },
      { label: '2', action: `shoots:${noteId}:2` },
      { label: '3', action: `shoots:${noteId}:3` },
      { label: '4 or more', action: `shoots:${noteId}:4` },
    ],
    data: { ...logged.data, asks: 'shoots' },
  };
}

/** `shoots:<note id>:<count>`: how many shoots the tip of that note was about. */
export const shootsVerb: ButtonVerb = {
  verb: 'shoots',
  async press(context, [noteId, count]) {
    const note = await noteOf(context.db, context.member.id, Number(noteId));
    if (note === null) throw new UserError('not-yours', 'That question was put to somebody else.');
    const shoots = Number(count);
    if (!Number.isInteger(shoots) || shoots < 1) {
      throw new UserError('old-button', 'This button is from an older version; type the number instead.');
    }
    return record(context, note, shoots, shoots >= 4 ? '4 or more shoots' : countWords(shoots, 'shoot'));
  },
};

/**
 * A bare number typed after "I tipped it" is how many shoots. Null when the text is anything else or nothing
 * waits for a number, so that a message which stands by itself is never taken for an answer.
 */
export async function takeShootCount(context: Context, text: string): Promise<Reply | null> {
  const shoots = countOf(text);
  if (shoots === null) return null;
  const note = await lastNote(context.db, context.member.id);
  const waits = note?.text.endsWith(': tipped (by button)') && note.writtenOn === todayOf(context);
  return note !== null && waits ? record(context, note, shoots, countWords(shoots, 'shoot')) : null;
}

function countOf(text: string): number | null {
  const match = /^(?:about |all )?(\d{1,3}|[a-z]+)(?: shoots?| of them)?[.!]?$/i.exec(text.trim());
  const word = match?.[1]?.toLowerCase();
  if (word === undefined) return null;
  const count = /^\d/.test(word) ? Number(word) : NUMBER_WORDS.indexOf(word) + 1;
  return count >= 1 && count <= MOST_SHOOTS ? count : null;
}

async function record(context: Context, note: Note, shoots: number, words: string): Promise<Reply> {
  const changed = await setShoots(context.db, note.id, shoots);
  if (!changed) {
    throw new UserError('taken-back', 'That tip is not on record any more; write it as a note again.');
  }
  return reply({
    title: 'Noted',
    text: `${words} tipped. I will ask in about a week what came of it.`,
    buttons: [{ label: 'Undo', action: `undo:${note.id}` }],
    noteId: note.id,
    brief: `Noted: ${words} tipped.`,
    data: { shoots },
  });
}
