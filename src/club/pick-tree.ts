import { UserError } from '../errors.ts';
import { findTree } from '../notes/index.ts';
import { isRowId } from '../records/row-id.ts';
import type { Tree } from '../records/schema.ts';
import { nameKeyOf, treeOf, treesOf } from '../records/trees.ts';
import type { Context } from './context.ts';
import { type Button, type Reply, reply } from './reply.ts';
import { listWords } from './words.ts';

/** Which of the member's trees an option's words mean. */
export type PickedTree =
  | { readonly kind: 'one'; readonly tree: Tree }
  | { readonly kind: 'several'; readonly trees: readonly Tree[] };

/**
 * The tree meant by `text`, or those that may be. Throws UserError when the member has no tree like it.
 * Other members' trees are never looked at.
 */
export async function pickTree(
  context: Context,
  text: string,
  options: { withRetired?: boolean } = {},
): Promise<PickedTree> {
  const roster = await treesOf(context.db, context.member.id, options);
  const named = roster.find(({ nameKey }) => nameKey === nameKeyOf(text));
  if (named) return { kind: 'one', tree: named };
  const found = findTree(text, roster);
  switch (found.kind) {
    case 'one': {
      const tree = roster.find(({ id }) => id === found.id);
      if (tree) return { kind: 'one', tree };
      break;
    }
    case 'several': {
      const trees = found.ids.flatMap((id) => roster.find((tree) => tree.id === id) ?? []);
      if (trees.length > 0) return { kind: 'several', trees };
      break;
    }
    case 'none':
  }
  throw new UserError(
    'no-such-tree',
    roster.length === 0
      ? 'You have no trees yet; add one with /tree add name: and its name.'
      : `You have no tree called "${text}"; you have ${someNames(roster)}.`,
  );
}

/** Asks which tree is meant; each button does `verb` with the tree's id. */
export function askWhichTree(trees: readonly Tree[], verb: string, title = 'Which tree?'): Reply {
  const buttons: Button[] = trees
    .slice(0, 5)
    .map((tree) => ({ label: tree.name, action: `${verb}:${tree.id}` }));
  return reply({
    ok: false,
    title,
    text: `That could be ${listWords(trees.slice(0, 5).map(({ name }) => name))}. Press the one you mean, or type its whole name.`,
    buttons,
    data: { ask: 'tree', error: 'which-tree' },
  });
}

/** The member's own tree that a button names by id. Throws UserError when it is not among theirs. */
export async function ownTree(context: Context, id: string | undefined): Promise<Tree> {
  const wanted = Number(id);
  const tree = isRowId(wanted) ? await treeOf(context.db, context.member.id, wanted) : null;
  if (tree === null) {
    throw new UserError('no-such-tree', 'That tree is not among yours; type /tree list to see which are.');
  }
  return tree;
}

function someNames(roster: readonly Tree[]): string {
  const names = roster.slice(0, 8).map(({ name }) => name);
  return roster.length > names.length
    ? `${names.join(', ')} and ${roster.length - names.length} more (/tree list shows all)`
    : listWords(names);
}
