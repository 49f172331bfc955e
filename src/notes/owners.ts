import { eatsHere } from './eats-here.ts';
import { type Filed, fileRules } from './filed-rules.ts';
import type { Item } from './items.ts';
import { classesOf } from './lexicon/word-classes.ts';
import { wordSet } from './lexicon/word-set.ts';
import { AGES, isNamedOwner } from './named-owner.ts';
import { isOnSale, isOwnPlot } from './on-sale.ts';

/** Words whose 's is no possessive. */
const NO_POSSESSORS = wordSet(`
  else it that what there here today yesterday this who how where year
`);

const OTHERS_THINGS = new Set(['fig', 'figs', 'tree', 'trees', 'garden', 'allotment', 'greenhouse', 'plot']);
const GROUNDS = new Set(['garden', 'gardens', 'orchard', 'plot', 'plots', 'allotment', 'allotments']);
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

/** A word that may be, or have, somebody else. */
interface OwnerRule extends Filed {
  /** Whether it is told of somebody else's tree, or null where the rule does not decide it. */
  readonly tells: (items: readonly Item[], i: number) => boolean | null;
}

const orNull = (tells: boolean): true | null => (tells ? true : null);

/** Where nobody says or thinks anything: whoever it is has the tree. */
const surelyOthers = fileRules<OwnerRule>([
  { on: 'everyone everybody', tells: (items, i) => orNull(items[i + 1]?.text === 'else') },
  // "saw a ronde at the garden centre"
  {
    on: '<tree>',
    tells: (items, i) => orNull(['a', 'an', 'some'].includes(items[i - 1]?.text ?? '') && isOnSale(items, i)),
  },
  // "went up the allotment, alma has figs"
  { on: 'allotment', tells: (items, i) => (isOwnPlot(items, i) ? false : null) },
  // "collected the king from the nursery"
  {
    on: 'nursery nurseries',
    tells: (items, i) => (items.slice(0, i).some((each) => each.text === 'from') ? false : null),
  },
  // "grandads old fig at the cottage"
  {
    on: ({ text }) => text.endsWith('s') && classesOf(text.slice(0, -1)).has('OTHERS'),
    tells: (items, i) => {
      const noun = items
        .slice(i + 1, i + 4)
        .find((each) => !each.classes.has('SIZE') && !AGES.has(each.text));
      return orNull(noun?.type === 'tree' || OTHERS_THINGS.has(noun?.text ?? ''));
    },
  },
  // "daves king is loaded", "zoltans celeste"
  { on: ({ text }) => text.endsWith('s'), tells: (items, i) => orNull(isNamedOwner(items, i)) },
  // "the in-laws' alma"
  {
    on: 'laws',
    tells: (items, i) => orNull(items[i - 1]?.text === 'in' && items[i + 1]?.type === 'tree'),
  },
  // "in my country the alma gives 100 figs"
  {
    on: 'country village homeland hometown childhood birthplace',
    tells: (items, i) => orNull(['my', 'our', 'his', 'her'].includes(items[i - 1]?.text ?? '')),
  },
  // "at the community garden"
  {
    on: 'community public botanic botanical municipal school council show walled',
    tells: (items, i) => orNull(GROUNDS.has(items[i + 1]?.text ?? '')),
  },
  // "a woman on my ward grows celeste in tubs"
  {
    on: `  woman man lady chap lad lass girl boy guy bloke person customer patient couple family gardener grower
  member stranger fella nurse teacher student client colleague`,
    tells: (items, i) => {
      const before = items[i - 1];
      const who = before ? ANY.has(before.text) : WHERE.has(items[i + 1]?.text ?? '');
      return orNull(who && items.slice(i).some((each) => GROWS.has(each.text)));
    },
  },
  {
    on: 'HOUSE',
    tells: (items, i) => orNull(items[i + 1]?.text === "'s" && items[i + 2]?.type === 'tree'),
  },
]);

/** Where it may be somebody who says so, or who is given something. */
const maybeOthers = fileRules<OwnerRule>([
  // "somebody's nicked it": who has, not whose
  {
    on: 'somebody someone',
    tells: (items, i) => (items[i + 1]?.text === "'s" && STOLEN.has(items[i + 2]?.text ?? '') ? false : null),
  },
  // "fed the mother tree": that of the cuttings.
  {
    on: 'mother',
    tells: (items, i) => (STOCK.has(items[i + 1]?.text ?? '') ? false : null),
  },
  { on: 'OTHERS', tells: isOwner },
  // "next door's king", not "next door's ladder"
  {
    on: 'next',
    tells: (items, i) => {
      const behind = items.slice(i + 2, i + 4);
      if (items[i + 1]?.text !== 'door' && items[i + 1]?.text !== 'doors') return null;
      if (behind.some((each) => LENT.has(each.text) || each.classes.has('CAREOBJ'))) return null;
      return !behind.some((each) => each.classes.has('THIEF'));
    },
  },
  // "gave the newlyweds across the road 10 figs": who got them.
  {
    on: 'road street lane village corner block',
    tells: (items, i) =>
      items[i - 1]?.text === 'the' && ALONG.has(items[i - 2]?.text ?? '')
        ? !items.slice(0, i).some((each) => HANDED.has(each.text))
        : null,
  },
  // "3 kilos off hers", "a fella pinched his at 5 leaves": the tree is not even named.
  {
    on: 'hers theirs yours his',
    tells: (items, i) =>
      items[i]?.text !== 'his' || standsAlone(items, i) ? !items.some((each) => each.type === 'tree') : null,
  },
  {
    on: 'his her their your',
    tells: (items, i) => {
      // "tip of the day: do not reverse into your adriatic": good advice, and whose tree taught it.
      if (items[i]?.text === 'your' && ADVISING.has(items[0]?.text ?? '')) return false;
      const noun = items.slice(i + 1, i + 4).find((each) => !each.classes.has('SIZE'));
      return noun?.type === 'tree' || OWNED.has(noun?.text ?? '');
    },
  },
]);

/** At this word it is told of somebody else's tree. */
export function isOthers(items: readonly Item[], i: number): boolean {
  const word = items[i]?.word;
  if (!word) return false;
  for (const { tells } of surelyOthers(word)) {
    const verdict = tells(items, i);
    if (verdict !== null) return verdict;
  }
  const rules = maybeOthers(word);
  const next = items[i + 1];
  if (rules.length === 0 && next?.text !== "'s") return false;
  if (next && (next.classes.has('SAYS') || next.classes.has('HEDGE') || next.text === 'helped')) return false;
  for (const { tells } of rules) {
    const verdict = tells(items, i);
    if (verdict !== null) return verdict;
  }
  return isPossessor(items, i);
}

const STOLEN = wordSet('had been gone nicked pinched stolen taken eaten broken cut run');
const STOCK = wordSet('tree plant stock bush');
const ALONG = wordSet('down over across up along');
const ADVISING = wordSet('do never always remember');
const OWNED = wordSet('tree trees garden place yard greenhouse fig figs');

/** "his" without a noun. */
function standsAlone(items: readonly Item[], i: number): boolean {
  const next = items[i + 1];
  return isLastWord(items, i) || HIS_AT.has(next?.text ?? '') || next?.type === 'date';
}

/** "dave's alma", "daves alma": a possessor the lexicon does not know. */
function isPossessor(items: readonly Item[], i: number): boolean {
  const item = items[i];
  if (items[i + 1]?.text !== "'s" || item?.type !== 'word' || NO_POSSESSORS.has(item.text)) return false;
  const noun = items
    .slice(i + 2, i + 5)
    .find((each) => !each.classes.has('SIZE') && !each.classes.has('DET'));
  return noun?.type === 'tree' || noun?.text === 'allotment' || OWNED.has(noun?.text ?? '');
}

/** Whether a neighbour, a friend or one of the family is told of for his own tree. */
function isOwner(items: readonly Item[], i: number): boolean {
  const item = items[i];
  const next = items[i + 1];
  const before = items[i - 1];
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
  if (item?.classes.has('KIN') && eatsHere(items, i)) return false;
  if (
    next?.text === "'s" ||
    next?.type === 'tree' ||
    item?.text.endsWith('s') ||
    (next && HAS_TREES.has(next.text))
  )
    return true;
  return before !== undefined && ['at', 'in', 'from', 'the', 'on', 'my'].includes(before.text);
}

/** "mate at work has an adriatic": one that is not named as the writer's. */
function hasOneOfHisOwn(items: readonly Item[], who: number): boolean {
  const tree = items.findIndex((item, i) => i > who && item.type === 'tree');
  if (tree < 0 || tree > who + 7 || !['a', 'an'].includes(items[tree - 1]?.text ?? '')) return false;
  return items.slice(who + 1, tree).some((item) => OWNING.has(item.text));
}

const OWNING = wordSet('has have had got grows owns keeps bought planted');

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
