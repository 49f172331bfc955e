import { replanTree } from '../nudges/plan.ts';
import type { Tree } from '../records/schema.ts';
import { updateTree } from '../records/trees.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { ButtonVerb, Feature } from './feature.ts';
import { WHICH_TREE } from './option-kinds.ts';
import { askWhichTree, ownTree, pickTree } from './pick-tree.ts';
import { type Reply, reply } from './reply.ts';

export const treeRetire: Feature = {
  command: {
    name: 'tree retire',
    description: 'Take a tree off your list; its story is kept',
    visibility: 'everyone',
    options: [{ ...WHICH_TREE, required: true }],
  },
  async handle(context, input) {
    const picked = await pickTree(context, String(input.tree));
    return picked.kind === 'one' ? retire(context, picked.tree) : askWhichTree(picked.trees, 'retire');
  },
};

/** `retire:<tree id>`, for "which tree?". */
export const retireVerb: ButtonVerb = {
  verb: 'retire',
  press: async (context, [id]) => retire(context, await ownTree(context, id)),
};

/** `restore:<tree id>`: back on the list. */
export const restoreVerb: ButtonVerb = {
  verb: 'restore',
  async press(context, [id]) {
    const tree = await setRetired(context, await ownTree(context, id), null);
    return reply({ title: `${tree.name} is back on your list`, data: { tree: tree.name, retired: null } });
  },
};

async function retire(context: Context, tree: Tree): Promise<Reply> {
  const today = todayOf(context);
  const retired = await setRetired(context, tree, today);
  return reply({
    title: `${retired.name} is retired`,
    text: 'It is off your list and will not be nudged about. Its story is kept; bring it back any time.',
    buttons: [{ label: 'Bring it back', action: `restore:${retired.id}` }],
    data: { tree: retired.name, retired: today },
  });
}

function setRetired(context: Context, tree: Tree, retiredOn: Tree['retiredOn']): Promise<Tree> {
  return context.db.transaction(async (tx) => {
    const changed = await updateTree(tx, tree.id, { retiredOn });
    await replanTree(tx, tree.id, context.clock);
    return changed;
  });
}
