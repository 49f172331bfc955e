import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { desk } from '../../src/club/desk.ts';
import type { Reply } from '../../src/club/reply.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { clubs } from '../../src/records/schema.ts';
import { treesOf } from '../../src/records/trees.ts';
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
  club = new ClubRecords(opened.db, '2026-06-20');
  await club.grower('Ana');
});

const run = async (name: string, input = {}): Promise<Reply> =>
  desk.runCommand(await club.context('Ana'), name, input);
const importCsv = (text: string) =>
  run('tree import', { file: { name: 'trees.csv', bytes: new TextEncoder().encode(text) } });
const ownTrees = async () => treesOf(opened.db, (await club.context('Ana')).member.id);

describe('the list of trees as CSV', () => {
  it('comes back as it went out', async () => {
    await importCsv(
      'name,cultivar,kept,for,span,from,spare\n"Pot ""3"", old",Brunswick,pot,both,75-80,Gate,yes\nGate,,,,,,\n=1+1,,,,,"Lena, next door",\n',
    );
    const before = (await ownTrees()).map(({ lookOn: _, decisionOn: __, ...tree }) => tree);
    expect(before.find(({ name }) => name.startsWith('Pot'))).toMatchObject({
      cultivar: 'Brunswick',
      kept: 'pot',
      purpose: 'both',
      spanFrom: 75,
      spanTo: 80,
      spareWood: true,
      parentTreeId: before.find(({ name }) => name === 'Gate')?.id,
    });
    const { files } = await run('tree export');
    const text = new TextDecoder().decode(files[0]?.bytes);
    // Read by another parser: no cell begins like a formula.
    expect((parse(text, { bom: true }) as string[][]).flat().filter((cell) => /^[=+@-]/.test(cell))).toEqual(
      [],
    );
    const again = await importCsv(text);
    expect(again.data).toEqual({ added: 0, changed: 3 });
    expect((await ownTrees()).map(({ lookOn: _, decisionOn: __, ...tree }) => tree)).toEqual(before);
  });

  it('takes the semicolons and byte-order mark of a spreadsheet', async () => {
    expect((await importCsv('\uFEFFname;cultivar\r\nGate;Celeste\r\n')).data).toEqual({
      added: 1,
      changed: 0,
    });
  });

  it.each([
    ['no name column', 'tree,cultivar\nGate,Celeste\n', 'no-name-column', 'name'],
    ['an unknown column', 'name,colour\nGate,red\n', 'unknown-column', 'colour'],
    ['a choice that is none', 'name,kept\nGate,pot\nPorch,attic\n', 'not-a-choice', 'Line 3'],
    ['a span that is none', 'name,span\nGate,soon\n', 'span-not-understood', 'Line 2'],
    ['a name twice', 'name\nGate\n GATE \n', 'name-twice', 'Lines 2 and 3'],
    ['a name missing', 'name,cultivar\n,Celeste\n', 'name-empty', 'Line 2'],
    ['no trees', 'name\n', 'no-trees', 'trees.csv'],
  ])('refuses %s, says where, and changes nothing', async (_, text, error, where) => {
    const reply = await importCsv(text);
    expect(reply).toMatchObject({ ok: false, data: { error } });
    expect(reply.text).toContain(where);
    expect(await ownTrees()).toEqual([]);
  });

  it('keeps 500 trees of one member readable in /tip, /due and the calendar', async () => {
    const cultivars = ['Brunswick', 'Celeste', 'Alma', 'Kadota', 'Hardy Chicago'];
    const lines = Array.from({ length: 500 }, (_, i) => `Tree ${i + 1},${cultivars[i % 5]},pot`);
    await importCsv(`name,cultivar,kept\n${lines.join('\n')}\n`);
    club.clock.moveTo('2026-06-05' as never);
    for (const name of ['tip', 'due']) {
      const { fields, text, title, data } = await run(name, name === 'due' ? { days: 200 } : {});
      const shown = [title, text, ...fields.flatMap((field) => [field.name, field.value])].join('\n');
      // What one message of Discord holds.
      expect(shown.length).toBeLessThan(4000);
      expect(fields.length).toBeLessThanOrEqual(25);
      for (const { value } of fields) expect(value.length).toBeLessThanOrEqual(1024);
      expect((data.items as unknown[]).length).toBeGreaterThanOrEqual(500);
    }
    const { files } = await run('due');
    const events = new TextDecoder().decode(files[0]?.bytes).match(/BEGIN:VEVENT/g);
    expect(events?.length).toBeGreaterThanOrEqual(500);
  });
});
