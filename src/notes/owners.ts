import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { classesOf } from './lexicon/word-classes.ts';
import { wordSet } from './lexicon/word-set.ts';

/** Words whose 's is no possessive. */
const NO_POSSESSORS = wordSet(`
  else it that what there here today yesterday this who how where year
`);
/** Nouns that with "all" or "whole" mean the garden. */
const GARDEN = wordSet(`
  trees pots plants collection garden yard figs lot orchard containers tree pot greenhouse patio tubs
`);

const AGES = new Set(['old', 'new', 'young']);
const OTHERS_THINGS = new Set(['fig', 'figs', 'tree', 'trees', 'garden', 'allotment', 'greenhouse', 'plot']);
const STRANGERS = wordSet(`
  woman man lady chap lad lass girl boy guy bloke person customer patient couple family gardener grower
  member stranger fella nurse teacher student client colleague
`);
const PUBLIC = new Set([
  'community',
  'public',
  'botanic',
  'botanical',
  'municipal',
  'school',
  'council',
  'show',
  'walled',
]);
const HOMELANDS = new Set(['country', 'village', 'homeland', 'hometown', 'childhood', 'birthplace']);
const GROUNDS = new Set(['garden', 'gardens', 'orchard', 'plot', 'plots', 'allotment', 'allotments']);
const SHOPS = new Set(['nursery', 'nurseries']);
const ANY = new Set(['a', 'an', 'some', 'this', 'that', 'another', 'one', 'old']);
/** "guy at work has a kadota": behind the stranger who opens a note; alone he may be spoken to. */
const WHERE = new Set(['at', 'in', 'from', 'on', 'down', 'up', 'over', 'across', 'who', 'near', 'next', 'i']);
const GROWS = wordSet(`
  grows grow has have had keeps owns got gets grew swears raises
`);
const HANDED = new Set([
  'gave',
  'given',
  'handed',
  'passed',
  'sold',
  'sent',
  'delivered',
  'dropped',
  'swapped',
]);
/** What is lent over the fence. */
const LENT = wordSet(`
  ladder ladders steps snips secateurs pruners clippers loppers shears scissors saw knife trowel fork spade
  shovel hose barrow wheelbarrow trolley dolly truck van ute car bucket basket bowl bag net netting gloves
  hand hands help advice tip tips recipe method way example lead kids kid son daughter
`);

/** At this word it is told of somebody else's tree. */
export function isOthers(items: readonly Item[], i: number): boolean {
  const item = items[i];
  if (!item) return false;
  const next = items[i + 1];
  const before = items[i - 1];
  if ((item.text === 'everyone' || item.text === 'everybody') && next?.text === 'else') return true;
  // "collected the king from the nursery"
  if (SHOPS.has(item.text) && items.slice(0, i).some((each) => each.text === 'from')) return false;
  // "grandads old fig at the cottage"
  if (item.text.endsWith('s') && classesOf(item.text.slice(0, -1)).has('OTHERS')) {
    const noun = items.slice(i + 1, i + 4).find((each) => !each.classes.has('SIZE') && !AGES.has(each.text));
    if (noun?.type === 'tree' || OTHERS_THINGS.has(noun?.text ?? '')) return true;
  }
  // "the in-laws' alma", "at the community garden"
  if (item.text === 'laws' && before?.text === 'in' && next?.type === 'tree') return true;
  // "in my country the alma gives 100 figs"
  if (HOMELANDS.has(item.text) && ['my', 'our', 'his', 'her'].includes(before?.text ?? '')) return true;
  if (PUBLIC.has(item.text) && GROUNDS.has(next?.text ?? '')) return true;
  // "a woman on my ward grows celeste in tubs"
  if (
    STRANGERS.has(item.text) &&
    (before ? ANY.has(before.text) : WHERE.has(next?.text ?? '')) &&
    items.slice(i).some((each) => GROWS.has(each.text))
  )
    return true;
  if (item.classes.has('HOUSE') && next?.text === "'s" && items[i + 2]?.type === 'tree') return true;
  if (next && (next.classes.has('SAYS') || next.classes.has('HEDGE') || next.text === 'helped')) return false;
  // "somebody's nicked it": who has, not whose
  if (
    ['somebody', 'someone'].includes(item.text) &&
    next?.text === "'s" &&
    ['had', 'been', 'gone', 'nicked', 'pinched', 'stolen', 'taken', 'eaten', 'broken', 'cut', 'run'].includes(
      items[i + 2]?.text ?? '',
    )
  )
    return false;
  // "fed the mother tree": that of the cuttings.
  if (item.text === 'mother' && ['tree', 'plant', 'stock', 'bush'].includes(next?.text ?? '')) return false;
  if (item.classes.has('OTHERS')) {
    if (hasOneOfHisOwn(items, i)) return true;
    // "the alma i got from my sister" is one's own by now.
    const giver = before?.classes.has('DET') ? items[i - 2] : before;
    if (['from', 'by'].includes(giver?.text ?? '') && items.slice(0, i).some((each) => GIVEN.has(each.text)))
      return false;
    // "the neighbour's cat dug up my alma"
    const owned = next?.text === "'s" ? items[i + 2] : next;
    if (owned?.classes.has('THIEF') && !owned.classes.has('OTHERS')) return false;
    // "with my neighbour's ladder"
    if (LENT.has(owned?.text ?? '') || owned?.classes.has('CAREOBJ')) return false;
    // "gave a friend three cuttings", "my mate took a photo of my alma" are about one's own.
    const lead = before?.classes.has('DET') && before.text !== 'a' ? items[i - 2] : before;
    if (['to', 'for', 'with', 'a', 'gave', 'give'].includes(lead?.text ?? '')) return next?.text === "'s";
    // "my dad scoffed the one ripe alma": at home.
    if (item.classes.has('KIN') && eatsHere(items, i)) return false;
    if (
      next?.text === "'s" ||
      next?.type === 'tree' ||
      item.text.endsWith('s') ||
      (next && HAS_TREES.has(next.text))
    )
      return true;
    return before !== undefined && ['at', 'in', 'from', 'the', 'on', 'my'].includes(before.text);
  }
  if (
    item.text === 'next' &&
    (next?.text === 'door' || next?.text === 'doors') &&
    !items.slice(i + 2, i + 4).some((each) => LENT.has(each.text) || each.classes.has('CAREOBJ'))
  )
    return !items.slice(i + 2, i + 4).some((each) => each.classes.has('THIEF'));
  if (
    ['road', 'street', 'lane', 'village', 'corner', 'block'].includes(item.text) &&
    before?.text === 'the' &&
    ['down', 'over', 'across', 'up', 'along'].includes(items[i - 2]?.text ?? '')
  )
    // "gave the newlyweds across the road 10 figs": who got them.
    return !items.slice(0, i).some((each) => HANDED.has(each.text));
  // "a fella pinched his at 5 leaves"
  const his =
    item.text === 'his' && (isLastWord(items, i) || HIS_AT.has(next?.text ?? '') || next?.type === 'date');
  if (!his && ['his', 'her', 'their', 'your'].includes(item.text)) {
    // "tip of the day: do not reverse into your adriatic": good advice, and whose tree taught it.
    if (item.text === 'your' && ['do', 'never', 'always', 'remember'].includes(items[0]?.text ?? ''))
      return false;
    const noun = items.slice(i + 1, i + 4).find((each) => !each.classes.has('SIZE'));
    return (
      noun?.type === 'tree' ||
      ['tree', 'trees', 'garden', 'place', 'yard', 'greenhouse', 'fig', 'figs'].includes(noun?.text ?? '')
    );
  }
  // "3 kilos off hers": the tree is not even named.
  if (['hers', 'theirs', 'yours'].includes(item.text) || his)
    return !items.some((each) => each.type === 'tree');
  // "dave's alma", "daves alma": a possessor the lexicon does not know.
  if (next?.text === "'s" && item.type === 'word' && !NO_POSSESSORS.has(item.text)) {
    const noun = items
      .slice(i + 2, i + 5)
      .find((each) => !each.classes.has('SIZE') && !each.classes.has('DET'));
    return (
      noun?.type === 'tree' ||
      ['tree', 'trees', 'garden', 'place', 'yard', 'greenhouse', 'fig', 'figs', 'allotment'].includes(
        noun?.text ?? '',
      )
    );
  }
  return false;
}

/** "mate at work has an adriatic": one that is not named as the writer's. */
function hasOneOfHisOwn(items: readonly Item[], who: number): boolean {
  const tree = items.findIndex((item, i) => i > who && item.type === 'tree');
  if (tree < 0 || tree > who + 7 || !['a', 'an'].includes(items[tree - 1]?.text ?? '')) return false;
  return items.slice(who + 1, tree).some((item) => OWNING.has(item.text));
}

const OWNING = wordSet('has have had got grows owns keeps bought planted');

/** "dad scoffed 3", "gran had two", "auntie got her hands on 4 off pot 3", "grandma took a colander home from the alma". */
export function eatsHere(items: readonly Item[], who: number): boolean {
  const verb = items[who + 1];
  if (verb?.classes.has('EATEN')) return true;
  if (verb?.text === 'had' && items[who + 2]?.quantity) return true;
  if (!verb || !isAnyOf(verb, ['GOT', 'TAKEN', 'HAVE'])) return false;
  const from = items.findIndex((item, i) => i > who && (item.text === 'off' || item.text === 'from'));
  const tree = items.slice(from + 1).find((item) => !item.classes.has('DET'));
  if (from < 0 || tree?.type !== 'tree' || OWNERS.has(items[from + 1]?.text ?? '')) return false;
  const between = items.slice(who + 2, from);
  return between.some((item) => ['home', 'hands', 'away', 'paws', 'mitts'].includes(item.text));
}

const HIS_AT = new Set([
  'at',
  'on',
  'in',
  'when',
  'and',
  'back',
  'off',
  'out',
  'already',
  'every',
  'after',
  'before',
]);

const OWNERS = new Set(['his', 'her', 'their', 'your']);

const GIVEN = wordSet(`
  got bought given gifted came had inherited swapped traded
`);

function isLastWord(items: readonly Item[], i: number): boolean {
  const next = items[i + 1];
  return next === undefined || next.type === 'date' || next.classes.has('BE') || next.classes.has('HAVE');
}

const HAS_TREES = new Set([
  'grows',
  'grew',
  'keeps',
  'brought',
  'sent',
  'posted',
  'showed',
  'shared',
  "'s",
  'has',
  'have',
  'is',
  'had',
  'got',
  'did',
]);

/** Before "the lot": all of what one tree bore. */
const TAKEN_WHOLE = wordSet(`
  had got took taken ate eaten lost dropped stripped cleaned scoffed nicked picked chucked binned shed
  pinched stole swiped demolished
`);

/** At this word it is told of the garden as a whole. */
export function isWide(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text ?? '';
  const next = items[i + 1]?.text ?? '';
  const next2 = items[i + 2]?.text ?? '';
  // "they all got fed"
  if (word === 'all' && items[i - 1]?.text === 'they' && items.some((item) => item.classes.has('WATERED')))
    return items.every((item) => item.type !== 'tree');
  // "watered all", "a handful for each pot", "rotated the pots"
  if (word === 'all' && (next === 'round' || next === 'around') && items[i + 2] === undefined) return true;
  if (word === 'all' && next === 'of' && next2 === 'them' && items[i - 1]?.classes.has('WATERED'))
    return true;
  if (word === 'all' && items[i + 1] === undefined && items[i - 1]?.classes.has('WATERED')) return true;
  if (word === 'each' && ['tree', 'pot', 'plant', 'tub'].includes(next)) return true;
  if (
    ['pots', 'trees', 'plants', 'tubs', 'containers'].includes(word) &&
    ['the', 'my', 'our'].includes(items[i - 1]?.text ?? '')
  )
    return true;
  if (['everything', 'everybody', 'everyone'].includes(word))
    return (items[i + 1]?.text !== 'on' || items[i + 2]?.type === 'date') && items[i + 1]?.text !== 'off';
  if (
    word === 'all' &&
    items[i + 1]?.type === 'quantity' &&
    ['trees', 'pots', 'plants', 'tubs'].includes(next2)
  )
    return true;
  if (['all', 'every', 'whole', 'entire'].includes(word)) {
    const noun = ['the', 'my', 'of', 'our'].includes(next)
      ? next2 === 'my' || next2 === 'the'
        ? (items[i + 3]?.text ?? '')
        : next2
      : next;
    return GARDEN.has(noun) && !(noun === 'figs' || noun === 'tree' || noun === 'lot')
      ? true
      : word === 'every' && ['tree', 'pot', 'plant'].includes(noun);
  }
  // "fed all of em" where no tree was named
  if (word === 'all' && next === 'of' && next2 === 'them' && items.every((item) => item.type !== 'tree'))
    return !items.some((item) => item.classes.has('FRUIT'));
  // "watered all but the king", the king taken out
  if (word === 'all' && items.length === 1) return true;
  if (word === 'the' && next === 'lot') return !TAKEN_WHOLE.has(items[i - 1]?.text ?? '');
  if (
    word === 'the' &&
    next === 'whole' &&
    ['lot', 'garden', 'yard', 'collection', 'patio', 'greenhouse', 'orchard'].includes(next2)
  )
    return true;
  // "wasps got the rest" of what one tree bore
  if (word === 'the' && next === 'rest')
    return !items.slice(0, i).some((each) => isAnyOf(each, ['THIEF', 'PICKED', 'EATEN', 'DROPPED']));
  return false;
}
