import type { Tree } from '../records/schema.ts';
import { standingOf } from '../records/standing.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { ownTree } from './pick-tree.ts';
import { type Reply, reply } from './reply.ts';
import { dateFields, openQuestions } from './tip.ts';
import { verdictData } from './verdict-data.ts';
import { verdictWords } from './verdict-words.ts';
import { rangeWords } from './words.ts';

/** `ripe:<tree id>`, for "which tree?". */
export const ripeVerb: ButtonVerb = {
  verb: 'ripe',
  press: async (context, [id]) => ripeReply(context, await ownTree(context, id)),
};

/** "When will it be ripe?" */
export async function ripeReply(context: Context, tree: Tree): Promise<Reply> {
  const order = dateOrderOf(context);
  const standing = await standingOf(context.db, context.member, tree, todayOf(context));
  const { fruit, ripeFrom, ripeTo, verdict } = standing.result;
  const words = verdictWords(standing, order);
  const questions = openQuestions(standing, order);
  const when = ripeFrom === null || ripeTo === null ? null : rangeWords(ripeFrom, ripeTo, order);
  const [title, lead] =
    when === null
      ? [
          `No ripe date for ${tree.name} yet`,
          'No fruitlets are on record for it this season; note the day you first see some, and I can say when they ripen.',
        ]
      : fruit.present
        ? [`${tree.name}: ripe about ${when}`, '']
        : [`${tree.name}: about ${when}, if a tip works`, 'No fruitlets are on record for it yet.'];
  const why =
    verdict === 'leave' || when === null
      ? words.paragraphs.slice(0, when === null ? 0 : 1)
      : [`${words.title}.`];
  return reply({
    title,
    text: [lead, ...why, ...questions.paragraphs].filter((part) => part !== '').join('\n\n'),
    fields: dateFields(standing, order),
    buttons: questions.buttons,
    data: verdictData(standing),
  });
}
