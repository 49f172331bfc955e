import { and, eq, max } from 'drizzle-orm';
import { addDays } from '../engine/day.ts';
import { lockMember, replanTree } from '../nudges/plan.ts';
import { updateMember } from '../records/clubs.ts';
import { answerNudge, nudgeOf } from '../records/nudges.ts';
import { type Nudge, nudges } from '../records/schema.ts';
import { standingOf } from '../records/standing.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { ownNudge } from './own-nudge.ts';
import { type Reply, reply } from './reply.ts';
import { dayWords } from './words.ts';

/** How long "remind me" puts a nudge off. */
const LATER_DAYS = 7;

/** `later:<nudge id>`: the same again in 7 days, once a press. */
export const laterVerb: ButtonVerb = {
  verb: 'later',
  async press(context, [id]) {
    const { nudge, tree } = await ownNudge(context, id);
    const order = dateOrderOf(context);
    const today = todayOf(context);
    const reminder = await remind(context, nudge);
    if (reminder.state === 'known') {
      return reminderReply(tree.name, `You are to be reminded on ${dayWords(reminder.due, order)} already.`, {
        remindOn: reminder.due,
      });
    }
    if (reminder.state === 'settled') {
      return reminderReply(
        tree.name,
        `There is nothing left to remind you of: it is settled for ${tree.name}.`,
        {
          remindOn: null,
        },
      );
    }
    const { result } = await standingOf(context.db, context.member, tree, today);
    const { latestTipDate } = result;
    const tooLate =
      nudge.kind === 'decision' && latestTipDate !== null && latestTipDate < reminder.due
        ? ` By then it is too late for figs on it, though: the last day a tip can bring any is ${dayWords(latestTipDate, order)}.`
        : '';
    return reminderReply(
      tree.name,
      `I remind you on ${dayWords(reminder.due, order)}, if it is still open then.${tooLate}`,
      { remindOn: reminder.due },
    );
  },
};

type Reminder = { readonly state: 'made' | 'known' | 'settled'; readonly due: Nudge['due'] };

async function remind(context: Context, pressed: Nudge): Promise<Reminder> {
  const today = todayOf(context);
  return context.db.transaction(async (tx) => {
    await lockMember(tx, context.member.id);
    const nudge = await nudgeOf(tx, context.member.id, pressed.id);
    const own = and(
      eq(nudges.treeId, pressed.treeId),
      eq(nudges.season, pressed.season),
      eq(nudges.kind, pressed.kind),
    );
    if (nudge?.answer === 'later') {
      const [last] = await tx
        .select({ due: max(nudges.due) })
        .from(nudges)
        .where(own);
      return { state: 'known', due: last?.due ?? today };
    }
    const [last] = await tx
      .select({ occurrence: max(nudges.occurrence) })
      .from(nudges)
      .where(own);
    const due = addDays(today, LATER_DAYS);
    const now = context.clock.now();
    const { memberId, treeId, season, kind } = pressed;
    const occurrence = (last?.occurrence ?? 0) + 1;
    await tx.insert(nudges).values({ memberId, treeId, season, kind, occurrence, due, createdAt: now });
    await answerNudge(tx, pressed.id, 'later', now);
    await updateMember(tx, memberId, { lastSeenOn: today });
    // What is not open any more is called off by the plan in the same transaction.
    const replanned = await replanTree(tx, treeId, context.clock);
    return { state: replanned?.calledOff.includes(kind) ? 'settled' : 'made', due };
  });
}

function reminderReply(tree: string, text: string, data: Record<string, unknown>): Reply {
  return reply({ title: tree, text, visibility: 'only-you', brief: text, data: { tree, ...data } });
}
