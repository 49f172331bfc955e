import { UserError } from '../errors.ts';
import { nudgeOf } from '../records/nudges.ts';
import type { Nudge, Tree } from '../records/schema.ts';
import { treeOf } from '../records/trees.ts';
import type { Context } from './context.ts';

/** A nudge of the member's own, and its tree. Throws UserError when it is not theirs. */
export async function ownNudge(
  context: Context,
  id: string | undefined,
): Promise<{ nudge: Nudge; tree: Tree }> {
  const nudge = await nudgeOf(context.db, context.member.id, Number(id));
  const tree = nudge === null ? null : await treeOf(context.db, context.member.id, nudge.treeId);
  if (nudge === null || tree === null) {
    throw new UserError('not-yours', 'That reminder was meant for somebody else; only they can answer it.');
  }
  return { nudge, tree };
}
