import type { Hit } from './hits.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';

/** Kinds that belong to one crop or the other. */
export const FRUIT_KINDS: ReadonlySet<string> = new Set([
  'fruitlets',
  'ripening',
  'picked',
  'dropped',
  'ask-kind',
]);

const UNSURE = wordSet(`
  know tell say sure clue idea unsure whichever ask dunno work wondering wonder decide figure figures if
  whether guess certain remember which beats or anyone
`);

/** A clause about the crop itself: breba, main, which crop. */
export function isDoubt(saying: Saying): boolean {
  return (
    saying.breba || saying.main || saying.items.some((item) => item.text === 'crop' || item.text === 'main')
  );
}

/** The writer says they do not know which crop it is. */
export function doubtsCrop(all: readonly Saying[]): boolean {
  const either =
    all.some((each) => each.breba) &&
    all.some((each) => each.items.some((item) => item.text === 'main' || item.text === 'maincrop'));
  const which = all.some(
    (each) =>
      each.items.some((item) => item.text === 'crop') &&
      (each.clause.sub === 'which' ||
        each.clause.sub === 'whether' ||
        each.items.some((item) => item.text === 'which') ||
        each.items.some((item, i) => item.text === 'what' && each.items[i + 1]?.text === 'crop')),
  );
  if ((all.some(isWhether) || isOldOrNew(all) || isEarlyOrMain(all)) && all.some(isUnsure)) return true;
  // "who knows what crop that counts as"
  if (all.some(endsInWhichCrop) || all.some(asksWhichCrop)) return true;
  if (!either && !which) return false;
  return all.some(
    (each) =>
      (isDoubt(each) &&
        (each.mood.asks ||
          each.clause.join === 'or' ||
          each.clause.sub === 'if' ||
          each.clause.sub === 'whether')) ||
      each.items.some(
        (item, i) =>
          UNSURE.has(item.text) &&
          (each.mood.denials.length > 0 ||
            ['not', 'no'].includes(each.items[i - 1]?.text ?? '') ||
            ['unsure', 'wondering', 'wonder', 'beats', 'dunno', 'uncertain'].includes(item.text)),
      ),
  );
}

/** "which crop do i call that", "what crop are they" */
function asksWhichCrop({ clause, items }: Saying): boolean {
  const at = items.findIndex((item) => item.text === 'crop');
  const wh = clause.sub === 'which' ? at <= 1 : ['what', 'which'].includes(items[at - 1]?.text ?? '');
  return at >= 0 && wh && ASKING.has(items[at + 1]?.text ?? '') && ASKER.has(items[at + 2]?.text ?? '');
}

const ASKING = wordSet('do does would should are is can');
const ASKER = wordSet('i we you it they this that these those one');

/** "… what crop" where a clause about it follows: the writer wonders. */
function endsInWhichCrop({ items }: Saying, s: number, all: readonly Saying[]): boolean {
  const next = all[s + 1];
  return (
    items.at(-1)?.text === 'crop' &&
    ['what', 'which'].includes(items.at(-2)?.text ?? '') &&
    next?.clause.sub === 'that' &&
    next.clause.sentence === all[s]?.clause.sentence
  );
}

/** "if they count as breba", "are they the breba ones or the new ones": breba is what is wondered about. */
function isWhether({ clause, items, mood, breba }: Saying): boolean {
  if (!breba) return false;
  const at = items.findIndex((item) => item.classes.has('BREBA'));
  const hedged = mood.asks && items.some((item) => item.classes.has('HEDGE'));
  const predicate = items
    .slice(Math.max(0, at - 4), at)
    .some((item) => item.classes.has('BE') || ['as', 'count', 'called', 'or'].includes(item.text));
  return (
    hedged ||
    (predicate && (mood.asks || clause.sub === 'if' || clause.sub === 'whether' || clause.join === 'or'))
  );
}

/** "old wood or new" */
function isOldOrNew(all: readonly Saying[]): boolean {
  return all.some(
    ({ clause, items, mood }, s) =>
      // "old wood? new wood?"
      (clause.join === 'or' || (mood.asks && all[s - 1]?.mood.asks === true)) &&
      ['new', 'main', 'maincrop', 'breba', 'brebas', 'oldwood', 'other', 'normal', 'regular', 'not'].includes(
        items.find((item) => !item.classes.has('DET') || item.text === 'other')?.text ?? '',
      ) &&
      (all[s - 1]?.breba === true || all[s - 1]?.main === true || isEarlyLot(all[s - 1])),
  );
}

/** "early lot or main lot?" */
function isEarlyLot(saying: Saying | undefined): boolean {
  const [first, noun] = saying?.items.filter((item) => !item.classes.has('DET')) ?? [];
  return (
    ['early', 'first', 'summer', 'spring'].includes(first?.text ?? '') &&
    ['lot', 'crop', 'ones', 'figs'].includes(noun?.text ?? '')
  );
}

const CROPS = wordSet('first second early late main other next new old maincrop breba');

/** "crop unknown, early or main?", "the first crop or the second" */
function isEarlyOrMain(all: readonly Saying[]): boolean {
  const ofCrop = all.some(isDoubt);
  return (
    ofCrop &&
    all.some(({ clause, items }, s) => {
      const before = all[s - 1];
      const opening = items.find((item) => !item.classes.has('DET'));
      return (
        clause.join === 'or' &&
        before !== undefined &&
        items.length <= 3 &&
        CROPS.has(opening?.text ?? '') &&
        before.items.some((item) => CROPS.has(item.text))
      );
    })
  );
}

/** "dunno", "havent a clue", "could not say" */
function isUnsure({ items, mood }: Saying): boolean {
  return items.some(
    (item, i) =>
      // "search me", "beats me", "who knows"
      (item.text === 'me' &&
        ['search', 'beats', 'stumps', 'stumped', 'buggered'].includes(items[i - 1]?.text ?? '')) ||
      (item.text === 'knows' &&
        ['who', 'god', 'lord', 'heaven', 'goodness'].includes(items[i - 1]?.text ?? '')) ||
      ['unsure', 'wondering', 'dunno', 'uncertain', 'clueless', 'unknown'].includes(item.text) ||
      (['know', 'clue', 'idea', 'notion', 'foggiest', 'say', 'sure', 'tell', 'certain', 'see'].includes(
        item.text,
      ) &&
        mood.denials.some((d) => d < i)),
  );
}

function isOver(hit: Hit): boolean {
  return hit.kind === 'dropped' || hit.kind === 'picked';
}

/** The crop is breba: said here, before in the sentence, or right after. */
export function isBreba(saying: Saying, all: readonly Saying[], s: number): boolean {
  if (saying.breba) return !(saying.main && !saying.items.some((item) => item.text === 'oldwood'));
  if (saying.main) return false;
  for (let k = s - 1; k >= 0; k--) {
    const before = all[k];
    if (!before || before.clause.sentence !== saying.clause.sentence) break;
    if (before.main) return false;
    // "dropped its brebas, new figlets on it now": those are the main crop.
    if (before.breba && before.hits.some(isOver) && saying.hits.some((hit) => hit.kind === 'fruitlets'))
      return false;
    if (before.breba) return saying.mentions.length === 0 && before.mood.denials.length === 0;
  }
  const next = all.slice(s + 1).find((each) => !each.dropped);
  return (
    next !== undefined &&
    next.clause.sentence === saying.clause.sentence &&
    next.hits.length === 0 &&
    next.breba &&
    next.mentions.length === 0
  );
}
