import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { showTree } from '../../src/club/tree-show.ts';
import { winterReaderOf, winterWords } from '../../src/club/winter-words.ts';
import { day } from '../../src/engine/day.ts';
import { summariseRecord } from '../../src/engine/record-summary.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, type Member, type Tree } from '../../src/records/schema.ts';
import { standingOf } from '../../src/records/standing.ts';
import { updateTree } from '../../src/records/trees.ts';
import { observed, seriesOf } from '../engine/observed.ts';
import { ClubRecords } from '../support/club-records.ts';
import { openTestDatabase } from '../support/postgres.ts';

let opened: OpenedDatabase;
let club: ClubRecords;
let ana: Member;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
});
afterAll(() => opened.close());
beforeEach(async () => {
  await opened.db.delete(clubs);
  club = new ClubRecords(opened.db, '2026-09-10');
  ana = await club.grower('Ana', { dates: 'DMY' });
});

async function show(tree: Tree, on = '2026-09-10') {
  club.clock.moveTo(day(on));
  return showTree(await club.context('Ana'), tree);
}

describe('a tree’s story', () => {
  it('has this season on a time line with its picture, its state, what comes next, and past seasons in a line', async () => {
    const tree = await club.tree(ana, 'Gate', { cultivar: 'Celeste' });
    await club.saw(ana, tree, 'leafed-out', '2025-04-28');
    await club.record(ana, tree, '2025-06-12', '2025-08-19');
    await club.saw(ana, tree, 'cuttings', '2025-12-04', { count: 8 });
    await club.saw(ana, tree, 'leafed-out', '2026-05-02');
    await club.saw(ana, tree, 'fruitlets', '2026-07-10', { count: 7 });
    const reply = await show(tree, '2026-07-20');
    const fields = Object.fromEntries(reply.fields.map(({ name, value }) => [name, value]));
    expect(fields['2 May']).toBe('leafed out');
    expect(fields['10 July']).toBe('7 fruitlets');
    expect(fields['Season 2025']).toBe(
      'leafed out 28 April, fruitlets 12 June, first ripe 19 August, picked 4 figs, 8 cuttings',
    );
    expect(reply.text).toContain('Leave Gate alone');
    expect(reply.text).toContain('Next: first ripe figs, 8 September (in 7 weeks).');
    expect(reply.files[0]).toMatchObject({ name: 'tree-gate-2026.png' });
    expect(reply.files[0]?.alt).toContain('fruitlets');
    expect(reply.data).toMatchObject({
      next: { kind: 'ripe-watch', on: '2026-09-08' },
      timeline: [
        { on: '2026-05-02', kind: 'leafed-out' },
        { on: '2026-07-10', kind: 'fruitlets', count: 7 },
      ],
      past: [{ season: '2025', seen: '2025-06-12', ripe: '2025-08-19', cuttings: 8 }],
    });
  });

  it('narrows the ripe window by the signs that are noted', async () => {
    const tree = await club.tree(ana, 'Gate', { cultivar: 'Celeste' });
    await club.saw(ana, tree, 'fruitlets', '2026-06-20');
    // Early kinds take 60 to 75 days (common practice, no source).
    expect((await show(tree, '2026-08-20')).text).toContain('until about 3 September');
    await club.saw(ana, tree, 'ripening', '2026-08-20');
    // From the first signs 5 days (a grower's log) to 13 (Çelikel et al. 1997, phase III).
    const { text } = await show(tree, '2026-08-20');
    expect(text).toContain('narrows the first ripe figs to 25 August – 2 September');
    expect(text).toContain('the days alone said 19 August – 3 September');
  });

  it('says in time which late fruitlets to keep, and what cover gained where it was measured', async () => {
    const tree = await club.tree(ana, 'Gate', { cultivar: 'Celeste' });
    await club.saw(ana, tree, 'fruitlets', '2026-07-20');
    const { text } = await show(tree, '2026-07-25');
    // Warmth until 21 days past the heat end of 20 September, less 60 days for the quickest early kind.
    expect(text).toContain('any that show after about 12 August have no time left');
    expect(text).toContain('10 to 13 days');
    expect((await show(tree, '2026-08-30')).text).toContain('any that show from now on have no time left');
  });

  it('keeps lineage, also when it is typed as a ring', async () => {
    const old = await club.tree(ana, 'Old', { origin: 'a neighbour' });
    const mid = await club.tree(ana, 'Mid', { parentTreeId: old.id });
    const young = await club.tree(ana, 'Young', { parentTreeId: mid.id });
    const lineage = async (tree: Tree) =>
      (await show(tree)).fields.find(({ name }) => name === 'Lineage')?.value;
    expect(await lineage(young)).toBe('from Mid, itself from Old, which came from a neighbour');
    expect(await lineage(mid)).toBe('from Old, which came from a neighbour; taken from it: Young');
    await updateTree(opened.db, old.id, { parentTreeId: young.id, origin: null });
    expect(await lineage(young)).toBe('from Mid, itself from Old; taken from it: Old');
  });

  it('tells of picking in the reader’s weights, brebas apart', async () => {
    const tree = await club.tree(ana, 'Gate', { cultivar: 'Kadota' });
    await club.saw(ana, tree, 'picked', '2026-07-02', { count: 5, crop: 'breba' });
    await club.saw(ana, tree, 'fruitlets', '2026-06-10', { crop: 'main' });
    await club.saw(ana, tree, 'picked', '2026-09-01', { count: 2, unit: 'lb', crop: 'main' });
    const { fields, text } = await show(tree, '2026-09-10');
    expect(fields.find(({ name }) => name === 'Picked this season')?.value).toBe('2 lb, and 5 brebas');
    expect(text).toContain('It is being picked since 1 September');
  });
});

describe('winter', () => {
  // Daily lows of New York 2012–2015 from vega-datasets (US Government data). −6.7 °C: Ohio State HYG-1439.
  it('dates the cover by the record’s winters and the published temperature that kills wood', async () => {
    const summary = summariseRecord(seriesOf(observed('New York')), {
      mark: { value: 80, unit: 'F' },
      hemisphere: 'N',
    });
    const tree = await club.tree(ana, 'Gate', { cultivar: 'Kadota' });
    const standing = await standingOf(opened.db, ana, tree, day('2026-12-16'));
    const words = winterWords(standing, winterReaderOf({ ...ana, summary }, 'DMY')).join(' ');
    const cold = observed('New York').filter(({ low }) => low <= -6.7);
    const firsts = [2012, 2013, 2014].flatMap((year) => {
      const first = cold.find(({ date }) => date >= `${year}-07-24` && date < `${year + 1}-07-24`);
      return first ? [first.date] : [];
    });
    expect(words).toContain('20 °F');
    expect(words).toContain(firsts.length === 3 ? 'each of its 3 winters' : `${firsts.length} of 3 winters`);
    expect(words).toMatch(/Have the cover on by about \d+ (November|December|January)/);
    expect(words).toContain('45 cm (18 in)');
    expect(words).toContain('take');
    expect(words).not.toContain('Cuttings:');
  });

  it('tells of cuttings only for trees kept for wood, and of pots apart', async () => {
    const tree = await club.tree(ana, 'Pot', { kept: 'pot', purpose: 'both' });
    const standing = await standingOf(opened.db, ana, tree, day('2026-12-16'));
    const words = winterWords(standing, winterReaderOf(ana, 'DMY'));
    expect(words[0]).toContain('Cuttings: pencil-thick');
    expect(words.at(-1)).toContain('frost-free, about 40 °F');
  });
});
