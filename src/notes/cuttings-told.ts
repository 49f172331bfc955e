import { wordSet } from './lexicon/word-set.ts';
import { type Saying, silence } from './sayings.ts';

/** "ronde cuttings: no roots", "alma sticks, 3 have roots": the cuttings are what is spoken of, not news. */
export function topicOfRoots(saying: Saying, next: Saying): void {
  if (saying.hits.length !== 1 || saying.hits[0]?.kind !== 'cuttings') return;
  const denied =
    (next.mood.denials.length > 0 && next.items.some((item) => item.classes.has('ROOT'))) ||
    next.items.some((item) => item.text === 'rootless' || item.text === 'unrooted');
  if (!(denied || next.hits.some((hit) => hit.kind === 'rooted')) || next.mentions.length > 0) return;
  if (
    saying.date ||
    saying.items.some((item) => item.quantity !== undefined || TAKING.has(item.text) || item.text === 'new')
  )
    return;
  silence(saying);
  next.mentions = saying.mentions;
}

const TAKING = wordSet(`
  took taken cut snipped clipped made struck stuck snagged grabbed potted bagged saved collected pulled
  sliced lopped chopped started popped poked pushed put set planted went going in into from
`);

/** "mission cuttings 6, all dead": told of the cuttings, not of the tree. */
export function deadCuttings(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || saying.hits.length === 0) return;
  if (!before.hits.some((hit) => hit.kind === 'cuttings')) return;
  if (!saying.hits.every((hit) => hit.kind === 'trouble')) return;
  if (!saying.items.some((item) => DEAD.has(item.text))) return;
  saying.hits = saying.hits.slice(0, 1).map((hit) => ({ ...hit, kind: 'remark' as const }));
}

const DEAD = wordSet('dead died rotted rotten failed mouldy moldy dried shrivelled shriveled perished');

/** "dipped 8 cuttings in hormone and potted": more of what was done with the cuttings. */
export function pottedCuttings(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || saying.items.length > 3 || saying.clause.join !== 'and') return;
  if (!before.hits.some((hit) => hit.kind === 'cuttings') || before.mentions.length === 0) return;
  if (saying.hits.length === 0 || !saying.hits.every((hit) => hit.kind === 'care')) return;
  if (!/^(?:potted|bagged|watered|wrapped|covered|misted|heeled)$/.test(saying.items[0]?.text ?? '')) return;
  silence(saying);
}

/** "king sticks, 9, in the fridge since jan 20": where the cuttings are kept, and no figs. */
export function keptCuttings(saying: Saying, before: Saying): void {
  if (saying.mentions.length > 0 || saying.hits.length === 0) return;
  if (!before.hits.some((hit) => hit.kind === 'cuttings')) return;
  if (!saying.hits.every((hit) => hit.kind === 'picked')) return;
  const isKept = saying.items.some((item) => ['fridge', 'freezer', 'cellar', 'garage'].includes(item.text));
  if (!isKept || saying.items.some((item) => item.classes.has('FRUIT'))) return;
  silence(saying);
  before.date ??= saying.date;
}

/** "we have roots! 3 of the 8 ronde sticks": which cuttings the roots are on. */
export function rootsOf(saying: Saying, before: Saying): void {
  if (before.mentions.length > 0 || saying.hits.length !== 1 || saying.hits[0]?.kind !== 'cuttings') return;
  if (before.hits.length === 0 || !before.hits.every((hit) => hit.kind === 'rooted')) return;
  if (saying.items.some((item) => TAKING.has(item.text))) return;
  saying.hits = saying.hits.map((hit) => ({ ...hit, kind: 'rooted' as const }));
  silence(before);
}

const TAKEN_OFF: ReadonlySet<string> = new Set(['cuttings', 'tipped', 'pruned']);

/** "cuttings jan 3, 8 from the alma and 4 from the king": the heading says what was taken. */
export function takenFrom(saying: Saying, before: Saying): void {
  const [hit] = saying.hits;
  const told = before.hits.find((each) => TAKEN_OFF.has(each.kind));
  if (!told || hit?.kind !== 'picked' || saying.hits.length !== 1 || saying.mentions.length === 0) return;
  const heading = before.mentions.length === 0;
  if (!heading && !before.items.some((item) => item.text === 'from' || item.text === 'off')) return;
  const bare = saying.items.every(
    (item) => item.type !== 'word' || ['off', 'from', 'more'].includes(item.text) || item.classes.has('DET'),
  );
  if (!bare) return;
  saying.hits = [{ ...hit, kind: told.kind }];
  saying.date ??= before.date;
  if (!heading) return;
  silence(before);
}

/** "cuttings struck! all five": how many there were. */
export function allOfThem(saying: Saying, before: Saying): void {
  const counted = before.hits.some((hit) => ['rooted', 'cuttings', 'tipped'].includes(hit.kind));
  const number = saying.items.find((item) => item.quantity)?.quantity;
  if (!counted || !number || number.unit || before.count || before.items.some((item) => item.quantity))
    return;
  if (!saying.items.every((item) => item.quantity || ['all', 'of', 'them', 'the'].includes(item.text)))
    return;
  before.count = number;
  silence(saying);
}
