import { findCultivar } from '../engine/cultivars.ts';
import { UserError } from '../errors.ts';
import { replanTree } from '../nudges/plan.ts';
import type { Tree } from '../records/schema.ts';
import { standingOf } from '../records/standing.ts';
import { insertTree, treeNamed } from '../records/trees.ts';
import type { Context } from './context.ts';
import { dateOrderOf, takenWords, todayOf, type Understood } from './date-option.ts';
import type { Feature } from './feature.ts';
import { type Button, type Reply, reply } from './reply.ts';
import { readName } from './text.ts';
import { dateFields } from './tip.ts';
import { readTreeOptions, TREE_OPTIONS } from './tree-options.ts';
import { verdictData } from './verdict-data.ts';
import { verdictWords } from './verdict-words.ts';

/** More trees than this is a nursery's stock list, which wants another tool. */
const MOST_TREES = 2000;

export const treeAdd: Feature = {
  command: {
    name: 'tree add',
    description: 'Add a tree to your collection',
    visibility: 'everyone',
    options: [
      {
        name: 'name',
        type: 'text',
        required: true,
        maxLength: 100,
        description: 'what you call it, such as Pot 3',
      },
      ...TREE_OPTIONS,
    ],
  },
  async handle(context, input) {
    const name = readName(String(input.name), 'The name');
    const { set, understood } = await readTreeOptions(context, input);
    const today = todayOf(context);
    const tree = await context.db.transaction(async (tx) => {
      const row = await insertTree(tx, {
        ...set,
        name,
        memberId: context.member.id,
        addedOn: today,
        createdAt: context.clock.now(),
      });
      if (row !== null) await replanTree(tx, row.id, context.clock);
      return row;
    });
    if (tree === null) throw await nameTaken(context, name);
    return treeReply(context, tree, `${tree.name} is on your list`, understood);
  },
};

export { MOST_TREES };

export async function nameTaken(context: Context, name: string): Promise<UserError> {
  const other = await treeNamed(context.db, context.member.id, name);
  const retired = other?.retiredOn != null ? ' (it is retired; /tree list shows it)' : '';
  return new UserError(
    'name-taken',
    `You have a tree called "${other?.name ?? name}" already${retired}; give this one another name.`,
  );
}

/** What a new or changed tree stands like, and what is still worth asking about it. */
export async function treeReply(
  context: Context,
  tree: Tree,
  title: string,
  understood: readonly Understood[],
  remarks: readonly string[] = [],
): Promise<Reply> {
  const order = dateOrderOf(context);
  const standing = await standingOf(context.db, context.member, tree, todayOf(context));
  const words = verdictWords(standing, order);
  const asked = groupQuestion(tree);
  const taken = understood.flatMap((one) => takenWords(one, one.from, order) ?? []);
  return reply({
    title,
    text: [
      ...remarks,
      ...taken,
      `${words.title}.`,
      ...words.paragraphs.slice(0, 1),
      ...asked.paragraphs,
    ].join('\n\n'),
    fields: dateFields(standing, order),
    buttons: asked.buttons,
    data: { ...verdictData(standing), understood },
  });
}

/** A cultivar that nothing is known of: when do its figs ripen? */
function groupQuestion(tree: Tree): { paragraphs: string[]; buttons: Button[] } {
  const cultivar = tree.cultivar === null ? null : findCultivar(tree.cultivar);
  const known = cultivar !== null && (cultivar.group !== 'unknown' || cultivar.span !== undefined);
  const forFruit = tree.purpose !== 'wood' && (!cultivar?.mainNeedsPollination || tree.pollinated);
  if (known || !forFruit || tree.spanFrom !== null || tree.ripening !== null)
    return { paragraphs: [], buttons: [] };
  const which =
    tree.cultivar === null ? 'Its cultivar is not known' : `How long ${tree.cultivar} takes is not published`;
  return {
    paragraphs: [`${which}, so I allow 90 days to be safe. If you know when it ripens, press:`],
    buttons: [
      { label: 'Early', action: `ripening:${tree.id}:early` },
      { label: 'Mid', action: `ripening:${tree.id}:mid` },
      { label: 'Late', action: `ripening:${tree.id}:late` },
      { label: 'Not known', action: `ripening:${tree.id}:unknown` },
    ],
  };
}
