import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { repairAt } from './repairs.ts';
import { spreadQuestions } from './spread-questions.ts';

/** How a clause hangs on the one before it. */
export type Join = 'start' | 'stop' | 'comma' | 'colon' | 'and' | 'or' | 'but' | 'sub' | 'repair';

/** A stretch of a message that says one thing at most of each tree. */
export interface Clause {
  readonly items: readonly Item[];
  readonly join: Join;
  /** The word that makes it depend on another clause: after, since, when, if … */
  readonly sub: string | null;
  /** It ends in a question mark. */
  readonly asked: boolean;
  /** Number of its sentence. */
  readonly sentence: number;
  /** It stands in brackets. */
  readonly aside?: true;
}

const STOPS = new Set(['.', ';', '!', '?', '\n', '…', '..', '...', '....', '|']);
const COMMAS = new Set([',', '(', ')', '–', '—', '*', '"', '[', ']', '>', '→', '~', '_', '•']);
const ANDS = new Set(['and', '&', '+', 'plus', 'then']);
const BUTS = new Set(['but', 'though', 'although', 'however', 'whereas', 'while', 'yet', 'except', 'only']);
const SUBS = wordSet(`
  after since when because before once if unless until where which that who whenever wherever so
  whether cause as
`);

/** What was cut before: question and note are read from the same items. */
let lastCut: { readonly items: readonly Item[]; readonly clauses: readonly Clause[] } | null = null;

/** Cuts a message into clauses at marks, conjunctions and words of repair ("no wait"). */
export function splitClauses(items: readonly Item[]): readonly Clause[] {
  if (lastCut?.items !== items) lastCut = { items, clauses: cutClauses(items) };
  return lastCut.clauses;
}

function cutClauses(items: readonly Item[]): Clause[] {
  const clauses: Clause[] = [];
  let current: Item[] = [];
  let join: Join = 'start';
  let sub: string | null = null;
  let sentence = 0;
  let inside = false;
  const close = (next: Join, nextSub: string | null = null, asked = false): void => {
    if (current.length > 0)
      clauses.push({ items: current, join, sub, asked, sentence, ...(inside ? { aside: true } : {}) });
    const last = clauses.at(-1);
    if (asked && current.length === 0 && last && !last.asked && last.sentence === sentence) {
      clauses[clauses.length - 1] = { ...last, asked: true };
    }
    if (next === 'stop') sentence++;
    // The strongest of several marks in a row counts.
    if (current.length > 0 || join === 'comma' || join === 'start' || next === 'repair' || next === 'sub')
      join = next;
    sub = nextSub ?? (current.length > 0 ? null : sub);
    current = [];
  };
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    const next = items[i + 1];
    const repair =
      current.length === 0 || isBoundary(items[i - 1])
        ? repairAt(items, i, clauses.length > 0 || current.length > 0)
        : 0;
    if (repair > 0) {
      close('repair');
      i += repair - 1;
      continue;
    }
    if (item.type === 'mark') {
      if (item.text === '?') close('stop', null, true);
      else if (STOPS.has(item.text) || item.text.startsWith('\n') || item.text.startsWith('..'))
        close('stop');
      else if (item.text === ':') close('colon');
      else if (item.text === '-') {
        const before = items[i - 1];
        if (!before || !next || before.end < item.start || next.start > item.end) close('comma');
      } else if (item.text === '&' || item.text === '+') close('and');
      else if (item.text === '/') close('or');
      else if (COMMAS.has(item.text)) {
        close('comma');
        if (item.text === '(') inside = true;
        else if (item.text === ')') inside = false;
      } else if (item.text.length > 0 && !/^[#%$£€'@^°=]$/.test(item.text)) close('comma');
      continue;
    }
    if (item.type === 'word') {
      if (ANDS.has(item.text) && !(item.text === 'and' && isFixedPair(items, i))) {
        close('and');
        continue;
      }
      if (item.text === 'versus') {
        close('comma');
        continue;
      }
      if (item.text === 'or') {
        close('or');
        continue;
      }
      if (BUTS.has(item.text) && splitsAt(items, i)) {
        close('but', item.text === 'while' ? 'while' : null);
        continue;
      }
      if (SUBS.has(item.text) && !isPreposition(items, i)) {
        close('sub', item.text);
        continue;
      }
    }
    if (goesOnAnew(items, i) && current.length > 2) close('comma');
    current.push(item);
  }
  close('stop');
  return spreadQuestions(clauses);
}

const BEARS = new Set(['has', 'have', 'had', 'is', 'are']);

/** "the ronde i tipped on the 3rd has figs": what is said of the tree behind the deed. */
function goesOnOfTree(items: readonly Item[], i: number): boolean {
  const item = items[i];
  if (!item || items[i - 1]?.type !== 'date' || !BEARS.has(item.text)) return false;
  const who = items.findLastIndex((each, k) => k < i && (each.text === 'i' || each.text === 'we'));
  const verb = items[who + 1];
  if (items[who - 1]?.type !== 'tree' || !verb) return false;
  return isAnyOf(verb, ['TIPPED', 'WATERED', 'PRUNED', 'SNIPPED']);
}

/** "when i fed it monday it already had 5 figs": a new clause without a mark before it. */
function goesOnAnew(items: readonly Item[], i: number): boolean {
  if (goesOnOfTree(items, i)) return true;
  // "had 6 figs now has 4"
  if (items[i]?.text === 'now' && items[i - 1]?.classes.has('FRUIT')) {
    const next = items[i + 1];
    return (
      next?.type === 'quantity' ||
      (isAnyOf(items[next?.text === 'it' ? i + 2 : i + 1], ['HAVE']) &&
        items.slice(0, i).some(({ text }) => text === 'had'))
    );
  }
  if (!['it', 'they'].includes(items[i]?.text ?? '')) return false;
  const before = items[i - 1];
  if (before?.type !== 'date' && before?.type !== 'tree') return false;
  return ['already', 'had', 'has', 'have', 'now'].includes(items[i + 1]?.text ?? '');
}

function isBoundary(item: Item | undefined): boolean {
  return item === undefined || item.type === 'mark';
}

/** "only" and "except" split only where a clause of their own begins: "only branches" stays whole. */
function splitsAt(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text;
  const before = items[i - 1]?.text ?? '';
  if (word === 'but')
    return (
      items[i + 1]?.classes.has('HAVE') === true ||
      (before !== 'nothing' &&
        before !== 'all' &&
        before !== 'help' &&
        before !== 'anything' &&
        before !== 'anywhere' &&
        before !== 'none')
    );
  if (word === 'yet')
    return (
      items[i + 1] !== undefined &&
      items[i + 1]?.type !== 'mark' &&
      before !== 'not' &&
      items[i + 1]?.text !== 'to' &&
      i > 0 &&
      isFullClause(items, i)
    );
  if (word === 'only' || word === 'except') return false;
  if (word === 'while') return before !== 'a' && before !== 'good';
  return true;
}

function isFullClause(items: readonly Item[], i: number): boolean {
  return items.slice(i + 1, i + 6).some((item) => item.classes.has('BE') || item.classes.has('HAVE'));
}

const TIMES = new Set(['date', 'vague']);

function isPreposition(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text;
  const next = items[i + 1];
  const after = items[i + 2];
  const before = items[i - 1]?.text ?? '';
  if (!next || next.type === 'mark') return true;
  if (word === 'that') {
    // "it was the little one that had 5 figs" tells of it.
    const opening = items
      .slice(Math.max(0, i - 6), i)
      .map((item) => item.text)
      .join(' ');
    if (/(?:^| )(?:it|that) (?:is|was) (?:the |my )?<?tree>?$/.test(opening)) return true;
    // A clause only after a noun or a verb of saying; else a pointing word.
    return !(
      items[i - 1]?.classes.has('SHOOT') ||
      items[i - 1]?.classes.has('FRUIT') ||
      items[i - 1]?.classes.has('SAYS') ||
      items[i - 1]?.type === 'tree' ||
      before === 'one' ||
      before === 'ones'
    );
  }
  // "birds got 2 so netted it"
  if (word === 'so' && i > 1 && before !== 'and' && next.text.endsWith('ed') && isAnyOf(next, DOINGS))
    return false;
  if (word === 'so')
    return before !== '' && !['i', 'we', 'it', 'they', 'the', 'that', 'now'].includes(next.text)
      ? true
      : i === 0;
  if (word === 'as') return !['soon', 'long'].includes(next.text) && before !== 'soon' && before !== 'just';
  if (word === 'cause') return before === '';
  if (word === 'once') return ['twice', 'more', 'again', 'a', 'every'].includes(next.text);
  // "that's when i tipped it" tells of it.
  if (
    word === 'when' &&
    ['is', 'was'].includes(before) &&
    (['that', 'it', 'this'].includes(items[i - 2]?.text ?? '') || items[i - 2]?.type === 'date')
  )
    return true;
  if (word === 'who' || word === 'which') return false;
  if (['if', 'because', 'unless', 'whether', 'whenever', 'when'].includes(word ?? '')) return false;
  if (TIMES.has(next.type))
    return word === 'since' || word === 'until' || word === 'after' || word === 'before';
  if (next.classes.has('DET') && after && TIMES.has(after.type)) return true;
  if (word === 'before' && items.slice(i + 1, i + 4).filter((item) => item.type !== 'mark').length >= 3)
    return false;
  // "after the pinch", "since the tip": a noun follows, no clause.
  if (['after', 'since', 'before', 'until'].includes(word ?? '')) {
    const rest = items.slice(i + 1, i + 7).filter((item) => item.type !== 'mark');
    return !rest.some(
      (item) =>
        ['i', 'we', 'it', 'they', 'he', 'she'].includes(item.text) ||
        item.classes.has('TIPPED') ||
        item.classes.has('TIPPING') ||
        item.classes.has('BE') ||
        item.classes.has('PICKED'),
    );
  }
  return false;
}

const DOINGS = ['WATERED', 'TIPPED', 'PRUNED', 'PICKED', 'SNIPPED', 'PUTTING'];

/** "black and blue", "two and a half": no new clause. */
function isFixedPair(items: readonly Item[], i: number): boolean {
  const next = items[i + 1]?.text ?? '';
  const before = items[i - 1]?.text ?? '';
  return (
    (before === 'black' && next === 'blue') ||
    // "some so and so"
    (before === 'so' && next === 'so') ||
    (before === '-' && next === '-') ||
    (before === 'one' && next === 'only') ||
    (['finger', 'fingers'].includes(before) && next === 'thumb') ||
    (next === 'a' && items[i + 2]?.text === 'half') ||
    (before === 'more' && next === 'more') ||
    // "the unknown went and did the same"
    (before === 'went' && ['did', 'done'].includes(next)) ||
    (before === 'up' && next === 'down') ||
    (before === 'blood' && next === 'bone') ||
    (before === 'fish' && next === 'blood') ||
    // "leaves and all", not "and all it did was branch", "and all of the king"
    (next === 'all' && (items[i + 2] === undefined || items[i + 2]?.type === 'mark'))
  );
}
