import type { Clause } from './clauses.ts';
import type { Item } from './items.ts';
import { isOrdinary } from './lexicon/ordinary.ts';
import { PREDICATES, type PredicateKind } from './lexicon/predicates.ts';
import { MORE_IDIOMS, MORE_PREDICATES } from './lexicon/predicates-more.ts';
import { harmlessItems } from './mood.ts';
import { compileTable, findMatches, type Match } from './patterns.ts';

const PREDICATE_INDEX = compileTable([...MORE_IDIOMS, ...PREDICATES, ...MORE_PREDICATES]);

/** Something said in a clause, with the items that say it. */
export interface Hit {
  readonly kind: Exclude<PredicateKind, 'none'>;
  readonly at: readonly number[];
  readonly first: number;
  readonly last: number;
  /** The first item that says it, trees, numbers and small words left aside: what a denial or a wish has to stand before. */
  readonly core: number;
}

/** Cuts a clause that tells of several trees in a row: "rdb 4 figs gh mission 2". */
export function cutRuns(clauses: readonly Clause[]): Clause[] {
  return clauses.flatMap((clause) => {
    const trees = clause.items.flatMap((item, i) => (item.type === 'tree' ? [i] : []));
    if (trees.length < 2) return [clause];
    const tail = trees.at(-1) ?? 0;
    if (clause.items.at(-1)?.text === 'not' && tail > 0 && clause.items.length - tail <= 4) {
      const cut = withArticle(clause, tail);
      return [
        { ...clause, items: clause.items.slice(0, cut) },
        { ...clause, items: clause.items.slice(cut), join: 'comma' as const, sub: null },
      ];
    }
    const not = clause.items.findIndex(
      (item, i) =>
        item.text === 'not' &&
        i > (trees[0] ?? 0) &&
        i < (trees[1] ?? 0) &&
        ['on', 'the', 'off', 'tree'].includes(clause.items[i + 1]?.text ?? ''),
    );
    if (not > 0)
      return [
        { ...clause, items: clause.items.slice(0, not) },
        { ...clause, items: clause.items.slice(not), join: 'comma' as const, sub: null },
      ];
    const hits = rawHits(clause);
    if (hits.length < 2) return [clause];
    const cuts: number[] = [];
    const treeFirst = (trees[0] ?? 0) <= (hits[0]?.first ?? 0);
    for (let t = 1; t < trees.length; t++) {
      const from = trees[t - 1] ?? 0;
      const to = trees[t] ?? 0;
      const until = trees[t + 1] ?? clause.items.length;
      if (treeFirst) {
        if (
          hits.some((hit) => hit.core >= from && hit.last < to) &&
          hits.some((hit) => hit.first >= to && hit.core <= until)
        )
          cuts.push(withArticle(clause, to));
      } else {
        const next = hits.find((hit) => hit.first > from && hit.first < to);
        if (next) cuts.push(next.first);
      }
    }
    if (cuts.length === 0) return [clause];
    return [0, ...cuts].map((from, k) => ({
      ...clause,
      items: clause.items.slice(from, cuts[k]),
      join: k === 0 ? clause.join : ('comma' as const),
      sub: k === 0 ? clause.sub : null,
    }));
  });
}

function withArticle(clause: Clause, at: number): number {
  return ['the', 'my'].includes(clause.items[at - 1]?.text ?? '') ? at - 1 : at;
}

/** What a clause says, homonyms and asides taken out. */
export function findHits(clause: Clause): Hit[] {
  return sift(rawHits(clause), clause.items);
}

const known = new WeakMap<Clause, Hit[]>();

function rawHits(clause: Clause): readonly Hit[] {
  const before = known.get(clause);
  if (before) return before;
  const hits = searchHits(clause);
  known.set(clause, hits);
  return hits;
}

function searchHits(clause: Clause): Hit[] {
  const { items } = clause;
  const used = new Set<number>();
  const chosen: Match<PredicateKind>[] = [];
  for (const match of findMatches(items, PREDICATE_INDEX)) {
    if (match.at.some((i) => used.has(i))) continue;
    for (const i of match.at) used.add(i);
    chosen.push(match);
  }
  const hits: Hit[] = [];
  for (const { kind, at } of chosen) {
    const first = at[0] ?? 0;
    const last = at.at(-1) ?? 0;
    if (kind === 'none' || !makesSense(kind, clause, first, last, at)) continue;
    // "the celeste had its first figlet" bears, "had my first fig" eats.
    const bears =
      kind === 'picked' &&
      ['had', 'got', 'has'].includes(items[first]?.text ?? '') &&
      items[first - 1]?.type === 'tree' &&
      !at.some((i) => ['off', 'from'].includes(items[i]?.text ?? ''));
    hits.push({ kind: bears ? 'fruitlets' : kind, at, first, last, core: coreOf(items, at) });
  }
  return hits.sort((a, b) => a.first - b.first);
}

function coreOf(items: readonly Item[], at: readonly number[]): number {
  const telling = at.find((i) => {
    const item = items[i];
    return (
      item !== undefined &&
      item.type === 'word' &&
      !item.classes.has('DET') &&
      !item.classes.has('PREP') &&
      !item.classes.has('BE')
    );
  });
  return telling ?? at[0] ?? 0;
}

const FRUIT_NEWS = new Set<PredicateKind>([
  'picked',
  'dropped',
  'ripening',
  'no-fruitlets',
  'trouble',
  'frost',
  'care',
]);

/** Of several things said at once, those that stand. */
function sift(hits: readonly Hit[], items: readonly Item[]): Hit[] {
  const kinds = new Set(hits.map((hit) => hit.kind));
  return hits.filter((hit) => {
    if (hit.kind === 'no-fruitlets' && hits.some((each) => each !== hit && OUTDOES_NONE.has(each.kind)))
      return false;
    if (
      hit.kind === 'no-fruitlets' &&
      hits.some((each) => each.first > hit.first && !SAYS_NOTHING.has(each.kind))
    )
      return false;
    if (
      hit.kind === 'care' &&
      (kinds.has('cuttings') || kinds.has('rooted')) &&
      !/^(?:watered|fed|potted|repotted|moved)$/.test(items[hit.first]?.text ?? '')
    )
      return false;
    if (
      hit.kind === 'fruitlets' &&
      (isWeak(items, hit.at) ||
        !hit.at.some((i) => items[i]?.classes.has('FRUIT')) ||
        onlyFruitWord(hit, items))
    ) {
      if ([...FRUIT_NEWS].some((kind) => kinds.has(kind as Hit['kind']))) return false;
      if (kinds.has('cuttings') || kinds.has('pruned')) return false;
      if (kinds.has('tipped') && !hasCount(hit, items)) return false;
    }
    if (
      hit.kind === 'ask-kind' &&
      (kinds.has('buds-double') ||
        kinds.has('buds-single') ||
        kinds.has('no-fruitlets') ||
        kinds.has('fruitlets') ||
        kinds.has('leafed-out') ||
        kinds.has('tipped'))
    )
      return false;
    if (hit.kind === 'picked' && kinds.has('cuttings') && !items.some((item) => item.classes.has('FRUIT')))
      return false;
    if (hit.kind === 'ripening' && (kinds.has('picked') || kinds.has('dropped'))) return false;
    if (
      hit.kind === 'ripening' &&
      kinds.has('trouble') &&
      !items.some((item) => item.classes.has('FRUIT') || item.text === 'ripe')
    )
      return false;
    if (hit.kind === 'trouble' && kinds.has('dropped')) return false;
    if (
      hit.kind === 'trouble' &&
      (kinds.has('frost') || kinds.has('care')) &&
      hit.at.length === 1 &&
      isPest(items[hit.first])
    ) {
      // "sprayed for mites", "netted it before the starlings": the reason, not the news.
      const care = hits.find((each) => each.kind === 'care' || each.kind === 'frost');
      if (
        care &&
        care.first < hit.first &&
        items
          .slice(care.first, hit.first)
          .some((item) => ['for', 'against', 'from', 'before', 'off', 'to', 'of', 'in'].includes(item.text))
      )
        return false;
    }
    if (hit.kind === 'branched' && kinds.has('tipped') && onlyShootWord(hit, items)) return false;
    // "tipped two side shoots": what was tipped, not what grew.
    if (
      hit.kind === 'branched' &&
      !hit.at.some((i) => items[i]?.classes.has('BRANCHED')) &&
      hits.some((each) => each.kind === 'tipped' && each.first < hit.first && hit.first - each.last <= 2)
    )
      return false;
    if (hit.kind === 'branched' && (kinds.has('pruned') || kinds.has('cuttings'))) return false;
    if (hit.kind === 'leafed-out' && (kinds.has('trouble') || kinds.has('dormant'))) return false;
    if (
      hit.kind === 'picked' &&
      kinds.has('trouble') &&
      items.some((item) => item.classes.has('THIEF')) &&
      hits.some((each) => each.kind === 'trouble' && each.first <= hit.first)
    )
      return false;
    if (hit.kind === 'picked' && kinds.has('trouble') && items.some((item) => item.text === 'by'))
      return false;
    if (hit.kind === 'picked' && kinds.has('care') && hit.at.every((i) => items[i]?.classes.has('WEIGHT')))
      return false;
    if (
      hit.kind === 'fruitlets' &&
      (kinds.has('buds-double') || kinds.has('buds-single')) &&
      !items.some((item) => item.classes.has('FRUIT'))
    )
      return false;
    return true;
  });
}

/** Beside these "no figs" adds nothing, or is part of the same news. */
const OUTDOES_NONE: ReadonlySet<PredicateKind> = new Set([
  'branched',
  'dropped',
  'buds-single',
  'ripening',
  'picked',
]);
const SAYS_NOTHING: ReadonlySet<PredicateKind> = new Set(['fruitlets', 'no-fruitlets', 'ask-kind']);

function isPest(item: Item | undefined): boolean {
  return item !== undefined && (item.classes.has('PEST') || item.classes.has('THIEF'));
}

function onlyFruitWord(hit: Hit, items: readonly Item[]): boolean {
  return hit.at.every((i) => {
    const item = items[i];
    return (
      item !== undefined &&
      (item.classes.has('FRUIT') ||
        item.classes.has('FRUITLET') ||
        item.classes.has('SIZE') ||
        item.type === 'quantity' ||
        item.classes.has('PREP'))
    );
  });
}

function hasCount(hit: Hit, items: readonly Item[]): boolean {
  return hit.at.some((i) => items[i]?.type === 'quantity');
}

function onlyShootWord(hit: Hit, items: readonly Item[]): boolean {
  return hit.at.every(
    (i) =>
      items[i]?.classes.has('SHOOT') ||
      items[i]?.classes.has('SIZE') ||
      items[i]?.classes.has('DET') ||
      items[i]?.type === 'quantity' ||
      items[i]?.text === 'side',
  );
}

function makesSense(
  kind: PredicateKind,
  clause: Clause,
  first: number,
  last: number,
  at: readonly number[],
): boolean {
  const { items, sub } = clause;
  const verb = items[first];
  if (!verb) return false;
  if (kind === 'fruitlets' && isWeak(items, at)) return weakFits(items, at);
  if (kind === 'tipped' && verb.classes.has('TIPPED')) {
    return subjectFits(items, first) && objectFits(items, first);
  }
  if (kind === 'tipped' && verb.classes.has('TIPPING') && at.length <= 1) {
    if ((sub === 'after' || sub === 'since') && items.some((item) => item.type === 'date')) return true;
    return (
      items
        .slice(0, first)
        .some((item) =>
          ['spent', 'finished', 'done', 'been', 'am', 'was', 'were', 'busy', 'out', 'morning'].includes(
            item.text,
          ),
        ) && objectFits(items, first)
    );
  }
  if (kind === 'picked' && verb.classes.has('PICKED')) return pickFits(items, first);
  if (kind === 'dropped' && verb.classes.has('DROPPED')) return dropFits(items, first);
  if (kind === 'dropped') return !items.some((item) => item.classes.has('LEAF'));
  if (kind === 'no-fruitlets') {
    const harmless = harmlessItems(items);
    return !at.some((i) => harmless.has(i) && items[i]?.classes.has('NEG')) && noneFits(items, at);
  }
  if (kind === 'care' && at.length === 1) return careFits(items, first);
  if (kind === 'fruitlets' && verb.type === 'tree' && items[last]?.type === 'quantity') {
    return !items
      .slice(last + 1)
      .some((item) => item.classes.has('LEAF') || item.classes.has('SHOOT') || item.classes.has('CUTTING'));
  }
  if (kind === 'fruitlets' && at.length === 1 && verb.text === 'crop')
    return items.some((item) =>
      ['main', 'first', 'second', 'good', 'big', 'decent', 'nice', 'heavy', 'breba'].includes(item.text),
    );
  if (
    kind === 'ripening' &&
    at.length === 1 &&
    ['colour', 'color', 'soft', 'swell', 'swollen'].includes(verb.text)
  )
    return !items.some((item) => item.classes.has('LEAF'));
  if (
    kind === 'ask-kind' &&
    at.length === 1 &&
    ['something', 'somethings', 'thing', 'things', 'bits', 'growth', 'stuff', 'thingy', 'growths'].includes(
      verb.text,
    )
  )
    return false;
  if (kind === 'trouble' && at.length === 1 && TWO_FACED.has(verb.text)) return false;
  return true;
}

/** Words of trouble that are trouble only beside another. */
const TWO_FACED = new Set(
  [
    'broken',
    'fly',
    'flies',
    'blown',
    'spot',
    'spotted',
    'curl',
    'burn',
    'cooked',
    'something',
    'split',
    'crisp',
    'dog',
    'bird',
    'birds',
    'scale',
    'spider',
    'bug',
    'fried',
    'beat',
    'knocked',
    'hens',
    'chickens',
    'sick',
    'ants',
    'torn',
  ].filter(
    (word) =>
      !['birds', 'ants', 'scale', 'split', 'fried', 'bird', 'knocked', 'torn', 'cooked'].includes(word),
  ),
);

const SUBJECTS = new Set([
  'de',
  'i',
  'we',
  'have',
  'has',
  'had',
  'been',
  'was',
  'were',
  'is',
  'are',
  'got',
  'get',
  'getting',
  'just',
  'finally',
  'also',
  'then',
  'and',
  'already',
  'both',
  'all',
  'now',
  'it',
  'they',
  'them',
  'well',
  'so',
  'today',
  'properly',
  'fully',
  'only',
  'even',
  'lightly',
  'hard',
  'gently',
  'them',
  'one',
  'ones',
  'that',
  'be',
  'being',
  'not',
  'never',
  'did',
  'quickly',
  'carefully',
  'went',
  'ahead',
  'ok',
  'right',
  'yes',
  'done',
  'oh',
  'lol',
  'newly',
  'freshly',
  'recently',
  'officially',
  'accidentally',
  'successfully',
  'bravely',
  'ruthlessly',
  'gingerly',
  'again',
  'out',
  'since',
  'after',
  'when',
  'where',
  'the',
  'this',
  'these',
  'those',
  'my',
  "'s",
  'there',
  'gave',
  'late',
  'early',
  'she',
  'he',
  'you',
  'us',
  'hit',
  'every',
  'each',
  'everything',
  'thoroughly',
  'neatly',
  'half',
  'mostly',
  'partly',
  'partially',
  'completely',
  'today',
  'tho',
  'though',
  'too',
  'promptly',
  'duly',
  'manually',
  'quietly',
  'hand',
  'double',
  're',
  'me',
  'wait',
  'hubby',
  'tree',
  'plant',
  'earlier',
  'later',
  'next',
  'to',
  'as',
  'in',
  'on',
  'no',
  'yep',
  'yup',
  'note',
  'log',
  'logged',
  'record',
  'please',
  'anyway',
  'morning',
  'afternoon',
  'evening',
  'courage',
  'ok',
  'should',
  'would',
  'could',
  'will',
  'might',
  'may',
  'must',
  'nearly',
  'almost',
  'meant',
  'forgot',
  'wish',
  'if',
  'update',
  'report',
  'hi',
  'hey',
]);

/** What may stand before "tipped": the grower, the tree or a shoot, an auxiliary; not the wind or the dog. */
function subjectFits(items: readonly Item[], at: number): boolean {
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

const AFTER_TIPPED = new Set([
  'out',
  'back',
  'off',
  'on',
  'at',
  'from',
  'above',
  'after',
  'with',
  'for',
  'again',
  'too',
  'as',
  'well',
  'it',
  'them',
  'him',
  'her',
  'both',
  'all',
  'that',
  'this',
  'these',
  'those',
  'some',
  'most',
  'half',
  'last',
  'lot',
  'rest',
  'everything',
  'today',
  'now',
  'already',
  'hard',
  'to',
  'in',
  'by',
  'last',
  'past',
  'beyond',
  'just',
  'early',
  'late',
  'when',
  'because',
  'before',
  'finally',
  'ok',
  'yay',
  'lol',
  'this',
  'earlier',
  'once',
  'twice',
  'but',
  'so',
  'properly',
  'every',
  'each',
  'any',
  'right',
  'way',
  'down',
  'according',
  'like',
  'ones',
  'one',
  'even',
  'not',
  'and',
  'n',
  'exactly',
  'either',
  'measure',
  'yesterday',
  'fine',
  'nicely',
  'gently',
  'here',
  'there',
  'is',
  'are',
  'was',
  'were',
  'has',
  'have',
  'had',
  'instead',
  'per',
  'only',
  'also',
  'immediately',
  'thanks',
  'cheers',
  'haha',
  'same',
  'about',
  'around',
  'approx',
  'roughly',
  'weeks',
  'week',
  'days',
  'months',
  'ages',
  'thank',
  'okay',
  'sap',
  'sticky',
  'mine',
  'ours',
  'quick',
  'first',
  'second',
  'third',
  'good',
  'please',
  'x',
  'hoping',
  'hopefully',
  'ahead',
  'the',
  'my',
  'its',
  'a',
  'an',
  'our',
  'of',
  'tree',
  'trees',
  'shoots',
  'and',
  'the',
  'round',
  'inside',
  'outside',
  'myself',
  'ourselves',
  'got',
  'yet',
  'four',
  'good',
  'bang',
  'dead',
  'later',
  'ready',
  'job',
  'over',
]);

/** What may stand after "tipped": a tree, a shoot, a number of shoots, a place on the shoot, or nothing. */
function objectFits(items: readonly Item[], at: number): boolean {
  let i = at + 1;
  let determined = false;
  let counted = false;
  for (;;) {
    const item = items[i];
    if (!item) return true;
    if (item.type === 'tree' || item.type === 'date' || item.type === 'vague') return true;
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
        [
          'encourage',
          'force',
          'stop',
          'make',
          'get',
          'see',
          'try',
          'keep',
          'help',
          'push',
          'speed',
          'slow',
          'hurry',
          'promote',
          'induce',
          'trigger',
        ].includes(items[i + 1]?.text ?? '')
      );
    if (item.text === 'by')
      return !items
        .slice(i + 1)
        .some(
          (each) =>
            each.classes.has('FROST') ||
            each.classes.has('TROUBLE') ||
            ['wind', 'cold', 'dog', 'cat', 'hail', 'deer'].includes(each.text),
        );
    if (
      item.text === 'back' &&
      ['from', 'to', 'into', 'home', 'in'].includes(items[i + 1]?.text ?? '') &&
      items[i + 1]?.text !== 'to'
    )
      return false;
    if (item.text === 'at' && ['by', 'my'].includes(items[i + 1]?.text ?? '')) return false;
    if (item.classes.has('SHOOT') || item.classes.has('BUD')) return true;
    if (item.classes.has('FRUIT') || item.classes.has('LEAF') || item.classes.has('CUTTING')) return false;
    if (
      item.classes.has('DET') ||
      [
        'all',
        'both',
        'some',
        'most',
        'every',
        'each',
        'half',
        'of',
        'few',
        'couple',
        'few',
        'more',
        'back',
        'out',
        'off',
        'around',
        'about',
        'approx',
        'roughly',
      ].includes(item.text)
    ) {
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
    if (item.classes.has('SIZE') && determined) {
      i++;
      continue;
    }
    if (determined || counted) {
      if (
        [
          'tree',
          'trees',
          'plant',
          'plants',
          'lot',
          'whole',
          'rest',
          'one',
          'ones',
          'thing',
          'bush',
          'weaker',
          'thin',
          'fast',
          'side',
          'stronger',
          'thinner',
          'longest',
          'outer',
          'inner',
          'upper',
          'lower',
          'vigorous',
          'same',
          'entire',
          'south',
          'north',
          'sunny',
          'measure',
          'on',
          'at',
          'from',
          'to',
          'so',
          'per',
          'off',
          'in',
          'guy',
          'beast',
          'bugger',
          'strongest',
          'weakest',
          'longer',
          'outside',
          'them',
          'it',
          'thicker',
          'spindly',
          'leggy',
          'pots',
          'figs',
          'week',
          'day',
          'morning',
          'evening',
          'back',
          'minute',
          'front',
          'today',
          'above',
          'odd',
          'remaining',
        ].includes(item.text) ||
        item.classes.has('PRO') ||
        item.classes.has('SIZE')
      )
        return true;
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

function pickFits(items: readonly Item[], at: number): boolean {
  const word = items[at]?.text ?? '';
  if (
    [
      'pinched',
      'grabbed',
      'pulled',
      'gathered',
      'collected',
      'enjoyed',
      'polished',
      'swiped',
      'bagged',
      'sampled',
      'tasted',
      'tried',
      'crunched',
      'picked',
      'plucked',
    ].includes(word)
  ) {
    const rest = items.slice(at + 1);
    const object = rest.find(
      (item) =>
        !item.classes.has('DET') &&
        !item.classes.has('SIZE') &&
        !item.classes.has('PREP') &&
        !item.classes.has('ADV'),
    );
    if (word === 'picked') {
      if (!object) return true;
      if (object.classes.has('LEAF') || object.classes.has('SUCKER') || object.classes.has('CUTTING'))
        return false;
      if (
        object.type === 'word' &&
        object.classes.size === 0 &&
        isOrdinary(object.text) &&
        rest[0]?.classes.has('DET')
      )
        return false;
      return true;
    }
    return (
      rest.some((item) => item.classes.has('FRUIT')) ||
      (object !== undefined &&
        (object.type === 'quantity' || object.type === 'tree') &&
        rest.some((item) => ['off', 'from'].includes(item.text))) ||
      (object?.type === 'quantity' && object.classes.has('WEIGHT'))
    );
  }
  return true;
}

function dropFits(items: readonly Item[], at: number): boolean {
  // "… and fell": of what the clause before was about.
  if (items.length <= 2) return true;
  if (items.some((item) => item.classes.has('LEAF'))) return false;
  const word = items[at]?.text ?? '';
  const said = items.some(
    (item) =>
      item.classes.has('FRUIT') ||
      ['everything', 'lot', 'them', 'all', 'both', 'every', 'whole'].includes(item.text),
  );
  if (word === 'dropped' || word === 'aborted')
    return said || items[at + 1] === undefined || items.some((item) => item.classes.has('BREBA'));
  return said;
}

function careFits(items: readonly Item[], at: number): boolean {
  const word = items[at]?.text ?? '';
  if (['water', 'feed', 'mulch'].includes(word)) {
    const before = items[at - 1]?.text ?? '';
    return (
      !['to', 'not', 'no', 'of', 'under', 'without', 'the', 'rain', 'standing', 'hose'].includes(before) ||
      before === 'of' ||
      before === 'the'
    );
  }
  if (['given', 'gave'].includes(word)) return false;
  if (
    [
      'topped',
      'stripped',
      'cleaned',
      'covered',
      'moved',
      'turned',
      'rotated',
      'treated',
      'sunk',
      'trained',
      'inspected',
      'divided',
      'hauled',
    ].includes(word)
  ) {
    if (word === 'topped' || word === 'sunk') return false;
    if (word === 'covered') return !items.some((item) => item.classes.has('BE')) && at !== items.length - 1;
    return true;
  }
  return true;
}

const BESIDE_NONE = new Set([
  'still',
  'yet',
  'so',
  'far',
  'on',
  'there',
  'to',
  'see',
  'report',
  'show',
  'for',
  'this',
  'time',
  'year',
  'season',
  'round',
  'either',
  'as',
  'of',
  'at',
  'in',
  'up',
  'top',
  'whole',
  'thing',
  'doing',
  'happening',
  'forming',
  'visible',
  'showing',
  'from',
  'all',
  'sadly',
  'alas',
  'again',
  'it',
  'them',
  'and',
  'i',
  'looked',
  'check',
  'checked',
  'though',
  'anywhere',
  'whatsoever',
  'mate',
  'absolutely',
  'literally',
  'shoot',
  'shoots',
  'tree',
  'branch',
  'branches',
  'node',
  'nodes',
  'any',
  'plant',
  'bottom',
  'but',
  'measure',
  'lol',
  'haha',
  'is',
  'has',
  'are',
  'have',
  'got',
  'had',
  'was',
  'seen',
  'found',
  'over',
  'wood',
  'side',
  'side',
  'every',
  'single',
  'here',
  'me',
]);

/** "nothing" is no fruit only where nothing else is said: not in "nothing else touched", "none made it". */
function noneFits(items: readonly Item[], at: readonly number[]): boolean {
  const from = at[0] ?? 0;
  const alone = at.every(
    (i) =>
      items[i]?.classes.has('NONE') ||
      ['still', 'not', 'blind', 'empty', 'is', 'on', 'at', 'in', 'yet', 'so', 'there'].includes(
        items[i]?.text ?? '',
      ),
  );
  const other = items
    .slice(from + 1)
    .some(
      (item, k) =>
        !at.includes(from + 1 + k) &&
        [
          'PICKED',
          'DROPPED',
          'FALLEN',
          'RIPE',
          'RIPEN',
          'ROOTED',
          'TROUBLE',
          'LEAFED',
          'TIPPED',
          'WATERED',
          'PRUNED',
          'CUTTING',
          'FROST',
          'ROOT',
        ].some((name) => item.classes.has(name)) &&
        !['gone', 'down', 'hit', 'ground', 'bare', 'off', 'bug'].includes(item.text),
    );
  if (other) return false;
  if (!alone) return true;
  return items.every(
    (item, i) =>
      at.includes(i) ||
      item.type !== 'word' ||
      item.classes.has('DET') ||
      item.classes.has('ADV') ||
      item.classes.has('EMPTY') ||
      item.classes.has('NONE') ||
      item.classes.has('NEG') ||
      item.classes.has('FOODISH') ||
      item.classes.has('FRUIT') ||
      item.classes.has('WEATHER') ||
      item.classes.has('LEAF') ||
      item.classes.has('BUMP') ||
      BESIDE_NONE.has(item.text),
  );
}

/** Nothing but a word for figs, perhaps with a number: by itself that says they are there. */
function isWeak(items: readonly Item[], at: readonly number[]): boolean {
  return at.every((i, k) => {
    const item = items[i];
    if (!item) return false;
    // "9 honest figs", "6 king figs"
    if (k === 1 && at.length === 3 && items[at[0] ?? -1]?.type === 'quantity') return true;
    return item.classes.has('FRUIT') || item.classes.has('SIZE') || item.type === 'quantity';
  });
}

const KNOWN_BESIDE = [
  'DET',
  'PREP',
  'BE',
  'HAVE',
  'ADV',
  'NOW',
  'SIZE',
  'FRUIT',
  'NODE',
  'SHOOT',
  'WOOD',
  'EMPTY',
  'PRO',
  'MY',
  'OLDWOOD',
  'BREBA',
  'TREEWORD',
  'MEASURE',
  'LEAF',
  'BUD',
  'NEG',
  'WILL',
  'AUX',
  'WH',
  'HEDGE',
  'SAYS',
  'AND',
];
const PLAIN_BESIDE = new Set([
  'become',
  'became',
  'turned',
  'chockers',
  'set',
  'bunch',
  'load',
  'loads',
  'lots',
  'lot',
  'plenty',
  'heaps',
  'ton',
  'tons',
  'dozens',
  'cluster',
  'clusters',
  'handful',
  'couple',
  'about',
  'roughly',
  'around',
  'maybe',
  'least',
  'more',
  'than',
  'over',
  'spotted',
  'found',
  'counted',
  'see',
  'can',
  'first',
  'up',
  'along',
  'look',
  'crop',
  'start',
  'started',
  'coming',
  'joy',
  'sign',
  'signs',
  'actual',
  'real',
  'visible',
  'honest',
  'teeny',
  'weeny',
  'everywhere',
  'galore',
  'tonnes',
  'surprise',
  'proper',
  'legit',
  'count',
  'total',
  'another',
  'extra',
  'every',
  'so',
  'no',
  'yes',
  'success',
  'result',
  'bingo',
  'happy',
  'finally',
  'there',
  'i',
  'main',
  'second',
  'this',
  'year',
  'morning',
  'not',
  'and',
  'love',
  'looking',
  'good',
  'great',
  'cute',
  'adorable',
  'whoop',
  'woohoo',
  'as',
  'of',
  'me',
  'many',
  'much',
  'again',
  'also',
  'far',
  'wee',
  'inch',
  'long',
  'like',
  'grape',
  'marble',
  'pea',
  'thumbnail',
  'size',
  'sized',
  'big',
  'each',
  'per',
  'off',
  'near',
  'tip',
  'base',
  'join',
  'right',
  'at',
  'wow',
  'omg',
  'baby',
  "'s",
  'exactly',
  'precisely',
  'approx',
  'tree',
  'behind',
  'hiding',
  'hidden',
  'under',
  'already',
  'still',
  'hanging',
  'holding',
  'made',
  'gave',
  'gives',
  'given',
  'bears',
  'bearing',
]);

/** Unknown words around make it doubtful what is said of the figs: then it is a remark. */
function weakFits(items: readonly Item[], at: readonly number[]): boolean {
  const counted = at.some((i) => items[i]?.type === 'quantity');
  const strange = items.filter(
    (item, i) =>
      !at.includes(i) &&
      item.type === 'word' &&
      !KNOWN_BESIDE.some((name) => item.classes.has(name)) &&
      !PLAIN_BESIDE.has(item.text) &&
      !item.text.endsWith('ly'),
  );
  const figlets = at.some((i) => items[i]?.classes.has('FRUITLET'));
  return strange.length <= (counted ? 2 : figlets ? 1 : 0);
}
