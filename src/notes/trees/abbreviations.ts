import { isAnyOf } from '../item.ts';
import type { Item } from '../items.ts';
import { isOrdinary } from '../lexicon/ordinary.ts';
import { classesOf } from '../lexicon/word-classes.ts';
import { wordSet } from '../lexicon/word-set.ts';
import { skeleton } from '../spelling.ts';
import { VERBISH } from './described.ts';
import type { Found } from './named-at.ts';
import type { RosterIndex } from './roster-index.ts';

/**
 * Short names made on the spot: initials ("tk" for Tall Kadota), beginnings ("adri", "bruns") and, behind a word of
 * size, a letter ("tall k"). They stand for every tree they fit, so that two fits are asked about.
 */
export function abbreviatedAt(
  items: readonly Item[],
  i: number,
  index: RosterIndex,
): readonly number[] | null {
  const whole = index.glued.get(items[i]?.typed ?? '');
  if (whole) return [...whole];
  const word = shortWord(items[i]);
  if (word === null || index.any.has(items[i]?.text ?? '')) return null;
  if (word.length < 4 && !standsAsName(items, i)) return null;
  const initials = index.initials.get(word);
  if (initials) return [...initials];
  return beginning(word, index, word.length > 2) ?? petName(word, index);
}

/** Whether a word by itself may be short for a name, or open one that is spelled letter by letter. */
export function opensShortName(word: string, index: RosterIndex): boolean {
  return index.glued.has(word) || /^[a-z]$/.test(word) || mayBeShort(word);
}

/** The trees that a short word behind other words of a name leaves: "tall k", "short kad". */
export function abbreviatedBehind(item: Item | undefined, index: RosterIndex): readonly number[] | null {
  const word = item?.type === 'word' ? item.typed : '';
  if (!/^[a-z]{1,6}$/.test(word) || NO_INITIALS.has(word) || (word.length > 1 && isOrdinary(word)))
    return null;
  return beginning(word, index, true);
}

/** "l. kadota", "miss. ripening": a name cut short with a full stop, where that leaves one tree. */
export function dottedAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const [item, dot, next] = [items[i], items[i + 1], items[i + 2]];
  if (item?.type !== 'word' || dot?.text !== '.' || dot.start !== item.end || !next || next.start === dot.end)
    return null;
  const word = item.typed;
  if (!/^[a-z]{1,6}$/.test(word)) return null;
  if (word.length < 3) {
    const begun = index.own.get(next.text);
    const ids =
      begun && [...(index.initials.get(`${word}${next.text[0] ?? ''}`) ?? [])].filter((id) => begun.has(id));
    return ids?.length === 1 ? { ids, end: i + 3, strong: true, plural: false } : null;
  }
  const ids = beginning(word, index, false);
  const cutShort = [...index.own.keys()].some((name) => name.startsWith(word));
  return ids && cutShort ? { ids, end: i + 2, strong: true, plural: false } : null;
}

/** "r de b", "r d b": initials one by one, the small words of the name spelled out. */
export function spacedInitialsAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  let letters = '';
  let end = i;
  for (; end < items.length && end < i + 4; end++) {
    const item = items[end];
    const word = item?.type === 'word' ? item.typed : '';
    if (!/^[a-z]$/.test(word) && !(letters !== '' && SMALL_WORDS.has(word))) break;
    letters += word[0];
  }
  if (letters.length < 3) return null;
  const ids = index.initials.get(letters) ?? index.names.get(letters);
  return ids ? { ids: [...ids], end, strong: true, plural: false } : null;
}

const SMALL_WORDS = new Set(['de', 'du', 'di', 'of', 'the', 'la', 'le', 'von']);

const NO_INITIALS = new Set([
  'a',
  'i',
  'u',
  'r',
  'n',
  'w',
  's',
  'x',
  'o',
  'y',
  'in',
  'on',
  'at',
  'is',
  'it',
  'to',
]);

function shortWord(item: Item | undefined): string | null {
  if (item?.type !== 'word') return null;
  const { typed } = item;
  let isShort = shortness.get(typed);
  if (isShort === undefined) {
    isShort = mayBeShort(typed);
    if (shortness.size >= MOST_WORDS) shortness.clear();
    shortness.set(typed, isShort);
  }
  return isShort ? typed : null;
}

/** Words met, by whether they may be short for a name; bounded. */
const shortness = new Map<string, boolean>();
const MOST_WORDS = 5000;

function mayBeShort(word: string): boolean {
  if (!/^[a-z]{2,7}$/.test(word) || KEPT.has(word)) return false;
  return !(word.length > 2 && isOrdinary(word)) && classesOf(word).size === 0;
}

/** Short words of chat that are no names. */
const KEPT = wordSet(`
  us so if or as be by do go he me my no of we an hi oh ah eh um uh er re vs ie eg et ps id ha ho
  la el pa ma gm gn fu pm am lb kg oz ml cm mm ok pk hr hrs min mins sec secs tbh imo omg lol wow yay ugh btw fyi
`);

/** "celst", "kadta": the name with letters left out; "clst", "rnd": all its vowels. */
function leavesOut(word: string, name: string): boolean {
  if (word.length >= 3 && word[0] === name[0] && !/[aeiou]/.test(word) && word === bones(name)) return true;
  if (word.length < 4 || !name.startsWith(word.slice(0, 2))) return false;
  let at = 0;
  for (const letter of name) if (letter === word[at]) at++;
  return at === word.length;
}

function bones(name: string): string {
  return (name[0] ?? '') + skeleton(name.slice(1)).replace(/(.)\1+/g, '$1');
}

/** "brunny", "missy", "kaddy", "almie": the beginning of a name as one calls a friend. */
function petName(word: string, index: RosterIndex): readonly number[] | null {
  const stem = /^([a-z]{3,})(?:y|ie|ey|o|z|ster)$/.exec(word)?.[1];
  if (stem === undefined) return null;
  const single = stem.at(-1) === stem.at(-2) ? stem.slice(0, -1) : stem;
  return single.length < 3 ? null : beginning(single, index, true);
}

/** Two letters are too few to ask about: they stand for one tree or none. */
function beginning(word: string, index: RosterIndex, several: boolean): readonly number[] | null {
  const ids = new Set<number>();
  for (const [name, trees] of index.own) {
    if (name.length > word.length && (name.startsWith(word) || leavesOut(word, name)))
      for (const id of trees) ids.add(id);
  }
  return ids.size === 1 || (ids.size > 1 && several) ? [...ids] : null;
}

const NAME_AFTER = new Set([
  'the',
  'my',
  'our',
  'on',
  'off',
  'from',
  'of',
  'in',
  'and',
  '&',
  'both',
  'or',
  '+',
]);

/** A name may stand here: by a mark or an article, and before a verb, a number or a mark. */
function standsAsName(items: readonly Item[], i: number): boolean {
  const before = items[i - 1];
  const next = items[i + 1];
  const opens =
    before === undefined ||
    before.type === 'mark' ||
    NAME_AFTER.has(before.text) ||
    before.type === 'date' ||
    isAnyOf(before, VERBISH);
  const goesOn =
    next === undefined ||
    next.type !== 'word' ||
    isAnyOf(next, VERBISH) ||
    isAnyOf(next, ['FRUIT', 'NONE', 'SNIPPED', 'AND', 'SHOOT', 'ADV', 'NEG', 'HAVE']);
  return opens && goesOn;
}
