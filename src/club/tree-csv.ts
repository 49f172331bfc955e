import { parse } from 'csv-parse/sync';
import { UserError } from '../errors.ts';
import { replanTrees } from '../nudges/plan.ts';
import { learnedBefore, lockClub, replanLearned } from '../nudges/plan-learned.ts';
import type { Tree } from '../records/schema.ts';
import { insertTree, nameKeyOf, treesOf, updateTree } from '../records/trees.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { Feature, Input, InputFile } from './feature.ts';
import { type Reply, reply } from './reply.ts';
import { type Cell, toCsv, unharmed } from './spreadsheet.ts';
import { readName } from './text.ts';
import { MOST_TREES } from './tree-add.ts';
import { readTreeOptions, TREE_OPTIONS } from './tree-options.ts';
import { countWords, listWords } from './words.ts';

/** The columns are the options of /tree add, so that both take the same words. */
const COLUMNS = ['name', ...TREE_OPTIONS.map(({ name }) => name)];

/** A list of 2,000 trees stays well under this, bytes. */
const MOST_BYTES = 1_000_000;

export const treeExport: Feature = {
  command: {
    name: 'tree export',
    description: 'Your list of trees as a CSV file',
    visibility: 'only-you',
    options: [],
  },
  async handle(context) {
    const trees = await treesOf(context.db, context.member.id);
    const all = await treesOf(context.db, context.member.id, { withRetired: true });
    const nameOf = new Map(all.map(({ id, name }) => [id, name]));
    const csv = toCsv(
      COLUMNS,
      trees.map((tree) => COLUMNS.map((column) => cellOf(tree, column, nameOf))),
    );
    return reply({
      title: `Your list: ${countWords(trees.length, 'tree')}`,
      text: 'Change it in a spreadsheet or add lines, and hand it back with /tree import. Trees it names are changed, new names are added, and none is taken away.',
      files: [{ name: 'fig-trees.csv', bytes: new TextEncoder().encode(csv) }],
      visibility: 'only-you',
      data: { trees: trees.length },
    });
  },
};

function cellOf(tree: Tree, column: string, nameOf: ReadonlyMap<number, string>): Cell {
  switch (column) {
    case 'name':
      return tree.name;
    case 'cultivar':
      return tree.cultivar;
    case 'ripening':
      return tree.ripening;
    case 'span':
      return tree.spanFrom === null ? null : `${tree.spanFrom}-${tree.spanTo}`;
    case 'started':
      return tree.startedOn;
    case 'kept':
      return tree.kept;
    case 'cover_days':
      return tree.coverDays;
    case 'for':
      return tree.purpose;
    case 'pollinated':
      return tree.pollinated;
    case 'spare':
      return tree.spareWood;
    case 'from':
      return tree.parentTreeId === null ? tree.origin : (nameOf.get(tree.parentTreeId) ?? null);
    default:
      return null;
  }
}

export const treeImport: Feature = {
  command: {
    name: 'tree import',
    description: 'Add or change many trees from a CSV file with the columns of /tree export',
    visibility: 'only-you',
    options: [
      {
        name: 'file',
        type: 'file',
        required: true,
        description: 'a CSV file; only the name column is needed',
      },
    ],
  },
  async handle(context, input) {
    const file = input.file as InputFile;
    const lines = readLines(file);
    return importLines(context, lines);
  },
};

interface Line {
  readonly number: number;
  readonly name: string;
  readonly options: Input;
}

/** Reads all or throws UserError with the line that is wrong. */
function readLines({ name, bytes }: InputFile): Line[] {
  if (bytes.byteLength > MOST_BYTES) {
    throw new UserError(
      'file-too-large',
      `${name} is larger than 1 MB, which no list of trees is. Nothing was changed.`,
    );
  }
  const text = new TextDecoder().decode(bytes).replace(/^\uFEFF/, '');
  const rows = parseCsv(text, name);
  const header = rows[0]?.cells.map((cell) => cell.trim().toLowerCase()) ?? [];
  if (!header.includes('name')) {
    throw new UserError(
      'no-name-column',
      `${name} has no column called "name" in its first line; /tree export gives a file with the right ones. Nothing was changed.`,
    );
  }
  const unknown = header.filter((column) => column !== '' && !COLUMNS.includes(column));
  if (unknown.length > 0) {
    throw new UserError(
      'unknown-column',
      `${name} has a column called "${unknown[0]}", which I do not know; the columns are ${listWords(COLUMNS)}. Nothing was changed.`,
    );
  }
  const lines = rows.slice(1).flatMap(({ cells, number }) => {
    if (cells.every((cell) => cell.trim() === '')) return [];
    const options: Record<string, string> = {};
    for (const [i, column] of header.entries()) {
      const value = unharmed(cells[i] ?? '').trim();
      if (column !== '' && value !== '') options[column] = value;
    }
    const { name: treeName = '', ...rest } = options;
    return [{ number, name: onLine(number, () => readName(treeName, 'The name')), options: rest }];
  });
  if (lines.length === 0) throw new UserError('no-trees', `${name} lists no trees. Nothing was changed.`);
  checkNames(lines);
  return lines;
}

function parseCsv(text: string, name: string): { cells: string[]; number: number }[] {
  const [first = ''] = text.split(/\r?\n/, 1);
  // A spreadsheet set to a language with decimal commas writes semicolons; some write tabs.
  const delimiter = first.includes('\t') ? '\t' : first.includes(';') && !first.includes(',') ? ';' : ',';
  try {
    const parsed = parse(text, {
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
    }) as unknown as {
      record: string[];
      info: { lines: number };
    }[];
    return parsed.map(({ record, info }) => ({ cells: record, number: info.lines }));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new UserError('not-csv', `${name} could not be read as CSV: ${why}. Nothing was changed.`);
  }
}

function checkNames(lines: readonly Line[]) {
  const seen = new Map<string, number>();
  for (const { name, number } of lines) {
    const key = nameKeyOf(name);
    const before = seen.get(key);
    if (before !== undefined) {
      throw new UserError(
        'name-twice',
        `Lines ${before} and ${number} both name "${name}". Nothing was changed.`,
      );
    }
    seen.set(key, number);
  }
}

/** Takes all lines or none. Parents come first, whatever the order of the lines. */
async function importLines(context: Context, lines: readonly Line[]): Promise<Reply> {
  const { db, member, clock } = context;
  const known = await treesOf(db, member.id, { withRetired: true });
  const byKey = new Map(known.map((tree) => [tree.nameKey, tree]));
  const added = lines.filter(({ name }) => !byKey.has(nameKeyOf(name)));
  if (known.length + added.length > MOST_TREES) {
    throw new UserError(
      'too-many-trees',
      `That would make more than ${MOST_TREES} trees. Nothing was changed.`,
    );
  }
  const today = todayOf(context);
  await db.transaction(async (tx) => {
    const within = { ...context, db: tx };
    await lockClub(tx, context.club.id);
    const cultivars = [...known.map(({ cultivar }) => cultivar), ...lines.map(cultivarOf)];
    const before = await learnedBefore(tx, member, today, cultivars);
    const ids: number[] = [];
    // Twice through: a `from` may name a tree of a later line.
    for (const line of lines) {
      const { from: _, ...options } = line.options;
      const { set } = await onLineAsync(line.number, () => readTreeOptions(within, checked(options)));
      const tree = byKey.get(nameKeyOf(line.name));
      const row =
        tree === undefined
          ? await insertTree(tx, {
              ...set,
              name: line.name,
              memberId: member.id,
              addedOn: today,
              createdAt: clock.now(),
            })
          : await updateTree(tx, tree.id, { ...set, name: line.name });
      if (row === null)
        throw new UserError(
          'name-taken',
          `Line ${line.number}: "${line.name}" is taken. Nothing was changed.`,
        );
      ids.push(row.id);
    }
    for (const [i, line] of lines.entries()) {
      const id = ids[i];
      if (line.options.from === undefined || id === undefined) continue;
      const { set } = await onLineAsync(line.number, () =>
        readTreeOptions(within, { from: line.options.from }),
      );
      if (set.parentTreeId === id) {
        throw new UserError(
          'own-parent',
          `Line ${line.number}: a tree cannot have been taken from itself. Nothing was changed.`,
        );
      }
      await updateTree(tx, id, set);
    }
    await replanLearned(tx, before, clock);
    await replanTrees(tx, member.id, clock, ids);
  });
  const changed = lines.length - added.length;
  return reply({
    title: 'Your list is taken in',
    text: `${countWords(added.length, 'tree')} added, ${changed} changed. /tip shows how they stand.`,
    visibility: 'only-you',
    data: { added: added.length, changed },
  });
}

function cultivarOf({ options }: Line): string | null {
  return typeof options.cultivar === 'string' ? options.cultivar : null;
}

/** The file's words as the command's options: numbers as numbers, choices among those there are. */
function checked(options: Input): Input {
  const input: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(options)) {
    const option = TREE_OPTIONS.find((candidate) => candidate.name === name);
    const text = String(value);
    if (option?.type === 'choice') {
      const choice = option.choices.find((one) => one.value === text.toLowerCase());
      if (choice === undefined) {
        throw new UserError(
          'not-a-choice',
          `"${text}" is not one of ${listWords(option.choices.map((one) => one.value))} for ${name}`,
        );
      }
      input[name] = choice.value;
    } else if (option?.type === 'integer') {
      const number = Number(text);
      if (!Number.isInteger(number) || number < (option.min ?? 0) || number > (option.max ?? number)) {
        throw new UserError(
          'not-a-number',
          `"${text}" is not a whole number from ${option.min} to ${option.max} for ${name}`,
        );
      }
      input[name] = number;
    } else {
      input[name] = text;
    }
  }
  return input;
}

function onLine<Result>(number: number, read: () => Result): Result {
  try {
    return read();
  } catch (error) {
    throw located(number, error);
  }
}

async function onLineAsync<Result>(number: number, read: () => Promise<Result>): Promise<Result> {
  try {
    return await read();
  } catch (error) {
    throw located(number, error);
  }
}

function located(number: number, error: unknown): unknown {
  if (!(error instanceof UserError)) return error;
  const why = error.message.replace(/\.?(?: Nothing was changed\.)?$/, '');
  return new UserError(error.identifier, `Line ${number}: ${why}. Nothing was changed.`);
}
