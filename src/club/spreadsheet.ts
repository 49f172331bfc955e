import { stringify } from 'csv-stringify/sync';

/** What a cell may hold. */
export type Cell = string | number | boolean | null;

/**
 * Rows as CSV (RFC 4180: CRLF, quotes doubled) for a spreadsheet: with a byte-order mark, so that names keep
 * their accents, and with an apostrophe before text that a spreadsheet would run as a formula (OWASP, CSV
 * Injection: text that begins with = + - @, tab or carriage return).
 */
export function toCsv(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return stringify(
    [columns, ...rows].map((row) => row.map(harmless)),
    {
      bom: true,
      record_delimiter: 'windows',
      cast: { boolean: (value) => (value ? 'yes' : 'no') },
    },
  );
}

function harmless(cell: Cell): Cell {
  return typeof cell === 'string' && RUNS.test(cell) ? `'${cell}` : cell;
}

/** A cell's text as it was before `toCsv` made it harmless. */
export function unharmed(text: string): string {
  return /^'+[=+\-@\t\r]/.test(text) ? text.slice(1) : text;
}

const RUNS = /^'*[=+\-@\t\r]/;
