import type { RosterTree } from '../contract.ts';
import { isAnyOf } from '../item.ts';
import type { Item } from '../items.ts';
import { countSlips } from '../spelling.ts';
import { isDescribed } from './described.ts';
import { otherAt } from './name-phrases.ts';
import { type Found, mayBeginName, mentionAt } from './named-at.ts';
import { type RosterIndex, rosterIndex } from './roster-index.ts';
import { settle } from './settle-mentions.ts';
import { twinsOf } from './twins.ts';

/** A tree named in a message. */
export interface Mention {
  /** Every tree it may mean; with `all`, every tree it does mean. Empty: a tree that is not on the roster. */
  readonly ids: readonly number[];
  /** "both kadotas": all of `ids` are meant. */
  readonly all: boolean;
}

/** Puts every tree mention in one item. Place words count only where no tree is named by its own name. */
export function findMentions(items: readonly Item[], roster: readonly RosterTree[]): readonly Item[] {
  const index = rosterIndex(roster);
  const found: (Found & { at: number })[] = [];
  for (let i = 0; i < items.length; ) {
    const one = mayBeginName(items, i, index)
      ? (mentionAt(items, i, index) ?? otherAt(items, i, found.at(-1), index))
      : null;
    if (one) {
      found.push({ ids: one.ids, end: one.end, strong: one.strong, plural: one.plural, at: i });
      i = one.end;
    } else i++;
  }
  if (found.length === 0) return items;
  narrowBySize(items, found, index);
  const strong = found.some((each) => each.strong);
  const pair = found
    .filter((each) => each.strong && each.ids.length > 0)
    .flatMap(({ ids }) => (ids.length > 1 ? ids : pairOf(ids[0] ?? -1, index)));
  const kept = found.filter(
    (each) =>
      each.strong ||
      (each.ids.length === 1 && pair.includes(each.ids[0] ?? -1) && standsForTwin(items, each)) ||
      isDescribed(items, each.at, each.end, strong),
  );
  return settle(items, kept);
}

/** A tree and the others of its cultivar; none where it is the only one. */
function pairOf(id: number, index: RosterIndex): readonly number[] {
  const twins = twinsOf(id, index);
  return twins.length > 0 ? [id, ...twins] : [];
}

/** "tall and little kadota": the size before names the other of the pair. */
function joinTwin(
  items: readonly Item[],
  found: (Found & { at: number })[],
  k: number,
  index: RosterIndex,
): void {
  const [before, named] = [found[k - 1], found[k]];
  if (!before || !named) return;
  const between = items.slice(before.end, named.at);
  if (
    between.length === 0 ||
    !between.every((item) => ['and', '&', 'the', 'or', 'my', '+'].includes(item.text))
  )
    return;
  for (const pair of index.cultivars.values()) {
    const ids = before.ids.filter((id) => pair.has(id) && !named.ids.includes(id));
    if (ids.length === 1 && named.ids.every((id) => pair.has(id)))
      found[k - 1] = { ...before, ids, strong: true };
  }
}

/** "kadotas: tall 12 figs, little 2": the size alone tells them apart. */
function standsForTwin(items: readonly Item[], { at, end }: Found & { at: number }): boolean {
  const before = items[at - 1];
  const noun = items[end];
  if (noun?.type === 'word' && isAnyOf(noun, ['FRUIT', 'SHOOT', 'LEAF', 'BUD', 'CUTTING', 'NODE', 'PEST']))
    return false;
  if (before?.text === 'the') return true;
  // "the kadota that isnt little"
  if (before?.text === 'not' && ['is', 'are'].includes(items[at - 2]?.text ?? '')) return true;
  if (before && before.type !== 'mark' && !['and', 'but', 'while'].includes(before.text)) return false;
  const next = items[end];
  // "kadota, tall, tipped"
  if (before?.type === 'mark' && next?.type === 'mark') return true;
  return (
    next?.type === 'number' ||
    ['has', 'have', 'got', 'is', 'none', "'s"].includes(next?.text ?? '') ||
    next?.text === ':'
  );
}

/** "tl kadota": the size without its vowels. */
function isAbridged(short: string, size: string): boolean {
  if (!/^[b-df-hj-np-tv-xz]{2,4}$/.test(short) || short[0] !== size[0] || short.length >= size.length)
    return false;
  let at = 0;
  for (const letter of size) if (letter === short[at]) at++;
  return at === short.length;
}

const OF_THE_PAIR = new Set(['one', 'of', 'the', 'two', 'my', 'both', 'pair', 'our', 'those']);

/** "the taller of the two kadotas"; "talk kadota", where the slip made another word of it. */
function narrowBySize(items: readonly Item[], found: (Found & { at: number })[], index: RosterIndex): void {
  for (let k = found.length - 1; k >= 0; k--) {
    const named = found[k];
    const before = found[k - 1];
    if (named?.strong && named.ids.length === 1 && before && !before.strong) joinTwin(items, found, k, index);
    if (!named?.strong || named.ids.length < 2) continue;
    if (before && !before.strong && before.end > before.at) {
      const between = items.slice(before.end, named.at);
      const ids = before.ids.filter((id) => named.ids.includes(id));
      if (ids.length > 0 && between.length > 0 && between.every((item) => OF_THE_PAIR.has(item.text))) {
        found.splice(k - 1, 2, { ...named, ids, at: before.at, plural: false });
        continue;
      }
    }
    const short = items[named.at - 1]?.typed ?? '';
    const abridged = [...index.weak].flatMap(([size, ids]) => (isAbridged(short, size) ? [...ids] : []));
    const meant = named.ids.filter((id) => abridged.includes(id));
    if (meant.length === 1) {
      found[k] = { ...named, ids: meant, at: named.at - 1 };
      continue;
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
