import type { CommandDefinition } from '../../club/feature.ts';

/** What one typed line is. */
export type Line =
  | { readonly kind: 'empty' }
  | { readonly kind: 'move-day'; readonly text: string }
  | { readonly kind: 'press'; readonly number: number }
  | { readonly kind: 'command'; readonly text: string }
  | { readonly kind: 'message'; readonly text: string };

export interface SpokenLine {
  /** Null when the line names no speaker. */
  readonly speaker: string | null;
  readonly line: Line;
}

const SPEAKER = /^([\p{L}\p{N}][\p{L}\p{N}_.'-]{0,31})>\s?(.*)$/su;

export function readLine(raw: string): SpokenLine {
  const spoken = SPEAKER.exec(raw.trim());
  const text = (spoken ? (spoken[2] ?? '') : raw).trim();
  return { speaker: spoken?.[1] ?? null, line: classify(text) };
}

function classify(text: string): Line {
  if (text === '') return { kind: 'empty' };
  if (text.startsWith('/')) return { kind: 'command', text: text.slice(1) };
  if (text.startsWith('@')) return { kind: 'move-day', text: text.slice(1).trim() };
  const press = /^#(\d{1,3})$/.exec(text);
  if (press) return { kind: 'press', number: Number(press[1]) };
  return { kind: 'message', text };
}

/** A command line taken apart: which command, and its options as typed. */
export interface ParsedCommand {
  readonly command: CommandDefinition;
  readonly options: ReadonlyMap<string, string>;
  /** Words that stand before the first option and belong to none. */
  readonly loose: string;
}

/**
 * `tree add name:Pot 3 cultivar:Brunswick` against the commands there are; null when none of them is meant.
 * A value runs to the next ` option:` of that same command, so that it may hold colons and spaces.
 */
export function parseCommand(text: string, commands: readonly CommandDefinition[]): ParsedCommand | null {
  const byLength = [...commands].sort((a, b) => b.name.length - a.name.length);
  const words = text.trim().replaceAll(/\s+/g, ' ');
  const command = byLength.find(({ name }) => {
    const head = words.slice(0, name.length).toLowerCase();
    return head === name && (words.length === name.length || words[name.length] === ' ');
  });
  if (command === undefined) return null;
  // The name's words may have been parted by more than one space.
  const rest = text.trim().replace(new RegExp(`^${command.name.replaceAll(' ', '\\s+')}`, 'i'), '');
  const names = command.options.map((option) => option.name);
  if (names.length === 0) return { command, options: new Map(), loose: rest.trim() };

  const marks = [...rest.matchAll(new RegExp(`(?<=^|\\s)(${names.join('|')}):`, 'gi'))];
  const options = new Map<string, string>();
  marks.forEach((mark, i) => {
    const from = mark.index + mark[0].length;
    const to = marks[i + 1]?.index ?? rest.length;
    options.set((mark[1] ?? '').toLowerCase(), rest.slice(from, to).trim());
  });
  return { command, options, loose: rest.slice(0, marks[0]?.index ?? rest.length).trim() };
}
