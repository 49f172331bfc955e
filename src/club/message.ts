import type { QuestionReading } from '../notes/contract.ts';
import { asksUndo, readCourtesy } from '../notes/courtesy.ts';
import { correctEvents, readAnswer, readCorrection, readMessage } from '../notes/index.ts';
import { eventOf, lastNote, noteRepliedTo, observationsOfNote, takeBackEvents } from '../records/notes.ts';
import { treesOfNudgeMessage } from '../records/nudges.ts';
import type { Note, Tree } from '../records/schema.ts';
import { treesOf } from '../records/trees.ts';
import { completeNote, undoVerb } from './answer.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import { dueReply } from './due.ts';
import { helpReply } from './help.ts';
import { literallyAbout } from './literal-name.ts';
import { askWhichTree } from './pick-tree.ts';
import { type Reply, reply } from './reply.ts';
import { ripeReply } from './ripe-when.ts';
import { roundupReply } from './roundup.ts';
import { takeShootCount } from './shoots.ts';
import { recordReading, settingOf, takeNote } from './take-note.ts';
import { readNoteText } from './text.ts';
import { tipAll, tipOne } from './tip.ts';

/** "Which trees need tipping?", "what should I tip?", "should I tip any of them?": /tip answers of all. */
const ASKS_ALL =
  /\b(?:which|what)(?: of my)? (?:trees|ones|figs|pots|needs?|(?:should|do|must|can) i)\b|\bany(?:thing| of| trees?)?\b|\ball\b|\beverything\b/i;

/** A message to the assistant: the answer to its question, a correction, a question, or a note. */
export async function takeMessage(context: Context, rawText: string): Promise<Reply> {
  const text = readNoteText(rawText);
  const shoots = await takeShootCount(context, text);
  if (shoots !== null) return withIntent(shoots, 'note');
  const courtesy = readCourtesy(text);
  if (courtesy === 'greeting') return withIntent(await helpReply(context), 'help');
  if (courtesy === 'thanks') {
    const said = reply({
      title: 'You are welcome',
      brief: 'You are welcome.',
      data: { logged: [], ask: null },
    });
    return withIntent(said, 'note');
  }
  const roster = await treesOf(context.db, context.member.id);
  const about = await repliedTo(context);
  const setting = settingOf(context, roster, about.treeIds);
  const last = about.note ?? (await lastNote(context.db, context.member.id));

  if (asksUndo(text)) {
    const fresh = last !== null && isFresh(context, last, about.note) ? last : null;
    return withIntent(
      fresh === null ? nothingToUndo() : await undoVerb.press(context, [`${fresh.id}`]),
      'help',
    );
  }
  if (last !== null && last.ask !== null && isFresh(context, last, about.note)) {
    const answer = readAnswer(text, last.ask, { ...setting, today: last.writtenOn });
    if (answer !== null) return withIntent(await completeNote(context, last, answer), 'note');
  }
  if (last !== null && isFresh(context, last, about.note)) {
    const corrected = await correct(context, text, last, roster);
    if (corrected !== null) return withIntent(corrected, 'note');
  }
  const reading = readMessage(text, { ...setting, ...literallyAbout(text, setting) });
  const answer = await answerQuestion(context, text, reading, roster, about.treeIds);
  return withIntent(answer, reading.intent);
}

interface RepliedTo {
  readonly treeIds: readonly number[];
  readonly note: Note | null;
}

/** What the assistant's message that this one replies to was about. */
async function repliedTo(context: Context): Promise<RepliedTo> {
  const { repliesTo, db, member } = context;
  if (repliesTo === undefined) return { treeIds: [], note: null };
  const note = await noteRepliedTo(db, member.id, repliesTo);
  if (note !== null) {
    const rows = await observationsOfNote(db, note.id);
    return { note, treeIds: [...new Set(rows.flatMap((row) => row.treeId ?? []))] };
  }
  return { note: null, treeIds: await treesOfNudgeMessage(db, member.id, repliesTo) };
}

/** A note may be answered or put right by a bare message on its own day, by a reply at any time. */
function isFresh(context: Context, note: Note, replied: Note | null): boolean {
  return replied !== null || note.writtenOn === todayOf(context);
}

async function correct(
  context: Context,
  text: string,
  last: Note,
  roster: readonly Tree[],
): Promise<Reply | null> {
  const events = (await observationsOfNote(context.db, last.id)).map(eventOf);
  if (events.length === 0) return null;
  const correction = readCorrection(text, settingOf(context, roster), events);
  const corrected = correction && correctEvents(events, correction, last.writtenOn);
  if (corrected === null) return null;
  return recordReading(context, {
    text: `${last.text} / ${text}`,
    reading: { logged: corrected, ask: null },
    roster,
    corrects: last.id,
    remark: 'Put right:',
    first: (tx) => takeBackEvents(tx, last.id, context.clock.now()),
  });
}

async function answerQuestion(
  context: Context,
  text: string,
  reading: QuestionReading,
  roster: readonly Tree[],
  about: readonly number[],
): Promise<Reply> {
  const treeId = reading.tree ?? (reading.ask === 'tree' && about.length === 1 ? (about[0] ?? null) : null);
  const tree = roster.find(({ id }) => id === treeId) ?? null;
  switch (reading.intent) {
    case 'tip':
      if (tree !== null) return tipOne(context, tree);
      return ASKS_ALL.test(text) && reading.trees.length === 0
        ? tipAll(context)
        : askAbout(reading, roster, 'tip');
    case 'ripe-when':
      return tree === null ? askAbout(reading, roster, 'ripe') : ripeReply(context, tree);
    case 'due':
      return reading.ask === 'tree'
        ? askAbout(reading, roster, 'due-tree')
        : dueReply(context, { whose: 'me', tree });
    case 'roundup':
      return roundupReply(context, {});
    case 'help':
      return helpReply(context);
    case 'note':
      return takeNote(context, { text, about });
  }
}

function nothingToUndo(): Reply {
  return reply({
    ok: false,
    title: 'Nothing to take back',
    text: 'You have logged nothing today. Press Undo under an older note, or answer that note with "undo".',
    data: { undone: false, error: 'nothing-to-undo' },
  });
}

function askAbout(reading: QuestionReading, roster: readonly Tree[], verb: string): Reply {
  const meant = reading.trees.flatMap((id) => roster.find((tree) => tree.id === id) ?? []);
  if (meant.length > 0) return askWhichTree(meant, verb);
  if (roster.length === 0) {
    return reply({
      ok: false,
      title: 'No trees yet',
      text: 'You have no trees on your list; add one with /tree add name: and its name, then ask again.',
      data: { ask: 'tree', error: 'no-trees' },
    });
  }
  return reply({
    ok: false,
    title: 'Which tree?',
    text: 'Say which of your trees you mean, by its name; /tip alone shows them all.',
    buttons: roster.slice(0, 5).map((tree) => ({ label: tree.name, action: `${verb}:${tree.id}` })),
    data: { ask: 'tree', error: 'which-tree' },
  });
}

function withIntent(answer: Reply, intent: QuestionReading['intent']): Reply {
  return { ...answer, data: { ...answer.data, intent } };
}
