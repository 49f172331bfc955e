import type { ReadEvent } from './contract.ts';
import type { Piece } from './doubt-pieces.ts';
import { isPlainWord } from './lexicon/plain-words.ts';
import { classesOf } from './lexicon/word-classes.ts';

/** "the neighbour leaned over and picked it": the doer stands in the clause before. */
export function goesOnAfterOthers(piece: Piece, before: Piece | undefined): boolean {
  if (piece.join !== 'and' || !before || before.sentence !== piece.sentence) return false;
  if (['i', 'we'].includes(piece.items[0]?.text ?? '')) return false;
  return before.items.slice(0, 3).some(
    (item, i) =>
      // "daves" mended to "doves" is a name, not a bird.
      item.typed.toLowerCase() === item.text &&
      (item.classes.has('OTHERS') || item.classes.has('THIEF') || item.classes.has('PEST')) &&
      !['for', 'to', 'with', 'from', 'of', 'a', 'off'].includes(before.items[i - 1]?.text ?? ''),
  );
}

/** The clause that names the event's tree: its own, or the last one before. */
export function naming(event: ReadEvent, p: number, pieces: readonly Piece[]): Piece | undefined {
  for (let k = p; k >= 0; k--)
    if (event.tree !== null && pieces[k]?.own.includes(event.tree)) return pieces[k];
  return undefined;
}

const AGES = new Set(['old', 'new', 'young']);

/** "an alma", "a ronde": any tree of that name but the member's own; "ate a celeste" is a fruit of theirs. */
export function belongsToOthers({ kind, tree }: ReadEvent, piece: Piece | undefined): boolean {
  if (!piece) return false;
  const { items } = piece;
  const named = tree !== null && items.some((item) => item.mention?.ids.includes(tree));
  return items.some((item, i) => {
    if (item.type !== 'tree' || (named && tree !== null && !item.mention?.ids.includes(tree))) return false;
    // Whose another tree is says nothing of this one.
    if (tree !== null && item.mention && !item.mention.ids.includes(tree)) return false;
    const lead = items[i - 1];
    const before = lead?.text ?? '';
    // "grandads old king"
    const owner = lead?.classes.has('SIZE') || AGES.has(before) ? items[i - 2] : lead;
    if (
      owner?.type === 'word' &&
      owner.text.endsWith('s') &&
      classesOf(owner.text.slice(0, -1)).has('OTHERS')
    )
      return true;
    // "daves alma": a possessor without its apostrophe.
    if (
      lead?.type === 'word' &&
      before.length > 3 &&
      before.endsWith('s') &&
      lead.classes.size === 0 &&
      !isPlainWord(before)
    )
      return true;
    if (before !== 'a' && before !== 'an')
      return ['his', 'her', 'their', 'your', 'another', 'someones'].includes(before);
    // Which of the member's own "a kadota" may be is asked anyway.
    if (tree === null) return false;
    const next = items[i + 1];
    if (next?.classes.has('FRUIT') || next?.classes.has('BREBA')) return false;
    return kind !== 'picked' || ['off', 'from', 'on', 'at', 'of', 'with'].includes(items[i - 2]?.text ?? '');
  });
}
