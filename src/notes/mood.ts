import type { Clause } from './clauses.ts';
import { guessesOnlyWhen, isShortYear } from './guesses.ts';
import { harmlessItems } from './harmless.ts';
import type { Item } from './items.ts';
import { FACTIVE } from './lexicon/factive-words.ts';
import {
  ASKED_WORK,
  BEGGING,
  BY_NOW,
  COMING,
  EVERY,
  GONE,
  HABIT,
  IN_GROWTH,
  LATER,
  NO_DOING,
  RECURRING,
  SEASONS,
} from './lexicon/mood-words.ts';
import { isManySay } from './many-say.ts';
import { isOthers, isWide } from './owners.ts';
import { isPlain, isSettingOut, WHOLE } from './plain-wishes.ts';
import { isQuestion } from './question-order.ts';

/** How what a clause says is meant. Anything but `real` is never a positive event. */
export interface Mood {
  /** Index of the first word that makes what follows unreal (planned, wished, supposed), or null. */
  readonly unrealFrom: number | null;
  /** Indexes of words of denial. */
  readonly denials: readonly number[];
  /** It asks something. */
  readonly asks: boolean;
  /** It tells of an earlier season or of a habit. */
  readonly past: boolean;
  /** Somebody else says so. */
  readonly hearsay: boolean;
  /** It is about somebody else's tree. */
  readonly others: boolean;
  /** Garden-wide: "everything", "all the pots". */
  readonly wide: boolean;
}

/** Phrases of time that can only mean an earlier season. */
const EARLIER =
  /\b(?:years?|summers?|seasons?) (?:ago|back|before)|\b(?:last|previous) (?:year|season|summer)/i;

/** Whether a clause is meant as a fact: nothing in it is denied, planned or supposed. */
export function isFact({ denials, unrealFrom }: Mood): boolean {
  return denials.length === 0 && unrealFrom === null;
}

/** How a clause is meant; `today` tells which years are past. */
export function readMood(clause: Clause, today: string): Mood {
  const { items } = clause;
  const harmless = harmlessItems(items);
  const denials: number[] = [];
  let unrealFrom: number | null =
    clause.sub === 'if' || clause.sub === 'unless' || clause.sub === 'whether' ? 0 : null;
  let past = clause.items.some(
    (item) => (item.type === 'date' || item.type === 'vague') && EARLIER.test(item.typed),
  );
  let hearsay = false;
  let others = false;
  let wide = false;
  const year = Number(today.slice(0, 4));
  const opening = items[0]?.text;
  if (['had', 'were'].includes(opening ?? '') && ['i', 'we', 'it'].includes(items[1]?.text ?? ''))
    unrealFrom = 0;
  // "someone water the alma please"
  if (
    ['someone', 'somebody', 'anyone', 'please', 'kindly'].includes(opening ?? '') &&
    items.length > 1 &&
    ASKED_WORK.has(items[1]?.text ?? '')
  )
    unrealFrom = 0;
  // "moving it in the autumn"
  if (/ing$/.test(opening ?? '') && items.length > 1 && items.some((item) => LATER.has(item.text)))
    unrealFrom = 0;
  // "pruning the mission next"
  if (items.length > 1 && items.at(-1)?.text === 'next' && /ing$/.test(opening ?? '')) unrealFrom = 0;
  // "going on saturday": where it will go.
  if (opening === 'going' && items.length > 1) unrealFrom = 0;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (!item) continue;
    if (harmless.has(i)) continue;
    const next = items[i + 1];
    const before = items[i - 1]?.text ?? '';
    if (item.classes.has('NEG')) denials.push(i);
    if (unrealFrom === null && item.classes.has('WILL') && !isPlain(items, i))
      unrealFrom = WHOLE.has(item.text) ? 0 : i;
    if (
      unrealFrom === null &&
      item.classes.has('HEDGE') &&
      !['swear', 'believe'].includes(item.text) &&
      before !== 'who' &&
      !guessesOnlyWhen(items, i)
    )
      unrealFrom = 0;
    if (
      unrealFrom === null &&
      item.text === 'going' &&
      next?.text === 'to' &&
      items[i + 2]?.type === 'word' &&
      !items[i + 2]?.classes.has('DET')
    )
      unrealFrom = i;
    if (
      unrealFrom === null &&
      (item.text === 'to' || item.text === 'about') &&
      !FACTIVE.has(before) &&
      (next?.classes.has('TIP') || next?.classes.has('PICK') || next?.classes.has('DROP')) &&
      next?.type === 'word'
    )
      unrealFrom = i;
    // "ill keep feeding it"
    if (
      unrealFrom === null &&
      (i === 0 || items[i - 1]?.type === 'date') &&
      item.text === 'ill' &&
      next?.type === 'word' &&
      !/ing$/.test(next.text)
    )
      unrealFrom = 0;
    // "gets its haircut come january"
    if (
      unrealFrom === null &&
      item.text === 'come' &&
      i > 0 &&
      (next?.type === 'date' || COMING.has(next?.text ?? ''))
    )
      unrealFrom = 0;
    if (unrealFrom === null && next?.text === 'for' && BEGGING.has(item.text)) unrealFrom = i;
    if (unrealFrom === null && item.text === 'let' && next?.text === 'us') unrealFrom = i;
    // "about to head out and water the ronde", "off to feed the king"
    if (unrealFrom === null && isSettingOut(items, i)) unrealFrom = i;
    if (unrealFrom === null && item.text === 'got' && next?.text === 'to' && items[i + 2]?.classes.has('TIP'))
      unrealFrom = i;
    if (unrealFrom === null && item.text === 'have' && next?.text === 'to') unrealFrom = i;
    if (unrealFrom === null && item.text === 'instead' && next?.text === 'of') denials.push(i);
    if (unrealFrom === null && item.text === 'yet' && next?.text === 'to') denials.push(i);
    if (
      unrealFrom === null &&
      item.text === 'too' &&
      BY_NOW.has(next?.text ?? '') &&
      items[i + 2]?.text === 'to'
    )
      unrealFrom = i;
    if (
      unrealFrom === null &&
      item.text === 'soon' &&
      before !== 'too' &&
      before !== 'as' &&
      clause.sub !== 'as'
    )
      unrealFrom = 0;
    if (unrealFrom === null && item.text === 'decided' && ['against', 'not', 'to'].includes(next?.text ?? ''))
      denials.push(i);
    if (
      unrealFrom === null &&
      item.text === 'close' &&
      next?.text === 'to' &&
      /ing$/.test(items[i + 2]?.text ?? '')
    )
      unrealFrom = i;
    if (
      item.text === 'back' &&
      next?.text === 'in' &&
      items[i + 2] !== undefined &&
      items[i + 2]?.type !== 'date' &&
      !items[i + 2]?.classes.has('DET') &&
      items[i + 2]?.type !== 'tree' &&
      !IN_GROWTH.has(items[i + 2]?.text ?? '')
    )
      past = true;
    if (
      item.text === 'first' &&
      next?.text === 'year' &&
      ['its', 'her', 'his', 'the', 'my', 'in'].includes(before)
    )
      past = true;
    if (
      unrealFrom === null &&
      item.type === 'date' &&
      /tonight/i.test(item.typed) &&
      items.some((each) => each.type === 'word' && /ing$/.test(each.text) && !NO_DOING.has(each.text))
    )
      unrealFrom = 0;
    // "summer 23"
    if (
      item.type === 'date' &&
      /summer|spring|autumn|fall|winter/i.test(item.typed) &&
      next?.type === 'quantity' &&
      Number(next.typed) >= 10 &&
      Number(next.typed) < year % 100
    )
      past = true;
    // "in its old pot it had 9"
    if (
      item.text === 'old' &&
      ['pot', 'spot', 'place', 'garden', 'house', 'home'].includes(next?.text ?? '') &&
      ['in', 'at'].includes(items[i - 2]?.text ?? '')
    )
      past = true;
    // "still has all its tips"
    if (
      item.text === 'still' &&
      next?.classes.has('HAVE') &&
      items.slice(i + 2, i + 5).some((each) => each.classes.has('APEX'))
    )
      denials.push(i);
    if (item.text === 'held' && next?.text === 'off') denials.push(i);
    if (
      item.text === 'resisted' ||
      item.text === 'resisting' ||
      item.text === 'skipped' ||
      item.text === 'avoided' ||
      item.text === 'declined'
    )
      denials.push(i);
    if (item.text === 'chickened' || (item.text === 'bottled' && next?.text === 'it')) denials.push(i);
    if (item.classes.has('PAST') || HABIT.has(item.text)) {
      if (!(item.text === 'used' && next?.text !== 'to')) past = true;
    }
    if (
      item.type === 'number' &&
      /^(19|20)\d\d$/.test(item.text) &&
      Number(item.text) < year &&
      before !== 'pot'
    )
      past = true;
    if (item.text === 'measure' && /^(19|20)\d\d$/.test(item.typed)) past = true;
    if (isShortYear(items, i, year)) past = true;
    if (item.type === 'quantity' && /^(19|20)\d\d$/.test(item.typed) && Number(item.typed) < year)
      past = true;
    if (GONE.has(item.text) && SEASONS.has(next?.text ?? '')) past = true;
    if (
      EVERY.has(item.text) &&
      (RECURRING.has(next?.text ?? '') || (item.text !== 'some' && next?.type === 'date'))
    )
      past = true;
    if (
      (SEASONS.has(item.text) || isSeasons(item)) &&
      ['before', 'ago', 'back', 'earlier'].includes(next?.text ?? '')
    )
      past = true;
    // "the last 3 years"
    if (GONE.has(item.text) && isSeasons(next)) past = true;
    // "that one season it got rust"
    if (
      item.text === 'that' &&
      (isSeasons(next) || (next?.text === 'one' && SEASONS.has(items[i + 2]?.text ?? '')))
    )
      past = true;
    if (
      item.classes.has('SAYS') &&
      items[i - 1]?.type !== 'tree' &&
      (before === 'am' || !(before === 'i' || before === 'we' || items[i - 2]?.text === 'i'))
    )
      hearsay = true;
    // "the lads on here say …", "they say …"
    if (item.text === 'say' && next !== undefined && i > 0 && isManySay(items, i)) hearsay = true;
    // "on the list for feeding"
    if (
      unrealFrom === null &&
      ['list', 'agenda', 'cards', 'docket'].includes(item.text) &&
      items[i - 2]?.text === 'on'
    )
      unrealFrom = 0;
    // "grandad's certain …"
    if (
      item.classes.has('OTHERS') &&
      items
        .slice(i + 1, i + 3)
        .some((each) => ['certain', 'sure', 'positive', 'convinced'].includes(each.text))
    )
      hearsay = true;
    if (isOthers(items, i)) others = true;
    if (isWide(items, i)) wide = true;
  }
  return { unrealFrom, denials, asks: isQuestion(clause), past, hearsay, others, wide };
}

/** "two seasons", "3 years" */
function isSeasons(item: Item | undefined): boolean {
  return item?.text === 'measure' && /\b(?:years?|yrs?|seasons?|summers?)$/i.test(item.typed);
}
