import type { Day } from '../engine/day.ts';
import type { Crop, ObservationKind, WeightUnit } from '../engine/observation.ts';
import type { Correction, ReadEvent, Setting } from './contract.ts';
import { type MarkedText, readMarks } from './correction-marks.ts';
import { speaksPlainly } from './doubt-finding.ts';
import type { Item } from './item.ts';
import { readItems } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { readNote } from './read-note.ts';
import { findTree } from './trees/match-trees.ts';
import { rosterIndex } from './trees/roster-index.ts';

/** Words between what is put right that add nothing. */
const FILLING = wordSet(`
  the it was is on i meant one tree fig a that they were and my of all for actually only just from about off in at
  there are now mean think
`);

/** What a message puts right of the note before, or null when it is no correction. */
export function readCorrection(
  text: string,
  setting: Setting,
  last: readonly ReadEvent[],
): Correction | null {
  const plain = text.trim().toLowerCase().replace(/[’‘]/g, "'").slice(0, 120);
  if (last.length === 0 || plain.includes('?') || plain.startsWith('wait for ')) return null;
  const marked = readMarks(plain);
  if (marked === null) return null;
  // "oops, not brebas": of the other crop; "no, not the tall one" does not say which.
  if (marked.right === '') return /^brebas?$/.test(marked.wrong ?? '') ? { crop: 'main' } : null;
  const also = readAlso(marked.right, setting, last);
  if (also) return { also };
  const other = marked.wrong === null ? otherOfPair(marked.right, setting, last) : null;
  if (other !== null) return marked.mark === 'none' ? null : { tree: other };
  const right = readParts(marked.right, setting);
  if (right === null) return null;
  if (marked.mark === 'none') return bareCorrection(right, last);
  const instead = marked.wrong === null ? null : readWrong(marked.wrong, setting, last);
  if (marked.wrong !== null && instead === null) return null;
  const said = readRight(marked, right, setting, last);
  if (said === null || instead === null) return said;
  // Of one sort with what is right: "the pot, not watered" denies.
  const sorts = Object.keys(instead);
  return sorts.length > 0 && sorts.every((sort) => sort in said) ? { ...said, instead } : null;
}

/** What a few words name: a tree, a day, a number, a crop. */
interface Parts {
  readonly named: { tree?: number; on?: Day; count?: number; unit?: WeightUnit; crop?: Crop };
  /** How many of its words are none of these. */
  readonly left: number;
  /** It speaks of figs or shoots. */
  readonly ofFruit: boolean;
  readonly items: readonly Item[];
}

/** Null where it names two trees, a day that is none, or one to come. */
function readParts(text: string, setting: Setting): Parts | null {
  const items = readItems(text, setting).filter((item) => item.type !== 'mark');
  const named: Parts['named'] = {};
  let left = 0;
  let ofFruit = false;
  for (const item of items) {
    const { mention, date, quantity } = item;
    if (mention) {
      if (mention.ids.length !== 1 || named.tree !== undefined) return null;
      const id = mention.ids[0];
      if (id !== undefined) named.tree = id;
    } else if (date) {
      if (date.problem || date.on > setting.today) return null;
      named.on = date.on;
    } else if (quantity) {
      named.count = quantity.value;
      if (quantity.unit) named.unit = quantity.unit;
    } else if (item.classes.has('BREBA')) named.crop = 'breba';
    else if (item.text === 'main') named.crop = 'main';
    else if (item.classes.has('FRUIT') || item.classes.has('SHOOT')) ofFruit = true;
    else if (!FILLING.has(item.text) && !(item.classes.has('DET') && !item.classes.has('NEG'))) left++;
  }
  return { named, left, ofFruit, items };
}

function readRight(
  marked: MarkedText,
  { named, left, items }: Parts,
  setting: Setting,
  last: readonly ReadEvent[],
): Correction | null {
  const { right, mark } = marked;
  if (EARLIER.test(right)) return mark === 'plain' ? { kind: 'remark', on: setting.today } : null;
  if (named.tree === undefined && named.on === undefined && items.length <= 4) {
    const found = findTree(right, setting.roster);
    if (found.kind === 'one' && left > 0 && speaksPlainly(items, setting.today)) return { tree: found.id };
  }
  if (left > 0) return otherKind(marked, named, items, setting, last);
  if (!speaksPlainly(items, setting.today)) return null;
  // "that's 30 off the ronde" is another harvest.
  const counted = last.some(({ tree, count }) => tree === named.tree && count !== undefined);
  if (mark === 'faint' && named.count !== undefined && named.tree !== undefined && !counted) return null;
  return Object.keys(named).length > 0 ? named : null;
}

/** "that was last year": then it is no news of this season. */
const EARLIER = /^(?:from |in )?(?:last (?:year|season|summer)|the year before)$/;

const OF_FRUIT: ReadonlySet<ObservationKind> = new Set([
  'fruitlets',
  'no-fruitlets',
  'buds-single',
  'buds-double',
  'branched',
  'dropped',
  'ripening',
  'picked',
] as const);

/** What a faint word may put in the place of fruit: none of them keeps a nudge back. */
const HARMLESS: ReadonlySet<ObservationKind> = new Set([
  'no-fruitlets',
  'buds-single',
  'buds-double',
  'branched',
] as const);

/** "i meant picked", "no figs actually": something else was done or seen; faintly marked, only of the same fruit. */
function otherKind(
  { right, mark, leads }: MarkedText,
  named: Parts['named'],
  items: readonly Item[],
  setting: Setting,
  last: readonly ReadEvent[],
): Correction | null {
  // "nope. nothing. zilch. king" is a message of its own.
  if (items.length > 6 || /[.!;]\s/.test(right)) return null;
  // What names another tree, or a tree without a word of correction first, stands by itself.
  if (named.tree !== undefined && (!leads || last.every(({ tree }) => tree !== named.tree))) return null;
  const only = readOne(right, setting, last);
  if (!only) return null;
  const akin = OF_FRUIT.has(only.kind) && last.some(({ kind }) => OF_FRUIT.has(kind));
  if (only.kind === 'no-fruitlets' && !akin) return null;
  if ((mark !== 'plain' || named.tree !== undefined) && !(akin && HARMLESS.has(only.kind))) return null;
  const { tree: _, on: __, ...said } = only;
  return { ...named, ...said };
}

/** The one thing told of the tree at hand. */
function readOne(text: string, setting: Setting, last: readonly ReadEvent[]): ReadEvent | null {
  const about = last.flatMap((event) => (event.tree === null ? [] : [event.tree])).slice(0, 1);
  const { ask, logged } = readNote(text, { ...setting, about });
  const only = logged[0];
  return ask === null && logged.length === 1 && only && only.kind !== 'remark' ? only : null;
}

/** "…, not the little one", "… not 3", "… not picked": which of the events is meant. */
function readWrong(
  text: string,
  setting: Setting,
  last: readonly ReadEvent[],
): NonNullable<Correction['instead']> | null {
  const parts = readParts(text, setting);
  if (parts === null) return null;
  const { unit: _, ...named } = parts.named;
  if (parts.left === 0) return named;
  const only = readOne(text, setting, last);
  return only && { kind: only.kind };
}

/** "yesterday", "6", "king was saturday": nothing else they could be said for. */
function bareCorrection(
  { named, left, ofFruit, items }: Parts,
  last: readonly ReadEvent[],
): Correction | null {
  const { tree, on, count, unit, crop } = named;
  if (left > 0 || ofFruit || unit !== undefined || crop !== undefined || items.length > 4) return null;
  // "5 off the alma" is another harvest.
  if (items.some(({ text }) => text === 'off' || text === 'from')) return null;
  if ((on === undefined) === (count === undefined)) return null;
  if (tree === undefined) return items.length <= 2 ? named : null;
  const ofTree = last.filter((event) => event.tree === tree);
  const isNews = on === undefined ? ofTree.every((event) => event.count === undefined) : ofTree.length === 0;
  return isNews ? null : named;
}

const ALSO_FIRST = wordSet('and also plus & +');
const ALSO_LAST = wordSet('too also');
const BOTH = /^both(?: (?:of (?:them|the \S+s)|(?:the )?\S+s))?$/;

/** "both", "and the little one": of which trees the same is true; null where it says anything else. */
function readAlso(text: string, setting: Setting, last: readonly ReadEvent[]): readonly number[] | null {
  const told = onlyTree(last);
  if (told === null) return null;
  if (BOTH.test(text)) {
    const twin = twinOf(told, setting);
    return twin === null ? null : [twin];
  }
  const named = sameOf(text);
  const parts = named === null ? null : readParts(named, setting);
  const tree = parts?.named.tree;
  if (parts === null || tree === undefined || tree === told) return null;
  return parts.left === 0 && !parts.ofFruit && Object.keys(parts.named).length === 1 ? [tree] : null;
}

/** What "and … too" stands around, or null where neither word is said. */
function sameOf(text: string): string | null {
  const words = text.split(/[\s,]+/);
  const from = words.findIndex((word) => !ALSO_FIRST.has(word));
  const asWell = words.at(-2) === 'as' && words.at(-1) === 'well';
  const to = asWell ? words.length - 2 : words.length - (ALSO_LAST.has(words.at(-1) ?? '') ? 1 : 0);
  return from >= 0 && from < to && (from > 0 || to < words.length) ? words.slice(from, to).join(' ') : null;
}

const OTHER = /^(?:the |my )?other(?: (?:one|tree|fig|\S+))?$/;

/** "the other one", of two of a cultivar. */
function otherOfPair(text: string, setting: Setting, last: readonly ReadEvent[]): number | null {
  const told = OTHER.test(text) ? onlyTree(last) : null;
  return told === null ? null : twinOf(told, setting);
}

/** The tree of which all of it tells, or null. */
function onlyTree(last: readonly ReadEvent[]): number | null {
  const tree = last[0]?.tree ?? null;
  return last.every((event) => event.tree === tree) ? tree : null;
}

/** The other tree of its cultivar, if there is just one. */
function twinOf(tree: number, { roster }: Setting): number | null {
  for (const ids of rosterIndex(roster).cultivars.values()) {
    if (!ids.has(tree)) continue;
    const [twin, third] = [...ids].filter((id) => id !== tree);
    return twin !== undefined && third === undefined ? twin : null;
  }
  return null;
}
