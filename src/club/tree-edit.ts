import { RIPENING_GROUPS } from '../engine/ripening.ts';
import { UserError } from '../errors.ts';
import { lockMember, replanTree } from '../nudges/plan.ts';
import { learnedBefore, lockClub, replanLearned } from '../nudges/plan-learned.ts';
import type { Tree } from '../records/schema.ts';
import { treeNamed, updateTree } from '../records/trees.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { ButtonVerb, Feature } from './feature.ts';
import { WHICH_TREE } from './option-kinds.ts';
import { ownTree, pickTree } from './pick-tree.ts';
import { readName } from './text.ts';
import { nameTaken, treeReply } from './tree-add.ts';
import { readTreeOptions, TREE_OPTIONS } from './tree-options.ts';
import { listWords } from './words.ts';

export const treeEdit: Feature = {
  command: {
    name: 'tree edit',
    description: 'Change what is on record of a tree',
    visibility: 'everyone',
    options: [
      { ...WHICH_TREE, required: true },
      { name: 'rename', type: 'text', maxLength: 100, description: 'its new name; its story stays' },
      ...TREE_OPTIONS,
    ],
  },
  async handle(context, input) {
    const picked = await pickTree(context, String(input.tree), { withRetired: true });
    if (picked.kind === 'several') {
      throw new UserError(
        'which-tree',
        `"${String(input.tree)}" could be ${listWords(picked.trees.map(({ name }) => name))}; type the whole name. Nothing was changed.`,
      );
    }
    const { set, understood } = await readTreeOptions(context, input);
    const change: Partial<Tree> = { ...set };
    if (typeof input.rename === 'string') change.name = readName(input.rename, 'The new name');
    if (Object.keys(change).length === 0) {
      throw new UserError(
        'nothing-to-change',
        `Nothing to change on ${picked.tree.name}: add what is new, for example ripening:late or rename: and a name.`,
      );
    }
    const tree = await changeTree(context, picked.tree, change);
    const renamed =
      tree.name === picked.tree.name ? [] : [`It was called ${picked.tree.name}; its story stays with it.`];
    return treeReply(context, tree, `${tree.name} is changed`, understood, renamed);
  },
};

/** `ripening:<tree id>:<group>`: the answer to how long an unpublished cultivar takes. */
export const ripeningVerb: ButtonVerb = {
  verb: 'ripening',
  async press(context, [id, group]) {
    const tree = await ownTree(context, id);
    const ripening = RIPENING_GROUPS.find((known) => known === group);
    if (ripening === undefined) {
      throw new UserError(
        'old-button',
        'This button is from an older version; type /tree edit with ripening: instead.',
      );
    }
    const changed = await changeTree(context, tree, { ripening });
    return treeReply(
      context,
      changed,
      `${changed.name}: ripening ${ripening === 'unknown' ? 'not known' : ripening}`,
      [],
    );
  },
};

async function changeTree(context: Context, tree: Tree, change: Partial<Tree>): Promise<Tree> {
  if (change.parentTreeId === tree.id) {
    throw new UserError(
      'own-parent',
      `${tree.name} cannot have been taken from itself. Nothing was changed.`,
    );
  }
  if (change.name !== undefined) {
    const other = await treeNamed(context.db, context.member.id, change.name);
    if (other !== null && other.id !== tree.id) throw await nameTaken(context, change.name);
  }
  return context.db.transaction(async (tx) => {
    if (change.cultivar === undefined || change.cultivar === tree.cultivar) {
      await lockMember(tx, context.member.id);
      const changed = await updateTree(tx, tree.id, change);
      await replanTree(tx, tree.id, context.clock);
      return changed;
    }
    // Its past records go with it to the other cultivar, and with them what the club plans both by.
    await lockClub(tx, context.club.id);
    const today = todayOf(context);
    const before = await learnedBefore(tx, context.member, today, [tree.cultivar, change.cultivar]);
    const changed = await updateTree(tx, tree.id, change);
    await replanLearned(tx, before, context.clock);
    await replanTree(tx, tree.id, context.clock);
    return changed;
  });
}
