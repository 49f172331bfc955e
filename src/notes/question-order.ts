import type { Clause } from './clauses.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';

/** What stands behind the verb of a question. */
const ASKED_ABOUT = wordSet(`
  any i we it they you the my this that these those anyone anybody there others tipping pinching nipping
  stopping topping today tomorrow now
`);

/** Behind a verb it makes a question: "should i", "will the alma". */
export function isAskedAbout(item: Item | undefined): boolean {
  return item !== undefined && (item.type === 'tree' || item.type === 'date' || ASKED_ABOUT.has(item.text));
}

/** It asks: by its mark, or by the order of its words. */
export function isQuestion(clause: Clause): boolean {
  const { items, asked } = clause;
  let i = 0;
  while (i < items.length - 1 && LEADING.has(items[i]?.text ?? '')) i++;
  const first = items[i];
  if (!first) return asked;
  const inverted = ASKING_FIRST.has(first.text);
  if (asked) return true;
  // No mark, but the order of a question: "should i tip it", "how do i …", "when will …".
  if (
    ['should', 'shall', 'do', 'does', 'did', 'is', 'are', 'can', 'could', 'would', 'will', 'am'].includes(
      first.text,
    )
  ) {
    const next = items[i + 1];
    // "did the mission tips": done.
    if (first.text === 'did' && !asked && isDoneTo(items, i + 1)) return false;
    // "is july too late for cuttings"
    if (items[i + 2]?.text === 'too' && ['late', 'soon', 'early'].includes(items[i + 3]?.text ?? ''))
      return first.text === 'is';
    return isAskedAbout(next) || asksOfKind(items, i);
  }
  if (inverted && ['anyone', 'anybody', 'why', 'how', 'which', 'who'].includes(first.text)) return true;
  if (
    first.text === 'what' &&
    ['is', 'are', 'do', 'does', 'did', 'should', 'can', 'would', 'will', 'could'].includes(
      items[i + 1]?.text ?? '',
    )
  )
    return true;
  if (
    first.text === 'when' &&
    ['is', 'are', 'do', 'does', 'did', 'should', 'can', 'would', 'will', 'could'].includes(
      items[i + 1]?.text ?? '',
    )
  )
    return true;
  // "any tips for stopping mites", "what spray for scale"
  if (first.text === 'any' && WANTED.has(items[i + 1]?.text ?? '')) return true;
  if (first.text === 'what' && !items[i + 1]?.classes.has('DET') && items[i + 2]?.text === 'for') return true;
  // "best feed for a king in a pot"
  if (
    i === 0 &&
    first.text === 'best' &&
    ADVISED.has(items[1]?.text ?? '') &&
    ['for', 'to', 'of'].includes(items[2]?.text ?? '')
  )
    return true;
  if (first.text === 'too' && ['soon', 'early', 'late'].includes(items[i + 1]?.text ?? '')) return true;
  return false;
}

/** After "best": what advice is asked for. */
const ADVISED = wordSet(`
  feed food fertilizer fertiliser time way spot place position pot size mix soil compost mulch spray month
  tool method treatment netting
`);

const ASKING_FIRST = wordSet(`
  is are am do does did should shall can could would will has have had was were anyone anybody what
  why how when where who which whats any ok okay worth safe too time isnt may might must
`);

const WANTED = wordSet(
  'tip tips advice idea ideas suggestion suggestions recommendation recommendations pointer pointers thought thoughts clue clues cure cures fix remedy remedies takers',
);

const LEADING = wordSet(`
  so and but or hey hi ok um also then now guys all question quick q lol yo
`);

/** A tree with a part of it and no verb: "the mission tips", "my king's leaders". */
export function isDoneTo(items: readonly Item[], from: number): boolean {
  // "did the leaders on pot 3"
  const part0 = items.slice(from, from + 3).find((item) => item.type !== 'word' || !item.classes.has('DET'));
  if (part0?.classes.has('APEX') && items.slice(from).some((item) => ['on', 'of', 'for'].includes(item.text)))
    return true;
  const tree = items.findIndex((item, i) => i >= from && item.type === 'tree');
  if (tree < 0 || tree > from + 1) return false;
  const part = items[tree + 1]?.text === "'s" ? items[tree + 2] : items[tree + 1];
  return part !== undefined && (part.classes.has('APEX') || part.classes.has('TIPPING'));
}

/** "do brebas ever come to much", "did figs set", not "do figs on the alma mean …", which has them. */
function asksOfKind(items: readonly Item[], at: number): boolean {
  const [verb, noun] = [items[at]?.text ?? '', items[at + 1]];
  if (!noun || !/s$/.test(noun.text) || !isAnyOf(noun, ['FRUIT', 'SHOOT', 'LEAF', 'BUD', 'CUTTING']))
    return false;
  if (
    items.some(
      (item, i) =>
        item.text === 'mean' || (item.type === 'tree' && ['a', 'an'].includes(items[i - 1]?.text ?? '')),
    )
  )
    return false;
  return noun.classes.has('FRUIT') || verb !== 'did';
}
