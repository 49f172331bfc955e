import type { Clause } from './clauses.ts';
import { type Filed, fileRules } from './filed-rules.ts';
import { guessesOnlyWhen, isShortYear } from './guesses.ts';
import { isAnyOf, textAt } from './item.ts';
import type { Item } from './items.ts';
import { FACTIVE } from './lexicon/factive-words.ts';
import { COMING, IN_GROWTH, NO_DOING, SEASONS } from './lexicon/mood-words.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isManySay } from './many-say.ts';
import { isNearMiss, isPlain, isSettingOut, WHOLE } from './plain-wishes.ts';

/** A word that tells how its clause is meant. */
export interface MoodRule extends Filed {
  /**
   * What follows the word is no fact (`unreal`), its whole clause is none (`whole`), something is `denied`; where
   * nothing was unreal before it, `denied-of-fact`; it is of an earlier season (`past`), or somebody says so.
   */
  readonly means: 'unreal' | 'whole' | 'denied' | 'denied-of-fact' | 'past' | 'hearsay';
  /** Whether the word means it here; `year` is this one. */
  readonly when: (items: readonly Item[], i: number, clause: Clause, year: number) => boolean;
}

const always = (): boolean => true;

function isIng(word: string): boolean {
  return word.endsWith('ing');
}

/** Phrases of time that can only mean an earlier season. */
const EARLIER =
  /\b(?:years?|summers?|seasons?) (?:ago|back|before)|\b(?:last|previous) (?:year|season|summer)/i;

/** "two seasons", "3 years" */
function isSeasons(item: Item | undefined): boolean {
  return item?.text === 'measure' && /\b(?:years?|yrs?|seasons?|summers?)$/i.test(item.typed);
}

const YEAR = /^(19|20)\d\d$/;
const BEFORE_NOW = wordSet('before ago back earlier');
const DEEDS = ['TIP', 'PICK', 'DROP'];

const RULES: readonly MoodRule[] = [
  {
    on: '<date> <vague>',
    means: 'past',
    when: (items, i) => EARLIER.test(items[i]?.typed ?? ''),
  },
  { on: 'NEG', means: 'denied', when: always },
  {
    on: 'WILL',
    means: 'whole',
    when: (items, i) => WHOLE.has(textAt(items, i)) && !isPlain(items, i),
  },
  { on: 'WILL', means: 'unreal', when: (items, i) => !isPlain(items, i) },
  {
    on: 'HEDGE',
    means: 'whole',
    when: (items, i) =>
      !NO_GUESS.has(textAt(items, i)) && textAt(items, i - 1) !== 'who' && !guessesOnlyWhen(items, i),
  },
  {
    on: 'going',
    means: 'unreal',
    when: (items, i) =>
      textAt(items, i + 1) === 'to' && items[i + 2]?.type === 'word' && !items[i + 2]?.classes.has('DET'),
  },
  {
    on: 'to about',
    means: 'unreal',
    when: (items, i) =>
      items[i + 1]?.type === 'word' && isAnyOf(items[i + 1], DEEDS) && !FACTIVE.has(textAt(items, i - 1)),
  },
  // "ill keep feeding it"
  {
    on: 'ill',
    means: 'whole',
    when: (items, i) =>
      (i === 0 || items[i - 1]?.type === 'date') &&
      items[i + 1]?.type === 'word' &&
      !isIng(textAt(items, i + 1)),
  },
  // "gets its haircut come january"
  {
    on: 'come',
    means: 'whole',
    when: (items, i) => i > 0 && (items[i + 1]?.type === 'date' || COMING.has(textAt(items, i + 1))),
  },
  // What a tree has not got: "gasping for water".
  {
    on: 'begging crying screaming pleading desperate gasping longing calling shouting asking',
    means: 'unreal',
    when: (items, i) => textAt(items, i + 1) === 'for',
  },
  { on: 'let', means: 'unreal', when: (items, i) => textAt(items, i + 1) === 'us' },
  // "about to head out and water the ronde", "off to feed the king"
  { on: 'about fixing fixin off heading headed going', means: 'unreal', when: isSettingOut },
  // "came within an inch of pruning it"
  {
    on: 'within away inches seconds moments close verge brink point cusp mind near',
    means: 'unreal',
    when: isNearMiss,
  },
  {
    on: 'got',
    means: 'unreal',
    // "gotta feed it" is still to do; "got to feed it" may be done.
    when: (items, i) =>
      textAt(items, i + 1) === 'to' &&
      (items[i]?.typed === 'gotta' || items[i + 2]?.classes.has('TIP') === true),
  },
  { on: 'have', means: 'unreal', when: (items, i) => textAt(items, i + 1) === 'to' },
  { on: 'instead', means: 'denied-of-fact', when: (items, i) => textAt(items, i + 1) === 'of' },
  { on: 'yet', means: 'denied-of-fact', when: (items, i) => textAt(items, i + 1) === 'to' },
  {
    on: 'too',
    means: 'unreal',
    when: (items, i) => SOON.has(textAt(items, i + 1)) && textAt(items, i + 2) === 'to',
  },
  {
    on: 'soon',
    means: 'whole',
    when: (items, i, clause) => {
      const before = textAt(items, i - 1);
      return before !== 'too' && before !== 'as' && clause.sub !== 'as';
    },
  },
  { on: 'decided', means: 'denied-of-fact', when: (items, i) => DECIDED.has(textAt(items, i + 1)) },
  {
    on: 'close',
    means: 'unreal',
    when: (items, i) => textAt(items, i + 1) === 'to' && isIng(textAt(items, i + 2)),
  },
  // "back in april" is this year's, "back in the pot" no time at all.
  {
    on: 'back',
    means: 'past',
    when: (items, i) => {
      const what = items[i + 2];
      return (
        textAt(items, i + 1) === 'in' &&
        what !== undefined &&
        what.type !== 'date' &&
        what.type !== 'tree' &&
        !what.classes.has('DET') &&
        !IN_GROWTH.has(what.text)
      );
    },
  },
  {
    on: 'first',
    means: 'past',
    when: (items, i) => textAt(items, i + 1) === 'year' && WHOSE_YEAR.has(textAt(items, i - 1)),
  },
  {
    on: '<date>',
    means: 'whole',
    when: (items, i) =>
      /tonight/i.test(items[i]?.typed ?? '') &&
      items.some((each) => each.type === 'word' && isIng(each.text) && !NO_DOING.has(each.text)),
  },
  // "summer 23"
  {
    on: '<date>',
    means: 'past',
    when: (items, i, _, year) => {
      const next = items[i + 1];
      return (
        next?.type === 'quantity' &&
        /summer|spring|autumn|fall|winter/i.test(items[i]?.typed ?? '') &&
        Number(next.typed) >= 10 &&
        Number(next.typed) < year % 100
      );
    },
  },
  // "in its old pot it had 9"
  {
    on: 'old',
    means: 'past',
    when: (items, i) => HOMES.has(textAt(items, i + 1)) && ['in', 'at'].includes(textAt(items, i - 2)),
  },
  // "still has all its tips"
  {
    on: 'still',
    means: 'denied',
    when: (items, i) =>
      items[i + 1]?.classes.has('HAVE') === true &&
      items.slice(i + 2, i + 5).some((each) => each.classes.has('APEX')),
  },
  { on: 'held', means: 'denied', when: (items, i) => textAt(items, i + 1) === 'off' },
  { on: 'resisted resisting skipped avoided declined chickened', means: 'denied', when: always },
  { on: 'bottled', means: 'denied', when: (items, i) => textAt(items, i + 1) === 'it' },
  {
    on: 'PAST used always usually normally historically traditionally previously formerly',
    means: 'past',
    when: (items, i) => textAt(items, i) !== 'used' || textAt(items, i + 1) === 'to',
  },
  {
    on: '<number>',
    means: 'past',
    when: (items, i, _, year) =>
      YEAR.test(textAt(items, i)) && Number(textAt(items, i)) < year && textAt(items, i - 1) !== 'pot',
  },
  { on: 'measure', means: 'past', when: (items, i) => YEAR.test(items[i]?.typed ?? '') },
  { on: '<quantity>', means: 'past', when: (items, i, _, year) => isShortYear(items, i, year) },
  {
    on: '<quantity>',
    means: 'past',
    when: (items, i, _, year) => YEAR.test(items[i]?.typed ?? '') && Number(items[i]?.typed) < year,
  },
  // "last season", "the last 3 years"
  {
    on: 'last previous past prior other',
    means: 'past',
    when: (items, i) => SEASONS.has(textAt(items, i + 1)) || isSeasons(items[i + 1]),
  },
  {
    on: 'every each most some',
    means: 'past',
    when: (items, i) =>
      RECURRING.has(textAt(items, i + 1)) || (textAt(items, i) !== 'some' && items[i + 1]?.type === 'date'),
  },
  {
    on: [...SEASONS].join(' '),
    means: 'past',
    when: (items, i) => BEFORE_NOW.has(textAt(items, i + 1)),
  },
  {
    on: 'measure',
    means: 'past',
    when: (items, i) => BEFORE_NOW.has(textAt(items, i + 1)) && isSeasons(items[i]),
  },
  // "that one season it got rust"
  {
    on: 'that',
    means: 'past',
    when: (items, i) =>
      isSeasons(items[i + 1]) || (textAt(items, i + 1) === 'one' && SEASONS.has(textAt(items, i + 2))),
  },
  {
    on: 'SAYS',
    means: 'hearsay',
    when: (items, i) => {
      const before = textAt(items, i - 1);
      if (items[i - 1]?.type === 'tree') return false;
      return before === 'am' || !(before === 'i' || before === 'we' || textAt(items, i - 2) === 'i');
    },
  },
  // "the lads on here say …", "they say …"
  {
    on: 'say',
    means: 'hearsay',
    when: (items, i) => i > 0 && items[i + 1] !== undefined && isManySay(items, i),
  },
  // "on the list for feeding"
  {
    on: 'list agenda cards docket',
    means: 'whole',
    when: (items, i) => textAt(items, i - 2) === 'on',
  },
  // "grandad's certain …"
  {
    on: 'OTHERS',
    means: 'hearsay',
    when: (items, i) => items.slice(i + 1, i + 3).some((each) => SURE.has(each.text)),
  },
];

const NO_GUESS = wordSet('swear believe');
const SOON = wordSet('soon early late');
const DECIDED = wordSet('against not to');
const WHOSE_YEAR = wordSet('its her his the my in');
const HOMES = wordSet('pot spot place garden house home');
const RECURRING = wordSet('year years season summer winter july august');
const SURE = wordSet('certain sure positive convinced');

/** The rules of mood that a word sets off. */
export const moodRulesOf = fileRules(RULES);
