import { UserError } from '../errors.ts';
import { replanMember } from '../nudges/plan.ts';
import { updateMember } from '../records/clubs.ts';
import { todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { reply } from './reply.ts';

/** `nudges:off` and `nudges:keep`: the answer of a member who had been silent for a season. */
export const quietVerb: ButtonVerb = {
  verb: 'nudges',
  async press(context, [choice]) {
    if (choice !== 'off' && choice !== 'keep') {
      throw new UserError(
        'old-button',
        'This button is from an older version; type /garden set nudges: instead.',
      );
    }
    const seen = { lastSeenOn: todayOf(context), quietAskedOn: null };
    await context.db.transaction(async (tx) => {
      await updateMember(tx, context.member.id, choice === 'off' ? { ...seen, nudgeWay: 'off' } : seen);
      await replanMember(tx, context.member.id, context.clock);
    });
    return reply(
      choice === 'off'
        ? {
            title: 'Nudges are off',
            text: 'I send you nothing by myself any more. /garden set nudges:channel or nudges:direct turns them on again.',
            visibility: 'only-you',
            data: { nudges: 'off' },
          }
        : {
            title: 'Nudges stay on',
            text: 'All stays as it was.',
            visibility: 'only-you',
            data: { nudges: context.member.nudgeWay },
          },
    );
  },
};
