import { hitBehind } from './hits.ts';
import { isAnyOf } from './item.ts';
import { hasOwnWords } from './list-objects.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

/** "harvest: ronde 11, alma 3", "breba count, king: 9": the heading says what was done with all that follows. */
export function spreadHeadings(sayings: readonly Saying[]): void {
  sayings.forEach((heading, h) => {
    const next = sayings[h + 1];
    const hit = heading.hits[0];
    if (!hit || !next || heading.mentions.length > 0 || heading.items.length > 5) return;
    if (heading.items.some((item) => item.quantity)) return;
    const counted =
      next.clause.join === 'comma' &&
      next.bare &&
      isTally(next) &&
      (hit.kind === 'fruitlets' ||
        hit.kind === 'cuttings' ||
        (hit.kind === 'picked' && !next.items.some((item) => item.classes.has('FRUIT'))));
    if (next.clause.join !== 'colon' && !counted) return;
    let given = false;
    for (let k = h + 1; k < sayings.length; k++) {
      const saying = sayings[k];
      if (!saying) break;
      // "breba: king 6, mission nil"
      if (
        heading.breba &&
        saying.hits.some(({ kind }) => ['no-fruitlets', 'picked', 'dropped', 'ripening'].includes(kind))
      )
        saying.breba = true;
      const near = saying.clause.sentence === heading.clause.sentence;
      // "figs: none on the alma", "tipped: alma none"
      if (near && isNoneThere(saying)) {
        saying.hits = [hitBehind(hit.kind === 'fruitlets' ? 'no-fruitlets' : 'remark', saying.items)];
        saying.breba ||= heading.breba;
        saying.date ??= heading.date;
        given = true;
        continue;
      }
      if (!near && !(saying.bare && isTally(saying))) break;
      if (
        saying.mentions.length === 0 ||
        hasOwnWords(sayings, k) ||
        saying.hits.some(
          (each) => each.kind !== 'fruitlets' && !(hit.kind === 'cuttings' && each.kind === 'picked'),
        )
      )
        continue;
      saying.hits = [hitBehind(hit.kind, saying.items)];
      saying.count = saying.items.find((item) => item.quantity)?.quantity ?? null;
      saying.breba ||= heading.breba;
      saying.date ??= heading.date;
      if (!isFact(heading.mood))
        saying.mood = {
          ...heading.mood,
          denials: heading.mood.denials.map(() => 0),
          unrealFrom: heading.mood.unrealFrom && 0,
        };
      given = true;
    }
    if (given) {
      silence(heading);
    }
  });
}

/** A tree with "none" and nothing else. */
function isNoneThere({ items, mentions, hits }: Saying): boolean {
  return (
    mentions.length > 0 &&
    hits.every((hit) => hit.kind === 'no-fruitlets') &&
    items.some((item) => item.classes.has('NONE')) &&
    items.every((item) => item.type === 'tree' || isAnyOf(item, ['NONE', 'DET', 'PREP', 'NOW']))
  );
}

/** A tree with its number or "none". */
function isTally(saying: Saying): boolean {
  return (
    saying.mentions.length > 0 &&
    saying.items.some((item) => item.quantity !== undefined || item.classes.has('NONE'))
  );
}

/** "last year's wood gave 3 figs, eaten": what was told of before is what was eaten. */
export function eatWhatWasThere(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const eaten = saying.hits[0];
    if (eaten?.kind !== 'picked' || saying.hits.length !== 1 || saying.mentions.length > 0) return;
    // "3 ripe on the king, not picked yet", "…, should have picked them", "…, picked none"
    if (!isFact(saying.mood) || saying.mood.asks || saying.items.some((item) => item.classes.has('NONE')))
      return;
    // "too hard to be picked", "best eaten warm"
    const lead = saying.items.slice(Math.max(0, eaten.core - 2), eaten.core).map(({ text }) => text);
    if (lead.includes('to') || lead.at(-1) === 'best') {
      saying.hits = [{ ...eaten, kind: 'remark' }];
      return;
    }
    if (
      saying.items.some(
        (item, i) =>
          item.text === 'one' && ['last', 'first', 'only'].includes(saying.items[i - 1]?.text ?? ''),
      )
    )
      return;
    if (
      saying.items.some((item) => item.quantity || item.classes.has('FRUIT')) &&
      !saying.items.some((item) => item.text === 'bites' || item.text === 'bite')
    ) {
      const before = sayings[s - 1];
      if (before && isFigHeading(before) && before.clause.sentence === saying.clause.sentence)
        before.hits = [];
      return;
    }
    for (let k = s - 1; k >= 0; k--) {
      const before = sayings[k];
      if (!before) return;
      if (before.clause.sentence !== saying.clause.sentence) {
        // "whole ronde crop: 1. ate it"
        if (isAteIt(saying)) ateThat(sayings, s);
        // "first fig of the year!! celeste, gone in two bites"
        if (before.mentions.length > 0 || !isFigHeading(before) || !sayings[k + 1]?.mentions.length) return;
        saying.count = { value: 1, unit: null, ofMore: false };
        silence(before);
        return;
      }
      const shown = before.hits.find((hit) => hit.kind === 'fruitlets' || hit.kind === 'ripening');
      if (!shown && !isFirstFig(before)) continue;
      // "showing may 6, first one picked june 27": seen on one day and eaten on another.
      if (before.date && saying.date) return;
      if (!shown) {
        before.hits = [{ ...eaten, at: [], first: before.items.length, last: before.items.length }];
        before.date ??= saying.date;
        silence(saying);
        return;
      }
      before.hits = before.hits.map((hit) => (hit === shown ? { ...hit, kind: 'picked' as const } : hit));
      before.date ??= saying.date;
      silence(saying);
      if (!saying.items.some((item) => item.text === 'both' || item.text === 'all')) return;
    }
  });
}

function isAteIt({ items }: Saying): boolean {
  return items.length <= 3 && items.some((item) => item.text === 'it' || item.text === 'them');
}

/** The count of figs in the sentence before is what was eaten. */
function ateThat(sayings: readonly Saying[], s: number): void {
  const before = sayings.slice(0, s).findLast((each) => each.hits.length > 0);
  const [shown] = before?.hits ?? [];
  if (
    !before ||
    shown?.kind !== 'fruitlets' ||
    before.hits.length > 1 ||
    before.items.some((item) => item.text === 'on')
  )
    return;
  before.hits = [{ ...shown, kind: 'picked' }];
  const saying = sayings[s];
  if (!saying) return;
  silence(saying);
}

/** "king's brebas, ate two": only what is spoken of. */
function isFigHeading({ hits, items }: Saying): boolean {
  return (
    hits.length === 1 &&
    hits[0]?.kind === 'fruitlets' &&
    items.every(
      (item) =>
        item.type === 'tree' ||
        isAnyOf(item, ['FRUIT', 'DET', 'SIZE', 'BREBA']) ||
        item.text === "'s" ||
        ['of', 'year', 'season', 'summer'].includes(item.text),
    )
  );
}

/** "my first alma, gone in one bite": a tree's name for its fruit. */
function isFirstFig({ hits, items, mentions, mood }: Saying): boolean {
  return (
    hits.length === 0 &&
    mentions.length === 1 &&
    isFact(mood) &&
    items.some((item) => ['first', 'lone', 'only', 'single'].includes(item.text) || item.quantity) &&
    items.every(
      (item) =>
        item.type !== 'word' ||
        isAnyOf(item, ['DET', 'SIZE', 'MY', 'FRUIT', 'RIPE', 'BREBA', 'PREP']) ||
        ['year', 'season', 'summer'].includes(item.text),
    )
  );
}

/** "it had 6 figs when i watered sunday", "already had doubles when i topped the alma": one moment, one tree. */
export function shareMoments(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const next = sayings[s + 1];
    if (next) shareWhile(saying, next);
    if (!next?.date || next.clause.sub !== 'when' || next.hits.length === 0 || saying.hits.length === 0)
      return;
    if (saying.date !== null || !saying.items.some((item) => ['had', 'was', 'were'].includes(item.text)))
      return;
    saying.date = next.date;
    if (s === 0 && saying.mentions.length === 0) saying.mentions = next.mentions;
  });
}

/** "found 2 figs while nipping the alma yesterday": seen on the tree and the day of the work. */
function shareWhile(saying: Saying, next: Saying): void {
  const [seen] = saying.hits;
  const [work] = next.hits;
  if (next.clause.sub !== 'while' || !seen || !work || !WORK.has(work.kind)) return;
  if (saying.clause.sentence !== next.clause.sentence || !['fruitlets', 'trouble'].includes(seen.kind))
    return;
  saying.date ??= next.date;
  if (saying.mentions.length === 0) saying.mentions = next.mentions;
}

const WORK: ReadonlySet<string> = new Set(['tipped', 'care', 'pruned']);

/** "how many figs on the king? seven": the writer answers. */
export function answerOwnQuestion(sayings: readonly Saying[]): void {
  sayings.forEach((answer, a) => {
    const question = sayings[a - 1];
    const number = answer.items.find((item) => item.quantity)?.quantity;
    if (!question?.clause.asked || !number || answer.clause.asked || answer.mentions.length > 0) return;
    if (
      !answer.items.every(
        (item) => item.type !== 'word' || item.classes.has('FRUIT') || item.classes.has('ADV'),
      )
    )
      return;
    const asked = question.items;
    if (!asked.some((item, i) => item.text === 'how' && asked[i + 1]?.text === 'many')) return;
    if (!asked.some((item) => item.classes.has('FRUIT'))) return;
    answer.hits = [hitBehind('fruitlets', answer.items)];
    answer.count = number;
    answer.mentions = question.mentions;
    question.hits = [];
    question.mentions = [];
    question.dropped = true;
  });
}

const ELLIPSIS = new Set(['did', 'has', 'have', 'is', 'are', 'does', 'do', 'was', 'were']);
const HARMLESS_NEWS: ReadonlySet<string> = new Set([
  'trouble',
  'ripening',
  'leafed-out',
  'dormant',
  'branched',
]);

/** "anyone else's kadota split? my tall one just did": the news of the question, of one's own; nothing that decides. */
export function answerForMine(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const question = sayings[s - 1];
    const [hit] = question?.hits ?? [];
    if (!question?.mood.asks || !hit || !HARMLESS_NEWS.has(hit.kind) || saying.hits.length > 0) return;
    const mine = saying.items.slice(0, 2).some((item) => ['mine', 'ours', 'my'].includes(item.text));
    const named = saying.mentions.length > 0 ? saying.mentions : mine ? question.mentions : [];
    if (named.length !== 1 || !isFact(saying.mood) || saying.mood.asks || saying.mood.others) return;
    const last = saying.items.at(-1)?.text ?? '';
    if (!ELLIPSIS.has(last) || saying.items.length > 6) return;
    saying.hits = [hitBehind(hit.kind, saying.items)];
    saying.mentions = [...named];
    question.hits = [];
    question.mentions = [];
    question.dropped = true;
  });
}

const STANDING: ReadonlySet<string> = new Set(['leafed-out', 'ripening', 'branched', 'dormant', 'rooted']);

/** "king leafed out on the 2nd, alma not till may 4": the same, later. */
export function notUntil(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const told = sayings.slice(0, s).findLast((each) => each.hits.length > 0);
    const [hit] = told?.hits ?? [];
    if (!hit || !STANDING.has(hit.kind) || saying.hits.length > 0 || saying.mentions.length !== 1) return;
    if (saying.clause.sentence !== told?.clause.sentence || !saying.date) return;
    if (!saying.items.some((item) => item.text === 'until') || saying.items.length > 6) return;
    saying.hits = [hitBehind(hit.kind, saying.items)];
  });
}

/** "round thing at the node on the ronde, fig?": the fragment asks what the thing before it is. */
export function markRiddles(sayings: readonly Saying[]): void {
  for (const saying of sayings) {
    if (!saying.clause.asked || saying.mentions.length > 0 || saying.items.length > 3) continue;
    if (saying.items.some((item) => ['how', 'many', 'when', 'why', 'no', 'any'].includes(item.text)))
      continue;
    if (!saying.items.some((item) => isAnyOf(item, ['FRUIT', 'LEAF', 'BUD']))) continue;
    if (saying.items.some((item) => item.classes.has('RIPE') || item.classes.has('PICKED'))) continue;
    for (const other of sayings) {
      if (other.clause.sentence !== saying.clause.sentence || other === saying) continue;
      other.hits = other.hits.filter(
        (hit) => !['fruitlets', 'buds-single', 'buds-double', 'leafed-out', 'ask-kind'].includes(hit.kind),
      );
      other.hits.push(hitBehind('ask-kind', other.items));
    }
    silence(saying);
  }
}
