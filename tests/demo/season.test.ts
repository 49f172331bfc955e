import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SteppedClock } from '../../src/clock.ts';
import { openContext } from '../../src/club/open-context.ts';
import type { Reply } from '../../src/club/reply.ts';
import { roundupReply } from '../../src/club/roundup.ts';
import type { Services } from '../../src/club/services.ts';
import { DemoSeason, FIRST_DAY, LAST_DAY } from '../../src/demo/season.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { openTestDatabase } from '../support/postgres.ts';

/** One playing of the whole season; every test looks at what it left. */
describe('the demo’s season', () => {
  let opened: OpenedDatabase;
  let season: DemoSeason;
  let roundup: Reply;
  const printed: string[] = [];
  const outFolder = mkdtempSync(join(tmpdir(), 'ostiole-demo-'));

  beforeAll(async () => {
    opened = await openTestDatabase('embedded');
    const clock = new SteppedClock(FIRST_DAY);
    season = new DemoSeason({
      db: opened.db,
      clock,
      services: {} as Services,
      outFolder,
      print: (text) => printed.push(text),
      columns: 88,
      colour: false,
    });
    await season.play();
    const context = await openContext({
      db: opened.db,
      clock: new SteppedClock(LAST_DAY),
      services: {} as Services,
      platform: 'terminal',
      clubPlatformId: 'terminal',
      clubName: 'The club',
      userId: 'ilva',
      userName: 'Ilva',
      managesClub: true,
    });
    roundup = await roundupReply(context, { span: 'season', season: '2026' });
  }, 300_000);
  afterAll(async () => {
    await opened.close();
    rmSync(outFolder, { recursive: true, force: true });
  });

  it('is understood and answered throughout', () => {
    expect(season.failures).toEqual([]);
    const text = printed.join('\n');
    expect(text).not.toMatch(/undefined|NaN|\[object|null/);
    expect(text).not.toContain('Which tree?');
  });

  it('has its season roundup recomputed by an independent query', async () => {
    const within = `o.undone_at is null and o.day between '2026-01-01' and '2026-12-31'`;
    const main = `(o.crop is null or o.crop = 'main')`;
    const { rows } = await opened.raw.query(`
      with first_fruit as (
        select o.tree_id, min(o.day) as day from observation o where ${within} and o.kind = 'fruitlets' and ${main} group by 1
      ), first_ripe as (
        select o.tree_id, min(o.day) as day from observation o where ${within} and o.kind = 'picked' and ${main} group by 1
      ), tips as (
        select o.tree_id, min(o.day) as day from observation o where ${within} and o.kind = 'tipped' group by 1
      ), picks as (
        select o.tree_id,
          sum(case when o.unit is null and o.crop is distinct from 'breba' then o.count else 0 end) as figs,
          sum(case when o.unit = 'g' and o.crop is distinct from 'breba' then o.count else 0 end) as grams,
          sum(case when o.unit is null and o.crop = 'breba' then o.count else 0 end) as brebas
        from observation o where ${within} and o.kind = 'picked' group by 1
      )
      select t.cultivar,
        count(*)::int as trees,
        count(f.day)::int as fruitlets,
        min(f.day)::text as "fruitletsFrom",
        max(f.day)::text as "fruitletsTo",
        count(p.day)::int as tipped,
        count(*) filter (where f.day > p.day and f.day <= p.day + 20)::int as "tipWorked",
        coalesce(array_agg(r.day - f.day order by r.day - f.day) filter (where r.day - f.day between 35 and 160), '{}') as spans,
        count(k.tree_id)::int as picked,
        coalesce(sum(k.figs), 0)::int as figs,
        coalesce(sum(k.grams), 0)::int as grams,
        coalesce(sum(k.brebas), 0)::int as brebas
      from tree t
        left join first_fruit f on f.tree_id = t.id
        left join first_ripe r on r.tree_id = t.id
        left join tips p on p.tree_id = t.id
        left join picks k on k.tree_id = t.id
      group by 1`);
    const told = roundup.data.byCultivar as ({ cultivar: string } & Record<string, unknown>)[];
    const byName = (a: { cultivar?: unknown }, b: { cultivar?: unknown }) =>
      String(a.cultivar) < String(b.cultivar) ? -1 : 1;
    const comparable = told.map(({ tipKnown: _, brebaGrams: __, ...line }) => line).sort(byName);
    expect(comparable).toEqual(rows.sort(byName));
    expect(roundup.data).toMatchObject({ span: 'season', members: 8, trees: 61 });
    // Enough happened for the comparison to mean something.
    expect(rows.reduce((sum, row) => sum + Number(row.figs), 0)).toBeGreaterThan(300);
    expect(rows.reduce((sum, row) => sum + Number(row.tipWorked), 0)).toBeGreaterThan(3);
  });

  it('says every nudge once', async () => {
    const { rows } = await opened.raw.query(
      `select tree_id, season, kind, occurrence, count(*)::int as n from nudge where state = 'sent' group by 1, 2, 3, 4 having count(*) > 1`,
    );
    expect(rows).toEqual([]);
  });

  it('leaves pictures in its folder, each with its words', () => {
    const pictures = readdirSync(outFolder).filter((name) => name.endsWith('.png'));
    expect(pictures.some((name) => name.startsWith('roundup-'))).toBe(true);
    expect(pictures.some((name) => name.startsWith('tree-'))).toBe(true);
    expect(pictures.some((name) => name.startsWith('season-'))).toBe(true);
    for (const name of pictures) expect(PNG.sync.read(readFileSync(join(outFolder, name))).width).toBe(1080);
    expect(roundup.files[0]?.alt).toContain('Celeste');
  });

  it('posts a weekly roundup at most once a week and the season’s once', () => {
    const weeks = printed.filter((text) => text.includes("The club's week,"));
    expect(weeks.length).toBeGreaterThan(15);
    expect(new Set(weeks.map((text) => text.split('\n').slice(0, 2).join(''))).size).toBe(weeks.length);
    expect(printed.filter((text) => /The club's season 2026.* → club/.test(text))).toHaveLength(1);
  });
});
