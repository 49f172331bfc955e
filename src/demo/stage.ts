import { toPage, type Utterance } from '../channels/terminal/print.ts';
import { Terminal } from '../channels/terminal/terminal.ts';
import type { SteppedClock } from '../clock.ts';
import { desk } from '../club/desk.ts';
import { openContext } from '../club/open-context.ts';
import type { Button, Reply } from '../club/reply.ts';
import type { Services } from '../club/services.ts';
import { type Day, weekdayOf } from '../engine/day.ts';
import type { Database } from '../records/database.ts';

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;

export interface StageOptions {
  readonly db: Database;
  readonly clock: SteppedClock;
  readonly services: Services;
  readonly outFolder: string;
  /** Prints lines as they are. */
  readonly print: (text: string) => void;
  readonly columns: number;
  readonly colour: boolean;
}

/** A nudge as a member got it. */
export interface Nudged {
  readonly member: string;
  readonly reply: Reply;
}

/** The terminal channel with somebody at the keyboard: prints both sides, and keeps the nudges for answering. */
export class Stage {
  readonly #options: StageOptions;
  readonly #terminal: Terminal;
  #nudged: Nudged[] = [];
  #last: Reply | null = null;
  /** The move to another day says nothing worth printing. */
  #silent = false;
  readonly failures: string[] = [];

  constructor(options: StageOptions) {
    this.#options = options;
    this.#terminal = new Terminal({
      db: options.db,
      clock: options.clock,
      services: options.services,
      member: 'Ilva',
      outFolder: options.outFolder,
      say: (said) => this.#hear(said),
      progress: () => {},
      onError: (number, error) => this.failures.push(`${number}: ${String(error)}`),
    });
  }

  get today(): Day {
    return this.#options.clock.today();
  }

  /** Moves the club to a day; what falls due is printed. Returns the nudges that came. */
  async moveTo(day: Day): Promise<readonly Nudged[]> {
    this.#nudged = [];
    this.#silent = true;
    await this.#terminal.take(`@${day}`);
    this.#silent = false;
    return this.#nudged;
  }

  /** A line as that member types it. */
  async tell(member: string, line: string): Promise<Reply> {
    this.#options.print(`\n${this.#stamp()} ${member}> ${line}`);
    await this.#terminal.take(`${member}> ${line}`);
    if (this.#last === null) throw new Error(`no reply to ${line}`);
    return this.#last;
  }

  /** Presses the button of that label; for a message about several trees that tree's. Null when there is none. */
  async press(
    member: string,
    buttons: readonly Button[],
    label: string,
    tree: string,
  ): Promise<Reply | null> {
    const named = buttons.find(
      (button) => button.label === label || button.label.toLowerCase() === `${tree}: ${label}`.toLowerCase(),
    );
    if (named) return this.#press(member, named);
    const open = buttons.find((button) => button.label === `Answer for ${tree}`);
    if (!open) return null;
    const opened = await this.#press(member, open);
    return this.press(member, opened.buttons, label, tree);
  }

  async #press(member: string, { label, action }: Button): Promise<Reply> {
    const { db, clock, services } = this.#options;
    this.#options.print(`\n${this.#stamp()} ${member} presses [${label}]`);
    const context = await openContext({
      db,
      clock,
      services,
      platform: 'terminal',
      clubPlatformId: 'terminal',
      clubName: 'The club',
      userId: member.toLowerCase(),
      userName: member,
      managesClub: false,
    });
    const answer = await desk.pressButton(context, action);
    this.#show({ for: label, kind: 'reply', to: member, reply: answer, files: [] });
    return answer;
  }

  #hear(said: Utterance) {
    if (said.kind === 'nudge') this.#nudged.push({ member: said.to, reply: said.reply });
    if (said.kind === 'reply') this.#last = said.reply;
    if (said.kind === 'reply' && !said.reply.ok) this.failures.push(`${said.for}: ${said.reply.text}`);
    if (said.kind === 'reply' && this.#silent) return;
    this.#show(said);
  }

  /** A plain acknowledgement as one line, as a busy channel shows it; all else in full. */
  #show(said: Utterance) {
    const { columns, colour, print } = this.#options;
    if (said.kind === 'reply' && said.reply.brief !== undefined) print(`  ✓ ${said.reply.brief}`);
    else print(`${said.kind === 'reply' ? '' : `\n${this.#stamp()} `}${toPage(said, { columns, colour })}`);
  }

  #stamp(): string {
    return `${WEEKDAYS[weekdayOf(this.today)]} ${this.today}`;
  }
}
