/**
 * Whether a number can be the id of a row. What a button carries is text that anybody may have written, and
 * PostgreSQL answers a number that does not fit its column with an error.
 */
export function isRowId(id: number): boolean {
  return Number.isInteger(id) && id > 0 && id < 2 ** 31;
}
