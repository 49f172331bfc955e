import type { Item } from './items.ts';

const REPAIRS: readonly (readonly string[])[] = [
  ['no', 'wait'],
  ['wait', 'no'],
  ['no', 'sorry'],
  ['oh', 'wait'],
  ['no', 'hang', 'on'],
  ['hang', 'on', 'no'],
  ['nope', 'hang', 'on'],
  ['nope', 'hold', 'on'],
  ['nope', 'wait'],
  ['nah', 'hang', 'on'],
  ['nah', 'wait'],
  ['hang', 'on'],
  ['hold', 'on'],
  ['i', 'mean'],
  ['i', 'meant'],
  ['meant'],
  ['scratch', 'that'],
  ['strike', 'that'],
  ['make', 'that'],
  ['or', 'rather'],
  ['well', 'actually'],
  ['no', 'actually'],
  ['actually', 'no'],
  ['correction'],
  ['oops'],
  ['whoops'],
  ['sorry'],
  ['wait'],
  ['er', 'no'],
  ['erm'],
  ['er'],
  ['err'],
  ['um'],
  ['uh'],
  ['ugh'],
  ['argh'],
  ['gah'],
  ['doh'],
  ['nope'],
  ['nah'],
  ['no'],
  ['actually'],
];

const SOUNDS = new Set(['err', 'um', 'uh', 'ugh', 'argh', 'gah', 'doh', 'nah']);

/** A day or a number that stands alone: "…, no 8, missed two". */
function isReplacement(items: readonly Item[], i: number): boolean {
  const [item, after] = [items[i], items[i + 1]];
  if (item?.type !== 'date' && item?.type !== 'quantity') return false;
  return after === undefined || after.type === 'mark';
}

/** How many words of repair ("no wait") stand at an item, or 0; `follows` where something was said before. */
export function repairAt(items: readonly Item[], i: number, follows: boolean): number {
  if (!follows) return 0;
  for (const words of REPAIRS) {
    if (!words.every((word, k) => items[i + k]?.text === word)) continue;
    const after = items[i + words.length];
    // "tipped the alma. well no": nothing is put in its place, it is taken back.
    if (words.includes('no') && items.slice(i + words.length).every(({ type }) => type === 'mark')) return 0;
    // "ugh tuesday", "um 8": a sound mends only a day or a number; elsewhere it is one of feeling.
    if (words.length === 1 && SOUNDS.has(words[0] ?? '')) return isReplacement(items, i + 1) ? 1 : 0;
    // "meant to tip it" tells what was not done.
    if (words.at(-1) === 'meant' && after?.text === 'to') continue;
    if (
      words.length === 1 &&
      (words[0] === 'no' ||
        words[0] === 'nope' ||
        words[0] === 'actually' ||
        words[0] === 'sorry' ||
        words[0] === 'wait')
    ) {
      // Alone between marks, or before a plain replacement: "no, the tall one"; not "no figs".
      if (words[0] === 'no' || words[0] === 'nope') {
        if (after?.text !== ',' && !isReplacement(items, i + 1)) return 0;
      }
      if (!after) return 0;
      // "net it now or wait for colour"
      if (words[0] === 'wait' && ['for', 'until', 'a', 'and', 'on'].includes(after.text)) return 0;
    }
    return words.length;
  }
  return 0;
}
