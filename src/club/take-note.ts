import type { Day } from '../engine/day.ts';
import { UserError } from '../errors.ts';
import type { Ask, DateOrder, NoteReading, ReadEvent, Setting } from '../notes/contract.ts';
import { readNote } from '../notes/index.ts';
import { hemisphereOf } from '../records/garden.ts';
import { eventOf } from '../records/notes.ts';
import type { Tree } from '../records/schema.ts';
import { type Standing, standingsOf } from '../records/standing.ts';
import { treesOf } from '../records/trees.ts';
import { askWords } from './ask-words.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import { eventData, eventWords } from './event-words.ts';
import { sprayCaution, troubleAdvice } from './harvest-words.ts';
import { literallyAbout } from './literal-name.ts';
import { recordNote } from './record-note.ts';
import { type Button, type Reply, reply } from './reply.ts';
import { settleWords } from './settle-words.ts';
import { readNoteText } from './text.ts';
import { openQuestions } from './tip.ts';
import { fullDayWords } from './words.ts';

export interface NoteRequest {
  readonly text: string;
  /** Trees a bare clause is about: what the message replies to, or the `tree` option. */
  readonly about?: readonly number[];
  /** The day of everything in it that names none. */
  readonly on?: Day;
}

/** Reads a note, records what is sure, asks what is not. */
export async function takeNote(context: Context, request: NoteRequest): Promise<Reply> {
  const text = readNoteText(request.text);
  const roster = await treesOf(context.db, context.member.id);
  const asked = settingOf(context, roster, request.about);
  const setting = { ...asked, ...literallyAbout(text, asked) };
  if (request.on !== undefined && request.on > setting.today) {
    throw new UserError(
      'day-to-come',
      `${fullDayWords(request.on, setting.order)} is still to come; a note is of what was seen or done. Nothing was logged.`,
    );
  }
  const reading = onDay(readNote(text, setting), setting.today, request.on);
  return recordReading(context, { text, reading, roster });
}

export function settingOf(context: Context, roster: readonly Tree[], about?: readonly number[]): Setting {
  return {
    today: todayOf(context),
    hemisphere: hemisphereOf(context.member),
    order: dateOrderOf(context),
    roster: roster.map(({ id, name, cultivar }) => ({ id, name, cultivar })),
    ...(about === undefined || about.length === 0 ? {} : { about }),
  };
}

/** The `on` option dates what the text leaves undated, and answers a question about the date. */
function onDay(reading: NoteReading, today: Day, on: Day | undefined): NoteReading {
  if (on === undefined) return reading;
  const dated = (event: ReadEvent): ReadEvent => (event.on === today ? { ...event, on } : event);
  return { ...reading, logged: reading.logged.map(dated) };
}

export interface ReadingToRecord {
  readonly text: string;
  readonly reading: NoteReading;
  readonly roster: readonly Tree[];
  readonly corrects?: number;
  readonly first?: Parameters<typeof recordNote>[1]['first'];
  readonly isMessage?: boolean;
  /** Said before everything else. */
  readonly remark?: string;
}

/** Records a reading and says what was logged, what that changed, and what is still to be answered. */
export async function recordReading(context: Context, given: ReadingToRecord): Promise<Reply> {
  const { reading, roster } = given;
  const today = todayOf(context);
  const concerned = roster.filter(({ id }) => reading.logged.some((event) => event.tree === id));
  const before = await standingsOf(context.db, context.member, concerned, today);
  const recorded = await recordNote(context, {
    text: given.text,
    events: reading.logged,
    ask: reading.ask,
    ...(given.corrects === undefined ? {} : { corrects: given.corrects }),
    ...(given.first === undefined ? {} : { first: given.first }),
    ...(given.isMessage === undefined ? {} : { isMessage: given.isMessage }),
  });
  if (recorded === null) {
    return reply({
      title: 'Noted already',
      text: 'This message was taken before; nothing was logged twice.',
      visibility: 'only-you',
      data: { logged: [], ask: null },
    });
  }
  const after = await standingsOf(context.db, context.member, concerned, today);
  return noteReply(context, {
    noteId: recorded.note.id,
    events: recorded.observations.map(eventOf),
    ask: reading.ask,
    text: given.text,
    roster,
    before,
    after,
    ...(given.remark === undefined ? {} : { remark: given.remark }),
  });
}

interface Recorded {
  readonly noteId: number;
  readonly events: readonly ReadEvent[];
  readonly ask: Ask | null;
  readonly text: string;
  readonly roster: readonly Tree[];
  readonly before: readonly Standing[];
  readonly after: readonly Standing[];
  readonly remark?: string;
}

function noteReply(context: Context, recorded: Recorded): Reply {
  const { noteId, events, ask, roster, before, after } = recorded;
  const order = dateOrderOf(context);
  const today = todayOf(context);
  const nameOf = (id: number | null) => roster.find((tree) => tree.id === id)?.name ?? null;
  const lines = events.map((event) => eventWords(event, nameOf(event.tree), today, order));
  const settled = after.flatMap((standing, i) => {
    const earlier = before[i];
    return earlier === undefined ? [] : settleWords(earlier, standing, order);
  });
  const doubts = doubtsOf(after, order);
  const question = ask === null ? null : askWords(ask, noteId, roster);
  const buttons: Button[] = [
    ...(events.length > 0 ? [{ label: 'Undo', action: `undo:${noteId}` }] : []),
    ...(question?.buttons ?? []),
    ...doubts.buttons,
  ].slice(0, 10);
  const advice = [
    ...(events.some(({ kind }) => kind === 'trouble') ? [troubleAdvice(recorded.text)] : []),
    ...(events.length > 0 ? [sprayCaution(recorded.text)] : []),
  ].filter((words) => words !== null);
  const logged = lines.join('\n');
  return reply({
    ok: true,
    title: titleOf(events, question),
    text: [recorded.remark ?? '', logged, ...settled, ...advice, ...doubts.paragraphs, question?.text ?? '']
      .filter((part) => part !== '')
      .join('\n\n'),
    buttons,
    noteId,
    data: { logged: events.map((event) => eventData(event, nameOf(event.tree))), ask: ask?.what ?? null },
    ...(question === null && lines.length > 0
      ? { brief: [`${lines.join('; ')}.`, ...settled, ...advice].join(' ') }
      : {}),
  });
}

function titleOf(events: readonly ReadEvent[], question: { title: string } | null): string {
  if (question !== null)
    return events.length === 0 ? question.title : `Noted, but one thing: ${question.title}`;
  return 'Noted';
}

/** Whether figs seen early are brebas must be asked at once, since they may not settle a decision. */
function doubtsOf(
  standings: readonly Standing[],
  order: DateOrder,
): { paragraphs: string[]; buttons: Button[] } {
  const all = standings.map((standing) => openQuestions(standing, order));
  return {
    paragraphs: all.flatMap(({ paragraphs }) => paragraphs),
    buttons: all.flatMap(({ buttons }) => buttons).slice(0, 4),
  };
}
