import { afterAll, beforeAll, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';

let opened: OpenedDatabase;
let club: TerminalClub;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
  club = await openTerminalClub(opened, '2026-05-20');
});
afterAll(async () => {
  club.close();
  await opened.close();
});

it('from three records on a cultivar is planned by them for everybody, and replies say how many there are', async () => {
  for (const name of ['ana', 'bo']) await club.type(`${name}> /garden set heat_end:September 20`);
  for (const name of ['Gate', 'Porch', 'Well'])
    await club.type(`ana> /tree add name:${name} cultivar:Kadota`);
  await club.type('bo> /tree add name:Shed cultivar:Dottato');
  const decision = async () => (await club.data('bo> /tip tree:Shed')).decisionDate;
  const before = await decision();
  expect(before).toBe('2026-06-12');

  await club.moveTo('2026-06-01');
  for (const name of ['Gate', 'Porch', 'Well']) await club.type(`ana> main crop fruitlets on ${name}`);
  await club.moveTo('2026-08-05');
  await club.type('ana> picked 3 figs from Gate', 'ana> picked 3 figs from Porch');
  expect(await decision()).toBe(before);
  const third = await club.ask('ana> picked 3 figs from Well');
  expect(third.text).toContain('65 days from first fruitlet to first ripe fig');
  expect(third.text).toMatch(/3 club records of Kadota, and \d+ days to plan it with/);

  // Undo takes the record back, and with it everybody's dates.
  await club.type('ana> #1');
  expect(await decision()).toBe(before);
  await club.type('ana> picked 3 figs from Well');

  const shown = await club.ask('bo> /tip tree:Shed');
  expect(shown.fields.find(({ name }) => name === 'Fruitlet to ripe')?.value).toContain(
    'from 3 club records',
  );
  expect(await decision()).not.toBe(before);

  await club.type('ana> /mydata learning share:no');
  expect(await decision()).toBe(before);
  await club.type('ana> /mydata learning share:yes');
  expect(await decision()).not.toBe(before);
});
