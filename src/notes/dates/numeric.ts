import { dayPhrase } from './absolute.ts';
import { type Input, type Read, type Rule, textAt } from './input.ts';
import { isDottedInProse, isProduct, isSlashInProse } from './slashes-in-prose.ts';
import { fixed, type Phrase, spanOf } from './span.ts';

/** Digits and signs without a space between, e.g. 9/4, 22.8.26, 2026-08-22. */
function partsAt(
  input: Input,
  i: number,
): { parts: { value: number; length: number }[]; sign: string; end: number } | null {
  const first = input.tokens[i];
  const sign = textAt(input, i + 1);
  if (!first || first.digits === '' || (sign !== '/' && sign !== '.' && sign !== '-')) return null;
  const before = input.tokens[i - 1];
  if (first.glued && before && !'(,;:"\'[-–—'.includes(before.text)) return null;
  const parts = [{ value: first.number ?? 0, length: first.digits.length }];
  let j = i + 1;
  while (parts.length < 4 && textAt(input, j) === sign && input.tokens[j]?.glued) {
    const next = input.tokens[j + 1];
    if (!next?.glued || next.digits === '' || next.number === null) break;
    parts.push({ value: next.number, length: next.digits.length });
    j += 2;
  }
  if (parts.length < 2 || parts.length > 3) return null;
  const following = input.tokens[j];
  if (
    following?.glued &&
    (following.isWord || following.text === '/' || following.text === '%' || following.text === '°')
  ) {
    if (!/^t$/.test(following.text)) return null;
  }
  return { parts, sign, end: j };
}

/** "9/4" by the member's order, "1.12.25" and "22.8." day first, "2026-08-22", "8/2026". */
export const readNumeric: Rule = (input, i) => {
  const found = partsAt(input, i);
  if (!found) return null;
  const { parts, sign } = found;
  const [a, b, c] = parts;
  if (!a || !b) return null;
  if (a.length === 4) {
    if (a.value < 1900 || a.value > 2199) return null;
    if (c)
      return c.length > 2 || b.length > 2
        ? null
        : checked(dayPhrase(a.value, b.value, c.value, c.value, found.end), b.value, c.value);
    return sign === '-' && b.length === 2 ? monthOnly(a.value, b.value, found.end) : null;
  }
  if (a.length > 2) return null;
  if (!c && b.length === 4)
    return b.value >= 1900 && b.value < 2200 && sign !== '.' ? monthOnly(b.value, a.value, found.end) : null;
  if (b.length > 2) return null;
  if (c && c.length !== 2 && c.length !== 4) return null;
  const year = !c ? null : c.length === 4 ? c.value : 2000 + c.value;
  if (year !== null && (year < 1900 || year > 2199)) return null;
  if (sign === '-') {
    if (!c || year === null) return null;
    if (c.length === 2 && (isProduct(input, i, found.end) || (a.value === b.value && b.value === c.value)))
      return null;
    if (c.length === 2 && Math.abs(year - input.today.year) > 5) return null;
  }
  if (sign === '.' && !c) {
    const dotted = textAt(input, found.end) === '.' && input.tokens[found.end]?.glued;
    // "1.5" is a number, "15.8" and "01.05" are days.
    if (!dotted && a.length + b.length === 2) return null;
    if (input.prose ? !dotted || !isDottedInProse(input, i) : !dotted && input.tokens.length > found.end)
      return null;
    return checked(
      dayPhrase(null, b.value, a.value, a.value, dotted ? found.end + 1 : found.end),
      b.value,
      a.value,
    );
  }
  if (sign === '/' && !c && input.prose && !isSlashInProse(input, i, a.value, b.value, found.end))
    return null;
  const dayFirst = sign === '.' || (a.value > 12 ? true : b.value > 12 ? false : input.order === 'DMY');
  const [month, dayOfMonth] = dayFirst ? [b.value, a.value] : [a.value, b.value];
  const read = dayPhrase(year, month, dayOfMonth, dayOfMonth, found.end);
  const guessed = sign !== '.' && a.value <= 12 && b.value <= 12 && a.value !== b.value;
  const phrase: Phrase = guessed
    ? { ...read.phrase, assumed: [...read.phrase.assumed, 'order'] }
    : read.phrase;
  return checked({ ...read, phrase }, month, dayOfMonth);
};

/** Numbers that are no month or day at all are no date, not an impossible one. */
function checked(read: Read, month: number, dayOfMonth: number): Read | null {
  return month >= 1 && month <= 12 && dayOfMonth >= 1 && dayOfMonth <= 31 ? read : null;
}

function monthOnly(year: number, month: number, end: number): Read | null {
  if (month < 1 || month > 12) return null;
  const first = Date.UTC(year, month - 1, 1) / 86_400_000;
  const last = Date.UTC(year, month, 1) / 86_400_000 - 1;
  return { phrase: fixed(spanOf(first, last, first + 14)), end };
}
