import { isAnyOf } from '../item.ts';
import type { Item } from '../items.ts';
import { GENERIC } from './described.ts';
import type { Found } from './named-at.ts';
import type { RosterIndex } from './roster-index.ts';
import { twinsOf } from './twins.ts';

const A_TREE = new Set(['fig', 'one', 'tree', 'plant', 'bush', 'that', 'figtree', 'pot']);
const NAMES = new Set(['name', 'names', 'label', 'labels', 'tag', 'tags', 'id', 'nametag']);

/** Whether a word may open a tree without a name, or the other of a pair. */
export function opensPhrase(word: string): boolean {
  return word === 'no' || word === 'other' || A_TREE.has(word) || ITS.has(word);
}

/** "the fig with no name", "the one without a label", "the no name fig": a tree whose cultivar nobody knows. */
export function namelessAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  const opening = items[i]?.text ?? '';
  if (opening !== 'no' && !A_TREE.has(opening)) return null;
  const ids = index.strong.get('unknown');
  if (!ids) return null;
  const text = (k: number): string => items[k]?.text ?? '';
  let at = i;
  if (A_TREE.has(text(at))) {
    at++;
    if (text(at) === 'that' || text(at) === 'which') at++;
    if (!['with', 'has', 'had', 'without', 'lost'].includes(text(at))) return null;
    const bare = text(at) === 'without';
    at++;
    if (!bare && text(at) !== 'no' && !(text(at) === 'its' && text(at - 1) === 'lost')) return null;
    if (!bare || text(at) === 'a' || text(at) === 'any') at++;
    return NAMES.has(text(at)) ? { ids: [...ids], end: at + 1, strong: true, plural: false } : null;
  }
  // "the no name", "the no-name fig"
  if (text(i) !== 'no') return null;
  at = text(i + 1) === '-' ? i + 2 : i + 1;
  if (!NAMES.has(text(at))) return null;
  at++;
  if (!['the', 'my', 'our'].includes(text(i - 1)) && !(i === 0 && A_TREE.has(text(at)))) return null;
  return { ids: [...ids], end: A_TREE.has(text(at)) ? at + 1 : at, strong: true, plural: false };
}

const PHRASES: readonly (readonly [name: string, behind: readonly string[]])[] = [
  ['mission', ['accomplished', 'complete', 'completed', 'impossible', 'critical', 'statement', 'creep']],
  ['king', ['size', 'sized', 'of', 'hell', 'tide', 'prawn', 'prawns']],
  ['alma', ['mater']],
];

const UNKNOWN_THINGS = new Set([
  'crop',
  'cause',
  'reason',
  'reasons',
  'culprit',
  'variety',
  'cultivar',
  'breed',
  'type',
  'number',
  'count',
  'amount',
  'quantity',
  'date',
  'day',
  'whereabouts',
  'persons',
  'person',
  'size',
  'weight',
  'why',
]);
const RELIEVED = new Set([
  'relieved',
  'rid',
  'divested',
  'deprived',
  'unburdened',
  'stripping',
  'clearing',
  'lightened',
]);
/** "an unknown number of figs", "unknown pest": what is not known is no tree. */
const UNKNOWN_OF = new Set(['cause', 'reason', 'pest', 'bug', 'disease', 'pathogen']);
const UNKNOWN_MANY = new Set(['number', 'amount', 'quantity', 'count']);
const NAMES_IN_PHRASES = new Set(PHRASES.map(([name]) => name));

/** "mission accomplished", "fit for a king", "on a mission": a word of the roster in a turn of phrase. */
export function isTurnOfPhrase(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text ?? '';
  // "crop unknown to me", "cause unknown"
  if (word === 'unknown')
    return (
      (items[i + 1]?.text === 'to' && ['me', 'us', 'science'].includes(items[i + 2]?.text ?? '')) ||
      UNKNOWN_THINGS.has(items[i - 1]?.text ?? '') ||
      UNKNOWN_OF.has(items[i + 1]?.text ?? '') ||
      // "unknown if i tipped the alma", not "wouldnt tip the unknown if you paid me"
      (i === 0 && ['if', 'whether'].includes(items[1]?.text ?? '')) ||
      (UNKNOWN_MANY.has(items[i + 1]?.text ?? '') && items[i + 2]?.text === 'of')
    );
  if (!NAMES_IN_PHRASES.has(word)) return false;
  const next = items[i + 1]?.text ?? '';
  // "stripped the king of its lower leaves"
  if (
    next === 'of' &&
    items.slice(Math.max(0, i - 3), i).some((item) => item.classes.has('TAKEN') || RELIEVED.has(item.text))
  )
    return false;
  if (PHRASES.some(([name, behind]) => name === word && behind.includes(next))) return true;
  if (word !== 'king' && word !== 'mission') return false;
  return items[i - 1]?.text === 'a' && ['for', 'like', 'on'].includes(items[i - 2]?.text ?? '');
}

const WORKED_ON = ['TIPPED', 'PRUNED', 'WATERED', 'TENDED'];
const BETWEEN = new Set(['the', 'out', 'back', 'off', 'on', 'for', 'and']);
const WHERE = new Set([
  'in',
  'by',
  'at',
  'near',
  'behind',
  'beside',
  'with',
  'under',
  'next',
  'against',
  'along',
  'i',
  'we',
  'that',
]);

/** "pinched out the one in the corner": a tree, though none that is known. */
export function unknownOneAt(items: readonly Item[], i: number, index: RosterIndex): Found | null {
  if (items[i]?.text !== 'one' || items[i - 1]?.text !== 'the' || !WHERE.has(items[i + 1]?.text ?? ''))
    return null;
  let at = i - 1;
  while (BETWEEN.has(items[at]?.text ?? '')) at--;
  if (!isAnyOf(items[at], WORKED_ON)) return null;
  const described = items.slice(i + 1, i + 7);
  if (described.some((item) => index.any.has(item.text))) return null;
  return { ids: [], end: i + 1, strong: true, plural: false };
}

/** "the other one" after a tree that has a twin of its cultivar: the twin. */
export function otherAt(
  items: readonly Item[],
  i: number,
  previous: Found | undefined,
  index: RosterIndex,
): Found | null {
  const lead = items[i - 1];
  const sibling = siblingEnd(items, i);
  if (sibling > 0) {
    const twins = previous?.ids.length === 1 ? twinsOf(previous.ids[0] ?? -1, index) : [];
    return twins.length > 0 ? { ids: twins, end: sibling, strong: true, plural: false } : null;
  }
  if (
    items[i]?.text !== 'other' ||
    !(lead?.type === 'mark' || ['the', 'my', 'and'].includes(lead?.text ?? ''))
  )
    return null;
  const [id] = previous?.ids ?? [];
  if (previous?.ids.length !== 1 || id === undefined) return null;
  const generic = items[i + 1];
  const alone =
    !generic ||
    generic.type === 'mark' ||
    generic.type === 'number' ||
    isAnyOf(generic, ['HAVE', 'BE', 'NONE']);
  if (!alone && !GENERIC.has(generic.text)) return null;
  const twins = twinsOf(id, index);
  return twins.length > 0 ? { ids: twins, end: alone ? i + 1 : i + 2, strong: true, plural: false } : null;
}

const ITS = new Set(['its', 'his', 'her']);
const SIBLINGS = new Set([
  'brother',
  'bro',
  'sister',
  'sis',
  'twin',
  'sibling',
  'counterpart',
  'companion',
  'mate',
  'cousin',
]);

/** Past "its big brother", or 0. */
function siblingEnd(items: readonly Item[], i: number): number {
  if (!ITS.has(items[i]?.text ?? '')) return 0;
  let at = i + 1;
  while (at < i + 3 && items[at]?.classes.has('SIZE')) at++;
  return SIBLINGS.has(items[at]?.text ?? '') ? at + 1 : 0;
}
