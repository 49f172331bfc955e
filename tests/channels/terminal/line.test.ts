import { describe, expect, it } from 'vitest';
import { parseCommand, readLine } from '../../../src/channels/terminal/line.ts';
import type { CommandDefinition } from '../../../src/club/feature.ts';

const text = (name: string) => ({ name, type: 'text' as const, description: name });
const commands: CommandDefinition[] = [
  {
    name: 'tree add',
    description: '',
    visibility: 'everyone',
    options: [text('name'), text('cultivar'), text('from')],
  },
  { name: 'tree list', description: '', visibility: 'everyone', options: [] },
  { name: 'note', description: '', visibility: 'everyone', options: [text('text'), text('tree')] },
];

const optionsOf = (line: string) => Object.fromEntries(parseCommand(line, commands)?.options ?? []);

describe('a typed line', () => {
  it.each([
    ['/tip', { speaker: null, line: { kind: 'command', text: 'tip' } }],
    ['  /tip  ', { speaker: null, line: { kind: 'command', text: 'tip' } }],
    ['#2', { speaker: null, line: { kind: 'press', number: 2 } }],
    ['#2 figs', { speaker: null, line: { kind: 'message', text: '#2 figs' } }],
    ['@2026-07-05', { speaker: null, line: { kind: 'move-day', text: '2026-07-05' } }],
    ['maria> /tip', { speaker: 'maria', line: { kind: 'command', text: 'tip' } }],
    ['maria>3 fruitlets', { speaker: 'maria', line: { kind: 'message', text: '3 fruitlets' } }],
    ['José> hi', { speaker: 'José', line: { kind: 'message', text: 'hi' } }],
    ['temps > 80 today', { speaker: null, line: { kind: 'message', text: 'temps > 80 today' } }],
    ['', { speaker: null, line: { kind: 'empty' } }],
    ['   ', { speaker: null, line: { kind: 'empty' } }],
  ])('reads %j', (raw, expected) => {
    expect(readLine(raw)).toEqual(expected);
  });
});

describe('a typed command', () => {
  it('lets a value run to the next option of its own command', () => {
    expect(optionsOf('tree add name:Pot 3 cultivar:Brunswick')).toEqual({
      name: 'Pot 3',
      cultivar: 'Brunswick',
    });
  });

  it('keeps colons and the names of other commands’ options inside a value', () => {
    expect(optionsOf('note text:at 10:30 saw name: tags tree:Alma')).toEqual({
      text: 'at 10:30 saw name: tags',
      tree: 'Alma',
    });
  });

  it('takes option names in any case and empty values as given but empty', () => {
    expect(optionsOf('tree add NAME:Alma cultivar:')).toEqual({ name: 'Alma', cultivar: '' });
  });

  it('keeps words that stand before the first option', () => {
    expect(parseCommand('note tipped the alma tree:Alma', commands)?.loose).toBe('tipped the alma');
  });

  it('does not take a command for another that begins alike', () => {
    expect(parseCommand('tree address', commands)).toBeNull();
    expect(parseCommand('tree', commands)).toBeNull();
    expect(parseCommand('TREE  LIST', commands)?.command.name).toBe('tree list');
  });

  it('takes names of objects’ own properties for words', () => {
    expect(optionsOf('tree add name:constructor from:__proto__')).toEqual({
      name: 'constructor',
      from: '__proto__',
    });
  });
});
