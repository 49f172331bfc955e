import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { day } from '../../src/engine/day.ts';
import { seasonOf } from '../../src/engine/season.ts';
import { openClub, openMember } from '../../src/records/clubs.ts';
import type { OpenedDatabase } from '../../src/records/database.ts';
import {
  closeQuestion,
  eventOf,
  gardenObservations,
  insertNote,
  insertObservations,
  lastNote,
  noteOf,
  observationsOfTrees,
  undoNote,
} from '../../src/records/notes.ts';
import { type Club, clubs, type Member, type Note } from '../../src/records/schema.ts';
import { standingOf } from '../../src/records/standing.ts';
import { insertTree, nameKeyOf, treeNamed, treeOf, treesOf, updateTree } from '../../src/records/trees.ts';
import { DATABASE_KINDS, openTestDatabase } from '../support/postgres.ts';

const NOW = new Date('2026-07-02T12:00:00Z');
const TODAY = day('2026-07-02');
const ODD_TEXTS = [
  '🌳 fig 🍈',
  'x'.repeat(500),
  `O'Rourke "the 2nd"`,
  `'; drop table tree; --`,
  'constructor',
  '__proto__',
  'null',
  '%s %d $1',
  'ｆｕｌｌ width',
  'naïve Áéí',
];

describe.each(DATABASE_KINDS)('records on %s', (kind) => {
  let opened: OpenedDatabase;
  let club: Club;
  let ana: Member;
  let ben: Member;

  beforeAll(async () => {
    opened = await openTestDatabase(kind);
  });
  afterAll(() => opened.close());
  beforeEach(async () => {
    await opened.db.delete(clubs);
    club = await openClub(opened.db, { platform: 'terminal', platformId: 'one' }, 'One', NOW);
    ana = await openMember(opened.db, club.id, 'ana', 'Ana', NOW);
    ben = await openMember(opened.db, club.id, 'ben', 'Ben', NOW);
  });

  const addTree = async (member: Member, name: string) => {
    const tree = await insertTree(opened.db, { memberId: member.id, name, addedOn: TODAY, createdAt: NOW });
    if (tree === null) throw new Error(`no tree ${name}`);
    return tree;
  };
  const addNote = async (member: Member, text: string, messageId?: string): Promise<Note> => {
    const note = await insertNote(opened.db, {
      memberId: member.id,
      text,
      messageId,
      writtenOn: TODAY,
      ask: null,
      now: NOW,
    });
    if (note === null) throw new Error('no note');
    return note;
  };

  it('knows a club and a member again, and follows a change of name', async () => {
    expect((await openClub(opened.db, { platform: 'terminal', platformId: 'one' }, 'One', NOW)).id).toBe(
      club.id,
    );
    const renamed = await openMember(opened.db, club.id, 'ana', 'Ana Maria', NOW);
    expect([renamed.id, renamed.name]).toEqual([ana.id, 'Ana Maria']);
  });

  it('brings a club that had left back with its records', async () => {
    await opened.db.update(clubs).set({ leftAt: NOW }).where(eq(clubs.id, club.id));
    const back = await openClub(opened.db, { platform: 'terminal', platformId: 'one' }, 'One', NOW);
    expect([back.id, back.leftAt]).toEqual([club.id, null]);
  });

  it('refuses two trees of one name for one member, whatever the case and spaces, and allows it for two', async () => {
    await addTree(ana, 'Pot 3');
    const again = { memberId: ana.id, name: ' POT   3 ', addedOn: TODAY, createdAt: NOW };
    expect(await insertTree(opened.db, again)).toBeNull();
    expect(await insertTree(opened.db, { ...again, memberId: ben.id })).not.toBeNull();
  });

  it.each(ODD_TEXTS)('keeps the name %j as typed', async (name) => {
    const tree = await addTree(ana, name);
    expect((await treeOf(opened.db, ana.id, tree.id))?.name).toBe(name);
    expect((await treeNamed(opened.db, ana.id, name.toUpperCase()))?.id).toBe(
      nameKeyOf(name.toUpperCase()) === nameKeyOf(name) ? tree.id : undefined,
    );
  });

  it('never gives one member another’s tree or note', async () => {
    const tree = await addTree(ana, 'Alma');
    const note = await addNote(ana, 'x');
    expect(await treeOf(opened.db, ben.id, tree.id)).toBeNull();
    expect(await noteOf(opened.db, ben.id, note.id)).toBeNull();
    expect(await treesOf(opened.db, ben.id)).toEqual([]);
  });

  it('keeps a retired tree out of the list unless asked', async () => {
    const tree = await addTree(ana, 'Alma');
    await updateTree(opened.db, tree.id, { retiredOn: TODAY });
    expect(await treesOf(opened.db, ana.id)).toEqual([]);
    expect((await treesOf(opened.db, ana.id, { withRetired: true })).map((one) => one.retiredOn)).toEqual([
      TODAY,
    ]);
  });

  it('takes one message once', async () => {
    await addNote(ana, 'x', 'm1');
    const twice = { memberId: ana.id, text: 'x', messageId: 'm1', writtenOn: TODAY, ask: null, now: NOW };
    expect(await insertNote(opened.db, twice)).toBeNull();
    expect(await insertNote(opened.db, { ...twice, memberId: ben.id })).not.toBeNull();
  });

  it('gives calendar days and counts back as they went in', async () => {
    const tree = await addTree(ana, 'Alma');
    const note = await addNote(ana, '1.5 kilos off the alma on the 28th');
    const event = { tree: tree.id, kind: 'picked', on: day('2026-06-28'), count: 1.5, unit: 'kg' } as const;
    const [row] = await insertObservations(opened.db, note, [event], 'ana', NOW);
    expect(row && eventOf(row)).toEqual(event);
    expect(row?.createdAt.toISOString()).toBe(NOW.toISOString());
  });

  it('parts seasons, trees and the garden', async () => {
    const tree = await addTree(ana, 'Alma');
    const note = await addNote(ana, 'x');
    await insertObservations(
      opened.db,
      note,
      [
        { tree: tree.id, kind: 'fruitlets', on: day('2026-06-28') },
        { tree: tree.id, kind: 'fruitlets', on: day('2025-06-28') },
        { tree: null, kind: 'frost', on: day('2026-04-02') },
      ],
      'ana',
      NOW,
    );
    const season = seasonOf(TODAY, 'N');
    expect((await observationsOfTrees(opened.db, [tree.id], season)).map(({ day: on }) => on)).toEqual([
      '2026-06-28',
    ]);
    expect((await gardenObservations(opened.db, ana.id, season)).map(({ kind: what }) => what)).toEqual([
      'frost',
    ]);
  });

  it('takes a note back once, and with it what it logged', async () => {
    const tree = await addTree(ana, 'Alma');
    const note = await addNote(ana, 'x');
    await insertObservations(opened.db, note, [{ tree: tree.id, kind: 'tipped', on: TODAY }], 'ana', NOW);
    expect(await undoNote(opened.db, note, NOW)).toEqual([tree.id]);
    expect(await undoNote(opened.db, note, NOW)).toBeNull();
    expect(await observationsOfTrees(opened.db, [tree.id], null)).toEqual([]);
    expect(await lastNote(opened.db, ana.id)).toBeNull();
  });

  it('closes a question once', async () => {
    const ask = { what: 'tree', trees: [], kinds: [], open: [] } as const;
    const note = await insertNote(opened.db, {
      memberId: ana.id,
      text: 'x',
      writtenOn: TODAY,
      ask,
      now: NOW,
    });
    expect(note?.ask).toEqual(ask);
    expect(await closeQuestion(opened.db, note?.id ?? 0)).toBe(true);
    expect(await closeQuestion(opened.db, note?.id ?? 0)).toBe(false);
  });

  it('takes nothing of a transaction that fails', async () => {
    const failing = opened.db.transaction(async (tx) => {
      await insertTree(tx, { memberId: ana.id, name: 'Half', addedOn: TODAY, createdAt: NOW });
      throw new Error('pulled the plug');
    });
    await expect(failing).rejects.toThrow('pulled the plug');
    expect(await treesOf(opened.db, ana.id)).toEqual([]);
  });

  it('works out how a tree stands from what is on record', async () => {
    const member = { ...ana, heatEnd: '10-15' as Member['heatEnd'] };
    const tree = await updateTree(opened.db, (await addTree(ana, 'Late one')).id, { ripening: 'late' });
    const standing = await standingOf(opened.db, member, tree, TODAY);
    // Common practice, no source: heat end 15 October, a late kind, decision on 7 July.
    expect([standing.result.verdict, standing.result.decisionDate]).toEqual(['watch', '2026-07-07']);
  });
});
