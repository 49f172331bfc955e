import { wordSet } from '../lexicon/word-set.ts';
import { type Input, isClauseEnd, textAt } from './input.ts';
import { hasVerbBefore, isPastVerb } from './past-verbs.ts';

/**
 * Words that look like dates in running text, and what has to stand around them before they are taken for one.
 * All of these hold for notes only; a text that is a date phrase as a whole needs no proof.
 */

const BEFORE_DATE = wordSet(
  'on in by since until till til around about from before after through thru during over at of last next past late early mid every between or',
);
/** Closed-class words that may follow a date directly; a noun or a verb in their place speaks against one. */
const AFTER_DATE = wordSet(
  'i we it its he she they them my our the a an and but n & then now with when so at in to for this that these all no not had has have was were is are did got still only also too just and or both some any after before since about his her their one two',
);
/** Nouns that an ordinal or number counts. */
const COUNTED = wordSet(
  'fig figs figlet figlets fruit fruits fruitlet fruitlets breba brebas node nodes shoot shoots leaf leaves bud buds bump bumps branch branches limb limbs pot pots tree trees crop crops flush flushes one ones time times year years season seasons round rounds batch feed dose tip tips leader leaders cutting cuttings stick sticks pair bloom wave try attempt row bed plant plants whorl set harvest pick picking pinch tipping limb trunk stem stems half hand place week weeks weekend day days month months lb lbs kg g oz cm mm ft inch inches degrees',
);
export const NUMBERED = wordSet('pot pots node nodes no nr row bed plot zone size # level stage gallon');
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

const NOT_AFTER_MONTH = wordSet('drop bug bugs beetle beetles heat sun gold');

export function isSeasonInProse(input: Input, i: number): boolean {
  const before = textAt(input, i - 1);
  return SEASON_BEFORE.has(before) && !COUNTED.has(textAt(input, i + 1));
}

const SEASON_BEFORE = wordSet('in by since until till til last next late early mid during through before');

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

const SINGLE_WORK = wordSet('pinch tipping harvest picking feed');

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

const NOT_AFTER_HOLIDAY = wordSet(
  'cactus tree trees came come comes coming lights cake pudding in lily lilies egg eggs bunny fig figs red green orange colours colors all',
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
