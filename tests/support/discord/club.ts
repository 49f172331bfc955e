import { type DiscordStart, type Running, runDiscord } from '../../../src/channels/discord/start.ts';
import { SteppedClock } from '../../../src/clock.ts';
import type { Services } from '../../../src/club/services.ts';
import { day } from '../../../src/engine/day.ts';
import { createLog } from '../../../src/log.ts';
import type { OpenedDatabase } from '../../../src/records/database.ts';
import { openEmbedded } from '../../../src/records/open.ts';
import { readSettings, type Settings } from '../../../src/settings.ts';
import { type StandIn, type StandInOptions, startStandIn } from './stand-in.ts';
import type {
  StandInChannel,
  StandInGuild,
  StandInInteraction,
  StandInMessage,
  StandInUser,
} from './world.ts';

export interface ClubOptions extends StandInOptions {
  readonly today?: string;
  readonly opened?: OpenedDatabase;
  readonly env?: Record<string, string>;
  readonly settings?: Partial<Settings>;
  readonly services?: Services;
  readonly start?: Partial<DiscordStart>;
  readonly guilds?: number;
}

const noServices = {} as Services;

/** The assistant on Discord against the stand-in, with a server "Fig club" and a member Ana. */
export class DiscordClub {
  readonly discord: StandIn;
  readonly opened: OpenedDatabase;
  readonly clock: SteppedClock;
  readonly guild: StandInGuild;
  readonly channel: StandInChannel;
  readonly ana: StandInUser;
  readonly logged: string[] = [];
  running: Running | null = null;
  readonly #options: ClubOptions;

  private constructor(discord: StandIn, opened: OpenedDatabase, options: ClubOptions) {
    this.discord = discord;
    this.opened = opened;
    this.#options = options;
    this.clock = new SteppedClock(day(options.today ?? '2026-07-05'));
    this.guild = discord.addGuild('Fig club', ['figs', 'log']);
    this.channel = discord.channel(this.guild);
    this.ana = discord.addUser('Ana');
  }

  /** Not started yet: the stand-in and the database only. */
  static async prepare(options: ClubOptions = {}): Promise<DiscordClub> {
    const discord = await startStandIn(options);
    return new DiscordClub(discord, options.opened ?? (await openEmbedded('memory')), options);
  }

  static async open(options: ClubOptions = {}): Promise<DiscordClub> {
    const club = await DiscordClub.prepare(options);
    await club.start();
    return club;
  }

  async start(more: Partial<DiscordStart> = {}): Promise<Running> {
    const env = {
      DISCORD_TOKEN: this.discord.token,
      DISCORD_API: this.discord.api,
      DISCORD_CDN: this.discord.cdn,
      ...this.#options.env,
    };
    const settings: Settings = {
      ...readSettings(env, ['--data', 'memory']),
      role: 'gateway',
      ...this.#options.settings,
    };
    const log = createLog('debug', { write: (line: string) => void this.logged.push(line) });
    this.running = await runDiscord({
      settings,
      opened: this.opened,
      clock: this.clock,
      services: this.#options.services ?? noServices,
      log,
      restTimeoutMs: 1000,
      attachmentTimeoutMs: 500,
      ...this.#options.start,
      ...more,
    });
    // The hello of a server on first sight.
    if (this.#options.settings?.role !== 'worker')
      await this.discord.until(() => this.discord.posted.length > 0);
    return this.running;
  }

  async stop(): Promise<void> {
    await this.running?.stop();
    this.running = null;
  }

  async close(): Promise<void> {
    await this.stop();
    await this.discord.stop();
    if (this.#options.opened === undefined) await this.opened.close();
  }

  place(user: StandInUser = this.ana, channel: StandInChannel = this.channel, managesGuild = false) {
    return { user, channel, managesGuild };
  }

  /** A command and its answer. */
  async run(
    command: string,
    options: Parameters<StandIn['people']['command']>[2] = {},
    place = this.place(),
  ): Promise<Shown> {
    return this.answerTo(this.discord.people.command(place, command, options));
  }

  async press(message: StandInMessage, label: string, place = this.place()): Promise<Shown> {
    return this.answerTo(this.discord.people.press(place, message, customIdOf(message, label)));
  }

  /** What the member sees in the end: the edited answer, or a follow-up. */
  async answerTo(interaction: StandInInteraction): Promise<Shown> {
    const shown = () =>
      interaction.followUps.at(-1) ??
      (interaction.acknowledged?.type === 6
        ? null
        : interaction.original?.deleted
          ? null
          : interaction.original);
    await this.discord.until(() => shown() != null);
    return show(shown() as StandInMessage);
  }

  /** A message and the assistant's reply to it. */
  async say(
    text: string,
    how: Parameters<StandIn['people']['say']>[2] = { mentions: true },
    place = this.place(),
  ) {
    const message = this.discord.people.say(place, text, how);
    return { message, reply: await this.replyTo(message) };
  }

  async replyTo(message: StandInMessage): Promise<Shown> {
    const find = () => this.discord.posted.find((m) => m.nonce === `m${message.api.id}`);
    await this.discord.until(() => find() !== undefined);
    return show(find() as StandInMessage);
  }
}

export interface Shown {
  readonly message: StandInMessage;
  readonly ephemeral: boolean;
  readonly title: string;
  /** As a reader sees it: escapes resolved. */
  readonly text: string;
  readonly fields: readonly { readonly name: string; readonly value: string }[];
  readonly buttons: readonly string[];
  readonly all: string;
}

export function show(message: StandInMessage): Shown {
  const { api } = message;
  const [embed] = api.embeds;
  const text = asShown(embed === undefined ? api.content : (embed.description ?? ''));
  const fields = (embed?.fields ?? []).map(({ name, value }) => ({
    name: asShown(name),
    value: asShown(value),
  }));
  const title = asShown(embed?.title ?? '');
  const buttons = buttonsOf(message).map(({ label }) => label);
  const all = [title, text, ...fields.flatMap(({ name, value }) => [name, value])].join('\n');
  return { message, ephemeral: message.ephemeral, title, text, fields, buttons, all };
}

export interface ShownButton {
  readonly label: string;
  readonly customId: string;
  readonly disabled: boolean;
}

export function buttonsOf(message: StandInMessage): ShownButton[] {
  const rows = (message.api.components ?? []) as {
    components: { label?: string; custom_id?: string; disabled?: boolean }[];
  }[];
  return rows.flatMap(({ components }) =>
    components.map(({ label = '', custom_id: customId = '', disabled = false }) => ({
      label,
      customId,
      disabled,
    })),
  );
}

export function customIdOf(message: StandInMessage, label: string): string {
  const button = buttonsOf(message).find((candidate) => candidate.label === label);
  if (button === undefined) {
    throw new Error(`no button "${label}" among ${buttonsOf(message).map((b) => b.label)}`);
  }
  return button.customId;
}

/** Text as Discord shows it: a backslash before a mark shows the mark. */
export function asShown(text: string): string {
  return text.replaceAll(/\\([^0-9A-Za-z\s])/g, '$1').replaceAll('\u200b', '');
}
