import type { Day } from '../engine/day.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Database } from '../records/database.ts';
import { knowsSeason } from '../records/garden.ts';
import { outlookOfTree } from '../records/outlook.ts';
import { preparedRecord } from '../records/prepared.ts';
import type { Member } from '../records/schema.ts';
import { type Standing, standingsOf } from '../records/standing.ts';
import { treesOf } from '../records/trees.ts';
import type { Field } from './reply.ts';
import { byUrgency, treeData, treeFields } from './tip.ts';

/** A garden's trees under its season: how each stands, and how past seasons would have ended for it. */
export interface GardenTrees {
  readonly standings: readonly Standing[];
  readonly fields: readonly Field[];
  /** As `/tip` gives them. */
  readonly items: readonly Record<string, unknown>[];
}

/** Without fields while no season is known, since then nothing is known of any tree. */
export async function gardenTrees(
  db: Database,
  member: Member,
  today: Day,
  order: DateOrder,
): Promise<GardenTrees> {
  const standings = byUrgency(await standingsOf(db, member, await treesOf(db, member.id), today));
  if (!knowsSeason(member)) return { standings, fields: [], items: [] };
  const record = await preparedRecord(db, member);
  const outlooks = new Map(
    standings.map((standing) => [standing, record === null ? null : outlookOfTree(record, standing)]),
  );
  return {
    standings,
    fields: treeFields(standings, outlooks, order),
    items: standings.map((standing) => treeData(standing, outlooks.get(standing) ?? null)),
  };
}
