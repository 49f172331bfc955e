import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { OpenedDatabase } from '../../src/records/database.ts';
import { openTestDatabase } from '../support/postgres.ts';
import { openTerminalClub, type TerminalClub } from '../support/terminal-club.ts';

let opened: OpenedDatabase;
let club: TerminalClub;

beforeAll(async () => {
  opened = await openTestDatabase('embedded');
  club = await openTerminalClub(opened, '2026-06-20');
});
afterAll(async () => {
  club.close();
  await opened.close();
});

const namesOf = async () =>
  ((await club.data('/tree list')).trees as { tree: string }[]).map(({ tree }) => tree);

describe('names in any odd form', () => {
  it.each([
    '🌳🍈',
    `O'Rourke "the second"`,
    `Robert'); drop table tree;--`,
    'constructor',
    '__proto__',
    'toString',
    'null',
    'a:b',
    'ñandú Éé',
    'x'.repeat(100),
    '#2',
    '@everyone',
    '<@123>',
    '*bold* _it_ ~~x~~',
  ])('%j is taken literally, found again, and ends up in verdicts as typed', async (name) => {
    expect(await club.ask(`/tree add name:${name}`)).toMatchObject({ ok: true });
    expect(await namesOf()).toContain(name);
    expect((await club.data(`/tip tree:${name}`)).tree).toBe(name);
    expect(await club.ask(`/tree edit tree:${name} ripening:late`)).toMatchObject({ ok: true });
  });

  it.each([
    ['x'.repeat(101), 'name-too-long'],
    ['x'.repeat(500), 'name-too-long'],
    ['a\u0007b', 'name-unprintable'],
    ['a\u0000b', 'name-unprintable'],
    ['a\u202Eb', 'name-unprintable'],
    ['\uD800', 'name-unprintable'],
  ])('%j is refused with a sentence, and nothing is added', async (name, error) => {
    const before = await namesOf();
    const reply = await club.ask(`/tree add name:${name}`);
    expect(reply).toMatchObject({ ok: false, data: { error } });
    expect(reply.text).toMatch(/\.$/);
    expect(await namesOf()).toEqual(before);
  });
});

describe('options that cannot be taken', () => {
  it.each([
    ['/garden set caution:22', 'not-a-number'],
    ['/garden set caution:one', 'not-a-number'],
    ['/garden set units:K', 'not-a-choice'],
    ['/garden set zone:Mars/Olympus', 'no-such-zone'],
    ['/garden set heat_end:whenever', 'date-not-understood'],
    ['/garden set heat_end:30 February', 'date-not-understood'],
    ['/garden set lat:40', 'half-a-position'],
    ['/garden set lat:91 lon:0', 'not-a-number'],
    ['/garden set heat_mark:20', 'mark-out-of-range'],
    ['/garden set', 'nothing-to-set'],
    ['/garden set place:Nowhere-in-particular-at-all', 'no-such-place'],
    ['/garden weather', 'no-place'],
    ['/garden weather file:/no/such/file.csv', 'no-such-file'],
    ['/tree add name:Bad span:12', 'span-not-understood'],
    ['/tree add name:Bad span:80-70', 'span-not-understood'],
    ['/tree add name:Bad ripening:soon', 'not-a-choice'],
    ['/tree add name:Bad started:next year', 'started-later'],
    ['/tree add cultivar:Alma', 'option-missing'],
    ['/tree edit tree:zzzzzz ripening:late', 'no-such-tree'],
    ['/tip tree:zzzzzz', 'no-such-tree'],
    ['/note', 'option-missing'],
    ['/due days:0', 'not-a-number'],
    ['/due whose:them', 'not-a-choice'],
    ['/frobnicate', 'no-such-command'],
    ['#99', 'no-such-button'],
  ])('%s is answered with one sentence and changes nothing', async (line, error) => {
    const [garden, names] = [await club.data('/garden show'), await namesOf()];
    const reply = await club.ask(line);
    expect(reply).toMatchObject({ ok: false, data: { error } });
    expect(reply.text.trim()).not.toBe('');
    expect(await club.data('/garden show')).toEqual(garden);
    expect(await namesOf()).toEqual(names);
  });
});

it('answers any line at all, and the next one too', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 80 }), async (text) => {
      // A line is what stands between two line ends, and a moved day would move the season away.
      const line = text.replaceAll(/[\r\n\u2028\u2029]/g, ' ').replace(/^\s*@/, 'at ');
      const said = await club.type(line);
      expect(said.at(-1)?.kind).toBe('reply');
    }),
    { numRuns: 60 },
  );
  expect(await club.ask('/tree list')).toMatchObject({ ok: true });
});
