import type { Item } from '../items.ts';
import { wordSet } from '../lexicon/word-set.ts';
import type { Settled } from './settle-mentions.ts';

const OR_BETWEEN = wordSet(`
  or the my our maybe it was is perhaps possibly , could have been might else one of
`);

/** "the king or the alma": one of the two, unless both are denied, planned or asked about. */
export function joinAlternatives(items: readonly Item[], mentions: readonly Settled[]): readonly Settled[] {
  const out: Settled[] = [];
  for (const mention of mentions) {
    const before = out.at(-1);
    const between = before ? items.slice(before.end, mention.at) : [];
    const either =
      before !== undefined &&
      between.some((item) => item.text === 'or') &&
      between.every((item) => OR_BETWEEN.has(item.text)) &&
      isPlainStatement(items, before.at, mention.end);
    if (either && before)
      out[out.length - 1] = {
        ...before,
        end: mention.end,
        ids: [...new Set([...before.ids, ...mention.ids])],
        all: false,
      };
    else out.push(mention);
  }
  return out;
}

const SENTENCE_ENDS = new Set(['.', '!', ';', '?', '\n']);

function isPlainStatement(items: readonly Item[], at: number, end: number): boolean {
  for (let i = at - 1; i >= 0 && !SENTENCE_ENDS.has(items[i]?.text ?? ''); i--) {
    const item = items[i];
    if (item && (item.classes.has('NEG') || item.classes.has('WILL') || NOT_PLAIN.has(item.text)))
      return false;
  }
  for (let i = end; i < items.length && !SENTENCE_ENDS.has(items[i]?.text ?? ''); i++)
    if (items[i + 1]?.text === '?') return false;
  return items[end]?.text !== '?';
}

const NOT_PLAIN = wordSet(`
  should shall do does did is are can could would if whether which neither any anyone to
`);
