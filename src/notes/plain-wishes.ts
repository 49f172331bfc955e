import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** After "next": a time to come. */
const NEXT_TIME = wordSet(`
  week month year season weekend spring summer winter autumn fall job time up on
`);

/** Words of doubt that cover their whole clause, wherever they stand. */
export const WHOLE = wordSet(`
  maybe perhaps possibly probably hopefully tonight almost nearly supposedly eventually forgot
  forgotten
`);

/** Words of doubt and of plans where they mean neither: "may" the month, "nearly 20", "next" in a row. */
export function isPlain(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text;
  const next = items[i + 1];
  const before = items[i - 1];
  if (
    (word === 'almost' || word === 'nearly') &&
    next &&
    (next.type === 'quantity' || next.text === 'all' || next.text === 'every')
  )
    return true;
  if (word === 'next') return !NEXT_TIME.has(next?.text ?? '');
  if (word === 'may' && (before?.type === 'quantity' || next?.type === 'number')) return true;
  if (word === 'could' && ['find', 'see', 'spot', 'count'].includes(next?.text ?? '')) return true;
  if (word === 'could' && (next?.text === 'not' || next?.text === 'only'))
    return ['find', 'see', 'spot', 'locate', 'count'].includes(items[i + 2]?.text ?? '');
  if (word === 'putting') return next?.text !== 'off';
  if (word === 'due') return next?.text === 'to' && !next.classes.has('TIP') && items[i + 2]?.type !== 'word';
  if (word === 'meant' || word === 'meaning') return next?.text !== 'to' && next?.text !== 'for';
  if (word === 'trying' || word === 'tried' || word === 'try')
    return next?.text !== 'to' && next?.text !== 'and';
  if (word === 'ready') return next?.text !== 'to' && next?.text !== 'for';
  if (word === 'fingers') return next?.text !== 'crossed';
  if (word === 'decide' || word === 'deciding') return false;
  if (word === 'expected' || word === 'planned') return before?.text === 'than' || before?.text === 'as';
  if (word === 'wait' || word === 'waited') return true;
  if (word === 'resolved') return next?.text !== 'to';
  if (word === 'aim') return next?.text !== 'to';
  return false;
}
