import { mkdirSync, writeFileSync } from 'node:fs';
import { join, parse } from 'node:path';
import type { SteppedClock } from '../../clock.ts';
import type { Context } from '../../club/context.ts';
import { desk } from '../../club/desk.ts';
import { features } from '../../club/features.ts';
import { openContext } from '../../club/open-context.ts';
import { type Button, type Reply, type ReplyFile, reply } from '../../club/reply.ts';
import type { Services } from '../../club/services.ts';
import { type Day, daysBetween, parseDay } from '../../engine/day.ts';
import { UserError } from '../../errors.ts';
import { readDates } from '../../notes/dates/index.ts';
import type { DeliveryOutcome, Messenger, Outgoing } from '../../nudges/messenger.ts';
import type { Database } from '../../records/database.ts';
import { setReplyMessage } from '../../records/notes.ts';
import { readInput } from './input.ts';
import { type Line, parseCommand, readLine } from './line.ts';
import { passDays } from './pass-days.ts';
import type { Utterance, WrittenFile } from './print.ts';

/** A day further off than this is a slip of the finger, and stepping to it would take for ever. */
const MAX_DAYS_AHEAD = 1830;

export interface TerminalOptions {
  readonly db: Database;
  readonly clock: SteppedClock;
  readonly services: Services;
  /** Who speaks on a line that names nobody; manages the club. */
  readonly member: string;
  /** Where files of replies are written. */
  readonly outFolder: string;
  readonly say: (said: Utterance) => void;
  readonly progress: (text: string) => void;
  /** Told of what went wrong inside, with its error number. */
  readonly onError: (number: string, error: unknown) => void;
}

/** The club in the terminal: a line in, what the assistant says out. */
export class Terminal {
  readonly #options: TerminalOptions;
  #buttons: readonly Button[] = [];
  #line = '';
  readonly #written = new Map<string, Buffer>();
  #messages = 0;
  #errors = 0;
  readonly #messenger: Messenger = { send: (message) => this.#deliver(message) };

  constructor(options: TerminalOptions) {
    this.#options = options;
  }

  /** Delivers what fell due before the first line. */
  async open(): Promise<void> {
    await this.#passDays(this.#options.clock.today());
  }

  /** Takes one line; everything it brings about is said before this returns, its own reply last. */
  async take(raw: string): Promise<void> {
    this.#line = raw;
    const { speaker, line } = readLine(raw);
    const who = speaker ?? this.#options.member;
    let answer: Reply;
    try {
      answer = await this.#answer(who, line);
      await this.#passDays(this.#options.clock.today());
    } catch (error) {
      answer = this.#failed(error);
    }
    await this.#reply(who, answer);
  }

  async #answer(who: string, line: Line): Promise<Reply> {
    switch (line.kind) {
      case 'empty':
        throw new UserError('empty-line', 'That line is empty; type a note, a question, or /help.');
      case 'move-day':
        return this.#moveDay(line.text);
      case 'press':
        return this.#press(await this.#context(who), line.number);
      case 'command':
        return this.#command(await this.#context(who), line.text);
      case 'message':
        return desk.takeMessage(await this.#context(who), line.text);
    }
  }

  async #command(context: Context, text: string): Promise<Reply> {
    const parsed = parseCommand(
      text,
      features.map((feature) => feature.command),
    );
    if (parsed === null) {
      const names = features.map((feature) => `/${feature.command.name}`).join(', ');
      throw new UserError(
        'no-such-command',
        `There is no command "/${text.split(/\s/)[0]}"; there are ${names}.`,
      );
    }
    return desk.runCommand(context, parsed.command.name, await readInput(parsed));
  }

  async #press(context: Context, number: number): Promise<Reply> {
    const button = this.#buttons[number - 1];
    if (button === undefined) {
      throw new UserError(
        'no-such-button',
        this.#buttons.length === 0
          ? 'There are no buttons to press yet.'
          : `There is no button ${number}; the last reply with buttons has ${this.#buttons.map((b, i) => `#${i + 1} ${b.label}`).join(', ')}.`,
      );
    }
    return desk.pressButton(context, button.action);
  }

  async #moveDay(text: string): Promise<Reply> {
    const { clock } = this.#options;
    const today = clock.today();
    const to =
      parseDay(text) ??
      readDates(text, { today, hemisphere: 'N', order: 'MDY', lean: 'future' })?.from ??
      null;
    if (to === null) {
      throw new UserError('not-a-day', `"${text}" is not a day; type it as @2026-07-05.`);
    }
    if (daysBetween(today, to) > MAX_DAYS_AHEAD) {
      throw new UserError('day-too-far', `${to} is more than five years ahead; move there in smaller steps.`);
    }
    await this.#passDays(to);
    return reply({ title: `It is ${to} now`, data: { today: to } });
  }

  /** Delivers what falls due up to `to`, each thing on its own day. */
  async #passDays(to: Day): Promise<void> {
    const { db, clock } = this.#options;
    await passDays(db, clock, to, this.#messenger);
  }

  async #deliver(message: Outgoing): Promise<DeliveryOutcome> {
    const messageId = this.#nextMessageId();
    this.#say(message.member === null ? 'roundup' : 'nudge', message.member?.name ?? 'club', message.reply);
    return { kind: 'sent', channelId: 'terminal', messageId };
  }

  async #reply(who: string, answer: Reply): Promise<void> {
    const messageId = this.#nextMessageId();
    const noteId = answer.noteId;
    if (noteId !== undefined) await setReplyMessage(this.#options.db, noteId, messageId);
    this.#say('reply', who, answer);
  }

  #say(kind: Utterance['kind'], to: string, said: Reply): void {
    if (said.buttons.length > 0) this.#buttons = said.buttons;
    const files = said.files.map((file) => this.#write(file));
    this.#options.say({ for: this.#line, kind, to, reply: said, files });
  }

  #write(file: ReplyFile): WrittenFile {
    mkdirSync(this.#options.outFolder, { recursive: true });
    const path = join(this.#options.outFolder, this.#freeName(file));
    writeFileSync(path, file.bytes);
    return { name: file.name, bytes: file.bytes.byteLength, path };
  }

  /** What an earlier reply of this run told of stays as it told: another file of its name gets a number. */
  #freeName({ name, bytes }: ReplyFile): string {
    const { name: stem, ext } = parse(name);
    for (let i = 1; ; i++) {
      const free = i === 1 ? name : `${stem}-${i}${ext}`;
      const before = this.#written.get(free);
      if (before !== undefined && !before.equals(bytes)) continue;
      this.#written.set(free, Buffer.from(bytes));
      return free;
    }
  }

  #failed(error: unknown): Reply {
    if (error instanceof UserError) {
      return reply({ ok: false, title: 'Not done', text: error.message, data: { error: error.identifier } });
    }
    this.#errors += 1;
    const number = `T${this.#errors}`;
    this.#options.onError(number, error);
    return reply({
      ok: false,
      title: 'That failed',
      text: `Something went wrong inside the assistant (error ${number}); nothing was changed. Please try again.`,
      data: { error: 'internal', number },
    });
  }

  #context(who: string): Promise<Context> {
    const { db, clock, services, member, progress } = this.#options;
    return openContext({
      db,
      clock,
      services,
      platform: 'terminal',
      clubPlatformId: 'terminal',
      clubName: 'The club',
      userId: who.toLowerCase(),
      userName: who,
      managesClub: who.toLowerCase() === member.toLowerCase(),
      progress,
    });
  }

  #nextMessageId(): string {
    this.#messages += 1;
    return `${this.#options.clock.today()}-${process.pid}-${this.#messages}`;
  }
}
