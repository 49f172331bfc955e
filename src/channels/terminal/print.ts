import { styleText } from 'node:util';
import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';
import type { Field, Reply } from '../../club/reply.ts';

/** One thing the assistant says, with where it goes. */
export interface Utterance {
  /** The input line that brought it about; empty at the start. */
  readonly for: string;
  readonly kind: 'reply' | 'nudge' | 'roundup';
  readonly to: string;
  readonly reply: Reply;
  readonly files: readonly WrittenFile[];
}

export interface WrittenFile {
  readonly name: string;
  readonly bytes: number;
  readonly path: string;
}

/** The contract with scripts: one object a line. */
export function toJsonLine(said: Utterance): string {
  const { reply } = said;
  return JSON.stringify({
    for: said.for,
    kind: said.kind,
    to: said.to,
    ok: reply.ok,
    title: reply.title,
    text: reply.text,
    fields: reply.fields,
    buttons: reply.buttons.map((button) => button.label),
    files: said.files,
    data: reply.data,
  });
}

const MAX_COLUMNS = 88;
/** Wider field names than this go on a line of their own. */
const MAX_NAME_COLUMNS = 26;

export interface Page {
  readonly columns: number;
  readonly colour: boolean;
}

/** What people read. Every line of it but the first is indented, so that turns are easy to tell apart. */
export function toPage(said: Utterance, page: Page): string {
  const { reply } = said;
  const columns = Math.max(40, Math.min(page.columns, MAX_COLUMNS));
  const strong = (text: string) => (page.colour ? styleText('bold', text) : text);
  const faint = (text: string) => (page.colour ? styleText('dim', text) : text);

  const heading =
    said.kind === 'reply' ? strong(reply.title) : `${strong(reply.title)} ${faint(`→ ${said.to}`)}`;
  const parts = [
    reply.text === '' ? '' : wrap(reply.text, columns - 2),
    layOutFields(reply.fields, columns - 2, strong),
    said.files.map((file) => faint(`File: ${file.path}`)).join('\n'),
    layOutButtons(reply, columns - 2),
  ].filter((part) => part !== '');
  return [heading, ...parts.map((part) => indent(part))].join('\n\n').replace('\n\n', '\n');
}

function layOutFields(fields: readonly Field[], columns: number, strong: (text: string) => string): string {
  const widths = fields.map((field) => stringWidth(field.name)).filter((width) => width <= MAX_NAME_COLUMNS);
  const nameColumns = Math.max(0, ...widths);
  return fields
    .map(({ name, value }) => {
      if (stringWidth(name) > MAX_NAME_COLUMNS) {
        return `${strong(wrap(name, columns))}\n${indent(wrap(value, columns - 4), '    ')}`;
      }
      const [first = '', ...more] = wrap(value, columns - nameColumns - 2).split('\n');
      const padding = ' '.repeat(nameColumns - stringWidth(name) + 2);
      return [
        `${strong(name)}${padding}${first}`,
        ...more.map((line) => ' '.repeat(nameColumns + 2) + line),
      ].join('\n');
    })
    .join('\n');
}

function layOutButtons(reply: Reply, columns: number): string {
  const labels = reply.buttons.map(
    (button, i) => `[#${i + 1}\u00a0${button.label.replaceAll(' ', '\u00a0')}]`,
  );
  // Non-breaking spaces keep a label in one piece while the row wraps.
  return wrap(labels.join('  '), columns).replaceAll('\u00a0', ' ');
}

function wrap(text: string, columns: number): string {
  return text
    .split('\n')
    .map((line) => wrapAnsi(line, columns, { hard: true }))
    .join('\n');
}

function indent(text: string, by = '  '): string {
  return text
    .split('\n')
    .map((line) => (line === '' ? '' : by + line))
    .join('\n');
}
