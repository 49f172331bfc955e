import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCsv, unharmed } from '../../src/club/spreadsheet.ts';

/** Read back by a parser that knows nothing of how it was written. */
const readBack = (csv: string) => parse(csv, { bom: true }) as string[][];

describe('CSV for a spreadsheet', () => {
  // OWASP, "CSV Injection": cells that begin with = + - @, a tab or a carriage return are run as formulas.
  it.each(['=HYPERLINK("http://example.org")', '+1+1', '-2+3', '@SUM(A1)', '\t=1+1', '\r=1+1'])(
    'never lets %j begin a cell',
    (text) => {
      const [, [cell = ''] = []] = readBack(toCsv(['name'], [[text]]));
      expect(cell).toMatch(/^'/);
      expect(unharmed(cell)).toBe(text);
    },
  );

  it('keeps every text through a round trip, and no cell begins like a formula', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'grapheme', minLength: 1 }), { minLength: 1, maxLength: 5 }),
        (texts) => {
          const rows = readBack(
            toCsv(
              texts.map((_, i) => `c${i}`),
              [texts],
            ),
          );
          const cells = rows[1] ?? [];
          expect(cells.map(unharmed)).toEqual(texts);
          for (const cell of cells) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
        },
      ),
    );
  });

  // RFC 4180: lines end with CRLF, quotes are doubled. The byte-order mark is what spreadsheets know UTF-8 by.
  it('is RFC 4180 with a byte-order mark', () => {
    expect(
      toCsv(
        ['a', 'b'],
        [
          ['x "y"', 1.5],
          [null, true],
        ],
      ),
    ).toBe('\uFEFFa,b\r\n"x ""y""",1.5\r\n,yes\r\n');
  });
});
