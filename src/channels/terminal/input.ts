import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Input, InputValue, OptionDefinition } from '../../club/feature.ts';
import { UserError } from '../../errors.ts';
import type { ParsedCommand } from './line.ts';

/** Larger than any file a feature takes; the feature itself says what its own limit is. */
const MAX_FILE_BYTES = 32 * 1024 * 1024;

/** The options of a typed command as a handler takes them. Throws UserError on one that cannot be taken. */
export async function readInput(parsed: ParsedCommand): Promise<Input> {
  const { command, options, loose } = parsed;
  const values: Record<string, InputValue> = {};
  for (const option of command.options) {
    const text = options.get(option.name);
    if (text === undefined || text === '') continue;
    values[option.name] = await readOption(option, text);
  }
  if (loose !== '') takeLoose(command.name, command.options, values, loose);
  const missing = command.options.find((option) => option.required && values[option.name] === undefined);
  if (missing) {
    throw new UserError(
      'option-missing',
      `/${command.name} needs ${missing.name}: ${missing.description}. Type it as ${missing.name}:… after the command.`,
    );
  }
  return values;
}

async function readOption(option: OptionDefinition, text: string): Promise<InputValue> {
  switch (option.type) {
    case 'text':
      return text;
    case 'integer':
    case 'number':
      return readNumber(option, text);
    case 'choice':
      return readChoice(option, text);
    case 'file':
      return readTypedFile(text);
  }
}

function readNumber(option: OptionDefinition & { type: 'integer' | 'number' }, text: string): number {
  const value = Number(text.replace(',', '.'));
  const fits =
    Number.isFinite(value) &&
    (option.type === 'number' || Number.isInteger(value)) &&
    value >= (option.min ?? Number.NEGATIVE_INFINITY) &&
    value <= (option.max ?? Number.POSITIVE_INFINITY);
  if (fits) return value;
  const range =
    option.min !== undefined && option.max !== undefined ? ` from ${option.min} to ${option.max}` : '';
  const whole = option.type === 'integer' ? 'a whole number' : 'a number';
  throw new UserError(
    'not-a-number',
    `${option.name} is ${whole}${range}; "${text}" is not. Type ${option.name}:${option.min ?? 1}, for example.`,
  );
}

function readChoice(option: OptionDefinition & { type: 'choice' }, text: string): string {
  const wanted = text.toLowerCase();
  const choice = option.choices.find(
    ({ value, label }) => value.toLowerCase() === wanted || label.toLowerCase() === wanted,
  );
  if (choice) return choice.value;
  const all = option.choices.map(({ value }) => value);
  throw new UserError(
    'not-a-choice',
    `${option.name} is one of ${all.join(', ')}; "${text}" is none of them.`,
  );
}

async function readTypedFile(path: string): Promise<InputValue> {
  try {
    const { size } = await stat(path);
    if (size > MAX_FILE_BYTES) {
      throw new UserError(
        'file-too-large',
        `${basename(path)} has ${Math.ceil(size / 1e6)} MB, which is too large; at most 10 MB can be read.`,
      );
    }
    return { name: basename(path), bytes: await readFile(path) };
  } catch (error) {
    if (error instanceof UserError) throw error;
    throw new UserError(
      'no-such-file',
      `There is no file "${path}" that can be read; give its path from where Ostiole was started.`,
    );
  }
}

/** `/tip alma` and `/note tipped the alma` mean their first text option. */
function takeLoose(
  name: string,
  options: readonly OptionDefinition[],
  values: Record<string, InputValue>,
  loose: string,
) {
  const first = options.find((option) => option.type === 'text' && values[option.name] === undefined);
  if (first !== undefined && options.length <= 3) {
    values[first.name] = loose;
    return;
  }
  const known = options.map((option) => `${option.name}:`).join(' ');
  throw new UserError(
    'loose-words',
    options.length === 0
      ? `/${name} takes nothing after it; "${loose}" is not part of it.`
      : `"${loose}" belongs to no option of /${name}; put one of these before it: ${known}`,
  );
}
