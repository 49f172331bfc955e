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

const MAY_BUGS = new Set(['bugs', 'beetle', 'beetles', 'flies', 'chafer', 'chafers']);

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
  if (
    word === 'may' &&
    (before?.type === 'quantity' || next?.type === 'number' || MAY_BUGS.has(next?.text ?? ''))
  )
    return true;
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

/** "came within an inch of pruning it", "this close to tipping it", "had half a mind to": it was not done. */
export function isNearMiss(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text ?? '';
  const ahead = items.slice(i + 1, i + 6);
  const doing = (from: number): boolean =>
    ahead.slice(from).some((item) => item.type === 'word' && /.ing$/.test(item.text));
  if (word === 'within' || word === 'away' || word === 'inches' || word === 'seconds' || word === 'moments')
    return (
      ahead.some((item, k) => (item.text === 'of' || item.text === 'from') && doing(k + 1)) &&
      (word !== 'within' ||
        ahead.slice(0, 3).some((item) => NEARNESS.has(item.text) || item.text === 'measure'))
    );
  if (word === 'close') return ahead[0]?.text === 'to' && doing(1);
  if (word === 'verge' || word === 'brink' || word === 'point' || word === 'cusp')
    return ahead[0]?.text === 'of' && items[i - 2]?.text === 'on' && doing(1);
  if (word === 'mind')
    return (
      (ahead[0]?.text === 'to' && ['half', 'good', 'a'].includes(items[i - 1]?.text ?? '')) ||
      (ahead[0]?.text === 'to' && items[i - 2]?.text === 'half')
    );
  return word === 'near' && items[i - 1]?.text === 'came' && doing(0);
}

const NEARNESS = wordSet(
  'inch inches ace whisker hair hairs millimetre millimeter whiskers breath gnat gnats ames second seconds minute',
);

/** On the way to a job that is not done yet: "about to water it", "i'm off to feed the king", not "went off to". */
export function isSettingOut(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text ?? '';
  const verb = items[i + 2];
  if (items[i + 1]?.text !== 'to' || verb?.type !== 'word' || verb.classes.has('DET')) return false;
  if (word === 'about' || word === 'fixing' || word === 'fixin') return items[i - 1]?.text !== 'how';
  return SETTING_OUT.has(word) && (i === 0 || BEFORE_SETTING_OUT.has(items[i - 1]?.text ?? ''));
}

const SETTING_OUT = wordSet('off heading headed going');
const BEFORE_SETTING_OUT = wordSet('am is are just now be being i we all right');
