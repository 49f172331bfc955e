import type { Clause } from './clauses.ts';
import type { Item } from './items.ts';

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

/** Sequences of words that hold a word of denial or of doubt and yet deny nothing. One line each. */
const HARMLESS: readonly string[] = [
  'no doubt',
  'no idea',
  'no worries',
  'no problem',
  'no joke',
  'no kidding',
  'no biggie',
  'no rush',
  'no way',
  'no surprise',
  'no less than',
  'no fewer than',
  'no lie',
  'no bother',
  'no thanks to',
  'no effort',
  'no time',
  'no messing',
  'no mucking',
  'no name',
  'no matter',
  'no less',
  'not bad',
  'not only',
  'not just',
  'not too shabby',
  'not too bad',
  'not half bad',
  'not long after',
  'not long ago',
  'not before time',
  'not a moment too soon',
  'not to brag',
  'not gonna lie',
  'not going to lie',
  'not kidding',
  'not complaining',
  'why not',
  'if not more',
  'can not believe',
  'can not complain',
  'can not resist',
  'could not resist',
  'could not help',
  'could not wait',
  'can not help',
  'could not believe',
  'could not be happier',
  'do not ask',
  'do not judge',
  'do not mind',
  'did not mind',
  'do not know why',
  'do not know how',
  'never better',
  'never fails',
  'nothing fancy',
  'nothing major',
  'nothing serious',
  'without a doubt',
  'without fail',
  'without further ado',
  'without thinking',
  'without fuss',
  'barely fit',
  'hardly believe',
  'should like to report',
  'would like to report',
  'would like to log',
  'should like to',
  'as planned',
  'as promised',
  'as scheduled',
  'ready or not',
  'if you can believe it',
  'if i say so myself',
  'if anyone asks',
  'believe it or not',
  'will power',
  'good will',
  'needs must',
  'might as well have',
  'as expected',
  'like i thought',
  'better than expected',
  'more than i expected',
  'sooner than expected',
  'earlier than expected',
  'never thought',
  'finally trying',
  'hope this helps',
  'hope that is ok',
  'hope that was right',
  'hope i did it right',
  'wanted to log',
  'want to log',
  'would you believe',
  'who would have thought',
  'due diligence',
  'ready to pick',
  'ready to eat',
  'ready for picking',
  'trying to ripen',
  'refuses to die',
  'will do',
];
const harmlessBy = new Map<string, string[][]>();
for (const phrase of HARMLESS) {
  const words = phrase.split(' ');
  const first = words[0] ?? '';
  harmlessBy.set(first, [...(harmlessBy.get(first) ?? []), words]);
}

/** For each item, whether it stands in a harmless phrase. */
export function harmlessItems(items: readonly Item[]): ReadonlySet<number> {
  const found = new Set<number>();
  for (let i = 0; i < items.length; i++) {
    for (const words of harmlessBy.get(items[i]?.text ?? '') ?? []) {
      if (words.every((word, k) => items[i + k]?.text === word))
        for (let k = 0; k < words.length; k++) found.add(i + k);
    }
  }
  return found;
}

/** Phrases of time that can only mean an earlier season. */
const EARLIER =
  /\b(?:years?|summers?|seasons?) (?:ago|back|before)|\b(?:last|previous) (?:year|season|summer)/i;

const ASKING_FIRST = new Set([
  'is',
  'are',
  'am',
  'do',
  'does',
  'did',
  'should',
  'shall',
  'can',
  'could',
  'would',
  'will',
  'has',
  'have',
  'had',
  'was',
  'were',
  'anyone',
  'anybody',
  'what',
  'why',
  'how',
  'when',
  'where',
  'who',
  'which',
  'whats',
  'any',
  'ok',
  'okay',
  'worth',
  'safe',
  'too',
  'time',
  'isnt',
  'may',
  'might',
  'must',
]);
const LEADING = new Set([
  'so',
  'and',
  'but',
  'or',
  'hey',
  'hi',
  'ok',
  'um',
  'also',
  'then',
  'now',
  'guys',
  'all',
  'question',
  'quick',
  'q',
  'lol',
  'yo',
]);
const HABIT = new Set([
  'used',
  'always',
  'usually',
  'normally',
  'historically',
  'traditionally',
  'previously',
  'formerly',
]);

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
  if (opening === 'had' && ['i', 'we'].includes(items[1]?.text ?? '')) unrealFrom = 0;
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
      before !== 'who'
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
      (next?.classes.has('TIP') || next?.classes.has('PICK') || next?.classes.has('DROP')) &&
      next?.type === 'word'
    )
      unrealFrom = i;
    if (unrealFrom === null && item.text === 'let' && next?.text === 'us') unrealFrom = i;
    if (unrealFrom === null && item.text === 'got' && next?.text === 'to' && items[i + 2]?.classes.has('TIP'))
      unrealFrom = i;
    if (unrealFrom === null && item.text === 'have' && next?.text === 'to') unrealFrom = i;
    if (unrealFrom === null && item.text === 'instead' && next?.text === 'of') denials.push(i);
    if (unrealFrom === null && item.text === 'yet' && next?.text === 'to') denials.push(i);
    if (
      unrealFrom === null &&
      item.text === 'too' &&
      ['soon', 'early', 'late'].includes(next?.text ?? '') &&
      items[i + 2]?.text === 'to'
    )
      unrealFrom = i;
    if (unrealFrom === null && item.text === 'soon' && before !== 'too' && before !== 'as') unrealFrom = 0;
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
      items[i + 2]?.type !== 'date' &&
      !items[i + 2]?.classes.has('DET') &&
      items[i + 2]?.type !== 'tree'
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
      items.some((each) => each.type === 'word' && /ing$/.test(each.text))
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
    if (item.type === 'quantity' && /^(19|20)\d\d$/.test(item.typed) && Number(item.typed) < year)
      past = true;
    if (
      ['last', 'previous', 'past', 'prior', 'other'].includes(item.text) &&
      ['year', 'years', 'season', 'seasons', 'summer', 'summers'].includes(next?.text ?? '')
    )
      past = true;
    if (
      ['every', 'each', 'most', 'some'].includes(item.text) &&
      ['year', 'season', 'summer', 'winter', 'august', 'july', 'years'].includes(next?.text ?? '')
    )
      past = true;
    if (
      ['year', 'season', 'summer', 'years', 'summers', 'seasons'].includes(item.text) &&
      ['before', 'ago', 'back'].includes(next?.text ?? '')
    )
      past = true;
    if (item.classes.has('SAYS') && !(before === 'i' || before === 'we' || items[i - 2]?.text === 'i'))
      hearsay = true;
    if (isOthers(items, i)) others = true;
    if (isWide(items, i)) wide = true;
  }
  return { unrealFrom, denials, asks: isQuestion(clause), past, hearsay, others, wide };
}

/** Words of doubt that cover their whole clause, wherever they stand. */
const WHOLE = new Set([
  'maybe',
  'perhaps',
  'possibly',
  'probably',
  'hopefully',
  'tonight',
  'almost',
  'nearly',
  'supposedly',
  'eventually',
  'forgot',
  'forgotten',
]);

function isPlain(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text;
  const next = items[i + 1];
  const before = items[i - 1];
  if (
    (word === 'almost' || word === 'nearly') &&
    next &&
    (next.type === 'quantity' || next.text === 'all' || next.text === 'every')
  )
    return true;
  if (word === 'next')
    return ![
      'week',
      'month',
      'year',
      'season',
      'weekend',
      'spring',
      'summer',
      'winter',
      'autumn',
      'fall',
      'job',
      'time',
      'up',
      'on',
    ].includes(next?.text ?? '');
  if (word === 'may' && (before?.type === 'quantity' || next?.type === 'number')) return true;
  if (word === 'could' && next?.text === 'not')
    return ['find', 'see', 'spot', 'locate', 'count'].includes(items[i + 2]?.text ?? '');
  if (word === 'putting') return next?.text !== 'off';
  if (word === 'due') return next?.text === 'to' && !next.classes.has('TIP') && items[i + 2]?.type !== 'word';
  if (word === 'meant' || word === 'meaning') return next?.text !== 'to' && next?.text !== 'for';
  if (word === 'trying' || word === 'tried' || word === 'try')
    return next?.text !== 'to' && next?.text !== 'and';
  if (word === 'ready') return next?.text !== 'to' && next?.text !== 'for';
  if (word === 'fingers') return next?.text !== 'crossed';
  if (word === 'decide' || word === 'deciding') return false;
  if (word === 'expected' || word === 'planned') return before?.text === 'than' || before?.text === 'as';
  if (word === 'wait' || word === 'waited') return true;
  if (word === 'resolved') return next?.text !== 'to';
  if (word === 'aim') return next?.text !== 'to';
  return false;
}

function isQuestion(clause: Clause): boolean {
  const { items, asked } = clause;
  let i = 0;
  while (i < items.length - 1 && LEADING.has(items[i]?.text ?? '')) i++;
  const first = items[i];
  if (!first) return asked;
  const inverted = ASKING_FIRST.has(first.text);
  if (asked) return true;
  // No mark, but the order of a question: "should i tip it", "how do i …", "when will …".
  if (
    ['should', 'shall', 'do', 'does', 'did', 'is', 'are', 'can', 'could', 'would', 'will', 'am'].includes(
      first.text,
    )
  ) {
    const next = items[i + 1];
    return (
      next !== undefined &&
      (next.type === 'tree' ||
        [
          'i',
          'we',
          'it',
          'they',
          'you',
          'the',
          'my',
          'this',
          'that',
          'these',
          'those',
          'anyone',
          'there',
        ].includes(next.text))
    );
  }
  if (inverted && ['anyone', 'anybody', 'why', 'how', 'which', 'who'].includes(first.text)) return true;
  if (
    first.text === 'what' &&
    ['is', 'are', 'do', 'does', 'did', 'should', 'can', 'would', 'will', 'could'].includes(
      items[i + 1]?.text ?? '',
    )
  )
    return true;
  if (
    first.text === 'when' &&
    ['is', 'are', 'do', 'does', 'did', 'should', 'can', 'would', 'will', 'could'].includes(
      items[i + 1]?.text ?? '',
    )
  )
    return true;
  if (first.text === 'too' && ['soon', 'early', 'late'].includes(items[i + 1]?.text ?? '')) return true;
  return false;
}

const HAS_TREES = new Set(["'s", 'has', 'have', 'is', 'had', 'got', 'did']);

function isOthers(items: readonly Item[], i: number): boolean {
  const item = items[i];
  if (!item) return false;
  const next = items[i + 1];
  const before = items[i - 1];
  if (item.classes.has('HOUSE') && next?.text === "'s" && items[i + 2]?.type === 'tree') return true;
  if (next && (next.classes.has('SAYS') || next.classes.has('HEDGE'))) return false;
  if (item.classes.has('OTHERS')) {
    // "gave a friend three cuttings", "my mate took a photo of my alma" are about one's own.
    if (before?.text === 'to' || before?.text === 'for' || before?.text === 'with' || before?.text === 'a') {
      return next?.text === "'s";
    }
    if (
      next?.text === "'s" ||
      next?.type === 'tree' ||
      item.text.endsWith('s') ||
      (next && HAS_TREES.has(next.text))
    )
      return true;
    return before !== undefined && ['at', 'in', 'from', 'the', 'on', 'my'].includes(before.text);
  }
  if (item.text === 'next' && (next?.text === 'door' || next?.text === 'doors')) return true;
  if (
    ['road', 'street', 'lane', 'village', 'corner', 'block'].includes(item.text) &&
    before?.text === 'the' &&
    ['down', 'over', 'across', 'up', 'along'].includes(items[i - 2]?.text ?? '')
  )
    return true;
  if (['his', 'her', 'their', 'your'].includes(item.text)) {
    const noun = items.slice(i + 1, i + 4).find((each) => !each.classes.has('SIZE'));
    return (
      noun?.type === 'tree' ||
      ['tree', 'trees', 'garden', 'place', 'yard', 'greenhouse', 'fig', 'figs'].includes(noun?.text ?? '')
    );
  }
  // "dave's alma", "daves alma": a possessor the lexicon does not know.
  if (
    next?.text === "'s" &&
    item.type === 'word' &&
    ![
      'it',
      'that',
      'what',
      'there',
      'here',
      'today',
      'yesterday',
      'this',
      'who',
      'how',
      'where',
      'year',
    ].includes(item.text)
  ) {
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

function isWide(items: readonly Item[], i: number): boolean {
  const word = items[i]?.text ?? '';
  const next = items[i + 1]?.text ?? '';
  const next2 = items[i + 2]?.text ?? '';
  if (['everything', 'everybody', 'everyone'].includes(word))
    return items[i + 1]?.text !== 'on' && items[i + 1]?.text !== 'off';
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
    return [
      'trees',
      'pots',
      'plants',
      'collection',
      'garden',
      'yard',
      'figs',
      'lot',
      'orchard',
      'containers',
      'tree',
      'pot',
      'greenhouse',
      'patio',
      'tubs',
    ].includes(noun) && !(noun === 'figs' || noun === 'tree' || noun === 'lot')
      ? true
      : word === 'every' && ['tree', 'pot', 'plant'].includes(noun);
  }
  if (word === 'the' && next === 'lot') return true;
  if (
    word === 'the' &&
    next === 'whole' &&
    ['lot', 'garden', 'yard', 'collection', 'patio', 'greenhouse', 'orchard'].includes(next2)
  )
    return true;
  if (word === 'the' && next === 'rest') return true;
  return false;
}
