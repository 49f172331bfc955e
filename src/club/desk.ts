import { UserError } from '../errors.ts';
import { markSeen } from '../records/clubs.ts';
import { complete, type Suggestion } from './complete.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { Completion, Feature, Input } from './feature.ts';
import { features, verbs } from './features.ts';
import { takeMessage } from './message.ts';
import { type Reply, reply } from './reply.ts';

/**
 * The one door from a channel to the club: a command, a pressed button or a message in, a Reply out. What a
 * member did wrong comes back as a reply with `ok: false`; anything else that fails is thrown.
 */
export const desk = {
  /** The feature of "garden set"; null when there is no such command. */
  feature(name: string): Feature | null {
    return features.find((feature) => feature.command.name === name) ?? null;
  },

  runCommand(context: Context, name: string, input: Input): Promise<Reply> {
    return answer(context, async () => {
      const feature = desk.feature(name);
      if (feature === null)
        throw new UserError(
          'no-such-command',
          `There is no command /${name}; type /help to see what there is.`,
        );
      if (feature.command.managersOnly && !context.managesClub) {
        throw new UserError('not-allowed', `/${name} is for those who manage the club.`);
      }
      return feature.handle(context, input);
    });
  },

  /** `action` is what the button carried, see Button. */
  pressButton(context: Context, action: string): Promise<Reply> {
    return answer(context, async () => {
      const [name, ...args] = action.split(':');
      const verb = verbs.find((candidate) => candidate.verb === name);
      if (verb === undefined) {
        throw new UserError(
          'old-button',
          'This button is from an older version of the assistant; type the command instead.',
        );
      }
      return verb.press(context, args);
    });
  },

  /** What may be offered while an option of that kind is typed. */
  complete(context: Context, kind: Completion, typed: string): Promise<Suggestion[]> {
    return complete(context, kind, typed);
  },

  /** A message to the assistant: a note or a question. */
  takeMessage(context: Context, text: string): Promise<Reply> {
    return answer(context, () => takeMessage(context, text));
  },
};

async function answer(context: Context, work: () => Promise<Reply>): Promise<Reply> {
  try {
    const answered = await work();
    // Whoever asks or answers anything is not silent: nudges go on.
    const today = todayOf(context);
    if (context.member.lastSeenOn !== today) await markSeen(context.db, context.member.id, today);
    return answered;
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    return reply({
      ok: false,
      title: 'Not done',
      text: error.message,
      visibility: 'only-you',
      data: { error: error.identifier },
    });
  }
}
