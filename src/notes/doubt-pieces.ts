import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { countSlips } from './spelling.ts';

/** A stretch of a note between marks and conjunctions, for the second look at what was read from it. */
export interface Piece {
  readonly items: readonly Item[];
  /** The conjunction it begins with, if it is a word. */
  readonly lead: Item | null;
  readonly join: 'start' | 'comma' | 'colon' | 'and' | 'or' | 'but' | 'sub';
  readonly sentence: number;
  /** A question mark closes it. */
  readonly asked: boolean;
  /** Trees named in it. */
  readonly own: readonly number[];
  /** Trees it may be about: its own, or else those named before it, or else the next ones. */
  readonly trees: readonly number[];
  readonly numbers: readonly number[];
  /** It opens with a plain verb ("tip …", "pick …"), as in a list of things to do. */
  readonly baseForm: boolean;
  readonly end: number;
}

const STOPS = new Set(['.', ';', '!', '?', '…', '|']);
const JOINS: ReadonlyMap<string, Piece['join']> = new Map<string, Piece['join']>([
  ...['and', '&', '+', 'plus', 'then'].map((word) => [word, 'and'] as const),
  ...['or', '/', 'nor'].map((word) => [word, 'or'] as const),
  ...['but', 'though', 'although', 'however', 'whereas', 'yet'].map((word) => [word, 'but'] as const),
  ...[
    'if',
    'unless',
    'because',
    'when',
    'while',
    'once',
    'after',
    'since',
    'before',
    'until',
    'which',
    'who',
    'whether',
    'as',
    'where',
    'so',
    'provided',
    'assuming',
    'whenever',
  ].map((word) => [word, 'sub'] as const),
]);
const BASE_FORMS = ['TIP', 'PICK', 'DROP', 'SNIP'];
/** Marks that stand inside a phrase. */
const INNER = /^[#%$£€'@^°-]$/;

interface Open {
  items: Item[];
  lead: Item | null;
  join: Piece['join'];
  sentence: number;
  asked: boolean;
}

export function cutPieces(items: readonly Item[]): Piece[] {
  const out: Open[] = [];
  let open: Open = { items: [], lead: null, join: 'start', sentence: 0, asked: false };
  const close = (join: Piece['join'], lead: Item | null, sentence: number, asked = false): void => {
    if (open.items.length > 0) {
      out.push(open);
      open.asked = asked;
      open = { items: [], lead, join, sentence, asked: false };
      return;
    }
    if (asked) {
      const last = out.at(-1);
      if (last && last.sentence === open.sentence) last.asked = true;
    }
    if (join !== 'comma' || open.sentence !== sentence) {
      open.lead = lead;
      open.join = join;
    }
    open.sentence = sentence;
  };
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    if (item.type === 'mark') {
      if (STOPS.has(item.text) || item.text.startsWith('\n') || item.text.startsWith('..'))
        close('start', null, open.sentence + 1, item.text === '?');
      else if (item.text === ':') close('colon', null, open.sentence);
      else if (item.text === '&' || item.text === '+') close('and', null, open.sentence);
      else if (item.text === '/') close('or', null, open.sentence);
      else if (item.text === '-') {
        const before = items[i - 1];
        const next = items[i + 1];
        if (!before || !next || before.end < item.start || next.start > item.end)
          close('comma', null, open.sentence);
      } else if (!INNER.test(item.text)) close('comma', null, open.sentence);
      continue;
    }
    const join = item.type === 'word' && !isGuess(item) ? JOINS.get(item.text) : undefined;
    if (join !== undefined && splits(items, i, open.items.length)) {
      close(join, item, open.sentence);
      continue;
    }
    open.items.push(item);
  }
  close('start', null, open.sentence + 1);
  return finish(out);
}

const TRAILING = new Set(['then', 'once', 'and']);
const NOT_BUT = new Set(['nothing', 'all', 'anything', 'none']);

function splits(items: readonly Item[], i: number, held: number): boolean {
  const word = items[i]?.text;
  const before = items[i - 1]?.text ?? '';
  const next = items[i + 1];
  // "tipped the alma once", "king n": nothing follows that it could join.
  if (word !== undefined && TRAILING.has(word) && (next === undefined || next.type === 'mark'))
    return items.slice(0, i).some(({ type }) => type === 'date');
  if (word === 'but') return !NOT_BUT.has(before) || next?.classes.has('HAVE') === true;
  if (word === 'yet') return held > 0 && next !== undefined && next.text !== 'to' && next.type === 'word';
  // "as though", "as if"
  if ((word === 'though' || word === 'if') && before === 'as') return false;
  if (word === 'so') return next !== undefined && ['i', 'we', 'it', 'they', 'the'].includes(next.text);
  if (word === 'as') return next?.text === 'soon' || next?.text === 'long';
  if (word === 'while') return before !== 'a';
  if (word === 'plus' || word === 'then') return held > 0 && before !== 'back';
  if (word === 'before' && next?.text === 'long') return false;
  if (word === 'since' || word === 'until' || word === 'before' || word === 'after')
    return next !== undefined && next.type === 'word';
  return true;
}

function finish(raw: readonly Open[]): Piece[] {
  const owns = raw.map(({ items }) => treesIn(items));
  let carried: readonly number[] = [];
  return raw.map((piece, p) => {
    const own = owns[p] ?? [];
    if (own.length > 0) carried = piece.sentence === raw[p - 1]?.sentence ? [...carried, ...own] : own;
    const trees =
      own.length > 0
        ? own
        : carried.length > 0
          ? carried
          : (owns.find((ids, q) => q > p && ids.length > 0) ?? []);
    const heading = own.length === 0 && raw[p + 1]?.join === 'colon' ? listed(raw, owns, p) : [];
    const first = piece.items[0];
    return {
      items: piece.items,
      lead: piece.lead,
      join: piece.join,
      sentence: piece.sentence,
      asked: piece.asked,
      own,
      trees: heading.length > 0 ? heading : trees,
      numbers: numbersIn(piece.items),
      baseForm: first !== undefined && isAnyOf(first, BASE_FORMS),
      end: piece.items.at(-1)?.end ?? 0,
    };
  });
}

/** "tipped: alma, king": the trees that a heading speaks of. */
function listed(raw: readonly Open[], owns: readonly (readonly number[])[], p: number): number[] {
  const ids: number[] = [];
  for (let k = p + 1; k < raw.length && raw[k]?.sentence === raw[p]?.sentence; k++)
    ids.push(...(owns[k] ?? []));
  return ids;
}

function treesIn(items: readonly Item[]): number[] {
  const ids: number[] = [];
  for (const { mention } of items) if (mention) ids.push(...mention.ids);
  return ids;
}

function numbersIn(items: readonly Item[]): number[] {
  const numbers: number[] = [];
  for (const { quantity } of items) if (quantity) numbers.push(quantity.value);
  return numbers;
}

/** A word mended by two letters is a guess, not what was written. */
export function isGuess({ typed, text }: Item): boolean {
  return typed !== text && typed.length > 4 && typed.length === text.length && countSlips(typed, text, 2) > 1;
}
