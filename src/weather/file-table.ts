import { setImmediate } from 'node:timers/promises';
import { CsvError, parse as parseNow } from 'csv-parse/sync';
import { type Columns, columnsOf, trimmedLength, type UnclearColumns } from './file-columns.ts';
import { lineProblem, problem, type WeatherFileProblem } from './file-types.ts';

/** A table found in a text: its preamble, what its columns are, and where its lines begin. */
export interface FoundTable {
  readonly columns: Columns;
  readonly delimiter: string;
  /** The lines above the header, as they are. */
  readonly preamble: string;
  /** 1-based line of the header. */
  readonly headerLine: number;
  /** Where in the text the line after the header begins. */
  readonly bodyAt: number;
}

const DELIMITERS = [',', ';', '\t', '|'] as const;
const HEADER_WITHIN_LINES = 200;
/** Text handed to the parser between two turns of the event loop; about 10 ms of work. */
const CHUNK = 64 * 1024;
/** More lines than 40 years of hourly readings. */
const MAX_LINES = 400_000;
const MAX_LINE_LENGTH = 20_000;

const DIALECT = {
  relax_column_count: true,
  relax_quotes: true,
  ltrim: true,
  record_delimiter: '\n',
} as const;

/** Finds the line that names a date and temperatures, whatever the delimiter and whatever stands above. */
export function findTable(text: string): FoundTable | WeatherFileProblem {
  let at = 0;
  let unclear: { columns: UnclearColumns; line: number } | null = null;
  for (let line = 1; line <= HEADER_WITHIN_LINES && at < text.length; line++) {
    const end = text.indexOf('\n', at);
    const next = end < 0 ? text.length : end + 1;
    const raw = text.slice(at, end < 0 ? text.length : end);
    for (const delimiter of DELIMITERS) {
      if (!raw.includes(delimiter) || raw.length > MAX_LINE_LENGTH) continue;
      const columns = columnsOf(cellsOf(raw, delimiter));
      if (columns && 'unclear' in columns) unclear ??= { columns, line };
      else if (columns)
        return { columns, delimiter, preamble: text.slice(0, at), headerLine: line, bodyAt: next };
    }
    at = next;
  }
  if (unclear) {
    const which = unclear.columns.headers.map((header) => `“${header}”`).join(', ');
    return problem(
      'unclear-columns',
      `Line ${unclear.line} names more than one ${unclear.columns.unclear}: ${which}. Keep the one to use.`,
      unclear.line,
    );
  }
  const first = text.trimStart().split('\n', 1)[0]?.slice(0, 80) ?? '';
  return problem(
    'no-columns',
    'I found no line that names the columns. I need a date, a high and a low, as in “date,high (°F),low (°F)”; ' +
      `the file begins “${first}”.`,
    1,
  );
}

/**
 * Hands each record under the header to `take`, with its line; `take` may end the reading with a problem.
 * Gives way to other work between chunks.
 */
export async function readTable(
  text: string,
  table: FoundTable,
  take: (cells: readonly string[], line: number) => WeatherFileProblem | null,
  progress: (text: string) => void,
): Promise<WeatherFileProblem | null> {
  const sample = text.slice(0, CHUNK);
  const total = Math.round((text.length / sample.length) * Math.max(1, countLines(sample)));
  let line = table.headerLine + 1;
  let at = table.bodyAt;
  while (at < text.length) {
    const chunk = parseChunk(text, at, table.delimiter, line);
    if ('kind' in chunk) return chunk;
    for (const cells of chunk.records) {
      const trouble = isNothing(cells) ? null : (checkWidth(cells, table, line) ?? take(cells, line));
      if (trouble) return trouble;
      // Every line end inside quotes is a line more.
      line += 1 + (chunk.plain ? 0 : countLines(cells.join('')));
    }
    if (line > MAX_LINES) {
      return problem('too-large', `The file has more than ${MAX_LINES.toLocaleString('en')} lines.`, line);
    }
    at = chunk.end;
    await setImmediate();
    if (text.length > 2 * CHUNK) {
      progress(`reading line ${(line - 1).toLocaleString('en')} of about ${total.toLocaleString('en')}`);
    }
  }
  return null;
}

interface Chunk {
  readonly records: readonly (readonly string[])[];
  /** Where the next one begins. */
  readonly end: number;
  /** Each record is one line. */
  readonly plain: boolean;
}

/** The records of the lines from `at` on, as many as make a chunk; more where a chunk ends within quotes. */
function parseChunk(text: string, at: number, delimiter: string, line: number): Chunk | WeatherFileProblem {
  for (let size = CHUNK; ; size *= 2) {
    const newline = text.lastIndexOf('\n', at + size) + 1;
    const end = newline > at && at + size < text.length ? newline : text.length;
    const lines = text.slice(at, end);
    try {
      const records = parseNow(lines, {
        ...DIALECT,
        delimiter,
        max_record_size: MAX_LINE_LENGTH,
      }) as string[][];
      const ended = lines.endsWith('\n') ? 0 : 1;
      return { records, end, plain: records.length === countLines(lines) + ended };
    } catch (error) {
      if (!(error instanceof CsvError)) throw error;
      if (error.code === 'CSV_QUOTE_NOT_CLOSED' && end < text.length && size < 4 * CHUNK) continue;
      return malformed(error, line);
    }
  }
}

function isNothing(cells: readonly string[]): boolean {
  return (cells[0] ?? '').startsWith('#') || trimmedLength(cells) === 0;
}

function cellsOf(line: string, delimiter: string): readonly string[] {
  try {
    const [cells] = parseNow(line, { ...DIALECT, delimiter }) as string[][];
    return cells ?? [];
  } catch {
    return [];
  }
}

/** More values than the header names: an unquoted decimal comma, most often. */
function checkWidth(cells: readonly string[], table: FoundTable, line: number): WeatherFileProblem | null {
  if (cells.length <= table.columns.width) return null;
  const length = trimmedLength(cells);
  if (length <= table.columns.width) return null;
  const hint =
    table.delimiter === ','
      ? ' If its numbers have decimal commas, put semicolons between the columns or quotes round the numbers.'
      : '';
  return lineProblem(line, `${length} values where the header names ${table.columns.width}.${hint}`);
}

/** `from` is the first line that the parser was given; the record it failed in follows those it finished. */
function malformed(error: CsvError, from: number): WeatherFileProblem {
  const line = from + Number(error.records ?? 0);
  const isQuote = error.code === 'CSV_MAX_RECORD_SIZE' || error.code === 'CSV_QUOTE_NOT_CLOSED';
  const what = isQuote
    ? 'a quotation mark is opened and not closed.'
    : 'this is not the table that the header names.';
  return lineProblem(line, what);
}

function countLines(text: string): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count++;
  return count;
}
