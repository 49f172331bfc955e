import { dropAsides } from './asides.ts';
import { straightenClefts } from './clefts.ts';
import type { Setting } from './contract.ts';
import { findDates, findVagueDates, type PlacedHit } from './dates/index.ts';
import { joinHyphens } from './hyphens.ts';
import { type Item, isAnyOf, itemOf, makeItem, reword } from './item.ts';
import { intern } from './lexicon/intern.ts';
import { mendWord } from './lexicon/vocabulary.ts';
import { classesOf } from './lexicon/word-classes.ts';
import { dropListNumbers } from './list-numbers.ts';
import { mendItems } from './mend-items.ts';
import { spellOrdinals } from './ordinals.ts';
import { joinPlaces } from './places.ts';
import { findQuantities } from './quantities.ts';
import { writeSpokenMarks } from './spoken-marks.ts';
import { tokenise } from './tokens.ts';
import { findMentions } from './trees/mentions.ts';
import { type RosterIndex, rosterIndex } from './trees/roster-index.ts';
import { type Word, wordOf } from './word.ts';

export type { Item };

const NO_CLASSES: ReadonlySet<string> = new Set();
const DATE_CLASSES: ReadonlySet<string> = new Set(['DATE']);
const OLD_WOOD_CLASSES: ReadonlySet<string> = new Set(['BREBA', 'OLDWOOD']);

/** The message as items, from left to right. */
export function readItems(text: string, setting: Setting): readonly Item[] {
  const words = joinOldWood(readWords(text, setting));
  const dated = placeDates(text, words, setting);
  const named = findMentions(dated, setting.roster).map(asNoun);
  return straightenClefts(dropAsides(mendItems(joinPlaces(findQuantities(named)))));
}

function readWords(text: string, setting: Setting): Item[] {
  const index = rosterIndex(setting.roster);
  const known = meaningsTowards(index);
  return joinHyphens(dropListNumbers(spellOrdinals(writeSpokenMarks(tokenise(text))))).map(
    ({ text: word, typed, start, end, type }) => {
      if (type === 'word') {
        const meant = known.get(word) ?? remember(known, word, index);
        return itemOf(meant, typed, start, end);
      }
      if (word.startsWith('0') && /^0+$/.test(word))
        return makeItem('word', 'zero', typed, classesOf('zero'), start, end);
      return makeItem(type, word, typed, classesOf(word), start, end);
    },
  );
}

/** Words met, by the roster they were mended towards; bounded, since members' words are not. */
const meanings = new WeakMap<RosterIndex, Map<string, Word>>();
const MOST_MEANINGS = 2000;

function meaningsTowards(index: RosterIndex): Map<string, Word> {
  let known = meanings.get(index);
  if (!known) {
    known = new Map();
    meanings.set(index, known);
  }
  return known;
}

function remember(known: Map<string, Word>, word: string, index: RosterIndex): Word {
  const isName = index.strong.has(word) || index.weak.has(word);
  const text = isName ? word : intern(mendWord(word, index.spelling));
  const meant = wordOf('word', text, classesOf(text));
  if (known.size >= MOST_MEANINGS) known.clear();
  known.set(word, meant);
  return meant;
}

const DOINGS = ['WATERED', 'TIPPED', 'PICKED', 'PRUNED', 'TAKEN'];

/** "by the shed": the hut, and nothing shed. */
function asNoun(item: Item, i: number, items: readonly Item[]): Item {
  const lead = items[i - 1]?.text ?? '';
  // "nipped the tops an gave it a drink"
  if (item.text === 'an' && i > 0 && isAnyOf(items[i + 1], DOINGS))
    return reword(item, 'and', classesOf('and'));
  // "tips of": what closes a message is no preposition.
  if (item.text === 'of' && i === items.length - 1 && items[i - 1]?.classes.has('APEX'))
    return reword(item, 'off', classesOf('off'));
  // "shd cel 2 pckd": the shed, where no verb is left for "should".
  if (
    item.typed === 'shd' &&
    items[i + 1]?.type === 'tree' &&
    (items[i + 2]?.type === 'number' ||
      items[i + 2]?.type === 'date' ||
      items[i + 2]?.classes.has('TIPPED') === true)
  )
    return reword(item, 'the', classesOf('the'));
  return item.text === 'shed' && ['the', 'my', 'our', 'garden', 'potting', 'tool'].includes(lead)
    ? reword(item, 'hut', NO_CLASSES)
    : item;
}

const OLD = new Set(['last', 'previous', 'old', 'older', 'prior']);
const OF_A_YEAR = new Set(['year', 'years', "'s", 'season', 'seasons', 'summer', 'summers']);
const WOOD = new Set(['wood', 'growth', 'shoots', 'branches', 'canes', 'stems', 'branch', 'stem', 'shoot']);

const STICKS = new Set([
  'wood',
  'growth',
  'stick',
  'sticks',
  'branch',
  'branches',
  'cane',
  'canes',
  'stem',
  'stems',
  'shoot',
  'shoots',
  'twig',
  'twigs',
]);
const SEASONS = new Set(['year', 'season', 'summer']);

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
        out.push(makeItem('word', 'oldwood', item.typed, OLD_WOOD_CLASSES, item.start, wood.end));
        i = j;
        continue;
      }
    }
    // "a stick of last season"
    if (STICKS.has(item.text) && ['of', 'from'].includes(items[i + 1]?.text ?? '')) {
      let j = i + 2;
      if (items[j]?.text === 'the') j++;
      if (OLD.has(items[j]?.text ?? '') && SEASONS.has(items[j + 1]?.text ?? '')) {
        const last = items[j + 1] ?? item;
        out.push(makeItem('word', 'oldwood', item.typed, OLD_WOOD_CLASSES, item.start, last.end));
        i = j + 1;
        continue;
      }
    }
    // "no breba but 6 mains": the other crop.
    if (item.text === 'mains' && items.some((each) => each.classes.has('BREBA'))) {
      out.push(makeItem('word', 'main', item.typed, classesOf('main'), item.start, item.end));
      out.push(makeItem('word', 'crop', item.typed, classesOf('crop'), item.start, item.end));
      continue;
    }
    out.push(item);
  }
  return out;
}

const SOME_DAY = /^(?:some ?day|one day|(?:at )?some point)/i;

function placeDates(text: string, items: readonly Item[], setting: Setting): readonly Item[] {
  const { today, hemisphere, order } = setting;
  const allVague = findVagueDates(text);
  // "some day in spring" is vaguer than the spring in it.
  const dates = findDates(text, { today, hemisphere, order, lean: 'past' }).filter(
    (date) =>
      !allVague.some(
        (hit) =>
          SOME_DAY.test(hit.text) &&
          hit.index < date.index &&
          hit.index + hit.length === date.index + date.length,
      ),
  );
  if (dates.length === 0 && allVague.length === 0) return items;
  const vague = allVague.filter(
    (hit) =>
      !dates.some((date) => date.index < hit.index + hit.length && hit.index < date.index + date.length),
  );
  const oldWood = items.filter((item) => item.text === 'oldwood');
  const spans: Item[] = [
    // "in 2026 the king has 3": so far this year, not on its first day.
    ...dates.map((date) =>
      spanItem(date, 'date', date.text === today.slice(0, 4) ? { ...date, on: today } : date),
    ),
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
  const classes = date ? DATE_CLASSES : NO_CLASSES;
  // Not the bare word, which patterns may spell out ("ripe date").
  return makeItem(type, `<${type}>`, typed, classes, hit.index, hit.index + typed.length, { date });
}
