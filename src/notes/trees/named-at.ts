import type { Item } from '../items.ts';
import {
  abbreviatedAt,
  abbreviatedBehind,
  dottedAt,
  opensShortName,
  spacedInitialsAt,
} from './abbreviations.ts';
import { namesBeginning, ORDINARY_NAMES } from './cultivar-names.ts';
import { VERBISH } from './described.ts';
import { isTurnOfPhrase, namelessAt, opensPhrase, unknownOneAt } from './name-phrases.ts';
import { plainNumber } from './plain-numbers.ts';
import { NUMBER_LEADS, type RosterIndex } from './roster-index.ts';

export interface Found {
  readonly ids: readonly number[];
  readonly end: number;
  readonly strong: boolean;
  readonly plural: boolean;
}

/** Whether a tree may be named from an item on; decided once for each word and roster. */
export function mayBeginName(items: readonly Item[], i: number, index: RosterIndex): boolean {
  const { text, typed } = items[i] ?? NO_ITEM;
  // A word mended or spelled out may be short for a name as it was typed, any word with a full stop behind it.
  if (typed !== text || items[i + 1]?.text === '.') return true;
  const before = index.beginning.get(text);
  if (before !== undefined) return before;
  const may =
    NUMBER_LEADS.has(text) ||
    index.numberedBegin.has(text) ||
    index.any.has(text) ||
    namesBeginning(text).length > 0 ||
    opensPhrase(text) ||
    opensShortName(text, index);
  if (index.beginning.size >= MOST_WORDS) index.beginning.clear();
  index.beginning.set(text, may);
  return may;
}

const NO_ITEM = { text: '', typed: '' };
const MOST_WORDS = 5000;

/** The tree named at an item: by number, by the roster's own words, or by a cultivar's name; the longest. */
export function mentionAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const item = items[i];
  if (!item || item.type === 'date' || item.type === 'vague') return null;
  const whole = numberedNameAt(items, i, index);
  if (whole) return whole;
  const numbered = numberedAt(items, i, index);
  if (numbered) return numbered;
  if (item.type !== 'word') return null;
  // "hit the deck"
  if (item.text === 'deck' && ['hit', 'hits', 'hitting'].includes(items[i - 2]?.text ?? '')) return null;
  // "every single one on the deck": where they lie
  if (item.text === 'deck' && liesThere(items, i)) return null;
  if (isTurnOfPhrase(items, i)) return null;
  const nameless = namelessAt(items, i, index) ?? unknownOneAt(items, i, index);
  if (nameless) return nameless;
  if (['size', 'sized', 'sizes'].includes(items[i + 1]?.text ?? '')) return null;
  const run = withInitials(items, i, runAt(items, i, index) ?? shortNameAt(items, i, index), index);
  const named = cultivarAt(items, i, index);
  if (named && (!run || named.end > run.end || (!run.strong && named.end === run.end))) {
    // "celeste improved" is not on the roster, but "tall kadota" goes on with the roster's own words.
    return named;
  }
  // "adri. watered": the full stop of a name cut short.
  const dotted = run?.end === i + 1 ? dottedAt(items, i, index) : null;
  return dotted && dotted.ids.join() === run?.ids.join() ? dotted : run;
}

const LYING = new Set([
  'one',
  'all',
  'lot',
  'everything',
  'them',
  'both',
  'fruit',
  'figs',
  'figlets',
  'splat',
  'fell',
  'fallen',
  'dropped',
  'down',
  'over',
  'scattered',
]);

/** What is said just before "on the deck" has fallen there. */
function liesThere(items: readonly Item[], i: number): boolean {
  const at = items[i - 1]?.text === 'the' ? i - 2 : i - 1;
  if (!['on', 'onto', 'across'].includes(items[at]?.text ?? '')) return false;
  return LYING.has(items[at - 1]?.text ?? '') && !['one', 'tree', 'fig'].includes(items[i + 1]?.text ?? '');
}

/** "ronde d b": the rest of the name by its first letters. */
function withInitials(
  items: readonly Item[],
  i: number,
  run: Found | null,
  index: RosterIndex,
): Found | null {
  const [id] = run?.ids ?? [];
  if (!run || id === undefined || run.ids.length > 1 || run.end !== i + 1) return run;
  let letters = items[i]?.text[0] ?? '';
  for (let end = run.end; end < run.end + 3; end++) {
    const word = items[end]?.type === 'word' ? (items[end]?.typed ?? '') : '';
    if (!/^[a-z]$|^d[eu]$/.test(word)) return run;
    letters += word[0];
    if (end > run.end && (index.initials.get(letters)?.has(id) || index.names.get(letters)?.has(id)))
      return { ...run, end: end + 1 };
  }
  return run;
}

function shortNameAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const dotted = dottedAt(items, i, index);
  if (dotted) return dotted;
  const spaced = spacedInitialsAt(items, i, index);
  if (spaced) return spaced;
  const ids = abbreviatedAt(items, i, index);
  return ids && { ids, end: i + 1, strong: true, plural: false };
}

const LONGEST_NAME_WORDS = 8;

/** A whole name that ends in a number, such as "Terrace 1", whatever its words mean elsewhere; the longest. */
function numberedNameAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  if (items[i]?.type !== 'word' || !index.numberedBegin.has(items[i]?.text ?? '')) return null;
  for (let end = Math.min(items.length, i + LONGEST_NAME_WORDS); end > i + 1; end--) {
    if (!/^\d+$/.test(items[end - 1]?.text ?? '')) continue;
    const text = items
      .slice(i, end)
      .map((item) => item.text)
      .join(' ');
    const ids = index.names.get(text);
    if (ids) return { ids: [...ids], end, strong: true, plural: false };
  }
  return null;
}

function numberedAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const lead = items[i];
  if (!lead || !NUMBER_LEADS.has(lead.text)) return null;
  let at = i + 1;
  while (['#', 'no', 'number', '.', 'num', '-', 'nr'].includes(items[at]?.text ?? '') && at < i + 3) at++;
  const number = items[at];
  if (!number || (number.type !== 'number' && plainNumber(number.text) === number.text)) return null;
  const isWord = number.type === 'word';
  if (isWord && !['pot', 'tub', 'number', 'container', 'p'].includes(lead.text)) return null;
  if (!/^\d{1,3}$/.test(plainNumber(number.text))) return null;
  if (lead.text === 'p' && number.start !== lead.end && items[at - 1]?.text !== '#') return null;
  if (lead.text === '#' && number.start !== lead.end) return null;
  const next = items[at + 1];
  if (
    next &&
    /^(size|sizes|gal|gallons?|l|litres?|liters?|inch|inches|in|cm|x|st|nd|rd|th|"|%|ltr|mm|ft|foot)$/.test(
      next.text,
    ) &&
    (next.start === number.end || next.text !== 'in')
  )
    return null;
  const ids = index.numbered.get(plainNumber(number.text));
  if (!ids) {
    // Only "pot 5" is surely a tree's name; "number 5" may be anything.
    return ['pot', 'tub', 'container', 'p'].includes(lead.text) && at === i + 1 && !isWord
      ? { ids: [], end: at + 1, strong: true, plural: false }
      : null;
  }
  if (
    ['no', 'tree', 'plant', 'bed', 'row', 'spot', 'bin', 'bucket', 'pots', 'number'].includes(lead.text) &&
    isWord &&
    lead.text !== 'number'
  )
    return null;
  if (lead.text === 'no' && at === i + 1) return null;
  return { ids: [...ids], end: at + 1, strong: true, plural: false };
}

const CONNECTORS = new Set(['de', 'd', 'of', 'du', 'the', '-', 'la', 'dark']);

function runAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const first = items[i];
  if (!first) return null;
  const start = index.any.get(first.text);
  if (!start) return null;
  let ids: readonly number[] = start;
  let strong = index.strong.has(first.text);
  let plural = isPlural(first.text, index);
  let end = i + 1;
  for (;;) {
    let at = end;
    // "the kadotas the tall …" goes on with one of them.
    if (CONNECTORS.has(items[at]?.text ?? '') && !(plural && items[at]?.text === 'the')) at++;
    const next = items[at];
    const short = strong || at > end ? null : abbreviatedBehind(next, index);
    const more = next?.type === 'word' ? (index.any.get(next.text) ?? short) : undefined;
    // "celeste shed its figs": a verb, no place.
    if (!next || !more || isVerbHere(items, at)) break;
    const both: readonly number[] = ids.filter((id) => more.includes(id));
    if (both.length === 0) break;
    ids = both;
    strong ||= index.strong.has(next.text) || !index.any.has(next.text);
    plural ||= isPlural(next.text, index);
    end = at + 1;
  }
  // A whole name made of ordinary words ("Back Corner") names the tree too.
  const whole = index.names.get(
    items
      .slice(i, end)
      .map((item) => item.text)
      .join(' '),
  );
  if (whole && end - i > 1) return { ids: [...whole], end, strong: true, plural };
  return { ids, end, strong, plural };
}

const SHED_WHAT = new Set([
  'its',
  'all',
  'every',
  'everything',
  'most',
  'some',
  'half',
  'the',
  'a',
  'both',
  'another',
  'loads',
  'lots',
]);

function isVerbHere(items: readonly Item[], at: number): boolean {
  const next = items[at + 1];
  return (
    items[at]?.text === 'shed' &&
    next !== undefined &&
    (SHED_WHAT.has(next.text) ||
      next.type === 'number' ||
      next.classes.has('FRUIT') ||
      next.classes.has('LEAF'))
  );
}

function isPlural(word: string, index: RosterIndex): boolean {
  return word.endsWith('s') && index.strong.has(word.slice(0, -1));
}

function cultivarAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const first = items[i];
  if (!first) return null;
  for (const name of namesBeginning(first.text)) {
    const end = i + name.words.length;
    let fits = true;
    for (let k = 1; k < name.words.length && fits; k++) fits = items[i + k]?.text === name.words[k];
    if (!fits) continue;
    if (name.words.length === 1 && ORDINARY_NAMES.has(first.text)) {
      const before = items[i - 1]?.text ?? '';
      const next = items[end];
      const ends = next?.type !== 'word' || VERBISH.some((verb) => next.classes.has(verb));
      if (!['the', 'my', 'our'].includes(before) || !ends) continue;
    }
    if (name.words.length === 1 && first.text.length <= 2 && !isAbbreviation(first.text, items, i)) continue;
    const ids = index.cultivars.get(name.cultivar);
    return { ids: ids ? [...ids] : [], end, strong: true, plural: false };
  }
  return null;
}

/** Two letters are an abbreviation where a name may stand: after "the", or first, or before a verb. */
function isAbbreviation(word: string, items: readonly Item[], i: number): boolean {
  if (word === 'hc' || word === 'bt' || word === 'dk' || word === 'bm' || word === 'rdb') return true;
  const before = items[i - 1]?.text;
  return before === undefined || ['the', 'my', 'our', 'on', 'off', 'from'].includes(before);
}
