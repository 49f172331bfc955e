import { addDays } from '../engine/day.ts';
import { OBSERVATION_KINDS } from '../engine/observation.ts';
import { UserError } from '../errors.ts';
import { answerAsk } from '../notes/index.ts';
import { replanMember } from '../nudges/plan.ts';
import { learnedBefore, replanLearned } from '../nudges/plan-learned.ts';
import { closeQuestion, noteOf, undoNote } from '../records/notes.ts';
import type { Note } from '../records/schema.ts';
import { treesOf } from '../records/trees.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { type Reply, reply } from './reply.ts';
import { recordReading, settingOf } from './take-note.ts';
import { fullDayWords } from './words.ts';

/** An answer to a note's question, as the language takes it. */
export type Answer = Parameters<typeof answerAsk>[1];

/** `answer:<note id>:tree:<tree id>`, `…:kind:<kind>`, `…:on:<days ago>`, `…:crop:<crop>`. */
export const answerVerb: ButtonVerb = {
  verb: 'answer',
  async press(context, [id, what, value]) {
    const note = await noteOf(context.db, context.member.id, Number(id));
    if (note === null) throw new UserError('not-yours', 'That question was put to somebody else.');
    const answer = readPressed(note, what ?? '', value ?? '');
    if (answer === null)
      throw new UserError('old-button', 'That answer does not fit any more; please write the note again.');
    return completeNote(context, note, answer);
  },
};

/** Completes a note with the answer to its question; an answer counts once. */
export async function completeNote(context: Context, note: Note, answer: Answer): Promise<Reply> {
  const { ask } = note;
  if (ask === null) {
    return reply({
      title: 'Answered already',
      text: 'That question has been answered; nothing was changed.',
      visibility: 'only-you',
      data: { logged: [], ask: null },
    });
  }
  const roster = await treesOf(context.db, context.member.id, { withRetired: true });
  if ('tree' in answer && answer.tree !== null && !roster.some(({ id }) => id === answer.tree)) {
    throw new UserError('no-such-tree', 'That tree is not among yours; type /tree list to see which are.');
  }
  // Days in the note are read as on the day it was written.
  const setting = { ...settingOf(context, roster), today: note.writtenOn };
  return recordReading(context, {
    text: note.text,
    reading: answerAsk(ask, answer, setting),
    roster,
    isMessage: false,
    first: async (tx) => {
      if (!(await closeQuestion(tx, note.id))) {
        throw new UserError('answered', 'That question has been answered already; nothing was changed.');
      }
    },
  });
}

function readPressed(note: Note, what: string, value: string): Answer | null {
  switch (what) {
    case 'tree':
      return { tree: Number(value) };
    case 'kind': {
      const kind = OBSERVATION_KINDS.find((known) => known === value);
      return kind === undefined ? null : { kind };
    }
    case 'on':
      return { on: addDays(note.writtenOn, -Number(value)) };
    case 'crop':
      return value === 'breba' || value === 'main' ? { crop: value } : null;
    default:
      return null;
  }
}

/** `undo:<note id>`: takes back a note and all that followed from it. */
export const undoVerb: ButtonVerb = {
  verb: 'undo',
  async press(context, [id]) {
    const note = await noteOf(context.db, context.member.id, Number(id));
    if (note === null) throw new UserError('not-yours', 'That note is not yours to take back.');
    const undone = await context.db.transaction(async (tx) => {
      const learned = await learnedBefore(tx, context.member, todayOf(context));
      const treeIds = await undoNote(tx, note, context.clock.now());
      if (treeIds !== null) {
        await replanLearned(tx, learned, context.clock);
        await replanMember(tx, context.member.id, context.clock);
      }
      return treeIds;
    });
    if (undone === null) {
      return reply({
        title: 'Taken back already',
        text: 'That note was taken back before.',
        visibility: 'only-you',
        data: { undone: false },
      });
    }
    const when =
      note.writtenOn === todayOf(context) ? '' : ` of ${fullDayWords(note.writtenOn, dateOrderOf(context))}`;
    return reply({
      title: 'Taken back',
      text:
        note.corrects === null
          ? `The note${when} "${shorten(note.text)}" is off the record, and the dates that hung on it are as they were.`
          : `The correction${when} "${shorten(note.text)}" is off the record; what you had noted before it stands again.`,
      data: { undone: true },
    });
  },
};

function shorten(text: string): string {
  const signs = [...text.replaceAll('\n', ' ')];
  return signs.length > 80 ? `${signs.slice(0, 79).join('')}…` : signs.join('');
}
