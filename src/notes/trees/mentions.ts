import type { RosterTree } from '../contract.ts';
import type { Item } from '../items.ts';
import { countSlips } from '../spelling.ts';
import { namesBeginning, ORDINARY_NAMES } from './cultivar-names.ts';
import { NUMBER_LEADS, plainNumber, type RosterIndex, rosterIndex } from './roster-index.ts';

/** A tree named in a message. */
export interface Mention {
  /** Every tree it may mean; with `all`, every tree it does mean. Empty: a tree that is not on the roster. */
  readonly ids: readonly number[];
  /** "both kadotas": all of `ids` are meant. */
  readonly all: boolean;
}

const TREE_CLASSES: ReadonlySet<string> = new Set(['TREE']);
const PLACE_LEADS = new Set([
  'by',
  'in',
  'on',
  'near',
  'at',
  'against',
  'beside',
  'next',
  'to',
  'behind',
  'under',
  'of',
  'from',
  'outside',
  'inside',
  'into',
  'onto',
  'over',
  'along',
  'off',
  'around',
  'through',
  'towards',
  'past',
  'up',
]);
const ARTICLES = new Set([
  'the',
  'my',
  'our',
  'that',
  'this',
  'a',
  'your',
  'his',
  'her',
  'their',
  'back',
  'front',
  'other',
]);
const GENERIC = new Set([
  'tree',
  'plant',
  'bush',
  'one',
  'un',
  'guy',
  'fella',
  'boy',
  'girl',
  'specimen',
  'bugger',
  'beast',
  'chap',
  'lad',
  'lass',
]);
const VERBISH = [
  'BE',
  'HAVE',
  'AUX',
  'TIPPED',
  'PICKED',
  'DROPPED',
  'PRUNED',
  'LEAFED',
  'BRANCHED',
  'RIPEN',
  'RIPE',
  'WATERED',
  'ROOTED',
  'DORMANT',
  'TROUBLE',
  'SNIPPED',
];
const PLURALISERS = new Set(['neither', 'both', 'all']);

interface Found {
  readonly ids: readonly number[];
  readonly end: number;
  readonly strong: boolean;
  readonly plural: boolean;
}

/** Puts every tree mention in one item. Place words count only where no tree is named by its own name. */
export function findMentions(items: readonly Item[], roster: readonly RosterTree[]): Item[] {
  const index = rosterIndex(roster);
  const found: (Found & { at: number })[] = [];
  for (let i = 0; i < items.length; ) {
    const one = mentionAt(items, i, index);
    if (one) {
      found.push({ ...one, at: i });
      i = one.end;
    } else i++;
  }
  narrowBySize(items, found, index);
  const strong = found.some((each) => each.strong);
  const pair = found.filter((each) => each.strong && each.ids.length > 1).flatMap((each) => each.ids);
  const kept = found.filter(
    (each) =>
      each.strong ||
      (items[each.at - 1]?.text === 'the' && each.ids.length === 1 && pair.includes(each.ids[0] ?? -1)) ||
      isDescribed(items, each.at, each.end, strong),
  );
  return settle(items, kept);
}

const OF_THE_PAIR = new Set(['of', 'the', 'two', 'my', 'both', 'pair', 'our', 'those']);

/** "the taller of the two kadotas"; "talk kadota", where the slip made another word of it. */
function narrowBySize(items: readonly Item[], found: (Found & { at: number })[], index: RosterIndex): void {
  for (let k = found.length - 1; k >= 0; k--) {
    const named = found[k];
    if (!named?.strong || named.ids.length < 2) continue;
    const before = found[k - 1];
    if (before && !before.strong && before.end > before.at) {
      const between = items.slice(before.end, named.at);
      const ids = before.ids.filter((id) => named.ids.includes(id));
      if (ids.length > 0 && between.length > 0 && between.every((item) => OF_THE_PAIR.has(item.text))) {
        found.splice(k - 1, 2, { ...named, ids, at: before.at, plural: false });
        continue;
      }
    }
    const word = items[named.at - 1]?.text ?? '';
    if (word.length < 4 || items[named.at - 1]?.type !== 'word') continue;
    for (const [size, ids] of index.weak) {
      const narrowed = named.ids.filter((id) => ids.has(id));
      if (narrowed.length !== 1 || size[0] !== word[0] || size.length < 4 || countSlips(word, size, 1) > 1)
        continue;
      found[k] = { ...named, ids: narrowed, at: named.at - 1 };
      break;
    }
  }
}

function mentionAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const item = items[i];
  if (!item || item.type === 'date' || item.type === 'vague') return null;
  const whole = numberedNameAt(items, i, index);
  if (whole) return whole;
  const numbered = numberedAt(items, i, index);
  if (numbered) return numbered;
  if (item.type !== 'word') return null;
  if (['size', 'sized', 'sizes'].includes(items[i + 1]?.text ?? '')) return null;
  const run = runAt(items, i, index);
  const named = cultivarAt(items, i, index);
  if (named && (!run || named.end > run.end || (!run.strong && named.end === run.end))) {
    // "celeste improved" is not on the roster, but "tall kadota" goes on with the roster's own words.
    return named;
  }
  return run;
}

const LONGEST_NAME_WORDS = 8;

/** A whole name that ends in a number, such as "Terrace 1", whatever its words mean elsewhere; the longest. */
function numberedNameAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  if (items[i]?.type !== 'word') return null;
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

const CONNECTORS = new Set(['de', 'of', 'du', 'the', '-', 'la', 'dark']);

function runAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const first = items[i];
  if (!first) return null;
  const start = wordIds(first.text, index);
  if (!start) return null;
  let ids: readonly number[] = start;
  let strong = index.strong.has(first.text);
  let plural = isPlural(first.text, index);
  let end = i + 1;
  for (;;) {
    let at = end;
    if (CONNECTORS.has(items[at]?.text ?? '')) at++;
    const next = items[at];
    const more = next?.type === 'word' ? wordIds(next.text, index) : null;
    if (!next || !more) break;
    const both: readonly number[] = ids.filter((id) => more.includes(id));
    if (both.length === 0) break;
    ids = both;
    strong ||= index.strong.has(next.text);
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

function wordIds(word: string, index: RosterIndex): number[] | null {
  const strong = index.strong.get(word);
  const weak = index.weak.get(word);
  if (!strong && !weak) return null;
  return [...new Set([...(strong ?? []), ...(weak ?? [])])];
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
      const ends = !next || next.type !== 'word' || VERBISH.some((verb) => next.classes.has(verb));
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

/** Whether weak words stand as a description: "the tall one", "the one by the shed", "tall one". */
function isDescribed(items: readonly Item[], at: number, end: number, named: boolean): boolean {
  const before = items[at - 1]?.text ?? '';
  const next = items[end];
  let lead = at - 1;
  while (lead >= 0 && ARTICLES.has(items[lead]?.text ?? '')) lead--;
  const placed = PLACE_LEADS.has(items[lead]?.text ?? '');
  if (
    next &&
    (GENERIC.has(next.text) || ((next.text === 'fig' || next.text === 'pot') && !isCountable(items, end)))
  ) {
    return (
      !placed ||
      !named ||
      items[lead]?.text === 'off' ||
      items[lead]?.text === 'from' ||
      items[lead]?.text === 'on' ||
      items[lead]?.text === 'of' ||
      items[lead]?.text === 'to'
    );
  }
  if (placed) {
    const head = items[lead - 1]?.text ?? '';
    const further = items[lead - 2]?.text ?? '';
    if (
      GENERIC.has(head) ||
      (!named && ['fig', 'it', 'thats', 'is', 'pot'].includes(head)) ||
      (head === 'next' && GENERIC.has(further))
    )
      return true;
    return false;
  }
  if (named) {
    // "kadota (tall)", "the kadota, the tall one": settled later; alone a size says nothing.
    return before === '(' || (before === 'the' && (!next || next.type === 'mark'));
  }
  const verb = !next || next.type === 'mark' || VERBISH.some((name) => next.classes.has(name));
  return verb && (before === 'the' || before === '' || at === 0 || items[at - 1]?.type === 'mark');
}

function isCountable(items: readonly Item[], at: number): boolean {
  return items[at + 1]?.type === 'number';
}

const EXCLUDING = new Set([
  'not',
  'except',
  'excluding',
  'bar',
  'minus',
  'than',
  'excepting',
  'from',
  'but',
  'besides',
  'without',
]);
const BETWEEN = new Set([
  'the',
  ',',
  '(',
  ')',
  '-',
  '–',
  '—',
  'its',
  'it',
  'is',
  'i',
  'mean',
  'that',
  'aka',
  '...',
  '..',
  '…',
  'my',
  'one',
  ':',
  'thats',
  'as',
  'in',
]);

function settle(items: readonly Item[], found: readonly (Found & { at: number })[]): Item[] {
  const mentions: { at: number; end: number; ids: readonly number[]; all: boolean; strong: boolean }[] = [];
  for (const each of found) {
    const start = leadingWords(items, each.at);
    let end = each.end;
    const generic = items[end]?.text ?? '';
    if (GENERIC.has(generic) && generic !== 'one') end++;
    else if (!each.strong && (generic === 'one' || generic === 'fig' || generic === 'pot')) end++;
    const both = items.slice(Math.max(0, start - 1), each.at).some((item) => PLURALISERS.has(item.text));
    let ids = each.ids;
    const other = items
      .slice(Math.max(0, each.at - 2), each.at)
      .some((item) => item.text === 'other' || item.text === 'second');
    const previous = mentions.at(-1);
    if (other && previous && previous.ids.length === 1 && ids.length > 1)
      ids = ids.filter((id) => !previous.ids.includes(id));
    const between = previous ? items.slice(previous.end, start) : [];
    const excluded = between.some((item) => EXCLUDING.has(item.text)) && between.length <= 4;
    if (
      previous &&
      previous.ids.length > 1 &&
      ids.every((id) => previous.ids.includes(id)) &&
      ids.length < previous.ids.length
    ) {
      if (excluded) {
        mentions[mentions.length - 1] = {
          ...previous,
          ids: previous.ids.filter((id) => !ids.includes(id)),
          all: false,
          end,
        };
        continue;
      }
      if (!previous.all && between.every((item) => BETWEEN.has(item.text)) && between.length <= 4) {
        mentions[mentions.length - 1] = {
          ...previous,
          ids,
          all: false,
          end: items[end]?.text === ')' ? end + 1 : end,
        };
        continue;
      }
    }
    // "little kadota, not the tall one": what is ruled out is not spoken of.
    if (previous && items[start - 1]?.text === 'not' && between.length <= 3 && ids.length === 1) {
      mentions[mentions.length - 1] = { ...previous, end };
      continue;
    }
    // "tall one" after "the kadota" with words between: the same pair, told apart.
    if (
      previous &&
      !each.strong &&
      previous.ids.length > 1 &&
      !previous.all &&
      ids.every((id) => previous.ids.includes(id))
    ) {
      mentions[mentions.length - 1] = { ...previous, ids };
      continue;
    }
    mentions.push({
      at: each.at,
      end,
      ids,
      all:
        ids.length > 1 &&
        (both || each.plural) &&
        !(items[start - 1]?.text === 'one' || items[start - 2]?.text === 'one'),
      strong: each.strong,
    });
  }
  const out: Item[] = [];
  let m = 0;
  for (let i = 0; i < items.length; ) {
    const mention = mentions[m];
    const item = items[i];
    if (!item) break;
    if (mention && i === mention.at) {
      const last = items[mention.end - 1] ?? item;
      out.push({
        text: 'tree',
        typed: items
          .slice(mention.at, mention.end)
          .map((each) => each.typed)
          .join(' '),
        classes: TREE_CLASSES,
        start: item.start,
        end: last.end,
        type: 'tree',
        mention: { ids: mention.ids, all: mention.all },
      });
      i = mention.end;
      m++;
    } else {
      out.push(item);
      i++;
    }
  }
  return out;
}

function leadingWords(items: readonly Item[], at: number): number {
  let start = at;
  while (
    start > 0 &&
    ['the', 'my', 'our', 'other', 'of', 'both', 'all', 'neither'].includes(items[start - 1]?.text ?? '')
  )
    start--;
  return start;
}
