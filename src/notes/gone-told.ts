import { hitOn } from './hits.ts';
import { isAnyOf } from './item.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

/** "3 gone, the rest fine": lost, and nobody says that they were eaten. */
export function restIsFine(saying: Saying, next: Saying | undefined): void {
  const [hit] = saying.hits;
  if (hit?.kind !== 'picked' || !next || next.clause.sentence !== saying.clause.sentence) return;
  if (!next.items.some((item) => item.text === 'rest' || item.text === 'others')) return;
  if (!hit.at.every((i) => isGone(saying.items[i]))) return;
  saying.hits = [];
}

function isGone(item: Item | undefined): boolean {
  return (
    item !== undefined &&
    (item.quantity !== undefined || item.text === 'gone' || isAnyOf(item, ['FRUIT', 'SIZE']))
  );
}

const BINNED = new Set(['chucked', 'binned', 'threw', 'dumped', 'ditched', 'tossed', 'composted']);

/** "10 oz picked, all gone by teatime", "sour, chucked the lot": no figs that dropped. */
export function goneOrBinned(saying: Saying, before: Saying | undefined): void {
  const [hit] = saying.hits;
  if (!before || !hit || hit.kind !== 'dropped' || saying.hits.length > 1 || saying.mentions.length > 0)
    return;
  if (before.clause.sentence !== saying.clause.sentence) return;
  const words = hit.at.map((i) => saying.items[i]?.text ?? '');
  const gone =
    before.hits.some((each) => each.kind === 'picked') &&
    words.every((word) => ['all', 'gone'].includes(word));
  const binned =
    before.hits.some((each) => each.kind === 'trouble') && words.some((word) => BINNED.has(word));
  if (!gone && !binned) return;
  silence(saying);
}

/** "last of the king brebas gone, into the gob": eaten, not dropped. */
export function goneDownTheHatch(saying: Saying, next: Saying | undefined): void {
  const [hit] = saying.hits;
  if (hit?.kind !== 'dropped' || saying.hits.length > 1 || !next || next.mentions.length > 0) return;
  if (next.clause.sentence !== saying.clause.sentence || !isFact(next.mood) || !isFact(saying.mood)) return;
  if (next.hits.length !== 1 || next.hits[0]?.kind !== 'picked') return;
  if (!hit.at.every((i) => saying.items[i]?.text === 'all' || isGone(saying.items[i]))) return;
  saying.hits = [{ ...hit, kind: 'picked' }];
  silence(next);
}

/** "any drop? yep, every last fig off the celeste": off by themselves, not picked. */
export function fellWhenAsked(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  const [hit] = saying?.hits ?? [];
  if (!saying || hit?.kind !== 'picked' || saying.hits.length > 1) return;
  if (saying.items.some((item) => isAnyOf(item, ['PICKED', 'EATEN', 'TAKEN', 'FOODISH', 'PICKING']))) return;
  const asked = sayings.slice(0, s).findLast((each) => !each.items.every((item) => YES.has(item.text)));
  if (!asked?.clause.asked || !asked.items.some((item) => isAnyOf(item, FALLING))) return;
  saying.hits = saying.total ? [{ ...hit, kind: 'dropped' }] : [];
}

const YES = wordSet('yes yep yup yeah aye sadly alas indeed oh sure did and');
const FALLING = ['DROP', 'DROPPED', 'DROPPING'];

/** "starlings had 4 of the alma, i got 1": what was left of the raid. */
export function gotTheRest(saying: Saying, before: Saying | undefined): void {
  const [who, verb, number, ...more] = saying.items;
  if (!before || saying.hits.length > 0 || saying.mentions.length > 0 || more.length > 0) return;
  if (before.clause.sentence !== saying.clause.sentence || !isFact(before.mood) || !isFact(saying.mood))
    return;
  if (!before.items.slice(0, 3).some((item) => item.classes.has('THIEF'))) return;
  if (before.items.some((item) => item.classes.has('CUTTING'))) return;
  if (!before.items.some((item) => item.quantity || item.classes.has('FRUIT') || RAIDED.has(item.text)))
    return;
  if (!who || !['i', 'we', 'me', 'us'].includes(who.text) || !number?.quantity) return;
  if (verb && SAVED.has(verb.text)) saying.hits = [hitOn('picked', 1)];
}

const RAIDED = wordSet('lot rest most half some');
const SAVED = wordSet('got had saved managed rescued took grabbed salvaged bagged picked ate');
