import { type Input, isClauseEnd, isClauseStart, textAt } from './input.ts';

/**
 * Words that look like dates in running text, and what has to stand around them before they are taken for one.
 * All of these hold for notes only; a text that is a date phrase as a whole needs no proof.
 */

const BEFORE_DATE = new Set(
  'on in by since until till til around about from before after through thru during over at of last next past late early mid every between or'.split(
    ' ',
  ),
);
/** Closed-class words that may follow a date directly; a noun or a verb in their place speaks against one. */
const AFTER_DATE = new Set(
  'i we it its he she they them my our the a an and but n & then now with when so at in to for this that these all no not had has have was were is are did got still only also too just and or both some any after before since about his her their one two'.split(
    ' ',
  ),
);
/** Nouns that an ordinal or number counts. */
const COUNTED = new Set(
  'fig figs figlet figlets fruit fruits fruitlet fruitlets breba brebas node nodes shoot shoots leaf leaves bud buds bump bumps branch branches limb limbs pot pots tree trees crop crops flush flushes one ones time times year years season seasons round rounds batch feed dose tip tips leader leaders cutting cuttings stick sticks pair bloom wave try attempt row bed plant plants whorl set harvest pick picking pinch tipping limb trunk stem stems half hand place week weeks weekend day days month months lb lbs kg g oz cm mm ft inch inches degrees'.split(
    ' ',
  ),
);
const NUMBERED = new Set('pot pots node nodes no nr row bed plot zone size # level stage gallon'.split(' '));
const MODAL_AFTER_MAY =
  'have be not need well just also only still even get go turn drop ripen come fruit tip pinch want take or try look never make do yet i we it they';
const AFTER_MAY = new Set(MODAL_AFTER_MAY.split(' '));

export function hasDateBefore(input: Input, i: number): boolean {
  return (
    BEFORE_DATE.has(textAt(input, i - 1)) || (textAt(input, i - 1) === 'the' && textAt(input, i - 2) === 'of')
  );
}

/** A bare month: only after a word that announces a time, and not as the "June drop" or a "may beetle". */
export function isMonthInProse(input: Input, i: number): boolean {
  const next = textAt(input, i + 1);
  if (NOT_AFTER_MONTH.has(next)) return false;
  if (textAt(input, i) === 'may' && AFTER_MAY.has(next) && textAt(input, i - 1) !== 'in') return false;
  if (hasDateBefore(input, i)) return true;
  // "leafed out april", "pruned feb?", "april-ish".
  const isIsh = next === 'ish' || (next === '-' && textAt(input, i + 2) === 'ish');
  return isIsh || (isClauseEnd(input, i + 1) && textAt(input, i) !== 'may' && hasVerbBefore(input, i));
}

const NOT_AFTER_MONTH = new Set('drop bug bugs beetle beetles heat sun gold'.split(' '));

export function isSeasonInProse(input: Input, i: number): boolean {
  const before = textAt(input, i - 1);
  return SEASON_BEFORE.has(before) && !COUNTED.has(textAt(input, i + 1));
}

const SEASON_BEFORE = new Set(
  'in by since until till til last next late early mid during through before'.split(' '),
);

/** "may 2", "pot 3 june 5", "2 may have dropped", "june 5 figs". */
export function isMonthDayInProse(input: Input, number: number, next: number, ordinal: boolean): boolean {
  if (ordinal) return true;
  const following = input.tokens[next];
  if (!following) return true;
  if (following.unit !== null || following.text === '%' || following.text === '°') return false;
  // "in june 5 dropped": five figs in June.
  if (textAt(input, number - 1) === 'in') return false;
  // "june 3 pinch on the alma": no three of them.
  const count = input.tokens[next - 1]?.number ?? input.tokens[number]?.number ?? 1;
  const one = SINGLE_WORK.has(following.text) && count > 1;
  // "june 3 pot 3 tipped"
  if (following.text === 'pot' && input.tokens[next + 1]?.number != null) return true;
  return one || !COUNTED.has(following.text) || hasDateBefore(input, number);
}

const SINGLE_WORK = new Set('pinch tipping harvest picking feed'.split(' '));

/** "pot 3 may …": the number names something. */
export function isNumberedInProse(input: Input, i: number): boolean {
  return NUMBERED.has(textAt(input, i - 1));
}

export function isMayAsVerb(input: Input, may: number, next: number): boolean {
  return textAt(input, may) === 'may' && AFTER_MAY.has(textAt(input, next));
}

/** "the 20th": not "the 2nd shoot", "the 3rd one". */
export function isOrdinalInProse(input: Input, start: number, next: number): boolean {
  const following = input.tokens[next];
  if (following && COUNTED.has(following.text)) return false;
  if (!following || isClauseEnd(input, next) || AFTER_DATE.has(following.text)) return true;
  if (following.number !== null || following.weekday !== null) return true;
  return hasDateBefore(input, start) || isPastVerb(following.text);
}

/** Short weekday names that are words of their own. */
const AMBIGUOUS = new Set(['sun', 'sat', 'mon', 'wed', 'fri', 'thu', 'tue']);
const VERB_BEFORE_SAT = new Set(
  'just it they that which has have had still we i he she there who you been and always mostly never'.split(
    ' ',
  ),
);
const DAY_PREPOSITION = new Set(
  'on last this next since until till til by from before after around over late early past every'.split(' '),
);
const NOT_AFTER_SUN = new Set(
  'scald burn burnt burned scorch exposure hat side trap damage bleach spot all shade and or light baked dried loving only'.split(
    ' ',
  ),
);

/** What the sun does to leaves and figs. */
const BY_SUN = new Set(
  'scorched burned burnt bleached fried baked cooked toasted roasted singed frazzled dried shrivelled shriveled ripened killed nuked melted wilted crisped warmed got hit blasted hammered damaged ruined destroyed sizzled seared scalded cracked warped faded blistered'.split(
    ' ',
  ),
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
  if (isBeforeDate(input, i + 1) || putsRight(input, i, i + 1) || isTallied(input, i)) return true;
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

const SUN_DOES = new Set(
  'scorched burnt burned baked cooked fried bleached beat shone rose dried crisped wilted melted toasted roasted killed blasted frazzled damaged singed hit came warmed scalded'.split(
    ' ',
  ),
);

/** "3 sat, 4 sun": one day after another, each with its number. */
function isTallied(input: Input, i: number): boolean {
  return (
    isClauseEnd(input, i + 1) &&
    input.tokens[i - 1]?.number != null &&
    [',', 'and', '&'].includes(textAt(input, i - 2)) &&
    input.tokens[i - 3]?.weekday != null
  );
}

const OF_REPAIR = new Set(
  'that no wait oops sorry mean meant actually rather correction edit make was it er err erm um uh ugh nope nah *'.split(
    ' ',
  ),
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

const PAST_VERBS = new Set(
  'pinchd tipd tippd nippd toppd watrd wtred wtrd pickd fedd pchd pnchd fed cut took got ate put had was were did saw gone went lost hit found gave made broke hung dug tore sank spread laid kept bought brought ate'.split(
    ' ',
  ),
);

function isPastVerb(word: string): boolean {
  return (word.length > 3 && word.endsWith('ed')) || PAST_VERBS.has(word);
}

/** A finished verb earlier in the same clause. */
function hasVerbBefore(input: Input, i: number): boolean {
  for (let k = i - 1; k >= 0 && k > i - 12 && !isClauseEnd(input, k); k--)
    if (isPastVerb(textAt(input, k))) return true;
  return false;
}

/** "come on mon", "hold on sun": not the preposition. */
const IDLE_ON = new Set(['come', 'cmon', 'hold', 'hang', 'go', 'carry', 'keep']);
const CHAT_BEFORE = new Set(
  'on yet yes yeah yea no ya irie one stuff again it that this now man ok okay good great nice sweet'.split(
    ' ',
  ),
);
const AFTER_WE_WOULD = new Set(
  'like love better have had be get need never all been want rather prefer hate'.split(' '),
);
/** What "sun" is light after. */
const LIGHT_BEFORE = new Set(
  'to in into teh th da full part partial more some the all day morning afternoon evening direct hot less no enough much of for wants needs loves gets got facing under strong summer winter spring autumn late early and with by its their a bit from lost gave give had catches getting after before good better decent max proper dappled blazing noon midday hours h hrs bright little any most this that real actual'.split(
    ' ',
  ),
);

const TIME_AFTER = new Set('morning morn arvo afternoon evening night am pm eve last'.split(' '));

const SUN_PREPOSITION = new Set('on last this next since until till til past late'.split(' '));

const LISTING = new Set(['/', '&', '-', '+', 'or', 'to', 'and', 'n']);

/** "sat/sun", "fri & sat", "mon and tues". */
function isListedWeekday(input: Input, i: number): boolean {
  const before = LISTING.has(textAt(input, i - 1)) && input.tokens[i - 2]?.weekday != null;
  return before || (LISTING.has(textAt(input, i + 1)) && input.tokens[i + 2]?.weekday != null);
}

/** Units and states that make "3/4" a fraction or "4/6" a share. */
const AFTER_FRACTION = new Set(
  'of ripe full strength size sized grown open way inch inches in cup cups tsp tbsp lb lbs pound pounds oz ounce kg kilo gram grams gal gallon gallons l litre liter pint pints quart quarts dozen dead done bucket bowl off dormant coloured colored dose mix sun shade turned down taller ft cm mm per % " “ ” day days week weeks would for'.split(
    ' ',
  ),
);
/** What a share is of: "4/6 cuttings rooted". */
const AFTER_SHARE = new Set(
  'have has rooted took trees figs pots shoots cuttings figlets fruitlets nodes brebas tips sticks buds survived made them are were still'.split(
    ' ',
  ),
);
/** Work that counts nothing: a number behind it is a day. */
const CARED = new Set(
  'repotted potted watered fed fertilized fertilised mulched sprayed netted bagged moved planted transplanted uppotted staked covered uncovered unwrapped wrapped weeded limed'.split(
    ' ',
  ),
);
const CUT_BACK = new Set(
  'back down reduced shortened thinned pruned cut hard height length canopy it them'.split(' '),
);
const TO_WHERE = new Set(['into', 'with', 'in', 'and', 'from', 'out']);
const FRACTION_BOTTOMS = new Set([2, 3, 4, 5, 8, 10]);
const DATE_PREPOSITION = new Set(
  'on by since from until till til around before after dated through between'.split(' '),
);

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

const RATED = new Set(
  'taste tasted flavour flavor flavoured rated rating rate score scored scores gave sweetness texture marks solid about around roughly filled'.split(
    ' ',
  ),
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

const PRODUCT = new Set(
  'feed feeding fert ferts fertilizer fertiliser fertilize fertilise fertilized fertilised npk mix mixed granular granules soluble food potting gritty soil compost ratio blend liquid pellets dose scoop formula bag slow release plus organic tomato strength water perlite bark peat pumice tonic fed'.split(
    ' ',
  ),
);

/** Product words near an n-n-n: a fertiliser's or a potting mix's numbers. */
export function isProduct(input: Input, start: number, end: number): boolean {
  for (let i = Math.max(0, start - 4); i < end + 4; i++) {
    if (i < start || i >= end) if (PRODUCT.has(textAt(input, i))) return true;
  }
  return false;
}

const NOT_AFTER_HOLIDAY = new Set(
  'cactus tree trees came come comes coming lights cake pudding in lily lilies egg eggs bunny fig figs red green orange colours colors all'.split(
    ' ',
  ),
);
const NOT_BEFORE_HOLIDAY = new Set(['like', 'than', 'as', 'feels', 'a', 'my', 'every', 'early']);

/** "christmas came early", "like christmas", "easter cactus". */
export function isHolidayInProse(input: Input, i: number, next: number): boolean {
  return !NOT_AFTER_HOLIDAY.has(textAt(input, next)) && !NOT_BEFORE_HOLIDAY.has(textAt(input, i - 1));
}

const YEAR_BEFORE = new Set([
  'in',
  'since',
  'during',
  'of',
  'from',
  'summer',
  'back',
  'late',
  'early',
  'spring',
  'season',
  'until',
  'til',
  'till',
  'for',
  'and',
]);

/** "in 2023": a year only after a word that announces a time. */
export function isYearInProse(input: Input, i: number): boolean {
  return YEAR_BEFORE.has(textAt(input, i - 1)) && !COUNTED.has(textAt(input, i + 1));
}
