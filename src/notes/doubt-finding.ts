import type { Day } from '../engine/day.ts';
import { isOfTheTree, walksBy } from './doubt-innocent.ts';
import { cutPieces, type Piece } from './doubt-pieces.ts';
import { earlierSeasons } from './earlier-seasons.ts';
import { eatsHere } from './eats-here.ts';
import { isGuessable } from './guesses.ts';
import { harmlessItems } from './harmless.ts';
import type { Item } from './items.ts';
import { DOUBTS, type DoubtReach, type DoubtWhy } from './lexicon/doubt-words.ts';
import { FACTIVE } from './lexicon/factive-words.ts';
import { wordSet } from './lexicon/word-set.ts';
import { compileTable, findMatches } from './patterns.ts';
import { isDoneTo } from './question-order.ts';

const DOUBT_INDEX = compileTable(DOUBTS);

/** A phrase of doubt in a note. */
export interface FoundDoubt {
  readonly why: DoubtWhy;
  readonly reach: DoubtReach;
  readonly first: number;
  readonly piece: number;
}

/** Every phrase of doubt, and every earlier season named. */
export function findDoubts(pieces: readonly Piece[], today: Day): FoundDoubt[] {
  const found: FoundDoubt[] = [];
  for (let p = 0; p < pieces.length; ) {
    const sentence = pieces[p]?.sentence;
    let end = p;
    const items: Item[] = [];
    const owner: number[] = [];
    for (; end < pieces.length && pieces[end]?.sentence === sentence; end++) {
      const piece = pieces[end];
      if (!piece) continue;
      for (const item of piece.lead ? [piece.lead, ...piece.items] : piece.items) {
        items.push(item);
        owner.push(end);
      }
    }
    const harmless = harmlessItems(items);
    for (const at of earlierSeasons(items, today))
      found.push({ why: 'past', reach: 'sentence', piece: owner[at] ?? p, first: items[at]?.start ?? 0 });
    for (const match of findMatches(items, DOUBT_INDEX)) {
      if (
        match.at.every((i) => harmless.has(i)) ||
        (harmless.has(match.at[0] ?? -1) && items[match.at[0] ?? -1]?.classes.has('NEG')) ||
        isInnocent(items, match.at)
      )
        continue;
      const [why, reach] = match.kind.split(' ') as [DoubtWhy, DoubtReach];
      const at = match.at[0] ?? 0;
      const piece = owner[at] ?? p;
      // "hope you like figs mum, picked 20": who is spoken to did not pick them.
      const last = owner[match.at.at(-1) ?? at] ?? piece;
      // "14 figs, fat thumbs": words of two pieces make no turn of phrase.
      const parted = why === 'figure' && reach === 'here';
      if ((why === 'told' || why === 'other' || parted) && last !== piece && pieces[last]?.join === 'comma')
        continue;
      found.push({ why, reach, piece, first: items[at]?.start ?? 0 });
    }
    p = end;
  }
  return found;
}

/** Whether a short text denies, supposes, plans, asks or retells nothing. */
export function speaksPlainly(items: readonly Item[], today: Day): boolean {
  const harmless = harmlessItems(items);
  if (items.some((item, i) => item.classes.has('NEG') && !harmless.has(i))) return false;
  return findDoubts(cutPieces(items), today).length === 0;
}

const AUXILIARIES = new Set(['is', 'are', 'was', 'were', 'does', 'do', 'did']);
const SUBJECTS_BEFORE = new Set(['i', 'we', 'he', 'she', 'it', 'they', 'that', 'this', 'you']);
const PRAISED = new Set(['haul', 'job', 'work', 'effort', 'going', 'result', 'crop']);

const NO_SEASON = new Set(['flush', 'wave', 'round', 'batch', 'set', 'lot', 'crop', 'pot', 'tub', 'spurt']);

/** A phrase that reads as a doubt and is none where fruit is eaten or given. */
function isInnocent(items: readonly Item[], at: readonly number[]): boolean {
  const opening = items[at[0] ?? -1]?.text;
  // "did the mission tips"
  if (opening === 'did' && isDoneTo(items, (at[0] ?? 0) + 1)) return true;
  // "juneteenth was when the alma got its tips off"
  if (
    opening === 'when' &&
    items[(at[0] ?? 0) - 2]?.type === 'date' &&
    items[(at[0] ?? 0) - 1]?.classes.has('BE')
  )
    return true;
  if (walksBy(items, at) || isOfTheTree(items, at)) return true;
  // "record six figs picked": what the assistant is told to do.
  if (opening === 'record' && at[0] === 0 && items[1]?.quantity) return true;
  // "so that is that", "when i did it": told, where "did it" by itself asks.
  if (
    at.length === 2 &&
    AUXILIARIES.has(opening ?? '') &&
    SUBJECTS_BEFORE.has(items[(at[0] ?? 0) - 1]?.text ?? '')
  )
    return true;
  // "nice haul off the alma", not "nice haul sue"
  const praised = items[at[1] ?? -1];
  const whom = items[at[2] ?? -1];
  if (praised && PRAISED.has(praised.text) && whom && (whom.type !== 'word' || whom.classes.size > 0))
    return true;
  // "8 i think", "monday i guess": a number or a day not quite sure
  const guess = opening === 'i' ? (at[0] ?? 0) : (at[0] ?? 0) - 1;
  if (
    items[guess]?.text === 'i' &&
    isGuessable(items[guess - 1]) &&
    ['think', 'guess', 'reckon', 'suppose'].includes(items[at.at(-1) ?? -1]?.text ?? '') &&
    items[(at.at(-1) ?? 0) + 1] === undefined
  )
    return true;
  // "in its second flush", "in its first pot": no season
  if (opening === 'in' && NO_SEASON.has(items[(at.at(-1) ?? 0) + 1]?.text ?? '')) return true;
  // "topped that celeste by the shed"
  if (
    opening === 'topped' &&
    items[at.at(-1) ?? -1]?.text === 'by' &&
    items.slice(at[0], at.at(-1)).some((item) => item.type === 'tree')
  )
    return true;
  // "managed to tip it"
  const to = at.find((i) => items[i]?.text === 'to');
  if (to !== undefined && FACTIVE.has(items[to - 1]?.text ?? '')) return true;
  const behind = items[(at.at(-1) ?? 0) + 1];
  // "dropped its crop after i moved it": the tree, not house.
  const moved = items[at.at(-1) ?? -1]?.text;
  if (
    (moved === 'moved' || moved === 'bought') &&
    behind &&
    (behind.type === 'tree' || THE_TREE.has(behind.text))
  )
    return true;
  // "wheeled the alma back in": indoors, no time.
  if (
    opening === 'back' &&
    items.slice(Math.max(0, (at[0] ?? 0) - 6), at[0]).some((item) => MOVED.has(item.text))
  )
    return true;
  // "gave the newlyweds across the road 10 figs"
  if (
    at.some((i) => ROADS.has(items[i]?.text ?? '') || ROADS.has(items[i + 1]?.text ?? '')) &&
    items.slice(0, at[0]).some((item) => GIVING.has(item.text) && item.text !== 'to' && item.text !== 'for')
  )
    return true;
  // "almost a kilo off the alma"
  if ((opening === 'almost' || opening === 'nearly') && at.length === 1 && isAmount(behind)) return true;
  // "not one left hanging"
  if (
    opening === 'left' &&
    items.slice(Math.max(0, (at[0] ?? 0) - 2), at[0]).some((item) => item.classes.has('NEG'))
  )
    return true;
  // "once the kids were in bed i tipped it"
  if (
    opening === 'once' &&
    items.slice(at[0]).some((item) => ['was', 'were', 'had', 'got'].includes(item.text))
  )
    return true;
  if ((opening === 'instead' || opening === 'rather') && goesOnWithI(items, at[0] ?? 0)) return true;
  const last = items[at.at(-1) ?? -1]?.text;
  const lead = items.slice(0, at[0] ?? 0).findLast((item) => !item.classes.has('DET'))?.text ?? '';
  // "gave the neighbours 10 figs"
  if (items[at[0] ?? -1]?.classes.has('OTHERS') && GIVING.has(lead)) return true;
  // "could not see any", "can count 9", "too many figs to count"
  const further = items[(at.at(-1) ?? 0) + 1];
  if (last === 'see' && ['any', 'one', 'a', 'no', 'single', 'anything'].includes(further?.text ?? ''))
    return true;
  // "polished off the last brunswick standing at the sink"
  if ((last === 'at' || last === 'in') && items.slice(0, at[0]).some((item) => item.classes.has('PICKED')))
    return true;
  // "two weeks ago to the day, the alma's tops came off"
  if (opening === 'the' && items[(at[0] ?? 0) - 1]?.text === 'to' && items[(at[0] ?? 0) + 1]?.text === 'day')
    return true;
  // "niece came round, 6 figs vanished into her"
  if (
    items[at[0] ?? -1]?.classes.has('KIN') &&
    ['over', 'round', 'by'].includes(last ?? '') &&
    at.length === 3
  )
    return true;
  // "before the missus saw"
  if (items[at[0] ?? -1]?.classes.has('HOUSE') && ['before', 'while', 'without', 'when'].includes(lead))
    return true;
  // "brekkie was 5 figs on toast", "scrumped a few from my own"
  if (last === 'toast' && items.some((item) => item.quantity)) return true;
  if (items[at[0] ?? -1]?.text === 'scrumped' && items.some((item) => item.text === 'own')) return true;
  // "saw a fig on it"
  if (
    last === 'a' &&
    further?.classes.has('FRUIT') &&
    ['saw', 'seen', 'spotted'].includes(items[at[0] ?? -1]?.text ?? '')
  )
    return true;
  if (last === 'count' && further?.quantity) return true;
  if (last === 'many' && further?.classes.has('FRUIT')) return true;
  // "gave up 3 figs"
  const after = items[(at.at(-1) ?? 0) + 1];
  if (items[at.at(-1) ?? -1]?.text === 'up' && (after?.quantity || after?.classes.has('FRUIT'))) return true;
  // "gave up its first"
  if (
    items[at.at(-1) ?? -1]?.text === 'up' &&
    after?.classes.has('DET') &&
    ['first', 'last', 'only', 'lone'].includes(items[(at.at(-1) ?? 0) + 2]?.text ?? '')
  )
    return true;
  // "no new ones"
  if (items[at.at(-1) ?? -1]?.text === 'new' && (after?.text === 'ones' || after?.classes.has('FRUIT')))
    return true;
  // "figs? what figs"
  if (items[0]?.text === 'what' && items.length === 2 && items[1]?.classes.has('FRUIT')) return true;
  // "the one by the fence has 3 figs": a place, not a time.
  const [by, then] = [items[at[0] ?? -1], items[(at[0] ?? 0) + 1]];
  if (
    by?.text === 'by' &&
    (then?.type === 'tree' || (then?.text === 'the' && items[(at[0] ?? 0) + 2]?.text !== 'time'))
  )
    return true;
  // "by the time i tipped it": that was done.
  const verb = items[(at.at(-1) ?? 0) + 1];
  if (
    by?.text === 'by' &&
    items.some((item) => item.text === 'time') &&
    (verb?.classes.has('TIPPED') || verb?.classes.has('PICKED'))
  )
    return true;
  return isGiver(items, at[0] ?? 0) || isFamilyEating(items, at);
}

const MOVED = wordSet(
  'moved wheeled brought carried lugged hauled dragged rolled shifted barrowed put popped took pulled marched trundled shuffled bunged heaved',
);
const THE_TREE = new Set(['it', 'him', 'her', 'them', 'the', 'that', 'this']);
const ROADS = new Set(['road', 'street', 'lane', 'way', 'corner', 'block', 'village', 'hill', 'close']);
const GIVING = new Set([
  'gave',
  'give',
  'given',
  'for',
  'to',
  'with',
  'handed',
  'sent',
  'gifted',
  'sold',
  'fed',
]);

/** "the alma i got from my sister has figs": it is one's own by now. */
function isGiver(items: readonly Item[], first: number): boolean {
  const lead =
    items[first]?.classes.has('OTHERS') && items[first - 1]?.classes.has('DET') ? first - 1 : first;
  return (
    ['from', 'by'].includes(items[lead - 1]?.text ?? '') &&
    items.slice(0, lead).some((item) => GIVEN.has(item.text))
  );
}

const GIVEN = new Set(['got', 'bought', 'given', 'gifted', 'came', 'had', 'inherited', 'swapped', 'traded']);

/** A weight or a fair number: "almost 3 figs" may be none. */
function isAmount(item: Item | undefined): boolean {
  return item?.quantity !== undefined && (item.quantity.unit !== null || item.quantity.value >= 5);
}

/** "dad munched the one ripe alma": whoever of the family ate it, it was picked. */
function isFamilyEating(items: readonly Item[], at: readonly number[]): boolean {
  const eater = items[at[0] ?? -1];
  // "my dad"
  const who = ['my', 'the'].includes(eater?.text ?? '') ? (at[0] ?? 0) + 1 : (at[0] ?? 0);
  if (!items[who]?.classes.has('KIN') || !eatsHere(items, who)) return false;
  return !items.some(
    (item, i) =>
      ['his', 'her', 'their', 'hers', 'theirs'].includes(item.text) &&
      !['hands', 'mitts', 'paws', 'face', 'way'].includes(items[i + 1]?.text ?? ''),
  );
}

/** "instead of pruning i pinched it": what is said after "i" was done. */
function goesOnWithI(items: readonly Item[], i: number): boolean {
  return items.slice(i + 2).some((item) => item.text === 'i' || item.text === 'we');
}
