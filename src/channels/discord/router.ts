import type {
  AutocompleteInteraction,
  ButtonInteraction,
  ChatInputCommandInteraction,
  Interaction,
  MessageContextMenuCommandInteraction,
} from 'discord.js';
import { InteractionResponseType, PermissionFlagsBits } from 'discord-api-types/v10';
import type { Context } from '../../club/context.ts';
import { desk } from '../../club/desk.ts';
import type { Reply } from '../../club/reply.ts';
import { reply } from '../../club/reply.ts';
import { UserError } from '../../errors.ts';
import { describeError } from '../../log.ts';
import { pressAs, refusePress } from './buttons.ts';
import { claimInteraction } from './claims.ts';
import { LOG_AS_NOTE } from './commands.ts';
import { suggest } from './completion.ts';
import { answerExchange, type Exchange, failExchange, type Waiting } from './exchange.ts';
import { CODES, codeOf } from './failures.ts';
import type { Kit } from './kit.ts';
import { readMessageText } from './message-text.ts';
import { typedOptions } from './options.ts';
import { callBack, type Ticket } from './post.ts';
import { type Progress, progressIn } from './progress.ts';
import { renderSentence } from './render.ts';
import { type Occasion, openFor, type Speaker } from './who.ts';

type Asking = ChatInputCommandInteraction | MessageContextMenuCommandInteraction | ButtonInteraction;

/** What there is to do once an interaction is acknowledged and this process has it to itself. */
type Work = (progress: Progress) => Promise<{ reply: Reply; context: Context | null } | null>;

/**
 * The one place where interactions arrive. Each is acknowledged before anything else is done, by the visibility
 * its command declares; then claimed, so that a second copy changes nothing; then worked on and answered by
 * edit. Whatever fails ends as a sentence for the member and a line in the log, never as an exception.
 */
export class Router {
  readonly #kit: Kit;

  constructor(kit: Kit) {
    this.#kit = kit;
  }

  /** Never rejects. */
  async take(interaction: Interaction): Promise<void> {
    try {
      if (interaction.isAutocomplete()) await this.#complete(interaction);
      else if (interaction.isChatInputCommand()) await this.#command(interaction);
      else if (interaction.isMessageContextMenuCommand()) await this.#messageCommand(interaction);
      else if (interaction.isButton()) await this.#button(interaction);
    } catch (error) {
      this.#kit.log.error({ interaction: interaction.id, error: describeError(error) }, 'interaction lost');
    }
  }

  async #command(interaction: ChatInputCommandInteraction): Promise<void> {
    const name = commandName(interaction);
    const visibility = desk.feature(name)?.command.visibility ?? 'only-you';
    const waiting = visibility === 'only-you' ? 'private' : 'public';
    await this.#exchange(interaction, name, waiting, async (progress) => {
      const opened = await openFor(this.#kit, speakerOf(interaction), { progress: progress.show });
      if ('instead' in opened) return { reply: opened.instead, context: null };
      const { context } = opened;
      const input = await typedOptions(interaction, this.#kit.attachments);
      return { reply: await desk.runCommand(context, name, input), context };
    });
  }

  async #messageCommand(interaction: MessageContextMenuCommandInteraction): Promise<void> {
    const visibility = desk.feature('note')?.command.visibility ?? 'only-you';
    const waiting = visibility === 'only-you' ? 'private' : 'public';
    await this.#exchange(interaction, LOG_AS_NOTE, waiting, async (progress) => {
      const message = interaction.targetMessage;
      if (message.author.id !== interaction.user.id) {
        throw new UserError(
          'not-own-message',
          'Only a message of your own can be logged; choose one that you wrote.',
        );
      }
      const occasion: Occasion = { messageId: message.id, progress: progress.show };
      const opened = await openFor(this.#kit, speakerOf(interaction), occasion);
      if ('instead' in opened) return { reply: opened.instead, context: null };
      const text = readMessageText(message, interaction.applicationId);
      if (text === '')
        throw new UserError(
          'note-empty',
          'There is no text in this message; choose one that says what you saw.',
        );
      return { reply: await desk.runCommand(opened.context, 'note', { text }), context: opened.context };
    });
  }

  async #button(interaction: ButtonInteraction): Promise<void> {
    const refusal = refusePress(interaction.customId, interaction.user.id);
    if (refusal !== null) {
      const type = InteractionResponseType.ChannelMessageWithSource;
      await callBack(this.#kit.rest, ticketOf(interaction), { type, payload: renderSentence(refusal) });
      return;
    }
    await this.#exchange(interaction, 'button', 'button', (progress) =>
      pressAs(this.#kit, speakerOf(interaction), interaction, ticketOf(interaction), progress),
    );
  }

  async #complete(interaction: AutocompleteInteraction): Promise<void> {
    const name = commandName(interaction);
    const focused = interaction.options.getFocused(true);
    const choices = await suggest(this.#kit, speakerOf(interaction), name, focused.name, focused.value);
    const type = InteractionResponseType.ApplicationCommandAutocompleteResult;
    await callBack(this.#kit.rest, ticketOf(interaction), { type, choices });
  }

  async #exchange(interaction: Asking, name: string, waiting: Waiting, work: Work): Promise<void> {
    const { log, opened, clock, turns } = this.#kit;
    if (!(await this.#acknowledge(interaction, waiting))) return;
    const began = performance.now();
    const exchange = exchangeOf(interaction, waiting);
    const progress = progressIn(this.#kit, exchange);
    let outcome = 'failed';
    try {
      // A command may take minutes (a weather look-up), and the member's others need not wait for it.
      const turn = waiting === 'button' ? interaction.user.id : interaction.id;
      await turns.take(turn, async () => {
        if (!(await claimInteraction(opened.db, interaction.id, clock.now()))) {
          outcome = 'duplicate';
          return;
        }
        const done = await work(progress).catch(refused);
        await progress.end();
        if (done !== null) await answerExchange(this.#kit, exchange, done.reply, done.context);
        outcome = done === null || done.reply.ok ? 'done' : 'refused';
      });
    } catch (error) {
      await progress.end();
      await failExchange(this.#kit, exchange, error);
    }
    log.info(
      { interaction: interaction.id, name, outcome, ms: Math.round(performance.now() - began) },
      'interaction',
    );
  }

  /** Whether there is somebody waiting for an answer. */
  async #acknowledge(interaction: Asking, waiting: Waiting): Promise<boolean> {
    try {
      await callBack(
        this.#kit.rest,
        ticketOf(interaction),
        waiting === 'button'
          ? { type: InteractionResponseType.DeferredMessageUpdate }
          : {
              type: InteractionResponseType.DeferredChannelMessageWithSource,
              private: waiting === 'private',
            },
      );
      return true;
    } catch (error) {
      // Acknowledged by another process, or by this one when the answer to a first attempt got lost. Who goes on
      // is decided by the claim.
      if (codeOf(error) === CODES.alreadyAcknowledged) return true;
      const ageMs = this.#kit.clock.now().getTime() - interaction.createdTimestamp;
      this.#kit.log.warn(
        { interaction: interaction.id, ageMs, error: describeError(error) },
        'not acknowledged',
      );
      return false;
    }
  }
}

function refused(error: unknown): { reply: Reply; context: null } {
  if (!(error instanceof UserError)) throw error;
  const { message: text, identifier } = error;
  return {
    reply: reply({ ok: false, title: 'Not done', text, visibility: 'only-you', data: { error: identifier } }),
    context: null,
  };
}

function commandName(interaction: ChatInputCommandInteraction | AutocompleteInteraction): string {
  const sub = interaction.options.getSubcommand(false);
  return sub === null ? interaction.commandName : `${interaction.commandName} ${sub}`;
}

function ticketOf(interaction: Interaction): Ticket {
  const { id: interactionId, applicationId, token } = interaction;
  return { interactionId, applicationId, token };
}

function exchangeOf(interaction: Asking, waiting: Waiting): Exchange {
  const privately = interaction.isButton() && interaction.message.flags.has('Ephemeral');
  const { user, channelId } = interaction;
  return { ticket: ticketOf(interaction), waiting, privately, userId: user.id, channelId };
}

function speakerOf(interaction: Interaction): Speaker {
  const { user, guildId, guild, memberPermissions, member, locale } = interaction;
  const nickname = member === null ? null : 'nickname' in member ? member.nickname : member.nick;
  return {
    userId: user.id,
    userName: nickname ?? user.globalName ?? user.username,
    guild: guildId === null ? null : { id: guildId, name: guild?.name ?? 'the club' },
    managesGuild: memberPermissions?.has(PermissionFlagsBits.ManageGuild) === true,
    locale,
  };
}
