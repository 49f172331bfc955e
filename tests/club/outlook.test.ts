import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { addDays, type Day, day } from '../../src/engine/day.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs, trees, weatherSeries } from '../../src/records/schema.ts';
import { type ObservedDay, observed } from '../engine/observed.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';

let opened: OpenedDatabase;
let club: TerminalClub;
let folder: string;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
});
afterAll(() => opened.close());
beforeEach(async () => {
  await opened.db.delete(clubs);
  await opened.db.delete(weatherSeries);
  folder = mkdtempSync(join(tmpdir(), 'ostiole-outlook-'));
  club = await openTerminalClub(opened, '2016-05-01');
});
afterEach(() => {
  club.close();
  rmSync(folder, { recursive: true });
});

function fileOf(days: readonly ObservedDay[]): string {
  const path = join(folder, 'days.csv');
  const lines = days.map(({ date, high, low }) => `${date},${high},${low}`);
  writeFileSync(path, `date,high (C),low (C)\n${lines.join('\n')}\n`);
  return path;
}

/** An invented cool place: highs of at most 20 °C, no frost but in January; four seasons. */
function coolDays(): ObservedDay[] {
  const days: ObservedDay[] = [];
  for (let on = day('2012-01-01'); on <= '2015-12-31'; on = addDays(on, 1)) {
    const number = (Date.parse(`${on}T00:00Z`) - Date.parse(`${on.slice(0, 4)}-01-01T00:00Z`)) / 86_400_000;
    const high = 12 - 8 * Math.cos(((number - 15) / 365) * 2 * Math.PI);
    days.push({ date: on, high: Number(high.toFixed(1)), low: Number((high - 6).toFixed(1)) });
  }
  return days;
}

/** Degree-days of a day over 8 °C up to 36 °C, by 2,000 steps along the sine. */
function warmthOf({ high, low }: ObservedDay): number {
  let sum = 0;
  for (let i = 0; i < 2000; i++) {
    const at = (low + high) / 2 + ((high - low) / 2) * Math.sin((2 * Math.PI * (i + 0.5)) / 2000);
    sum += Math.max(0, Math.min(at, 36) - 8);
  }
  return sum / 2000;
}

interface Counts {
  readonly seasons: number;
  readonly inHeat: number;
  readonly beforeFrost: number;
}

const warmth = new Map<ObservedDay, number>();
function warmthOnce(one: ObservedDay): number {
  const known = warmth.get(one) ?? warmthOf(one);
  warmth.set(one, known);
  return known;
}

/**
 * The outlook by brute force: of 2012–2015, how many seasons would have ripened a fruitlet that shows on
 * `start` (MM-DD) by the planning span, on or before the last day with four of seven highs at the mark, and
 * before the first Tmin ≤ 0 °C from 24 July on.
 */
function byHand(days: readonly ObservedDay[], start: string, planning: number, markC = 26.65): Counts {
  const need = planning * (2100 / 84.5 - 8);
  let inHeat = 0;
  let beforeFrost = 0;
  for (const year of ['2012', '2013', '2014', '2015']) {
    const season = days.filter(({ date }) => date.startsWith(year));
    const heatEnd = season.findLast(
      (_, i) => season.slice(Math.max(0, i - 6), i + 1).filter(({ high }) => high >= markC).length >= 4,
    )?.date;
    const freeze = season.find(({ date, low }) => date.slice(5) >= '07-24' && low <= 0)?.date ?? '9999';
    let sum = 0;
    const ripe = season.find((one) => {
      if (one.date.slice(5) < start) return false;
      sum += warmthOnce(one);
      return sum >= need;
    })?.date;
    if (ripe !== undefined && heatEnd !== undefined && ripe <= heatEnd) inHeat++;
    if (ripe !== undefined && ripe < freeze) beforeFrost++;
  }
  return { seasons: 4, inHeat, beforeFrost };
}

/** The last day of tipping from which four in five seasons ripen before frost, by trying every day. */
function decisionByHand(days: readonly ObservedDay[], year: string, planning: number): Day | null {
  let last: Day | null = null;
  for (let tip = day(`${year}-01-01`); tip <= `${year}-12-20`; tip = addDays(tip, 1)) {
    const { seasons, beforeFrost } = byHand(days, addDays(tip, 10).slice(5), planning);
    if (beforeFrost >= 0.8 * seasons) last = tip;
  }
  return last;
}

/** Planning spans of the ripening groups. Common practice, no source. */
const PLANNING = { early: 70, mid: 80, late: 90 } as const;

describe('the outlook of a garden with the record of New York 2012–2015', () => {
  // Daily temperatures of vega-datasets 3.2.1, data/weather.csv (NOAA, US Government work).
  const days = observed('New York');
  const set = () => club.type(`/garden weather file:${fileOf(days)} unit:C`);
  const add = (ripening: keyof typeof PLANNING, name = 'Pot 3') =>
    club.type(`/tree add name:${name} ripening:${ripening}`);

  it.each(['early', 'mid', 'late'] as const)(
    'has the counts of a %s kind, in words and for machines',
    async (kind) => {
      await set();
      await add(kind);
      for (const today of ['2016-06-20', '2016-07-05', '2016-07-20']) {
        await club.type(`@${today}`);
        const counts = byHand(days, addDays(day(today), 10).slice(5), PLANNING[kind]);
        const words = `With a tip today, ${counts.inHeat} of the last 4 seasons would have ripened it in the heat, ${counts.beforeFrost} before frost`;
        const tip = await club.ask('/tip tree:Pot 3');
        expect(tip.data.outlook, today).toEqual({ ...counts, if: 'tip-today' });
        expect(tip.text).toContain(words);
        const all = await club.ask('/tip');
        expect(all.data.items).toMatchObject([{ outlook: { ...counts, if: 'tip-today' } }]);
        expect(all.fields[0]?.value).toContain(
          `outlook ${counts.inHeat} of 4 seasons in the heat, ${counts.beforeFrost} before frost`,
        );
        const show = await club.ask('/tree show tree:Pot 3');
        if (tip.data.verdict !== 'let-grow') expect(show.text).toContain(words);
      }
    },
  );

  it('goes by the fruitlets once they are there, and is silent once figs are picked', async () => {
    await set();
    await add('mid');
    await club.type('@2016-06-18', 'fruitlets on pot 3');
    const counts = byHand(days, '06-18', PLANNING.mid);
    const tip = await club.ask('/tip tree:Pot 3');
    expect(tip.data.outlook).toEqual({ ...counts, if: 'fruitlets' });
    expect(tip.text).toContain(`From the fruitlets it has, ${counts.inHeat} of the last 4 seasons`);
    await club.type('@2016-09-08', 'picked 2 ripe figs from pot 3');
    expect((await club.ask('/tip tree:Pot 3')).data).not.toHaveProperty('outlook');
  });

  it('does not call seasons the last ones that are not', async () => {
    await set();
    await add('mid');
    await club.type('@2018-06-20');
    expect((await club.ask('/tip tree:Pot 3')).text).toContain(' of 4 seasons on record would have ripened');
  });

  it('is told with a decision nudge, for one tree and for many', async () => {
    await set();
    await add('mid');
    // 10 September less 80 and 10 days.
    const said = (await club.moveTo('2016-06-12')).filter(({ kind }) => kind === 'nudge').at(-1)!.reply;
    const counts = byHand(days, '06-22', PLANNING.mid);
    expect(said.data.items).toMatchObject([{ kind: 'decision', outlook: { ...counts, if: 'tip-today' } }]);
    expect(said.text).toContain(`With a tip today, ${counts.inHeat} of the last 4 seasons`);

    await opened.db.delete(clubs);
    await opened.db.delete(weatherSeries);
    club.close();
    club = await openTerminalClub(opened, '2016-05-01');
    await set();
    for (const name of ['A', 'B', 'C', 'D', 'E']) await add('mid', name);
    const many = (await club.moveTo('2016-06-12')).filter(({ kind }) => kind === 'nudge').at(-1)!.reply;
    expect(many.text).toContain(`A, B, C, D and E. With a tip today, ${counts.inHeat} of the last 4 seasons`);
    expect(many.data.items).toHaveLength(5);
  });

  it('says under /garden show where the two rules differ by more than a week, and nudges by the chosen one', async () => {
    await set();
    await club.type('/garden set nudges:channel');
    for (const kind of ['early', 'mid', 'late'] as const) await add(kind, kind);
    const show = await club.ask('/garden show');
    const expected = {
      early: decisionByHand(days, '2016', PLANNING.early),
      mid: decisionByHand(days, '2016', PLANNING.mid),
      late: decisionByHand(days, '2016', PLANNING.late),
    };
    // By days: 10 September less 80, 90 and 100 days. By outlook: the brute-force figures of this file.
    expect(expected).toEqual({ early: '2016-07-17', mid: '2016-07-08', late: '2016-06-28' });
    for (const words of [
      'early: June 22 by days, July 17 by outlook',
      'mid: June 12 by days, July 8 by outlook',
      'late: June 2 by days, June 28 by outlook',
      '/garden set rule:outlook',
    ]) {
      expect(show.text).toContain(words);
    }
    for (const [name, decisionDate] of Object.entries(expected)) {
      expect(await club.data(`/tip tree:${name}`)).not.toMatchObject({ decisionDate });
    }
    await club.type('/garden set rule:outlook');
    const rows = await opened.db.select().from(trees);
    for (const [name, decisionDate] of Object.entries(expected)) {
      expect(await club.data(`/tip tree:${name}`)).toMatchObject({ verdict: 'watch', decisionDate });
      const row = rows.find((tree) => tree.name === name);
      expect(row).toMatchObject({ decisionOn: decisionDate, lookOn: addDays(decisionDate!, -14) });
    }
    expect((await club.ask('/garden show')).text).toContain('Nudges go by outlook');
    const nudged = (await club.moveTo('2016-07-31'))
      .filter(({ kind }) => kind === 'nudge')
      .flatMap(({ reply }) => reply.data.items as { tree: string; kind: string; due: string }[])
      .filter(({ kind }) => kind === 'decision');
    expect(nudged.map(({ tree, due }) => [tree, due])).toEqual([
      ['late', '2016-06-28'],
      ['mid', '2016-07-08'],
      ['early', '2016-07-17'],
    ]);
  });

  it('keeps the caution under either rule, and returns to the days', async () => {
    await set();
    await add('mid');
    await club.type('/garden set rule:outlook caution:5');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({ decisionDate: '2016-07-03' });
    await club.type('/garden set rule:days');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({ decisionDate: '2016-06-07' });
  });

  it('says nothing of the rules while they are a week apart or less', async () => {
    await set();
    // By days 90 days back; for the outlook's 8 July heat would end on 6 October.
    await club.type('/garden set heat_end:October 6', '/tree add name:Pot 3 ripening:mid');
    expect((await club.ask('/garden show')).text).not.toContain('Two rules');
    await club.type('/garden set heat_end:October 13');
    expect((await club.ask('/garden show')).text).not.toContain('Two rules');
    await club.type('/garden set heat_end:October 14');
    expect((await club.ask('/garden show')).text).toContain('July 16 by days, July 8 by outlook');
  });

  it('counts by days, and says so, where fewer than three seasons can tell', async () => {
    await club.type(
      `/garden weather file:${fileOf(days.filter(({ date }) => date < '2014-01-01'))} unit:C`,
      '/tree add name:Pot 3 ripening:mid',
    );
    const byDays = await club.data('/tip tree:Pot 3');
    const set = await club.ask('/garden set rule:outlook');
    expect(set.text).toContain('That rests on 2 seasons only');
    expect(await club.data('/tip tree:Pot 3')).toMatchObject({ decisionDate: byDays.decisionDate });
    expect((await club.ask('/garden show')).text).toContain('The outlook has no date for Pot 3');
    const tip = await club.ask('/tip tree:Pot 3');
    expect(tip.data).not.toHaveProperty('outlook');
    expect(tip.text).not.toContain('With a tip today');
  });

  it('has the frosts with their percentiles and how many seasons had none', async () => {
    // First falls 6, 12, 15 and 24 November, last springs 27 March, 4 April, 16 April and 29 March: the data.
    // Linear interpolation at (n−1)p: 7.8, 13.5 and 21.3 November; half a day goes to the careful side.
    const reply = await club.ask(`/garden weather file:${fileOf(days)} unit:C`);
    expect(reply.data).toMatchObject({
      heatEnd: '09-10',
      frost: {
        first: { p10: '11-08', p50: '11-13', p90: '11-21', none: 0 },
        last: { p10: '03-28', p50: '04-01', p90: '04-12', none: 0 },
      },
    });
    expect(reply.fields.find(({ name }) => name === 'First frost')?.value).toBe(
      'November 13 in the middle, November 8 to November 21 in eight of ten (4 seasons)',
    );
    const mild = days.map((one) =>
      one.date.startsWith('2013') || one.date.startsWith('2014')
        ? { ...one, high: Math.max(one.high, 2), low: Math.max(one.low, 1) }
        : one,
    );
    const warmer = await club.ask(`/garden weather file:${fileOf(mild)} unit:C`);
    // Of two seasons: 6 and 24 November; 7.8, 15 and 22.2 November.
    expect(warmer.data).toMatchObject({
      frost: { first: { p10: '11-08', p50: '11-15', p90: '11-22', none: 2 } },
    });
    expect(warmer.fields.find(({ name }) => name === 'First frost')?.value).toContain(
      '(4 seasons; none in 2 of them)',
    );
  });

  it('names seasons with gaps', async () => {
    const gappy = days.filter(({ date }) => !(date >= '2013-08-01' && date <= '2013-09-15'));
    const reply = await club.ask(`/garden weather file:${fileOf(gappy)} unit:C`);
    expect(reply.text).toContain('More than a tenth of the days are missing in 2013');
    await add('mid');
    await club.type('@2016-06-20');
    const tip = await club.ask('/tip tree:Pot 3');
    expect(tip.data.outlook).toMatchObject({ seasons: 3 });
    expect(tip.text).toContain('1 season with gaps left out');
  });
});

describe('a garden in a cool summer', () => {
  const seattle = observed('Seattle');

  it('in Seattle at 85 °F gets no made-up date but the outlook, and the figs that overwinter', async () => {
    const reply = await club.ask(`/garden weather file:${fileOf(seattle)} unit:C`);
    // At 80 °F the run of reliable days is 2–16 August.
    expect(reply.data).toMatchObject({ heatEnd: '08-16', basis: 'record', seasons: 4 });
    const high = await club.ask('/garden set heat_mark:85');
    expect(high.data).toMatchObject({
      heatEnd: null,
      heat: 'none',
      basis: 'record',
      mark: { value: 85, unit: 'F' },
    });
    expect(high.text).toContain('no reliable heat to count back from and no date is made up');
    expect(high.text).toContain('pea-sized');
    await club.type(
      '/tree add name:Pot 3 ripening:early',
      '/tree add name:Alma ripening:late',
      '@2016-05-20',
    );
    const tip = await club.ask('/tip tree:Pot 3');
    const counts = byHand(seattle, '05-30', PLANNING.early, 29.35);
    expect(tip.data).toMatchObject({
      verdict: 'no-deadline',
      timing: 'no-heat',
      decisionDate: null,
      heatEnd: null,
      outlook: { ...counts, if: 'tip-today' },
    });
    expect(counts).toMatchObject({ inHeat: 0, beforeFrost: 4 });
    expect(tip.text).toContain('0 of the last 4 seasons would have ripened it in the heat, 4 before frost');
    expect(decisionByHand(seattle, '2016', PLANNING.early)).toBe('2016-06-11');
    expect(tip.text).toContain('four of five past seasons would have ripened figs before frost is June 11');
    expect(tip.text).toContain('keep the pea-sized');
    const show = await club.ask('/garden show');
    expect(show.text).toMatch(
      /is June 11 for Pot 3 and April 9 for Alma|April 9 for Alma and June 11 for Pot 3/,
    );
    expect(show.text).toContain('United Kingdom');
    expect(show.text).not.toContain('Two rules');
    expect(show.files).toHaveLength(1);
    expect(show.files[0]?.alt).not.toMatch(/heat ends/i);
    const kinds = (await club.moveTo('2016-10-01'))
      .filter(({ kind }) => kind === 'nudge')
      .flatMap(({ reply: said }) => said.data.items as { kind: string }[]);
    expect(kinds.map(({ kind }) => kind)).not.toContain('decision');
  });

  it('that is invented and colder still is told that no tip would have ripened anything', async () => {
    await club.type(
      '/garden set units:C',
      `/garden weather file:${fileOf(coolDays())} unit:C`,
      '/tree add name:Pot 3 ripening:late',
      '@2016-06-01',
    );
    const tip = await club.ask('/tip tree:Pot 3');
    expect(tip.data).toMatchObject({
      verdict: 'no-deadline',
      timing: 'no-heat',
      outlook: { seasons: 4, inHeat: 0, beforeFrost: 0 },
    });
    expect(tip.text).toContain('No day of tipping would have ripened Pot 3 before frost');
    expect(tip.text).toContain('pea-sized');
    expect(await club.data('/garden show')).toMatchObject({ heatEnd: null, mark: { value: 27, unit: 'C' } });
    // A stated date stands, and the record's word is told.
    const stated = await club.ask('/garden set heat_end:20 August');
    expect(stated.data).toMatchObject({ heatEnd: '08-20', basis: 'stated' });
    expect(stated.text).toContain('The weather record shows no reliable heat at that mark');
  });

  it('with a mark of its own has its own dates', async () => {
    await club.type(`/garden weather file:${fileOf(seattle)} unit:C`);
    // 75 °F is 23.9 °C: the share of highs within a week is at least a half until 26 August.
    expect(await club.data('/garden set heat_mark:75')).toMatchObject({
      heatEnd: heatEndByHand(seattle, 23.9),
    });
    expect(heatEndByHand(seattle, 23.9)).toBe('08-26');
    // 27 °C is the mark for those who think in °C.
    expect(await club.data('/garden set units:C heat_mark:27')).toMatchObject({
      heatEnd: heatEndByHand(seattle, 27),
      mark: { value: 27, unit: 'C' },
    });
  });
});

/** The end of the heat by the words of the rule, from the rows; for records whose heat does not cross New Year. */
function heatEndByHand(days: readonly ObservedDay[], markC: number): string | null {
  const calendar = [...new Set(observed('New York').map(({ date }) => date.slice(5)))]
    .filter((monthDay) => monthDay !== '02-29')
    .sort();
  const of = (monthDay: string) => calendar.indexOf(monthDay === '02-29' ? '02-28' : monthDay);
  const shares = calendar.map((_, at) => {
    const near = days.filter(({ date }) => {
      const off = Math.abs(of(date.slice(5)) - at);
      return Math.min(off, 365 - off) <= 7;
    });
    return near.filter(({ high }) => high >= markC).length / near.length;
  });
  const top = shares.indexOf(Math.max(...shares));
  if ((shares[top] ?? 0) < 0.5) return null;
  let at = top;
  while ((shares[at + 1] ?? 0) >= 0.5) at++;
  return calendar[at] ?? null;
}
