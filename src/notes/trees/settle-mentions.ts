import { type Item, makeItem } from '../item.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { UNITS } from '../numbers.ts';
import { joinAlternatives } from './alternatives.ts';
import { GENERIC } from './described.ts';
import { leadingWords, leaveOut } from './leave-out.ts';
import type { Found } from './named-at.ts';

const TREE_CLASSES: ReadonlySet<string> = new Set(['TREE']);

const EXCLUDED = new Set(['excluded', 'excepted', 'aside', 'omitted']);

const PLURALISERS = new Set(['neither', 'both', 'all', 'either', 'every', 'each']);

const EXCLUDING = wordSet(`
  not except excluding bar minus than excepting from but besides without
`);

const BETWEEN = wordSet(`
  the , ( ) - – — its it is i mean that aka ... .. … my one : thats as in
`);

/** Joins mentions that narrow one another and puts each in one item. */
export function settle(items: readonly Item[], found: readonly (Found & { at: number })[]): Item[] {
  const mentions: Settled[] = [];
  for (const each of found) {
    const start = leadingWords(items, each.at);
    let end = each.end;
    const generic = items[end]?.text ?? '';
    if (GENERIC.has(generic) && generic !== 'one') end++;
    else if (!each.strong && (generic === 'one' || generic === 'fig' || generic === 'pot')) end++;
    const both = items.slice(Math.max(0, start - 1), each.at).some((item) => PLURALISERS.has(item.text));
    let ids = each.ids;
    const other = items
      .slice(Math.max(0, each.at - 2), each.at + 1)
      .some((item) => item.text === 'other' || item.text === 'second');
    const previous = mentions.at(-1);
    if (other && previous && previous.ids.length === 1 && ids.length > 1)
      ids = ids.filter((id) => !previous.ids.includes(id));
    const between = previous ? items.slice(previous.end, start) : [];
    // "the kadotas, tall one excluded"
    const left = EXCLUDED.has(items[end]?.text ?? '');
    if (left && previous && previous.ids.length > 1) end++;
    const excluded =
      (left && between.length <= 3) ||
      // "kadota, the one thats not tall"
      ((between.length <= 4 || (between.length <= 7 && between.at(-1)?.text === 'not')) &&
        between.some(
          (item, k) =>
            EXCLUDING.has(item.text) &&
            // "10 kadotas from the tall one" leaves none out.
            (item.text !== 'from' || APART.has(between[k - 1]?.text ?? '')),
        ));
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
    // "not the little kadota, the other one": the one that is left.
    const not = previous ? leadingWords(items, previous.at) - 1 : -1;
    if (
      previous?.ids.length === 1 &&
      ids.length === 1 &&
      ids[0] !== previous.ids[0] &&
      (other || !each.strong) &&
      ['not', 'nope'].includes(items[not]?.text ?? '') &&
      between.every((item) => BETWEEN.has(item.text) || item.text === 'but')
    ) {
      mentions[mentions.length - 1] = { ...previous, at: not, ids, end };
      continue;
    }
    // "little kadota, not the tall one": what is ruled out is not spoken of.
    if (previous && items[start - 1]?.text === 'not' && between.length <= 3 && ids.length === 1) {
      // "the little kadota i tipped, not the tall": what stands between is kept.
      if (between.every((item) => BETWEEN.has(item.text) || item.text === 'not'))
        mentions[mentions.length - 1] = { ...previous, end };
      else mentions.push({ at: start - 1, end, ids: [], all: false, strong: each.strong, topic: true });
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
    // "a couple of kadotas off the tall tree": the plural is the fruit, the size the tree.
    if (
      previous &&
      (previous.all || countsFruit(items, leadingWords(items, previous.at), previous.ids.length)) &&
      !each.strong &&
      ids.length === 1 &&
      previous.ids.includes(ids[0] ?? -1) &&
      ['off', 'from', 'on'].includes(items[start - 1]?.text ?? '') &&
      !items.slice(Math.max(0, previous.at - 3), previous.at).some((item) => PLURALISERS.has(item.text))
    ) {
      mentions[mentions.length - 1] = { ...previous, ids, all: false };
      continue;
    }
    mentions.push({
      at: each.at,
      end,
      ids,
      all:
        ids.length > 1 &&
        (both || (each.plural && !countsFruit(items, start, ids.length))) &&
        !(items[start - 1]?.text === 'one' || items[start - 2]?.text === 'one'),
      strong: each.strong,
    });
  }
  return replaceWords(
    items,
    dropTopics(items, joinAlternatives(items, mentions)).map((each, m, all) => leaveOut(items, each, m, all)),
  );
}

/** "1 lb of kadotas", "6 kadotas", "a bowl of kadotas": figs by their tree's name, and which tree it was is not said. */
function countsFruit(items: readonly Item[], start: number, trees: number): boolean {
  const lead = items[start - 1];
  if (lead === undefined || lead.type === 'mark') return false;
  if (lead.type === 'number')
    return (Number(lead.text) !== trees || items.some(isOfFruit)) && isAmount(items, start - 1);
  return (
    UNITS.has(lead.text) ||
    lead.classes.has('CONTAINER') ||
    (AMOUNTS.has(lead.text) && !(lead.text === 'two' && trees === 2))
  );
}

/** "2 kadotas picked": a number of figs, where "2 kadotas watered" are the trees. */
function isOfFruit({ text, classes }: Item): boolean {
  return text === 'off' || classes.has('PICKED') || classes.has('EATEN');
}

/** Not "node 5 kadotas", "pot 3 kadotas", "the 2 kadotas". */
function isAmount(items: readonly Item[], at: number): boolean {
  return !['pot', 'node', 'no', '#', '/', '.', '-', 'the', 'my', 'our', 'both'].includes(
    items[at - 1]?.text ?? '',
  );
}

const APART = new Set(['apart', 'aside', 'away', 'other', 'different']);

const AMOUNTS = wordSet(`
  three four five six seven eight nine ten eleven twelve dozen dozens few some several handful couple more last first
  half loads lots plenty heaps
`);

export interface Settled {
  readonly at: number;
  readonly end: number;
  readonly ids: readonly number[];
  readonly all: boolean;
  readonly strong: boolean;
  /** What is told of comes after, one by one: no tree of its own. */
  readonly topic?: boolean;
}

function replaceWords(items: readonly Item[], mentions: readonly Settled[]): Item[] {
  const out: Item[] = [];
  let m = 0;
  for (let i = 0; i < items.length; ) {
    const mention = mentions[m];
    const item = items[i];
    if (!item) break;
    if (mention && i === mention.at) {
      const last = items[mention.end - 1] ?? item;
      if (!mention.topic) {
        const typed = items
          .slice(mention.at, mention.end)
          .map((each) => each.typed)
          .join(' ');
        const { ids, all } = mention;
        out.push(
          makeItem('tree', 'tree', typed, TREE_CLASSES, item.start, last.end, { mention: { ids, all } }),
        );
      }
      i = mention.end;
      m++;
    } else {
      out.push(item);
      i++;
    }
  }
  return out;
}

/** "of the kadotas the tall has 12 figs and the little 2": the pair only says which two are spoken of. */
function dropTopics(items: readonly Item[], mentions: readonly Settled[]): readonly Settled[] {
  return mentions.map((mention, m) => {
    if (!mention.all || mention.ids.length < 2) return mention;
    const members = mentions
      .slice(m + 1)
      .filter((each) => each.ids.length === 1 && mention.ids.includes(each.ids[0] ?? -1));
    const start = leadingWords(items, mention.at);
    if (members.length < 2 && !(members.length === 1 && start === 0 && items[0]?.text === 'of'))
      return mention;
    const announced = [':', '-', ',', '='].includes(items[mention.end]?.text ?? '') && start === 0;
    return items[start]?.text === 'of' || announced ? { ...mention, at: start, topic: true } : mention;
  });
}
