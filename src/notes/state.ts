import type { Hit } from './hits.ts';
import type { Inherited } from './inherit-moods.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';
import { ACTIONS } from './spread-dates.ts';

/** How a question what it is begins. */
const OPENINGS = wordSet(`
  is are what whats which could would was were fig figs leaf fruit does do
`);

/** How what a hit says counts: as a fact, as denied, or as none (planned, wished, past, hearsay). */
type State = 'real' | 'denied' | 'unreal';

export function stateOf(saying: Saying, hit: Hit, before: Inherited | undefined): State {
  const { mood } = saying;
  const own = new Set(hit.at);
  if (mood.past || mood.hearsay || before?.past || before?.unreal || before?.hearsay) return 'unreal';
  if (mood.unrealFrom !== null && mood.unrealFrom <= hit.core) return 'unreal';
  if (mood.unrealFrom !== null && mood.unrealFrom <= hit.last && own.has(mood.unrealFrom)) return 'unreal';
  const within =
    hit.kind !== 'no-fruitlets' &&
    hit.kind !== 'ask-kind' &&
    mood.denials.some((i) =>
      KEEPS_DENIAL.has(hit.kind)
        ? // "has no new branches", not "nothing but branches"
          hit.kind === 'branched' &&
          i > hit.core &&
          i < hit.last &&
          !own.has(i) &&
          saying.items[i + 1]?.text !== 'but'
        : own.has(i) || (i > hit.core && i < hit.last),
    );
  const outside =
    hit.kind !== 'no-fruitlets' &&
    (mood.denials.some(
      (i) =>
        !own.has(i) &&
        !isOver(saying.items, i, hit.core) &&
        (i < hit.core || closesWithNeither(saying, i) || hit.kind === 'trouble'),
    ) ||
      before?.denied === true);
  // "pruned nothing on the king", not "watered nothing but the king"
  const nothing =
    ACTIONS.has(hit.kind) &&
    mood.denials.some(
      (i) =>
        i > hit.core &&
        i <= hit.core + 2 &&
        (saying.items[i]?.classes.has('NONE') === true ||
          ['neither', 'nobody', 'noone'].includes(saying.items[i]?.text ?? '')) &&
        !['but', 'else', 'except'].includes(saying.items[i + 1]?.text ?? ''),
    );
  // "the alma pinch never happened"
  const cameToNothing = mood.denials.some(
    (i) => i > hit.core && HAPPENED.has(saying.items[i + 1]?.text ?? ''),
  );
  if (!within && !outside && !nothing && !cameToNothing) return 'real';
  // "not till 4 May" says when it did happen.
  return saying.date && !ACTIONS.has(hit.kind) && saying.items.some((item) => item.text === 'until')
    ? 'real'
    : 'denied';
}

const HAPPENED = wordSet('happened happen materialised materialized occurred transpired');

/** "instead of pruning i pinched it": what is said after "i" was done. */
function isOver(items: readonly Item[], denial: number, core: number): boolean {
  return (
    items[denial]?.text === 'instead' &&
    items.slice(denial, core).some(({ text }) => text === 'i' || text === 'we')
  );
}

/** Kinds whose phrases may hold a word of denial of their own: "nothing but branches". */
const KEEPS_DENIAL: ReadonlySet<string> = new Set(['trouble', 'branched', 'buds-single', 'dropped']);

/** An undated aside about what went before: "branched after I pinched it". */
export function isBackground(saying: Saying, hit: Hit, h: number): boolean {
  const { sub } = saying.clause;
  if (sub === 'before' || sub === 'until') return !isMain(saying, hit);
  // "when i did it had twins already": seen while it was done.
  const [who, did] = saying.items;
  if (sub === 'when' && ['i', 'we'].includes(who?.text ?? '') && did?.text === 'did' && hit.first > 1)
    return false;
  // "pinched it on the 8th, when i did it had twins already"
  if (sub === 'when' && saying.items.some((item) => item.text === 'already')) return false;
  // "was about to pinch it when i spotted 4 figs": what happened then.
  if (sub === 'when' && hit.kind === 'fruitlets' && saying.items.some((item) => SEEING.has(item.text)))
    return false;
  if (sub !== null && BACKGROUND.has(sub) && h === 0 && !isMain(saying, hit)) {
    if (saying.date && sub !== 'before' && sub !== 'until') return false;
    return true;
  }
  // "shoots under every tip i took"
  if (
    hit.kind === 'tipped' &&
    saying.hits.length > 1 &&
    !saying.date &&
    ['each', 'every'].includes(saying.items[hit.first - 1]?.text ?? '')
  )
    return true;
  // "the pinched shoots forked"
  const grown = saying.hits[h + 1];
  if (
    hit.kind === 'tipped' &&
    grown?.kind === 'branched' &&
    !saying.date &&
    saying.items[hit.first + 1]?.classes.has('SHOOT') &&
    grown.first - hit.last <= 2
  )
    return true;
  if (hit.kind === 'tipped' && saying.hits.length > h + 1) {
    const lead = saying.items[hit.first - 1]?.text ?? '';
    const next = saying.items[hit.first + 1];
    if (['the', 'those', 'these', 'my', 'each', 'every', 'all'].includes(lead) && !saying.date) return true;
    if (next?.classes.has('SHOOT') && hit.first === 0 && !saying.date) return true;
  }
  return false;
}

const SEEING = wordSet('spotted saw noticed found clocked realised realized seen spied');

/** "once the kids were in bed i tipped it": the main clause stands in the same breath. */
function isMain({ items }: Saying, hit: Hit): boolean {
  return hit.first >= 3 && ['i', 'we'].includes(items[hit.first - 1]?.text ?? '');
}

const BACKGROUND = wordSet(`
  after since when once before until that whenever as where
`);

/** "is this a fig or a bud?": the writer does not know what it is. */
export function asksWhatItIs(saying: Saying): boolean {
  const has = (name: string): boolean => saying.items.some((item) => item.classes.has(name));
  if (!(has('FRUIT') || has('BUMP') || has('BUD') || has('LEAF'))) return false;
  // "would it hurt to repot it with figs on"
  if (saying.items.some((item) => ADVISING.has(item.text))) return false;
  if (saying.items.length === 1 && has('FRUIT')) return true;
  const first = saying.items[0]?.text ?? '';
  if (OPENINGS.has(first) || has('BUMP')) {
    const words = saying.items.map((item) => item.text);
    return (
      words.includes('or') ||
      words.includes('what') ||
      (['is', 'are', 'could', 'would', 'was', 'were', 'what'].includes(first) &&
        words.some((word) => ['this', 'these', 'that', 'those', 'it', 'they'].includes(word)) &&
        !has('RIPE'))
    );
  }
  return false;
}

const ADVISING = wordSet(
  'trick secret prevent avoid normal usual common typical natural bad weird odd hurt harm matter help wise safe risky kill stress ok okay worth best',
);

/** "pinched neither": the denial comes last. */
function closesWithNeither({ items }: Saying, i: number): boolean {
  return i === items.length - 1 && ['neither', 'none'].includes(items[i]?.text ?? '');
}
