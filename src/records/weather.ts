import type { DailySeries } from '../engine/climate.ts';
import { summariseRecord } from '../engine/record-summary.ts';
import { loadRecord } from '../weather/series.ts';
import { updateMember } from './clubs.ts';
import type { Database } from './database.ts';
import { hemisphereOf, markOf } from './garden.ts';
import type { Member } from './schema.ts';

/**
 * Works out anew what the member's record says. To be called in the transaction that changes the record, the
 * heat mark, the units or the hemisphere. `record` saves loading it again.
 */
export async function summariseMember(tx: Database, member: Member, record?: DailySeries): Promise<Member> {
  const series = record ?? (await loadRecord(tx, member));
  const summary =
    series.length === 0
      ? null
      : summariseRecord(series, { mark: markOf(member), hemisphere: hemisphereOf(member) });
  return updateMember(tx, member.id, { summary });
}
