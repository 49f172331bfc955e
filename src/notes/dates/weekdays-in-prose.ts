import { wordSet } from '../lexicon/word-set.ts';
import { type Input, isClauseEnd, isClauseStart, textAt } from './input.ts';
import { hasVerbBefore, isPastVerb } from './past-verbs.ts';

/** Short weekday names that are words of their own. */
const AMBIGUOUS = new Set(['sun', 'sat', 'mon', 'wed', 'fri', 'thu', 'tue']);
const VERB_BEFORE_SAT = wordSet(
  'just it they that which has have had still we i he she there who you been and always mostly never',
);
const DAY_PREPOSITION = wordSet(
  'on last this next since until till til by from before after around over late early past every',
);
const NOT_AFTER_SUN = wordSet(
  'scald burn burnt burned scorch exposure hat side trap damage bleach spot all shade and or light baked dried loving only',
);

/** What the sun does to leaves and figs. */
const BY_SUN = wordSet(
  'scorched burned burnt bleached fried baked cooked toasted roasted singed frazzled dried shrivelled shriveled ripened killed nuked melted wilted crisped warmed got hit blasted hammered damaged ruined destroyed sizzled seared scalded cracked warped faded blistered',
);

/** Whether the weekday name at `i` is meant as one. */
export function isWeekdayInProse(input: Input, i: number): boolean {
  const word = textAt(input, i);
  const next = textAt(input, i + 1);
  // "fri-able", "sun-dried": the word goes on.
  if (next === '-' && input.tokens[i + 1]?.glued && input.tokens[i + 2]?.glued) {
    if (input.tokens[i + 2]?.isWord && input.tokens[i + 2]?.weekday === null) return false;
  }
  if (SAYINGS.has(next)) return false;
  if (!AMBIGUOUS.has(word)) return true;
  if (
    isBeforeDate(input, i + 1) ||
    putsRight(input, i, i + 1) ||
    isTallied(input, i) ||
    isTalliedAhead(input, i)
  )
    return true;
  const before = textAt(input, i - 1);
  const announced = DAY_PREPOSITION.has(before) && !IDLE_ON.has(textAt(input, i - 2));
  const headed =
    isClauseStart(input, i) &&
    ((':,-–'.includes(next) && next !== '') || isPastVerb(next)) &&
    !(word === 'sun' && BY_SUN.has(next));
  const closing = isClauseEnd(input, i + 1) && hasVerbBefore(input, i);
  const timed = TIME_AFTER.has(next);
  const listed = isListedWeekday(input, i);
  switch (word) {
    case 'sun':
      // "sun scorched the kadota": what the sun does itself
      if (headed && SUN_DOES.has(next)) return false;
      if (headed || listed || (timed && before !== 'the')) return true;
      if (SUN_PREPOSITION.has(before)) return !NOT_AFTER_SUN.has(next);
      return closing && !LIGHT_BEFORE.has(before);
    case 'mon':
      return announced || headed || timed || listed || (closing && !CHAT_BEFORE.has(before));
    case 'sat':
      if (announced || headed || listed || timed) return true;
      // "sat i picked 7": nobody sits there.
      if (isClauseStart(input, i) && (next === 'i' || next === 'we')) return true;
      return !VERB_BEFORE_SAT.has(before) && isClauseEnd(input, i + 1) && i > 0;
    case 'wed':
      return !AFTER_WE_WOULD.has(next);
    default:
      return true;
  }
}

const SUN_DOES = wordSet(
  'scorched burnt burned baked cooked fried bleached beat shone rose dried crisped wilted melted toasted roasted killed blasted frazzled damaged singed hit came warmed scalded',
);

/** "3 sat, 4 sun", "king sat, tall kadota sun": one day after another, each with its number or its tree. */
function isTallied(input: Input, i: number): boolean {
  if (!isClauseEnd(input, i + 1)) return false;
  let start = i - 1;
  while (start > i - 4 && input.tokens[start]?.isWord && !TALLYING.has(textAt(input, start))) start--;
  const counted = start === i - 1 && input.tokens[start]?.number != null;
  const at = counted ? start - 1 : start;
  return (
    at < i - 1 &&
    TALLYING.has(textAt(input, at)) &&
    input.tokens[at - 1]?.weekday != null &&
    !LIGHT_BEFORE.has(textAt(input, i - 1)) &&
    !VERB_BEFORE_SAT.has(textAt(input, i - 1)) &&
    !FRUIT_BEFORE_MON.has(textAt(input, i - 1))
  );
}

/** "3 alma sat and 4 ronde sun": the first of a row that goes on with a number and another day. */
function isTalliedAhead(input: Input, i: number): boolean {
  if (!TALLYING.has(textAt(input, i + 1)) || input.tokens[i + 2]?.number == null) return false;
  for (let k = i + 3; k < i + 7; k++)
    if (input.tokens[k]?.weekday != null)
      return isClauseEnd(input, k + 1) && !LIGHT_BEFORE.has(textAt(input, k - 1));
  return false;
}

/** "figlets mon": said to a friend. */
const FRUIT_BEFORE_MON = wordSet('figlets figlet figs fig fruit fruits brebas breba buds');

const TALLYING = new Set([',', 'and', '&', '+', 'then']);

export const OF_REPAIR = wordSet(
  'that no wait oops sorry mean meant actually rather correction edit make was it er err erm um uh ugh nope nah *',
);

/** "sat, strike that, sun": another day in the place of one told just before. */
export function putsRight(input: Input, i: number, end: number): boolean {
  if (!isClauseEnd(input, end)) return false;
  let repaired = false;
  for (let k = i - 1; k >= 0 && k > i - 10; k--) {
    const token = input.tokens[k];
    if (repaired && (token?.weekday != null || token?.month != null || token?.ordinal != null)) return true;
    if (OF_REPAIR.has(textAt(input, k))) repaired = true;
  }
  return false;
}

/** "Sunday best", "monday blues". */
const SAYINGS = new Set(['best', 'blues', 'roast', 'funday', 'vibes']);

/** A date follows: "sun 28 june", "sat the 4th", "mon 6/29". */
function isBeforeDate(input: Input, i: number): boolean {
  const token = input.tokens[i];
  if (token?.month != null || (token?.ordinal != null && token.digits !== '')) return true;
  if (token?.text === 'the' || token?.text === ',') return input.tokens[i + 1]?.ordinal != null;
  return (
    token?.number != null &&
    (input.tokens[i + 1]?.month != null ||
      (input.tokens[i + 1]?.text === '/' && input.tokens[i + 1]?.glued === true))
  );
}

/** "come on mon", "hold on sun": not the preposition. */
const IDLE_ON = new Set(['come', 'cmon', 'hold', 'hang', 'go', 'carry', 'keep']);
const CHAT_BEFORE = wordSet(
  'on yet yes yeah yea no ya irie one stuff again it that this now man ok okay good great nice sweet',
);
const AFTER_WE_WOULD = wordSet(
  'like love better have had be get need never all been want rather prefer hate',
);
/** What "sun" is light after. */
const LIGHT_BEFORE = wordSet(
  'to in into teh th da full part partial more some the all day morning afternoon evening direct hot less no enough much of for wants needs loves gets got facing under strong summer winter spring autumn late early and with by its their a bit from lost gave give had catches getting after before good better decent max proper dappled blazing noon midday hours h hrs bright little any most this that real actual',
);

const TIME_AFTER = wordSet('morning morn arvo afternoon evening night am pm eve last');

const SUN_PREPOSITION = wordSet('on last this next since until till til past late');

const LISTING = new Set(['/', '&', '-', '+', 'or', 'to', 'and', 'n']);

/** "sat/sun", "fri & sat", "mon and tues". */
function isListedWeekday(input: Input, i: number): boolean {
  const before = LISTING.has(textAt(input, i - 1)) && input.tokens[i - 2]?.weekday != null;
  return before || (LISTING.has(textAt(input, i + 1)) && input.tokens[i + 2]?.weekday != null);
}
