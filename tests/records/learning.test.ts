import { jStat } from 'jstat';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import { replanMember } from '../../src/nudges/plan.ts';
import { learnedBefore, replanLearned } from '../../src/nudges/plan-learned.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { spanRecords } from '../../src/records/learning.ts';
import { clubs, type Tree } from '../../src/records/schema.ts';
import { standingOf } from '../../src/records/standing.ts';
import { treeOf } from '../../src/records/trees.ts';
import { ClubRecords } from '../support/club-records.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';

describe.each(DATABASE_KINDS)('what a club learns, on %s', (kind) => {
  let opened: OpenedDatabase;
  let club: ClubRecords;

  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    await opened.db.delete(clubs);
    club = new ClubRecords(opened.db, '2026-06-01');
  });

  /** Three seasons of one Black Mission of Ana's: 78, 80 and 82 days. */
  async function threeRecords(name = 'Ana') {
    const ana = await club.grower(name);
    const tree = await club.tree(ana, 'Old', { cultivar: 'Black Mission', ripening: 'mid' });
    await club.record(ana, tree, '2023-06-10', '2023-08-27');
    await club.record(ana, tree, '2024-06-10', '2024-08-29');
    await club.record(ana, tree, '2025-06-10', '2025-08-31');
    return { ana, tree };
  }

  it('plans another member’s tree of that cultivar by the shrunken span', async () => {
    await threeRecords();
    const bo = await club.grower('Bo');
    const young = await club.tree(bo, 'Young', { cultivar: 'franciscana', ripening: 'mid' });
    const { span, result } = await standingOf(opened.db, bo, young, day('2026-06-01'));
    // Worked by hand: prior mean 82.5 of weight 4, records 78, 80, 82; 7 degrees of freedom.
    const priorVariance = (7.5 / 1.2815515655446004) ** 2;
    const mean = (4 * 82.5 + 240) / 7;
    const variance = (4 * priorVariance + 8 + ((4 * 3) / 7) * (80 - 82.5) ** 2) / 7;
    const planning = Math.ceil(mean + jStat.studentt.inv(0.8, 7) * Math.sqrt(variance * (1 + 1 / 7)));
    expect(span).toMatchObject({ basis: 'learned', records: 3, planning });
    // Heat ends on 20 September; ten days are for the response to a tip.
    const decision = new Date(Date.parse('2026-09-20') - (planning + 10) * 86_400_000)
      .toISOString()
      .slice(0, 10);
    expect(result.decisionDate).toBe(decision);
  });

  it('does not plan by fewer than three records, by slips, or by another club’s', async () => {
    const { ana, tree } = await threeRecords();
    const records = async () =>
      (await spanRecords(opened.db, ana.clubId, { until: day('2026-12-31') })).get('blackmission');
    expect(await records()).toEqual([78, 80, 82]);
    // 20 days is a slip: figs take 35 at least.
    await club.record(ana, tree, '2022-08-01', '2022-08-21');
    expect(await records()).toEqual([78, 80, 82]);
    const other = new ClubRecords(opened.db, '2026-06-01', 'elsewhere');
    const cy = await other.grower('Cy');
    const theirs = await other.tree(cy, 'Young', { cultivar: 'Black Mission', ripening: 'mid' });
    expect((await standingOf(opened.db, cy, theirs, day('2026-06-01'))).span.basis).toBe('group');
  });

  it('knows on a past day only what was noted by then', async () => {
    const { ana, tree } = await threeRecords();
    const basisOn = async (on: string) => (await standingOf(opened.db, ana, tree, day(on))).span;
    expect(await basisOn('2025-08-29')).toMatchObject({ basis: 'group' });
    expect(await basisOn('2025-09-05')).toMatchObject({ basis: 'learned', records: 3 });
  });

  it('moves the planned dates of every tree concerned in the transaction of the change', async () => {
    const ana = await club.grower('Ana');
    const old = await club.tree(ana, 'Old', { cultivar: 'Alma' });
    const bo = await club.grower('Bo');
    const young = await club.tree(bo, 'Young', { cultivar: 'Alma' });
    const own = await club.tree(bo, 'Own span', { cultivar: 'Alma', spanFrom: 90, spanTo: 100 });
    await opened.db.transaction(async (tx) => void (await replanMember(tx, bo.id, club.clock)));
    const dateOf = async (tree: Tree) => (await treeOf(opened.db, bo.id, tree.id))?.decisionOn;
    const before = await dateOf(young);
    const ownBefore = await dateOf(own);
    await club.record(ana, old, '2023-06-10', '2023-08-20');
    await club.record(ana, old, '2024-06-10', '2024-08-20');
    expect(await dateOf(young)).toBe(before);
    await opened.db.transaction(async (tx) => {
      const was = await learnedBefore(tx, ana, day('2026-06-01'));
      await new ClubRecords(tx, '2026-06-01').record(ana, old, '2025-06-10', '2025-08-20');
      await replanLearned(tx, was, club.clock);
    });
    const after = await dateOf(young);
    expect(after).not.toBe(before);
    expect(after).toBe((await standingOf(opened.db, bo, young, day('2026-06-01'))).result.decisionDate);
    expect(await dateOf(own)).toBe(ownBefore);
  });
});
