import type { DailySeries } from '../engine/climate.ts';
import { replanMember } from '../nudges/plan.ts';
import { updateMember } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { knowsSeason, zoneOf } from '../records/garden.ts';
import type { Member } from '../records/schema.ts';
import { summariseMember } from '../records/weather.ts';
import type { Context } from './context.ts';

export interface GardenChange {
  readonly set: Partial<Member>;
  /** Whether the record, the mark, the units or the hemisphere changed. */
  readonly summarise: boolean;
  /** The member's record, where it is at hand. */
  readonly record?: DailySeries;
}

/** Changes a garden and all that follows: what its record says, every tree's dates, waiting nudges. */
export async function saveGarden(tx: Database, context: Context, change: GardenChange): Promise<Member> {
  const { clock, club } = context;
  let member =
    Object.keys(change.set).length === 0
      ? context.member
      : await updateMember(tx, context.member.id, change.set);
  if (change.summarise) member = await summariseMember(tx, member, change.record);
  if (member.seasonKnownOn === null && knowsSeason(member)) {
    member = await updateMember(tx, member.id, { seasonKnownOn: clock.today(zoneOf(member, club)) });
  }
  await replanMember(tx, member.id, clock);
  return member;
}
