import { replanTree } from '../nudges/plan.ts';
import { updateMember } from '../records/clubs.ts';
import { answerNudge } from '../records/nudges.ts';
import { updateTree } from '../records/trees.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { ownNudge } from './own-nudge.ts';
import { type Reply, reply } from './reply.ts';

/** `leave:<nudge id>`: the tree is left as it is this season, and not asked about again in it. */
export const leaveVerb: ButtonVerb = {
  verb: 'leave',
  press: (context, [id]) => setLeftAlone(context, id, true),
};

/** `unleave:<nudge id>`: takes that back. */
export const unleaveVerb: ButtonVerb = {
  verb: 'unleave',
  press: (context, [id]) => setLeftAlone(context, id, false),
};

async function setLeftAlone(context: Context, id: string | undefined, leave: boolean): Promise<Reply> {
  const { nudge, tree } = await ownNudge(context, id);
  await context.db.transaction(async (tx) => {
    await updateMember(tx, context.member.id, { lastSeenOn: todayOf(context) });
    await updateTree(tx, tree.id, { leftAloneIn: leave ? nudge.season : null });
    await answerNudge(tx, nudge.id, leave ? 'leave' : null, context.clock.now());
    await replanTree(tx, tree.id, context.clock);
  });
  const data = { tree: tree.name, leftAloneIn: leave ? nudge.season : null };
  if (!leave) {
    return reply({ title: tree.name, text: `${tree.name} is asked about again this season.`, data });
  }
  return reply({
    title: tree.name,
    text: `${tree.name} is left as it is in ${nudge.season}: I do not ask again this season whether to tip it. If fruitlets show after all, tell me.`,
    buttons: [{ label: 'Undo', action: `unleave:${nudge.id}` }],
    data,
  });
}
