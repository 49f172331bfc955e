import { and, eq, gte, isNull, lte } from 'drizzle-orm';
import type { Day } from '../engine/day.ts';
import { seasonOf } from '../engine/season.ts';
import { UserError } from '../errors.ts';
import type { ReadEvent } from '../notes/contract.ts';
import { replanTree } from '../nudges/plan.ts';
import { hemisphereOf } from '../records/garden.ts';
import { observations, type Tree } from '../records/schema.ts';
import { treesOf } from '../records/trees.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { ownTree } from './pick-tree.ts';
import type { Reply } from './reply.ts';
import { recordReading } from './take-note.ts';
import { tipOne } from './tip.ts';

/** What a button may log of a tree, today. */
const LOGGABLE = ['tipped', 'fruitlets'] as const;

/** `log:<tree id>:<kind>`: logs that of the tree, today. Pressed again on the same day it changes nothing. */
export const logVerb: ButtonVerb = {
  verb: 'log',
  async press(context, [id, kindText]) {
    const tree = await ownTree(context, id);
    const kind = LOGGABLE.find((known) => known === kindText);
    if (kind === undefined)
      throw new UserError('old-button', 'This button is from an older version; type the note instead.');
    return logByButton(context, tree, { tree: tree.id, kind, on: todayOf(context) });
  },
};

export async function logByButton(context: Context, tree: Tree, event: ReadEvent): Promise<Reply> {
  const roster = await treesOf(context.db, context.member.id);
  return recordReading(context, {
    text: `${tree.name}: ${event.kind} (by button)`,
    reading: { logged: [event], ask: null },
    roster,
    isMessage: false,
    first: async (tx) => {
      const [same] = await tx
        .select({ id: observations.id })
        .from(observations)
        .where(
          and(
            eq(observations.treeId, tree.id),
            eq(observations.kind, event.kind),
            eq(observations.day, event.on),
            isNull(observations.undoneAt),
          ),
        );
      if (same)
        throw new UserError(
          'logged-already',
          `That is on record for ${tree.name} today already; nothing was logged twice.`,
        );
    },
  });
}

/** `crop:<tree id>:<crop>`: says which crop this season's unnamed figs of the tree are. */
export const cropVerb: ButtonVerb = {
  verb: 'crop',
  async press(context, [id, crop]) {
    const tree = await ownTree(context, id);
    if (crop !== 'breba' && crop !== 'main') {
      throw new UserError('old-button', 'This button is from an older version; type the note instead.');
    }
    const season = seasonOf(todayOf(context), hemisphereOf(context.member));
    await context.db.transaction(async (tx) => {
      await tx
        .update(observations)
        .set({ crop })
        .where(
          and(
            eq(observations.treeId, tree.id),
            eq(observations.kind, 'fruitlets'),
            isNull(observations.crop),
            isNull(observations.undoneAt),
            gte(observations.day, season.from as Day),
            lte(observations.day, season.to as Day),
          ),
        );
      await replanTree(tx, tree.id, context.clock);
    });
    return tipOne(context, tree);
  },
};
