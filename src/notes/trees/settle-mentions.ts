import type { Item } from '../items.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { GENERIC } from './described.ts';
import type { Found } from './named-at.ts';

const TREE_CLASSES: ReadonlySet<string> = new Set(['TREE']);

const PLURALISERS = new Set(['neither', 'both', 'all']);

const EXCLUDING = wordSet(`
  not except excluding bar minus than excepting from but besides without
`);

const BETWEEN = wordSet(`
  the , ( ) - – — its it is i mean that aka ... .. … my one : thats as in
`);

/** Joins mentions that narrow one another and puts each in one item. */
export function settle(items: readonly Item[], found: readonly (Found & { at: number })[]): Item[] {
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
