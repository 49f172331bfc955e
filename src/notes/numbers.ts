import type { WeightUnit } from '../engine/observation.ts';
import type { Item } from './items.ts';

/** "zero" to "twenty", each at its number. */
export const SMALL_NUMBERS =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty'.split(
    ' ',
  );
const TENS = 'thirty forty fifty sixty seventy eighty ninety hundred'.split(' ');
export const NUMBER_WORDS: ReadonlyMap<string, number> = new Map<string, number>([
  ...SMALL_NUMBERS.map((word, i) => [word, i] as const),
  ...TENS.map((word, i) => [word, 30 + i * 10] as const),
  ['couple', 2],
  ['pair', 2],
  ['brace', 2],
  ['trio', 3],
  ['dozen', 12],
  ['fourty', 40],
]);

/** Units of weight as written. */
export const UNITS: ReadonlyMap<string, WeightUnit> = new Map<string, WeightUnit>([
  ...['lb', 'lbs', 'pound', 'pounds', 'pounder'].map((word) => [word, 'lb'] as const),
  ...['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'].map(
    (word) => [word, 'kg'] as const,
  ),
  ...['oz', 'ozs', 'ounce', 'ounces'].map((word) => [word, 'oz'] as const),
  ...['g', 'gr', 'gm', 'gms', 'gram', 'grams', 'gramme', 'grammes'].map((word) => [word, 'g'] as const),
]);

export const FRACTION_WORDS = new Map([
  ['half', 0.5],
  ['quarter', 0.25],
  ['third', 1 / 3],
]);
const GLYPHS = new Map([
  ['½', 0.5],
  ['¼', 0.25],
  ['¾', 0.75],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
]);

/** The number that begins at an item, in digits or words, dozens and halves taken in, with the item after it. */
export function readNumber(items: readonly Item[], i: number): { value: number; end: number } | null {
  const item = items[i];
  if (!item) return null;
  const text = item.text;
  const next = items[i + 1];
  if (item.type === 'number') {
    const glyph = GLYPHS.get(text);
    if (glyph !== undefined) return scaled(glyph, items, i + 1);
    if (next && ['st', 'nd', 'rd', 'th'].includes(next.text) && next.start === item.end) return null;
    const value = Number(text.includes('.') ? text.replaceAll(',', '') : text.replace(',', '.'));
    if (!Number.isFinite(value)) return null;
    // 1/2 lb, 1 1/2 kg
    if (next?.text === '/' && ['2', '3', '4', '8'].includes(items[i + 2]?.text ?? '') && value < 4) {
      const after = items[i + 3]?.text ?? '';
      if (UNITS.has(after) || ['dozen', 'a', 'of', 'doz'].includes(after)) {
        return scaled(value / Number(items[i + 2]?.text), items, i + 3);
      }
      return null;
    }
    const tail = next?.type === 'number' ? GLYPHS.get(next.text) : undefined;
    if (tail !== undefined) return { value: value + tail, end: i + 2 };
    if (next?.type === 'number' && items[i + 2]?.text === '/' && UNITS.has(items[i + 4]?.text ?? '')) {
      return { value: value + Number(next.text) / Number(items[i + 3]?.text), end: i + 4 };
    }
    const half = halfAfter(items, i + 1);
    return half > 0 ? scaled(value + 0.5, items, half) : scaled(value, items, i + 1);
  }
  if (item.type !== 'word') return null;
  if (text === 'a' || text === 'an') {
    if (
      next &&
      ['dozen', 'couple', 'pair', 'brace', 'hundred', 'trio', 'half', 'quarter'].includes(next.text)
    )
      return readNumber(items, i + 1);
    if (next?.text === 'baker' && items[i + 2]?.text === "'s" && items[i + 3]?.text === 'dozen')
      return { value: 13, end: i + 4 };
    if (next?.text === 'bakers' && items[i + 2]?.text === 'dozen') return { value: 13, end: i + 3 };
    if (
      next &&
      [
        'good',
        'nice',
        'ripe',
        'fine',
        'lovely',
        'solid',
        'whole',
        'further',
        'fat',
        'sweet',
        'full',
      ].includes(next.text) &&
      ['dozen', 'couple', 'pair', 'pound', 'kilo'].includes(items[i + 2]?.text ?? '')
    ) {
      return readNumber(items, i + 2) ?? { value: 1, end: i + 2 };
    }
    if (next && UNITS.has(next.text) && next.text.length > 1) return { value: 1, end: i + 1 };
    return null;
  }
  if (text === 'half' || text === 'quarter') {
    const value = text === 'half' ? 0.5 : 0.25;
    let at = i + 1;
    if (['a', 'of'].includes(items[at]?.text ?? '')) at++;
    const what = items[at]?.text ?? '';
    if (what === 'dozen') return { value: value * 12, end: at + 1 };
    if (UNITS.has(what)) return { value, end: at };
    return null;
  }
  if (text === 'three' && (next?.text === 'quarters' || next?.text === 'quarter')) {
    const at = items[i + 2]?.text === 'of' ? i + 3 : i + 2;
    return { value: 0.75, end: items[at]?.text === 'a' ? at + 1 : at };
  }
  // "kilo off the king"
  if (
    WEIGHED.has(text) &&
    ['off', 'of', 'from'].includes(next?.text ?? '') &&
    !PER.has(items[i - 1]?.text ?? '')
  )
    return { value: 1, end: i };
  // "kilo and a half": one of the unit, the half is read with it.
  if (UNITS.has(text) && text.length > 1 && halfAfter(items, i + 1) > 0) return { value: 1, end: i };
  const value = NUMBER_WORDS.get(text);
  if (value === undefined) return null;
  if (text === 'hundred') {
    const rest = readNumber(items, next?.text === 'and' ? i + 2 : i + 1);
    if (rest && rest.value < 100 && Number.isInteger(rest.value) && items[rest.end - 1]?.type === 'word')
      return { value: 100 + rest.value, end: rest.end };
  }
  if (text === 'dozen') {
    const half = halfAfter(items, i + 1);
    if (half > 0) return { value: 18, end: items[half]?.text === 'of' ? half + 1 : half };
    return { value, end: next?.text === 'of' ? i + 2 : i + 1 };
  }
  if (value > 0 && value < 20) {
    const half = halfAfter(items, i + 1);
    if (half > 0) return scaled(value + 0.5, items, half);
  }
  if (value >= 20 && value < 100) {
    const at = next?.text === '-' ? i + 2 : i + 1;
    const ones = NUMBER_WORDS.get(items[at]?.text ?? '');
    if (ones !== undefined && ones > 0 && ones < 10) return scaled(value + ones, items, at + 1);
  }
  if (text === 'couple' || text === 'pair' || text === 'brace') {
    const at = ['of', 'a'].includes(next?.text ?? '') ? i + 2 : i + 1;
    if (items[at]?.text === 'dozen') return { value: value * 12, end: at + 1 };
    if (items[at]?.text === 'hundred') return { value: value * 100, end: at + 1 };
    return { value, end: next?.text === 'of' ? i + 2 : i + 1 };
  }
  return scaled(value, items, i + 1);
}

const WEIGHED = new Set(['kilo', 'pound', 'ounce']);
const PER = new Set(['per', 'each', 'every', 'the', 'for']);
const ANDS = new Set(['and', '&', 'n', '+']);

/** Past "and a half" at an item, or 0. */
function halfAfter(items: readonly Item[], at: number): number {
  if (!ANDS.has(items[at]?.text ?? '')) return 0;
  const half = items[at + 1]?.text === 'a' ? at + 2 : at + 1;
  return items[half]?.text === 'half' ? half + 1 : 0;
}

/** Takes a following "dozen" or "hundred" into the number. */
function scaled(value: number, items: readonly Item[], end: number): { value: number; end: number } {
  const next = items[end]?.text;
  if (next === 'dozen' && value < 30) return { value: value * 12, end: end + 1 };
  if (next === 'hundred') return { value: value * 100, end: end + 1 };
  return { value, end };
}
