import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { mydataErase, mydataLearning } from '../../src/club/mydata.ts';
import { roundupFeature, roundupReply } from '../../src/club/roundup.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, observations } from '../../src/records/schema.ts';
import { ClubRecords } from '../support/club-records.ts';
import { openTestDatabase } from '../support/postgres.ts';

let opened: OpenedDatabase;
let club: ClubRecords;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
});
afterAll(() => opened.close());
beforeEach(async () => {
  await opened.db.delete(clubs);
  club = new ClubRecords(opened.db, '2026-12-20');
});

/** Two growers, four trees of two cultivars, a whole season. */
async function plantClub() {
  const [ana, bo] = [await club.grower('Ana'), await club.grower('Bo', { units: 'C', dates: 'DMY' })];
  const alma = await club.tree(ana, 'Alma', { cultivar: 'Brunswick' });
  const gate = await club.tree(ana, 'Gate', { cultivar: 'magnolia' });
  const pot = await club.tree(bo, 'Pot', { cultivar: 'Celeste' });
  const odd = await club.tree(bo, 'Odd');
  await club.saw(ana, alma, 'leafed-out', '2026-04-28');
  await club.record(ana, alma, '2026-06-10', '2026-08-28');
  await club.saw(ana, alma, 'picked', '2026-09-02', { count: 9, crop: 'main' });
  await club.saw(ana, gate, 'buds-double', '2026-06-20');
  await club.saw(ana, gate, 'tipped', '2026-06-25', { count: 3 });
  await club.record(ana, gate, '2026-07-04', '2026-09-20');
  await club.saw(bo, pot, 'tipped', '2026-07-01');
  await club.saw(bo, pot, 'branched', '2026-07-12');
  await club.saw(bo, pot, 'picked', '2026-07-08', { count: 6, crop: 'breba' });
  await club.saw(bo, odd, 'picked', '2026-09-09', { count: 0.5, unit: 'kg', crop: 'main' });
  return { ana, bo, alma, gate, pot, odd };
}

const seasonOf = async (name: string, season?: string) =>
  roundupReply(await club.context(name), { span: 'season', ...(season === undefined ? {} : { season }) });

describe('a season’s roundup', () => {
  it('counts trees, fruitlets, tips with their results, spans and picks by cultivar', async () => {
    await plantClub();
    const { data } = await seasonOf('Ana');
    expect(data).toMatchObject({
      span: 'season',
      members: 2,
      trees: 4,
      byCultivar: [
        // Magnolia is a synonym of Brunswick.
        {
          cultivar: 'Brunswick',
          trees: 2,
          fruitlets: 2,
          tipped: 1,
          tipWorked: 1,
          spans: [78, 79],
          picked: 2,
          figs: 17,
        },
        {
          cultivar: 'Celeste',
          trees: 1,
          fruitlets: 0,
          tipped: 1,
          tipWorked: 0,
          tipKnown: 1,
          spans: [],
          picked: 1,
          brebas: 6,
        },
        { cultivar: null, trees: 1, fruitlets: 0, tipped: 0, picked: 1, grams: 500 },
      ],
    });
  });

  it('tells it in words, in the reader’s order of dates and weights, with one picture', async () => {
    await plantClub();
    const forBo = await seasonOf('Bo');
    const text = JSON.stringify([forBo.text, forBo.fields]);
    expect(text).toContain('2 growers with 4 trees');
    expect(text).toContain('10 June');
    expect(text).toContain('500 g picked');
    expect(text).toContain('78–79 days');
    expect(forBo.files).toHaveLength(1);
    expect(forBo.files[0]?.alt).toContain('Brunswick');
    expect(JSON.stringify((await seasonOf('Ana')).fields)).toContain('1.1 lb picked');
  });

  it('answers for any past season and for none that is to come', async () => {
    const { ana, alma } = await plantClub();
    await club.record(ana, alma, '2024-06-12', '2024-09-01');
    const { data } = await seasonOf('Ana', '2024');
    expect(data).toMatchObject({
      period: '2024',
      byCultivar: [{ cultivar: 'Brunswick', spans: [81] }, {}, {}],
    });
    await expect(seasonOf('Ana', '2031')).rejects.toMatchObject({ identifier: 'season-to-come' });
    await expect(seasonOf('Ana', 'last')).rejects.toMatchObject({ identifier: 'no-such-season' });
    const context = await club.context('Ana');
    await expect(roundupFeature.handle(context, { span: 'week', season: '2024' })).rejects.toMatchObject({
      identifier: 'week-of-season',
    });
  });

  it('is of its own club only', async () => {
    await plantClub();
    const other = new ClubRecords(opened.db, '2026-12-20', 'another');
    await other.grower('Cy');
    const { data, text, fields } = await roundupReply(await other.context('Cy'), { span: 'season' });
    expect(data).toMatchObject({ members: 0, trees: 0, byCultivar: [] });
    expect(JSON.stringify([text, fields])).not.toMatch(/Ana|Bo|Brunswick/);
  });

  it('has no trace of a member who erased their records', async () => {
    await plantClub();
    await mydataErase.handle(await club.context('Ana'), { confirm: 'erase my records' });
    const after = await seasonOf('Bo');
    expect(JSON.stringify({ ...after, files: [] })).not.toMatch(/Ana|Alma|Gate|Brunswick/);
    expect(after.data).toMatchObject({ members: 1, trees: 2 });
  });
});

describe('a week’s roundup', () => {
  it('tells of the last seven days, what is to be decided in the next fourteen, and skips the rest', async () => {
    await plantClub();
    // Each was told on its own day.
    await opened.db.update(observations).set({ createdAt: sql`${observations.day} + time '12:00'` });
    club.clock.moveTo('2026-07-07' as never);
    const { data, fields } = await roundupReply(await club.context('Bo'), {});
    expect(data).toMatchObject({ span: 'week', period: '2026-07-01/2026-07-07' });
    const byName = Object.fromEntries(fields.map(({ name, value }) => [name, value]));
    expect(byName['First fruitlets']).toBe('4 July: Ana’s Gate');
    expect(byName.Tipped).toBe('1 July: Bo’s Pot');
    expect(byName['What tips brought']).toBe('fruitlets on Ana’s Gate');
    expect(byName['Leafed out']).toBeUndefined();
  });

  it('says when it was a quiet one', async () => {
    await plantClub();
    club.clock.moveTo('2026-02-10' as never);
    const { fields, text } = await roundupReply(await club.context('Ana'), { span: 'week' });
    expect(fields).toEqual([]);
    expect(text).toContain('quiet week');
  });
});

describe('what the club has learned', () => {
  it('is silent under three records and says how many there are from three on', async () => {
    const { ana, bo } = await plantClub();
    expect(JSON.stringify((await seasonOf('Ana')).fields)).not.toContain('Learned: fruitlet to ripe');
    const third = await club.tree(bo, 'Third', { cultivar: 'Brunswick' });
    await club.record(bo, third, '2025-06-10', '2025-08-30');
    const { fields, data } = await seasonOf('Ana');
    expect(fields.find(({ name }) => name === 'Learned: fruitlet to ripe')?.value).toContain('(3 records)');
    expect(data).toMatchObject({ learned: { spans: [{ cultivar: 'Brunswick', records: 3 }] } });
    expect(ana.keepsOut).toBe(false);
  });

  it('leaves out the trees of a member who keeps them out, past seasons included', async () => {
    const { bo } = await plantClub();
    const third = await club.tree(bo, 'Third', { cultivar: 'Brunswick' });
    await club.record(bo, third, '2025-06-10', '2025-08-30');
    await mydataLearning.handle(await club.context('Bo'), { share: 'no' });
    expect((await seasonOf('Ana')).data).toMatchObject({ learned: { spans: [] }, trees: 5 });
    await mydataLearning.handle(await club.context('Bo'), { share: 'yes' });
    expect((await seasonOf('Ana')).data).toMatchObject({ learned: { spans: [{ records: 3 }] } });
  });

  it('shows tipped beside untipped trees of a cultivar and season, and says it is no trial', async () => {
    const ana = await club.grower('Ana');
    for (let i = 1; i <= 6; i++) {
      const tree = await club.tree(ana, `Row ${i}`, { cultivar: 'Celeste' });
      if (i <= 3) await club.saw(ana, tree, 'tipped', '2026-06-20');
      if (i !== 3)
        await club.saw(ana, tree, 'fruitlets', i <= 3 ? '2026-06-29' : '2026-06-12', { crop: 'main' });
      if (i === 3) await club.saw(ana, tree, 'branched', '2026-07-02');
    }
    const { fields } = await seasonOf('Ana');
    const side = fields.find(({ name }) => name === 'Tipped beside untipped')?.value;
    expect(side).toContain('tipped 3 trees, fruitlets on 2');
    expect(side).toContain('untipped 3 trees, fruitlets on 3');
    expect(side).toContain('no trial');
    // Wilson 1927 at 80 %: 2 of 3 is 0.32 to 0.90, worked by hand below.
    const z = 1.2815515655446004;
    const centre = (2 / 3 + z ** 2 / 6) / (1 + z ** 2 / 3);
    const half = (Math.sqrt(((2 / 3) * (1 / 3)) / 3 + z ** 2 / 36) * z) / (1 + z ** 2 / 3);
    const tips = fields.find(({ name }) => name === 'Learned: tips that brought fruitlets')?.value;
    expect(tips).toBe(
      `buds not noted 2 of 3 (80 % interval ${Math.round((centre - half) * 100)}–${Math.round((centre + half) * 100)} in 100)`,
    );
  });
});
