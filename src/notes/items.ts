import { dropAsides } from './asides.ts';
import type { Setting } from './contract.ts';
import { findDates, findVagueDates, type PlacedHit } from './dates/index.ts';
import { mendWord } from './lexicon/vocabulary.ts';
import { classesOf } from './lexicon/word-classes.ts';
import { mendItems } from './mend-items.ts';
import { joinPlaces } from './places.ts';
import { findQuantities, type Quantity } from './quantities.ts';
import { writeSpokenMarks } from './spoken-marks.ts';
import { tokenise } from './tokens.ts';
import { findMentions, type Mention } from './trees/mentions.ts';
import { type RosterIndex, rosterIndex } from './trees/roster-index.ts';

/** What clauses are made of: a word, a mark, or a phrase already understood (tree, date, quantity). */
export interface Item {
  readonly text: string;
  readonly typed: string;
  readonly classes: ReadonlySet<string>;
  readonly start: number;
  readonly end: number;
  readonly type: 'word' | 'number' | 'mark' | 'tree' | 'date' | 'vague' | 'quantity';
  readonly mention?: Mention;
  readonly date?: PlacedHit;
  readonly quantity?: Quantity;
  /** How many places a list of nodes names. */
  readonly places?: number;
}

const NO_CLASSES: ReadonlySet<string> = new Set();
const DATE_CLASSES: ReadonlySet<string> = new Set(['DATE']);
const OLD_WOOD_CLASSES: ReadonlySet<string> = new Set(['BREBA', 'OLDWOOD']);

/** The message as items, from left to right. */
export function readItems(text: string, setting: Setting): readonly Item[] {
  const words = joinOldWood(readWords(text, setting));
  const dated = placeDates(text, words, setting);
  const named = findMentions(dated, setting.roster);
  return dropAsides(mendItems(joinPlaces(findQuantities(named))));
}

function readWords(text: string, setting: Setting): Item[] {
  const index = rosterIndex(setting.roster);
  return writeSpokenMarks(tokenise(text)).map(({ text: word, typed, start, end, type }) => {
    if (type === 'word') {
      const { text: meant, classes } = meantBy(word, index);
      return { text: meant, typed, classes, start, end, type };
    }
    if (word.startsWith('0') && /^0+$/.test(word))
      return { text: 'zero', typed, classes: classesOf('zero'), start, end, type: 'word' };
    return { text: word, typed, classes: classesOf(word), start, end, type };
  });
}

interface Meant {
  readonly text: string;
  readonly classes: ReadonlySet<string>;
}

/** Words met, by the roster they were mended towards; bounded, since members' words are not. */
const meanings = new WeakMap<RosterIndex, Map<string, Meant>>();
const MOST_MEANINGS = 2000;

function meantBy(word: string, index: RosterIndex): Meant {
  let known = meanings.get(index);
  if (!known) {
    known = new Map();
    meanings.set(index, known);
  }
  const before = known.get(word);
  if (before) return before;
  const isName = index.strong.has(word) || index.weak.has(word);
  const text = isName ? word : mendWord(word, index.spelling);
  const meant = { text, classes: classesOf(text) };
  if (known.size >= MOST_MEANINGS) known.clear();
  known.set(word, meant);
  return meant;
}

const OLD = new Set(['last', 'previous', 'old', 'older', 'prior']);
const OF_A_YEAR = new Set(['year', 'years', "'s", 'season', 'seasons', 'summer', 'summers']);
const WOOD = new Set(['wood', 'growth', 'shoots', 'branches', 'canes', 'stems', 'branch', 'stem', 'shoot']);

/** "old wood", "last year's wood": where brebas grow, and no past season. */
function joinOldWood(items: readonly Item[]): Item[] {
  const out: Item[] = [];
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    if (OLD.has(item.text)) {
      let j = i + 1;
      while (j < i + 4 && OF_A_YEAR.has(items[j]?.text ?? '')) j++;
      const wood = items[j];
      if (wood && WOOD.has(wood.text) && (j > i + 1 || wood.text === 'wood' || wood.text === 'growth')) {
        out.push({ ...item, text: 'oldwood', classes: OLD_WOOD_CLASSES, end: wood.end });
        i = j;
        continue;
      }
    }
    out.push(item);
  }
  return out;
}

function placeDates(text: string, items: readonly Item[], setting: Setting): Item[] {
  const dates = findDates(text, { ...setting, lean: 'past' });
  const vague = findVagueDates(text).filter(
    (hit) =>
      !dates.some((date) => date.index < hit.index + hit.length && hit.index < date.index + date.length),
  );
  if (dates.length === 0 && vague.length === 0) return [...items];
  const oldWood = items.filter((item) => item.text === 'oldwood');
  const spans: Item[] = [
    ...dates.map((date) => spanItem(date, 'date', date)),
    ...vague.map((hit) => spanItem(hit, 'vague', undefined)),
  ]
    // "last yrs wood" is where brebas grow, no date.
    .filter((span) => !oldWood.some((item) => span.start < item.end && item.start < span.end))
    .sort((a, b) => a.start - b.start);
  const out: Item[] = [];
  let s = 0;
  for (const item of items) {
    while (s < spans.length && (spans[s]?.end ?? 0) <= item.start) {
      const span = spans[s++];
      if (span && !out.includes(span)) out.push(span);
    }
    const span = spans[s];
    if (span && item.start >= span.start && item.start < span.end && item.text !== 'oldwood') {
      if (!out.includes(span)) out.push(span);
      continue;
    }
    out.push(item);
  }
  for (; s < spans.length; s++) {
    const span = spans[s];
    if (span && !out.includes(span)) out.push(span);
  }
  return out;
}

function spanItem(
  hit: { index: number; length: number; text: string },
  type: 'date' | 'vague',
  date: PlacedHit | undefined,
): Item {
  // A full stop after the phrase ends the sentence, not the date; that of "13.6." belongs to it.
  const dotted = /\d\.\d{1,2}\.$/.test(hit.text);
  const typed = dotted ? hit.text : hit.text.replace(/(?<![\s.,;:!?])[\s.,;:!?]+$/, '');
  // Not the bare word, which patterns may spell out ("ripe date").
  const span = { text: `<${type}>`, typed, start: hit.index, end: hit.index + typed.length, type };
  return date ? { ...span, classes: DATE_CLASSES, date } : { ...span, classes: NO_CLASSES };
}
