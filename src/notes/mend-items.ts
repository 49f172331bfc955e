import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { mendSpan } from './mend-span.ts';

/**
 * Corrections that name only what was wrong: "picked 5, no, 6 off the alma", "tipped it monday. edit: sunday",
 * "the ronde, sorry, the king". The right tree, day or number takes the place of the wrong one, and the words of
 * repair go. Corrections that say a thing anew are left to the clauses (`sayings.ts`).
 */
export function mendItems(items: readonly Item[]): readonly Item[] {
  if (!items.some((item) => SIGNALS.has(item.text))) return items;
  let out: readonly Item[] = items.slice(openingEnd(items));
  out = mendSpan(mendPostposed(out), isRepairWord);
  for (let i = 1; i < out.length; i++) {
    const mended = mendAt(out, i);
    if (mended) out = mended;
  }
  return out;
}

/** "no wait it was the king": words of repair that open a message put right one before it, and say nothing here. */
function openingEnd(items: readonly Item[]): number {
  const phrase = PHRASES.find(
    (words) => words.length > 1 && words.every((word, k) => items[k]?.text === word),
  );
  if (!phrase) return 0;
  const end = items[phrase.length]?.type === 'mark' ? phrase.length + 1 : phrase.length;
  return end < items.length ? end : 0;
}

/** Without one of these nothing is corrected. */
const SIGNALS = wordSet(`
  no nope nah wait sorry oops whoops oop actually correction corrected edit meant mean scratch strike scrap
  rather er erm err uh um lie make typo ignore forget cancel * miscounted recounted recount
  mistake wrong scrub delete bin mind call check looked diary notes calendar
`);
/** Words that by themselves, between two things of a sort, put the second in the place of the first. */
const ALONE = wordSet(`
  oops whoops oop correction corrected edit meant wait sorry actually er erm err uh um nope nah typo recount
`);
const PHRASES: readonly (readonly string[])[] = [
  ['no', 'wait'],
  ['wait', 'no'],
  ['no', 'sorry'],
  ['sorry', 'no'],
  ['no', 'hang', 'on'],
  ['hang', 'on'],
  ['hold', 'on'],
  ['i', 'mean'],
  ['i', 'meant'],
  ['wrong', ',', 'that', 'was'],
  ['wrong', ','],
  ['wrong', '!'],
  ['scratch', 'that'],
  ['strike', 'that'],
  ['scrap', 'that'],
  ['scrub', 'that'],
  ['delete', 'that'],
  ['bin', 'that'],
  ['never', 'mind'],
  ['call', 'it'],
  ['check', 'that'],
  ['ignore', 'that'],
  ['forget', 'that'],
  ['cancel', 'that'],
  ['make', 'that'],
  ['make', 'it'],
  ['or', 'rather'],
  ['no', 'actually'],
  ['actually', 'no'],
  ['i', 'lie'],
  ['a', 'lie'],
  ['my', 'mistake'],
  ['my', 'bad'],
  ['wrong', 'tree'],
  ['wrong', 'day'],
  ['wrong', 'one'],
  ['i', 'miscounted'],
  ['miscounted'],
  ['i', 'recounted'],
  ['recounted'],
  ['looked', 'it', 'up'],
  ['diary', 'says'],
  ['notes', 'say'],
  ['calendar', 'says'],
];
/** What else may stand in between. */
const FILLING = wordSet(`
  no oh ah well hmm hm ugh damn dang dammit drat lol haha sorry wait actually i it was is that tell a lie
  hang hold on again wrong typo my bad mistake yes yeah yep should be have been say said read to of course argh argghh aargh ack ach gah grr gosh jeez blast bother bugger crap sheesh doh
  its looking checking checked diary notes notebook calendar log photos looked up book says says nope um er uh miscounted there are just count recount will but let us
`);
const MARKS = new Set([
  ',',
  '.',
  '..',
  '...',
  '…',
  '-',
  '–',
  '—',
  '(',
  ')',
  ':',
  ';',
  '!',
  '*',
  '\n',
  '/',
  '"',
]);
const LEADS = wordSet(`
  the my our on off from at in of about like
`);
const TYPED = new Set<Item['type']>(['tree', 'date', 'vague', 'quantity']);

function mendAt(items: readonly Item[], i: number): Item[] | null {
  const end = runEnd(items, i);
  if (end === 0) return null;
  const tail = readTail(items, end);
  if (tail === null) return null;
  const before = items.slice(0, i);
  const left: Item[] = [];
  let replaced = false;
  for (const { item, leads } of tail.found) {
    const at = lastOf(before, item);
    if (at >= 0) {
      before[at] = { ...item, start: before[at]?.start ?? item.start, end: before[at]?.end ?? item.end };
      replaced = true;
    } else left.push(...leads, item);
  }
  // "no, that was monday": a day where none was said.
  if (!replaced && !tail.found.every(({ item }) => item.type === 'date')) return null;
  return [...before, ...left, ...items.slice(tail.end)];
}

/** A word or a mark that only puts right. */
function isRepairWord(item: Item | undefined): boolean {
  if (!item) return false;
  return item.type === 'mark' ? MARKS.has(item.text) : FILLING.has(item.text) || ALONE.has(item.text);
}

const POSTPOSED: readonly (readonly string[])[] = [
  ['i', 'mean'],
  ['i', 'meant'],
  ['sorry'],
  ['rather'],
  ['i', 'should', 'say'],
];

/** "fed it on saturday. friday i mean": the right one first, the words of repair after it. */
function mendPostposed(items: readonly Item[]): readonly Item[] {
  const phrase = POSTPOSED.find((words) =>
    words.every((word, k) => items[items.length - words.length + k]?.text === word),
  );
  if (!phrase) return items;
  const at = items.length - phrase.length - 1;
  const right = items[at];
  if (!right || !TYPED.has(right.type)) return items;
  let start = at;
  while (LEADS.has(items[start - 1]?.text ?? '')) start--;
  if (items[start - 1]?.type !== 'mark') return items;
  const before = items.slice(0, start - 1);
  const wrong = lastOf(before, right);
  if (wrong < 0) return items;
  before[wrong] = right;
  return before;
}

const LONGEST_RUN = 14;

/** Past the words of repair that begin at an item, or 0. */
function runEnd(items: readonly Item[], i: number): number {
  const before = items[i - 1];
  if (!before || before.type === 'mark') return 0;
  let end = i;
  let strong = false;
  let plainNo = -1;
  while (end < items.length) {
    // Longer is no correction.
    if (end - i > LONGEST_RUN) return 0;
    const item = items[end];
    if (!item) break;
    const phrase = PHRASES.find((words) => words.every((word, k) => items[end + k]?.text === word));
    if (item.text === 'meant' && items[end + 1]?.text === 'to') break;
    if (phrase && !(phrase.at(-1) === 'meant' && items[end + phrase.length]?.text === 'to')) {
      strong = true;
      end += phrase.length;
    } else if (item.type === 'mark' && MARKS.has(item.text)) {
      if (item.text === '*' && end + 1 < items.length && end + 4 > items.length) strong = true;
      end++;
    } else if (item.type === 'word' && (FILLING.has(item.text) || ALONE.has(item.text))) {
      const marked = end > i || TYPED.has(before.type);
      if (ALONE.has(item.text) && marked) strong = true;
      else if (item.text === 'no') plainNo = end;
      else if (end === i) return 0;
      end++;
    } else break;
  }
  if (strong) return end;
  if (plainNo < 0 || end === i) return 0;
  // "no" by itself: "picked 5, no 6", "monday, no, sunday"; never "alma done, no figs".
  // "thurs.. no not thurs. fri": the wrong one said again.
  const from = items[end]?.text === 'not' ? end + 1 : end;
  const next = items.slice(from).find((item) => !LEADS.has(item.text));
  if (next?.type === 'quantity' && isNumberAlone(items, end)) return end;
  return next && TYPED.has(next.type) && sameSort(before, next) && before.type !== 'vague' ? end : 0;
}

/** "6 figs on the alma, no 8": a number by itself, with one before it to put right. */
function isNumberAlone(items: readonly Item[], at: number): boolean {
  const after = items[at + 1];
  return (
    (after === undefined || after.type === 'mark') &&
    items.slice(Math.max(0, at - 7), at - 1).some((item) => item.type === 'quantity')
  );
}

function sameSort(a: Item, b: Item): boolean {
  return a.type === b.type || (a.type === 'vague' && b.type === 'date');
}

interface Tail {
  readonly found: readonly { readonly item: Item; readonly leads: readonly Item[] }[];
  readonly end: number;
}

/** Why it was wrong: no news. */
const EXCUSES = new Set([
  'misread',
  'miscounted',
  'misheard',
  'misremembered',
  'mistyped',
  'typo',
  'autocorrect',
  'fat',
  'thumbs',
  'fingers',
  'butterfingers',
  'clumsy',
  'glasses',
  'phone',
]);
const STOPS = new Set(['.', '!', '?', ';', '\n']);
const NOUNS = ['FRUIT', 'SHOOT', 'CUTTING'];
const CLOSING = wordSet(`
  end of note message over instead lol haha sorry ffs now them duh obviously definitely silly
`);

/** The things put right, up to the end of the sentence; null when something else is said. */
function readTail(items: readonly Item[], from: number): Tail | null {
  const found: { item: Item; leads: Item[] }[] = [];
  let leads: Item[] = [];
  let i = from;
  for (; i < items.length; i++) {
    const item = items[i];
    if (!item) break;
    if (TYPED.has(item.type)) {
      found.push({ item, leads });
      leads = [];
    } else if (item.type === 'mark') {
      if (item.text !== ',' && found.length > 0) break;
      // "…, no 6, off the alma": what goes on belongs to the sentence that is mended.
      if (item.text === ',' && EXCUSES.has(items[i + 1]?.text ?? '')) {
        while (i < items.length && !STOPS.has(items[i]?.text ?? '')) i++;
        break;
      }
      if (item.text === ',' && found.length > 0 && !LEADS.has(items[i + 1]?.text ?? '')) break;
    } else if (item.text === 'not' && found.length === 0) {
      // "sorry, not the king, the ronde": the wrong one said again.
      while (LEADS.has(items[i + 1]?.text ?? '')) i++;
      if (!TYPED.has(items[i + 1]?.type ?? 'word')) return null;
      i++;
    } else if (LEADS.has(item.text)) leads.push(item);
    else if (found.length > 0 && found.at(-1)?.item.type === 'quantity' && isAnyOf(item, NOUNS)) continue;
    else if (found.length > 0 && CLOSING.has(item.text)) continue;
    else return null;
  }
  return found.length > 0 ? { found, end: i } : null;
}

const FARTHEST = 16;

function lastOf(items: readonly Item[], like: Item): number {
  for (let i = items.length - 1; i >= Math.max(0, items.length - FARTHEST); i--) {
    const item = items[i];
    if (item && sameSort(item, like)) return i;
  }
  return -1;
}
