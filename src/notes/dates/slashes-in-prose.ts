import { wordSet } from '../lexicon/word-set.ts';
import { type Input, isClauseEnd, isClauseStart, textAt } from './input.ts';
import { hasVerbBefore, isPastVerb } from './past-verbs.ts';
import { NUMBERED } from './prose.ts';
import { OF_REPAIR } from './weekdays-in-prose.ts';

/** Units and states that make "3/4" a fraction or "4/6" a share. */
const AFTER_FRACTION = wordSet(
  'of ripe full strength size sized grown open way inch inches in cup cups tsp tbsp lb lbs pound pounds oz ounce kg kilo gram grams gal gallon gallons l litre liter pint pints quart quarts dozen dead done bucket bowl off dormant coloured colored dose mix sun shade turned down taller ft cm mm per % " “ ” day days week weeks would for',
);
/** What a share is of: "4/6 cuttings rooted". */
const AFTER_SHARE = wordSet(
  'have has rooted took trees figs pots shoots cuttings figlets fruitlets nodes brebas tips sticks buds survived made them are were still',
);
/** Work that counts nothing: a number behind it is a day. */
const CARED = wordSet(
  'repotted potted watered fed fertilized fertilised mulched sprayed netted bagged moved planted transplanted uppotted staked covered uncovered unwrapped wrapped weeded limed',
);
const CUT_BACK = wordSet('back down reduced shortened thinned pruned cut hard height length canopy it them');
const TO_WHERE = new Set(['into', 'with', 'in', 'and', 'from', 'out']);
const FRACTION_BOTTOMS = new Set([2, 3, 4, 5, 8, 10]);
const DATE_PREPOSITION = wordSet('on by since from until till til around before after dated through between');

/** "6/3 tipped, 6/24 figs": a day of the same month opens a clause before. */
function goesOnFromDay(input: Input, i: number): boolean {
  for (let k = 0; k < i - 3; k++)
    if (
      textAt(input, k) === textAt(input, i) &&
      textAt(input, k + 1) === '/' &&
      isClauseStart(input, k) &&
      isPastVerb(textAt(input, k + 3))
    )
      return true;
  return false;
}

/** Whether `a/b` in running text is a date. */
export function isSlashInProse(input: Input, i: number, a: number, b: number, next: number): boolean {
  if (AFTER_FRACTION.has(textAt(input, next))) return false;
  // "6/7, actually no 6/17" puts it right; "no 6/17" names a pot.
  if (NUMBERED.has(textAt(input, i - 1)) && !(textAt(input, i - 1) === 'no' && i > 2)) return false;
  // "cut back by 1/3"
  if (textAt(input, i - 1) === 'by' && a < b && b <= 4 && CUT_BACK.has(textAt(input, i - 2))) return false;
  const isAnnounced = DATE_PREPOSITION.has(textAt(input, i - 1)) || input.tokens[i - 1]?.weekday != null;
  // "13/6 took the tips off": more than the whole is no share.
  if (AFTER_SHARE.has(textAt(input, next)) && b > 12 && isClauseStart(input, i) && goesOnFromDay(input, i))
    return true;
  if (AFTER_SHARE.has(textAt(input, next))) return (isAnnounced && (a > 12 || b > 12)) || (a > 12 && a > b);
  if (isAnnounced || mendsSlash(input, i)) return true;
  if (a === 24 && b === 7) return false;
  // "mission repotted 6/8"
  if (CARED.has(textAt(input, i - 1)) && (isClauseEnd(input, next) || TO_WHERE.has(textAt(input, next))))
    return true;
  if (a <= b && FRACTION_BOTTOMS.has(b)) {
    // "3/4: tipped", "3/4 tipped", but "1/4 turn".
    const isHeading =
      isClauseEnd(input, next) || textAt(input, next) === '-' || isPastVerb(textAt(input, next));
    // "tipped the mission 6/8": eighths and tenths behind a deed are days.
    const isDeed =
      b >= 8 &&
      isClauseEnd(input, next) &&
      hasVerbBefore(input, i) &&
      !isRated(input, i) &&
      !TAKEN_ROOT.has(textAt(input, i - 1));
    return a < b && ((isClauseStart(input, i) && isHeading) || isDeed);
  }
  return a !== b || isClauseStart(input, i) || isClauseEnd(input, next);
}

const RATED = wordSet(
  'taste tasted flavour flavor flavoured rated rating rate score scored scores gave sweetness texture marks solid about around roughly filled',
);

/** "rooted 6/8": six of the eight. */
const TAKEN_ROOT = new Set(['rooted', 'survived', 'sprouted', 'took', 'germinated']);

/** "rated the alma 8/10", "tasted 9/10" */
function isRated(input: Input, i: number): boolean {
  for (let k = i - 1; k >= 0 && k > i - 6; k--) if (RATED.has(textAt(input, k))) return true;
  return false;
}

/** "on 6/1, er 6/10": the one before it was a day. */
function mendsSlash(input: Input, i: number): boolean {
  if (!OF_REPAIR.has(textAt(input, i - 1))) return false;
  for (let k = i - 2; k >= 0 && k > i - 8; k--)
    if (textAt(input, k) === '/' && (input.tokens[k + 1]?.digits ?? '') !== '') return true;
  return false;
}

export function isDottedInProse(input: Input, i: number): boolean {
  return DATE_PREPOSITION.has(textAt(input, i - 1)) || i === 0 || textAt(input, i - 1).startsWith('\n');
}

const PRODUCT = wordSet(
  'feed feeding fert ferts fertilizer fertiliser fertilize fertilise fertilized fertilised npk mix mixed granular granules soluble food potting gritty soil compost ratio blend liquid pellets dose scoop formula bag slow release plus organic tomato strength water perlite bark peat pumice tonic fed',
);

/** Product words near an n-n-n: a fertiliser's or a potting mix's numbers. */
export function isProduct(input: Input, start: number, end: number): boolean {
  for (let i = Math.max(0, start - 4); i < end + 4; i++) {
    if (i < start || i >= end) if (PRODUCT.has(textAt(input, i))) return true;
  }
  return false;
}
