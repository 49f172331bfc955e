import { isAnyOf } from '../item.ts';
import type { Item } from '../items.ts';
import type { Settled } from './settle-mentions.ts';

const SPANS = new Set([
  'week',
  'day',
  'night',
  'month',
  'morning',
  'year',
  'season',
  'summer',
  'spring',
  'winter',
  'weekend',
  'june',
  'may',
  'along',
  'over',
]);
const EVERY = new Set(['all', 'every', 'everything', 'everyone', 'each', 'lot', 'whole', 'rest']);

/** "watered all but the king": the one that is left out is not spoken of. */
export function leaveOut(
  items: readonly Item[],
  mention: Settled,
  m: number,
  all: readonly Settled[],
): Settled {
  const start = leadingWords(items, mention.at);
  const lead = items[start - 1]?.text ?? '';
  const at = ['from', 'than', 'for'].includes(lead) ? start - 2 : start - 1;
  const pair = `${items[at]?.text ?? ''} ${lead}`;
  const instead =
    start < mention.at || lead !== 'of' ? items[start]?.text === 'of' && lead === 'instead' : false;
  if (['rather than', 'away from'].includes(pair)) return { ...mention, at, topic: true };
  if (instead) return { ...mention, at: start - 1, topic: true };
  if (
    ![
      'but',
      'except',
      'excepting',
      'bar',
      'barring',
      'excluding',
      'apart',
      'aside',
      'minus',
      'other',
    ].includes(items[at]?.text ?? '')
  )
    return mention;
  // "all but two of the celeste figs came off": how many were left.
  if (items.slice(at + 1, mention.at).some((item) => item.text === 'two' || item.text === 'of'))
    return mention;
  // "except for the king they all got fed"
  if (at === 0 && items.slice(mention.end, mention.end + 4).some((item) => EVERY.has(item.text)))
    return { ...mention, at, topic: true };
  // "the alma lost all its figs but the king is loaded"
  const next = items[mention.end];
  const subject = next !== undefined && isAnyOf(next, STATES) && items[mention.end + 1]?.type === 'word';
  if (subject && items[at]?.text === 'but' && isTold(items, all[m - 1], at)) return mention;
  // "it rained all week but the king has figs"
  const from = Math.max(0, at - 5);
  return items
    .slice(from, at)
    .some((item, i) => EVERY.has(item.text) && !SPANS.has(items[from + i + 1]?.text ?? ''))
    ? { ...mention, at, topic: true }
    : mention;
}

const STATES = ['BE', 'HAVE'];

/** Another tree stands before, and "all" is the whole of what it bears. */
function isTold(items: readonly Item[], before: Settled | undefined, at: number): boolean {
  if (!before || before.all || items[at - 1]?.classes.has('FRUIT') !== true) return false;
  return ['its', 'her', 'his', 'their'].includes(items[at - 2]?.text ?? '');
}

export function leadingWords(items: readonly Item[], at: number): number {
  let start = at;
  while (
    start > 0 &&
    ['the', 'my', 'our', 'other', 'of', 'both', 'all', 'neither', 'either', 'two'].includes(
      items[start - 1]?.text ?? '',
    )
  )
    start--;
  return start;
}
