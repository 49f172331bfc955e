import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { DiscordMessenger } from '../../../src/channels/discord/messenger.ts';
import { createRest } from '../../../src/channels/discord/rest.ts';
import { parseCommand, readLine } from '../../../src/channels/terminal/line.ts';
import { passDays } from '../../../src/channels/terminal/pass-days.ts';
import type { Utterance } from '../../../src/channels/terminal/print.ts';
import { features } from '../../../src/club/features.ts';
import { day } from '../../../src/engine/day.ts';
import { silentLog } from '../../../src/log.ts';
import type { OpenedDatabase } from '../../../src/records/database.ts';
import { openEmbedded } from '../../../src/records/open.ts';
import { buttonsOf, DiscordClub, show } from '../../support/discord/club.ts';
import type { StandInMessage, StandInUser } from '../../support/discord/world.ts';
import { openTerminalClub, type TerminalClub } from '../../support/terminal-club.ts';

const START = '2026-03-20';
const lines = readFileSync(new URL('../../support/scenario/season.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line.trim() !== '');

let terminalDatabase: OpenedDatabase;
let terminal: TerminalClub;
let club: DiscordClub;
const people = new Map<string, StandInUser>();

beforeAll(async () => {
  terminalDatabase = await openEmbedded('memory');
  terminal = await openTerminalClub(terminalDatabase, START);
  club = await DiscordClub.open({ today: START });
});
afterAll(async () => {
  terminal.close();
  await terminalDatabase.close();
  await club.close();
});

/** What people read of something said. */
interface Visible {
  readonly text: string;
  readonly buttons: readonly string[];
  readonly files: readonly string[];
}

it('a season of about 40 steps reads the same in the terminal and on Discord', async () => {
  const rest = createRest({ token: club.discord.token, api: club.discord.api }, silentLog);
  const messenger = new DiscordMessenger({ rest, db: club.opened.db, clock: club.clock, log: silentLog });
  let nudges = 0;
  for (const line of lines) {
    const said = await terminal.type(line);
    const before = new Set(club.discord.posted);
    const answer = await onDiscord(line);
    await passDays(club.opened.db, club.clock, club.clock.today(), messenger);
    if (line.startsWith('@')) await passDays(club.opened.db, club.clock, day(line.slice(1)), messenger);
    const unasked = club.discord.posted.filter((m) => !before.has(m) && m !== answer && isUnasked(m));
    const expected = said.filter(({ kind }) => kind !== 'reply');
    expect(unasked.map(visibleOnDiscord), `${line}: nudges`).toEqual(
      expected.map((u) => visibleInTerminal(u, false)),
    );
    nudges += expected.length;
    const reply = said.at(-1) as Utterance;
    if (answer !== null) {
      const brief = show(answer).title === '';
      expect(visibleOnDiscord(answer), line).toEqual(visibleInTerminal(reply, brief));
    }
  }
  expect(nudges).toBeGreaterThan(4);
  club.discord.assertClean();
}, 120_000);

const isUnasked = (message: StandInMessage) => message.nonce !== null && !/^m\d+$/.test(message.nonce);

async function onDiscord(raw: string): Promise<StandInMessage | null> {
  const { speaker, line } = readLine(raw);
  const place = club.place(personOf(speaker ?? 'me'));
  switch (line.kind) {
    case 'command': {
      const parsed = parseCommand(
        line.text,
        features.map(({ command }) => command),
      );
      if (parsed === null) throw new Error(`no command in ${raw}`);
      const options = Object.fromEntries(
        parsed.command.options.flatMap(({ name, type }) => {
          const text = parsed.options.get(name);
          return text === undefined ? [] : [[name, type === 'integer' ? Number(text) : text]];
        }),
      );
      return (await club.run(parsed.command.name, options, place)).message;
    }
    case 'press': {
      const last = [...club.channel.messages]
        .reverse()
        .find((m) => m.body !== null && buttonsOf(m).length > 0);
      const button = buttonsOf(last!)[line.number - 1];
      return (await club.press(last!, button?.label ?? '', place)).message;
    }
    case 'message':
      return (await club.say(line.text, { mentions: true }, place)).reply.message;
    default:
      return null;
  }
}

function personOf(name: string): StandInUser {
  const person = people.get(name) ?? club.discord.addUser(name);
  people.set(name, person);
  return person;
}

function visibleInTerminal({ reply }: Utterance, brief: boolean): Visible {
  const fields = reply.fields.flatMap(({ name, value }) => [name, value]);
  const whole = [reply.title, reply.text, ...fields].join('\n');
  return {
    text: squeeze(brief ? (reply.brief ?? '') : whole),
    buttons: reply.buttons.map(({ label }) => label),
    files: brief ? [] : reply.files.map(({ name }) => name),
  };
}

function visibleOnDiscord(message: StandInMessage): Visible {
  const { title, text, fields, buttons } = show(message);
  const whole =
    title === '' ? text : [title, text, ...fields.flatMap(({ name, value }) => [name, value])].join('\n');
  return { text: squeeze(whole), buttons, files: message.files.map(({ name }) => name) };
}

/** Line ends and spaces are laid out by each channel in its own way. */
function squeeze(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim();
}
