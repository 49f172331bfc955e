import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';

let opened: OpenedDatabase;
let club: TerminalClub;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
  club = await openTerminalClub(opened, '2026-07-02');
  await club.type(
    '/garden set heat_end:September 25',
    '/tree add name:Alma cultivar:Alma',
    '/tree add name:King cultivar:King',
  );
});
afterAll(async () => {
  club.close();
  await opened.close();
});

const dueOf = async (tree: string) =>
  ((await club.data('/due')).items as { tree: string; kind: string; on: string }[]).filter(
    (item) => item.tree === tree,
  );

describe('the last note', () => {
  it('is put right by a bare message, and stands again when that is taken back', async () => {
    await club.ask('tipped the alma sunday');
    const before = await dueOf('Alma');
    const corrected = await club.ask('no, monday');
    expect(corrected.data).toMatchObject({ logged: [{ tree: 'Alma', kind: 'tipped', on: '2026-06-29' }] });
    expect(await dueOf('Alma')).not.toEqual(before);
    const undone = await club.ask('undo');
    expect(undone.text).toContain('The correction');
    expect(undone.text).toContain('stands again');
    expect(await dueOf('Alma')).toEqual(before);
  });

  it('is off the record by "never mind"', async () => {
    await club.ask('3 figs on the king');
    expect((await club.ask('never mind')).data).toMatchObject({ undone: true });
  });

  it('keeps what the correction does not speak of', async () => {
    await club.ask('pinched the king sunday & 4 off the alma');
    expect((await club.ask('no, it was monday')).data).toMatchObject({
      logged: [
        { tree: 'King', kind: 'tipped', on: '2026-06-29' },
        { tree: 'Alma', kind: 'picked', on: '2026-07-02', count: 4 },
      ],
    });
  });
});
