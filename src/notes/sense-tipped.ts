import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { isOrdinary } from './lexicon/ordinary.ts';
import { wordSet } from './lexicon/word-set.ts';

/** "tipped it to encourage …": what tipping is for. */
const PURPOSES = wordSet(`
  encourage force stop make get see try keep help push speed slow hurry promote induce trigger
`);
/** What may stand between "tipped" and its noun. */
const AMOUNTS = wordSet(`
  all both some most every each half of few couple more back out off around about approx roughly
`);
/** Nouns, and words after a bare number, that fit a tipped shoot. */
const OBJECTS = wordSet(`
  tree trees plant plants lot whole rest one ones thing bush weaker thin fast side stronger thinner
  longest outer inner upper lower vigorous same entire south north sunny measure on at from to so per
  off in guy beast bugger strongest weakest longer outside them it thicker spindly leggy pots figs
  week day morning evening back minute front today above odd remaining
`);

/** What may stand before "tipped": the grower, the tree or a shoot, an auxiliary; not the wind or the dog. */
export function subjectFits(items: readonly Item[], at: number): boolean {
  const before = items[at - 1];
  if (!before) return true;
  if (before.type !== 'word') return before.type !== 'number';
  return (
    SUBJECTS.has(before.text) ||
    before.classes.has('SHOOT') ||
    before.classes.has('HOUSE') ||
    before.classes.has('TREEWORD') ||
    before.classes.has('SIZE') ||
    before.classes.has('ADV') ||
    before.classes.has('OTHERS') ||
    before.classes.has('EMPTY') ||
    before.text.endsWith('ly') ||
    before.text === 'measure'
  );
}

const SUBJECTS = wordSet(`
  de i we have has had been was were is are got get getting just finally also then and already both
  all now it they them well so today properly fully only even lightly hard gently one ones that be
  being not never did quickly carefully went ahead ok right yes done oh lol newly freshly recently
  officially accidentally successfully bravely ruthlessly gingerly again out since after when where
  the this these those my 's there gave late early she he you us hit every each everything thoroughly
  neatly half mostly partly partially completely tho though too promptly duly manually quietly hand
  double re me wait hubby tree plant earlier later next to as in on no yep yup note log logged record
  please anyway morning afternoon evening courage should would could will might may must nearly almost
  meant forgot wish if update report hi hey
`);

/** What may stand after "tipped": a tree, a shoot, a number of shoots, a place on the shoot, or nothing. */
export function objectFits(items: readonly Item[], at: number): boolean {
  let i = at + 1;
  let determined = false;
  let counted = false;
  for (;;) {
    const item = items[i];
    if (!item) return true;
    if (item.type === 'tree' || item.type === 'date' || item.type === 'vague') return true;
    // "pinched myself, it is alive"
    if (i === at + 1 && /^(?:my|your|him|her)self$/.test(item.text)) return false;
    if (item.type === 'quantity') {
      counted = true;
      i++;
      continue;
    }
    if (item.text === 'over' && !determined) return false;
    if (['up', 'into', 'onto'].includes(item.text) && !determined) return false;
    if (item.text === 'in' && !determined)
      return (
        items[i + 1]?.type === 'date' ||
        ['june', 'may', 'july', 'the', 'april'].includes(items[i + 1]?.text ?? '') ||
        items[i + 1]?.text === 'measure'
      );
    if (item.text === 'to')
      return (
        items[i + 1]?.text === 'measure' ||
        items[i + 1]?.type === 'quantity' ||
        PURPOSES.has(items[i + 1]?.text ?? '')
      );
    if (item.text === 'by')
      return !items
        .slice(i + 1)
        .some((each) => each.classes.has('FROST') || each.classes.has('TROUBLE') || BY_ITSELF.has(each.text));
    if (
      item.text === 'back' &&
      ['from', 'to', 'into', 'home', 'in'].includes(items[i + 1]?.text ?? '') &&
      items[i + 1]?.text !== 'to'
    )
      return false;
    if (item.text === 'at' && ['by', 'my'].includes(items[i + 1]?.text ?? '')) return false;
    if (item.classes.has('SHOOT') || item.classes.has('BUD')) return true;
    // "tipped the fig by the fence"
    if (item.text === 'fig' && determined && items[i + 1]?.type === 'tree') return true;
    // "topped my fig at last": the tree
    if (
      item.text === 'fig' &&
      ['my', 'our', 'me'].includes(items[i - 1]?.text ?? '') &&
      ['topped', 'tipped', 'stopped', 'pruned'].includes(items[at]?.text ?? '') &&
      !['over', 'onto', 'into', 'on', 'out', 'off', 'down', 'in'].includes(items[i + 1]?.text ?? '')
    )
      return true;
    if (item.classes.has('FRUIT') || item.classes.has('LEAF') || item.classes.has('CUTTING')) return false;
    if (item.classes.has('DET') || AMOUNTS.has(item.text)) {
      if (['back', 'out', 'off'].includes(item.text)) {
        if (['to', 'for', 'into', 'the'].includes(items[i + 1]?.text ?? '') && items[i + 1]?.text !== 'the')
          return (
            items[i + 1]?.text === 'to' &&
            (items[i + 2]?.text === 'measure' || items[i + 2]?.type === 'quantity')
          );
        i++;
        continue;
      }
      determined = true;
      i++;
      continue;
    }
    if ((item.classes.has('SIZE') || OF_GROWTH.has(item.text)) && determined) {
      i++;
      continue;
    }
    // "pinched 4 shots": shoots
    if (item.text === 'shots' && counted) return items[i + 1]?.text !== 'of';
    if (determined || counted) {
      if (OBJECTS.has(item.text) || item.classes.has('PRO') || item.classes.has('SIZE')) return true;
      // A noun the lexicon does not know: another thing (a can, the bin men) if it is an everyday word, else perhaps a tree.
      return !isOrdinary(item.text);
    }
    if (item.type === 'mark') return true;
    return (
      AFTER_TIPPED.has(item.text) ||
      item.classes.has('ADV') ||
      item.classes.has('SIZE') ||
      item.classes.has('PRO') ||
      item.classes.has('EMPTY') ||
      item.classes.has('NEG') ||
      item.text.endsWith('ly') ||
      (item.classes.size === 0 && !isOrdinary(item.text))
    );
  }
}

/** What nips a shoot without anybody's doing. */
const BY_ITSELF = wordSet(
  'wind cold dog cat hail deer tie ties cloth shadecloth net netting string wire cage clip sash door lid squirrel',
);

/** What tips are like. */
const OF_GROWTH = wordSet('soft tender leafy growing sappy floppy bendy');

const AFTER_TIPPED = wordSet(`
  out back off on at from above after with for again too as well it them him her both all that this
  these those some most half last lot rest everything today now already hard to in by past beyond just
  early late when because before finally ok yay lol earlier once twice but so properly every each any
  right way down according like ones one even not and n exactly either measure yesterday fine nicely
  gently here there is are was were has have had instead per only also immediately thanks cheers haha
  same about around approx roughly weeks week days months ages thank okay sap sticky mine ours quick
  first second third good please x hoping hopefully ahead the my its a an our of tree trees shoots
  round inside outside myself ourselves got yet four bang dead later ready job over
`);

const OWNED_BY_TREE = wordSet(`
  label labels tag tags sign photo photos pic pics picture jam jar jars post stake cane saucer pot pots
  tub box bag lid bottle tank trolley net netting cover fence shelf
`);
const OF_TREE = wordSet(`
  it them all both every each lot rest one ones tree trees plant plants bush everything others that this
  these those which longest tallest strongest lower upper new main
`);
const BEHIND_APEX = wordSet('of off on from out');

/** What was taken off is the tip of a tree or a shoot: not "the top off the alma pot", "the tips of my fingers". */
export function isTipOfTree(items: readonly Item[], at: readonly number[]): boolean {
  for (const i of at) {
    const item = items[i];
    if (item?.type === 'tree') {
      const next = items[i + 1]?.text === "'s" ? items[i + 2] : items[i + 1];
      if (next && OWNED_BY_TREE.has(next.text)) return false;
      continue;
    }
    if (!item?.classes.has('APEX')) continue;
    const next = items[i + 1];
    if (next?.classes.has('LEAF') || (next?.type === 'quantity' && items[i + 2]?.classes.has('LEAF')))
      return false;
    if (next?.text === 'off' && items[i + 2]?.text === 'to') return false;
    let j = i + 1;
    while (BEHIND_APEX.has(items[j]?.text ?? '')) j++;
    if (j === i + 1) continue;
    const from = j;
    while (items[j]?.classes.has('DET') || items[j]?.classes.has('SIZE')) j++;
    const noun = items[j];
    if (noun?.type !== 'word' || (j === from && !isOrdinary(noun.text))) continue;
    if (OF_TREE.has(noun.text) || isAnyOf(noun, ['SHOOT', 'TREEWORD', 'PRO', 'BE', 'ADV', 'OLDWOOD']))
      continue;
    return false;
  }
  return true;
}

/** What stopped is the tree itself, and nobody stopped it. */
export function hasStopped(items: readonly Item[], at: number): boolean {
  let i = at - 1;
  while (items[i]?.classes.has('ADV')) i--;
  if (!['has', 'have', 'had', "'s"].includes(items[i]?.text ?? '')) return false;
  const who = items[i - 1];
  return (who?.type === 'tree' || who?.text === 'it' || who?.text === 'they') && items[at + 1] === undefined;
}
