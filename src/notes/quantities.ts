import type { WeightUnit } from '../engine/observation.ts';
import { type Item, isAnyOf, makeItem } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { FRACTION_WORDS, readNumber, UNITS } from './numbers.ts';
import { readShare } from './shares.ts';

/** A number of things, or a weight. */
export interface Quantity {
  readonly value: number;
  readonly unit: WeightUnit | null;
  /** "2 of 7", "one of them": a part of the whole. */
  readonly ofMore: boolean;
}

/** Words after a number that make it a measure of something else. */
const MEASURES = wordSet(
  'leaf leaves node nodes inch inches in cm mm m ft feet foot gal gallon gallons l litre litres liter liters degrees degree deg f c days day weeks week months month years year hours hour hrs hr mins minutes min am pm percent ml yard yards metres meters acres miles mph km buds? ppm psi quid bucks dollars pounds? points foot tall high wide deep ish? times watt watts season seasons summers winters springs zone',
);
/** Words before a number that make it a name or a place. */
const LABELS = wordSet(
  'node nodes zone stage week day page step number no # $ £ € @ leaf phase version round age year route usda below above minus hit reached temp temps plus row bed plot bench shelf item entry episode station bay section part',
);

const GUESSES = new Set(['maybe', 'perhaps', 'possibly', 'poss', 'nearer', 'nearly']);

const NUM: ReadonlySet<string> = new Set(['NUM']);
const NUM1: ReadonlySet<string> = new Set(['NUM', 'NUM1']);
const NUM2: ReadonlySet<string> = new Set(['NUM', 'NUM2']);
const WEIGHT: ReadonlySet<string> = new Set(['WEIGHT']);
const MEASURE: ReadonlySet<string> = new Set(['MEASURE']);

/** Puts numbers, ranges, dozens, fractions and weights in one item each. */
export function findQuantities(items: readonly Item[]): Item[] {
  return dropBracketedWeights(joinQuantities(items));
}

/** "5 figs (0.4 lb) off the celeste": what they weighed, where a number of them is said already. */
function dropBracketedWeights(items: Item[]): Item[] {
  const at = items.findIndex(
    (item, i) =>
      item.quantity?.unit &&
      items[i - 1]?.text === '(' &&
      items[i + 1]?.text === ')' &&
      items.slice(Math.max(0, i - 5), i).some((each) => each.quantity && !each.quantity.unit),
  );
  if (at >= 0) items.splice(at - 1, 3);
  return items;
}

function joinQuantities(items: readonly Item[]): Item[] {
  const out: Item[] = [];
  for (let i = 0; i < items.length; ) {
    const read = readQuantity(items, i, out);
    const item = items[i];
    if (!item) break;
    if (read) {
      const last = items[read.end - 1] ?? item;
      const typed = items
        .slice(i, read.end)
        .map((each) => each.typed)
        .join(' ');
      out.push(
        read.measure
          ? makeItem('word', read.product ? 'npk' : 'measure', typed, MEASURE, item.start, last.end)
          : makeItem('quantity', 'quantity', typed, classesFor(read.quantity), item.start, last.end, read),
      );
      i = read.end;
    } else {
      out.push(item);
      i++;
    }
  }
  return out;
}

function classesFor({ value, unit }: Quantity): ReadonlySet<string> {
  if (unit) return WEIGHT;
  return value === 1 ? NUM1 : value === 2 ? NUM2 : NUM;
}

export interface Read {
  readonly quantity: Quantity;
  readonly end: number;
  readonly measure: boolean;
  /** N-P-K of a fertiliser. */
  readonly product?: boolean;
}

function readQuantity(items: readonly Item[], i: number, out: readonly Item[]): Read | null {
  const share = readShare(items, i, out);
  if (share) return share;
  // "figs x 11", "x11"
  const times = ['x', '×', 'qty', 'qnty'].includes(items[i]?.text ?? '') && items[i + 1]?.type === 'number';
  const number = readNumber(items, times ? i + 1 : i);
  if (!number) return null;
  const before = out.at(-1);
  const earlier = out.at(-3);
  let { value, end } = number;
  // "one (1) fig"
  if (
    items[end]?.text === '(' &&
    items[end + 2]?.text === ')' &&
    readNumber(items, end + 1)?.value === value &&
    readNumber(items, end + 1)?.end === end + 2
  )
    end += 3;
  let ofMore = false;
  // 5-1-1, 20-20-20: a product, not a number of anything.
  if (items[end]?.text === '-' && items[end + 2]?.text === '-' && items[end + 3]?.type === 'number') {
    return { quantity: { value, unit: null, ofMore }, end: end + 4, measure: true, product: true };
  }
  // "4 shoots of 11": the eleven is what the four are part of.
  if (before?.text === 'of' && earlier?.type === 'quantity')
    return { quantity: { value, unit: null, ofMore }, end, measure: true };
  if (value === 0) return null;
  // "the two kadotas": which trees, not how many figs.
  const trees = items[end]?.mention;
  if (
    trees?.all &&
    trees.ids.length === value &&
    items[i]?.text !== 'pair' &&
    (items[i]?.type === 'word' || ['the', 'my', 'our', 'both'].includes(items[i - 1]?.text ?? ''))
  )
    return { quantity: { value, unit: null, ofMore }, end, measure: true };
  // A year.
  if (
    value >= 1900 &&
    value < 2100 &&
    items[i]?.type === 'number' &&
    end === i + 1 &&
    items[i]?.text.length === 4
  )
    return null;
  // "one or two" is not one.
  if (value === 1 && items[end]?.text === 'or' && readNumber(items, end + 1)?.value === 2) {
    return { quantity: { value, unit: null, ofMore }, end: end + 2, measure: true };
  }
  // "4-5", "3 or 4", "20 to 30": the low end; "2 of 7": the part.
  const joint = items[end];
  if (joint && ['-', '–', 'to', 'or', '~', 'of', '/'].includes(joint.text)) {
    const skip = ['the', 'my', 'its'].includes(items[end + 1]?.text ?? '') ? 2 : 1;
    const second = readNumber(items, end + skip);
    if (second && (joint.text === 'of' || joint.text === '/' || second.value > value)) {
      ofMore = joint.text === 'of' || joint.text === '/';
      // "2 to 3 dozen"
      if (!ofMore && items[second.end - 1]?.text === 'dozen' && value < second.value / 12) value *= 12;
      end = second.end;
    }
  }
  // "14, maybe 15"
  const guess = items[end]?.text === ',' ? end + 1 : end;
  if (GUESSES.has(items[guess]?.text ?? '')) {
    const second = readNumber(items, guess + 1);
    if (second && second.value > value) end = second.end;
  }
  if (items[end]?.text === 'or' && ['so', 'thereabouts', 'more'].includes(items[end + 1]?.text ?? ''))
    end += 2;
  if (
    ['+', 'ish', 'odd', 'x', 'plus', '~'].includes(items[end]?.text ?? '') &&
    items[end + 1]?.type !== 'number'
  ) {
    // "30+", "30ish", "3x"; a "+" before another event joins clauses.
    const glued = items[end]?.start === items[end - 1]?.end;
    if (glued || items[end]?.text !== '+') end++;
  }
  if (items[end]?.text === '-' && ['odd', 'ish'].includes(items[end + 1]?.text ?? '')) end += 2;
  const unitAt =
    ['a', 'of'].includes(items[end]?.text ?? '') && UNITS.has(items[end + 1]?.text ?? '') ? end + 1 : end;
  const unit = UNITS.get(items[unitAt]?.text ?? '');
  if (unit !== undefined && !(items[unitAt]?.text === 'g' && value < 5)) {
    end = unitAt + 1;
    if (items[end]?.text === 'and') {
      const half = items[end + 1]?.text === 'a' ? end + 2 : end + 1;
      const fraction = FRACTION_WORDS.get(items[half]?.text ?? '');
      if (fraction !== undefined) {
        value += fraction;
        end = half + 1;
      }
    }
    const ounces = unit === 'lb' ? readNumber(items, items[end]?.text === 'and' ? end + 1 : end) : null;
    if (ounces && UNITS.get(items[ounces.end]?.text ?? '') === 'oz') {
      value += ounces.value / 16;
      end = ounces.end + 1;
    }
    if (items[end]?.text === 'of') end++;
    return { quantity: { value, unit, ofMore }, end, measure: false };
  }
  const next = items[end];
  // "tipped the alma at five": leaves, or the hour.
  if (
    before?.text === 'at' &&
    (next === undefined || next.type !== 'word' || AFTER_A_PLACE.has(next.text)) &&
    out.some((item) => isAnyOf(item, ['TIPPED', 'TIP', 'TIPPING']))
  )
    return { quantity: { value, unit: null, ofMore }, end, measure: true };
  if (next && ['%', '°', '"', ':', '″'].includes(next.text))
    return { quantity: { value, unit: null, ofMore }, end: end + 1, measure: true };
  if (next && MEASURES.has(next.text) && !(next.text === 'in' && !/^\d/.test(items[i]?.text ?? ''))) {
    if (next.text === 'in' && next.start !== items[end - 1]?.end)
      return { quantity: { value, unit: null, ofMore }, end, measure: false };
    return {
      quantity: { value, unit: null, ofMore },
      end: ['leaf', 'leaves', 'node', 'nodes'].includes(next.text) ? end : end + 1,
      measure: true,
    };
  }
  if (
    before &&
    (LABELS.has(before.text) || isStopOfTour(before, items, end)) &&
    // "this year 12 on the ronde"
    !(before.text === 'year' && ['this', 'last'].includes(out.at(-2)?.text ?? '')) &&
    // "300g celeste plus 5 adriatic"
    !(before.text === 'plus' && (next?.mention || (next && isAnyOf(next, ['FRUIT', 'SIZE', 'RIPE'])))) &&
    // "passed round 8 figs"
    !(before.text === 'round' && (next?.mention || (next && isAnyOf(next, ['FRUIT', 'SIZE', 'RIPE'])))) &&
    /^\d/.test(items[i]?.text ?? '') &&
    !isMended(out, items[end])
  ) {
    return { quantity: { value, unit: null, ofMore }, end, measure: true };
  }
  // "one" by itself is mostly a pronoun.
  if (items[i]?.text === 'one' && end === i + 1 && !oneCounts(items, i, before)) return null;
  return { quantity: { value, unit: null, ofMore }, end, measure: false };
}

/** "stop 2 on the garden tour": which one, no number of shoots. */
function isStopOfTour(before: Item, items: readonly Item[], end: number): boolean {
  if (!['stop', 'bus'].includes(before.text)) return false;
  const next = items[end];
  if (next === undefined || next.type === 'mark') return true;
  return (
    ['on', 'of', 'in'].includes(next.text) && !items.slice(end + 1, end + 3).some((item) => item.mention)
  );
}

const AFTER_A_PLACE = new Set(['on', 'for', 'with', 'and', 'then', 'but', 'as', 'this', 'so', 'today']);
/** "5, no, 6", "6 on the alma, no 8": the second number puts the first right. */
function isMended(out: readonly Item[], after: Item | undefined): boolean {
  if (out.at(-1)?.text !== 'no') return false;
  if (out.at(-2)?.type === 'mark' && (after === undefined || after.type === 'mark'))
    return out.slice(-7, -2).some((item) => item.type === 'quantity');
  return [out.at(-2), out.at(-3)].some((item) => item?.type === 'quantity');
}

const FRESHLY = new Set(['straight', 'right', 'fresh', 'warm', 'clean']);

function oneCounts(items: readonly Item[], i: number, before: Item | undefined): boolean {
  const next = items[i + 1];
  if (!next || (next.type === 'mark' && ',.!;'.includes(next.text) && before?.classes.has('PICKED')))
    return (
      before !== undefined &&
      (before.classes.has('PICKED') ||
        before.classes.has('HAVE') ||
        before.text === 'just' ||
        before.text === 'only')
    );
  if (
    before &&
    (before.classes.has('SIZE') ||
      ['the', 'this', 'that', 'which', 'no', 'other', 'each', 'every', 'not'].includes(before.text))
  ) {
    return false;
  }
  if (
    [
      'of',
      'off',
      'from',
      'on',
      'more',
      'ripe',
      'fig',
      'per',
      'at',
      'each',
      'picked',
      'eaten',
      'harvested',
    ].includes(next.text)
  )
    return true;
  // "one straight off the ronde"
  if (FRESHLY.has(next.text)) return ['off', 'from', 'outta'].includes(items[i + 2]?.text ?? '');
  // "one king breba"
  if (next.mention) return items[i + 2]?.classes.has('FRUIT') === true;
  return isAnyOf(next, ['FRUIT', 'BUD', 'BUMP', 'CUTTING', 'SHOOT', 'SIZE', 'BREBA']);
}
