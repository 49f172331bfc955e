import { hitOn } from './hits.ts';
import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';

const SUFFERED = wordSet(`
  copped caught hit got cooked suffered singed burnt burned browned blackened zapped fried worst brunt
  hammered nipped toasted scorched damage damaged took killed black brown mush mushy limp crispy
  wilted lost it too badly hard nipped pinched clipped wiped knocked singed ruined wrecked destroyed scorched trashed
`);

export function isFrost(saying: Saying): boolean {
  return saying.hits.length > 0 && saying.hits.every((hit) => hit.kind === 'frost');
}

function suffered(items: readonly Item[]): boolean {
  return items.some((item) => SUFFERED.has(item.text));
}

/** "a late frost, and the alma copped it": the trees of a clause soon after are those that were hit. */
export function hitByFrost(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  if (!saying || !isFrost(saying) || saying.mentions.length > 0 || saying.pronoun) return;
  for (let k = s + 1; k <= s + 2; k++) {
    const next = sayings[k];
    if (!next || next.clause.sentence > saying.clause.sentence + 1) return;
    const passive = isNipped(next);
    if (next.clause.sentence !== saying.clause.sentence && !passive) return;
    if (next.mentions.length === 0) {
      if (next.hits.length > 0) return;
      continue;
    }
    if (!isFact(next.mood) || !suffered(next.items)) return;
    // "cold snap apr 22, frost nipped the ronde": told again with its tree.
    if (next.hits.length > 0 && isFrost(next)) {
      next.date ??= saying.date;
      silence(saying);
      return;
    }
    if (!passive && !next.hits.every((hit) => ['trouble', 'dormant', 'care'].includes(hit.kind))) return;
    saying.mentions = next.mentions;
    silence(next);
    return;
  }
}

/** "the ronde got nipped", "king was tipped back": what was done to it. */
function isNipped({ items, hits }: Saying): boolean {
  return items.some(
    (item, i) =>
      item.classes.has('TIPPED') &&
      ['got', 'was', 'were', 'been', 'gets', 'badly'].includes(items[i - 1]?.text ?? '') &&
      hits.every((hit) => hit.kind === 'tipped'),
  );
}

/** "frost in the garden, leaves are black": harm of the frost that was told of. */
export function leavesBlack(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  if (!saying || saying.mentions.length > 0 || saying.hits.length === 0) return;
  if (!saying.hits.every((hit) => ['trouble', 'tipped', 'dormant'].includes(hit.kind))) return;
  // "hard frost nov 12, everything went to sleep": rest, no harm
  if (saying.items.some((item) => ['sleep', 'dormant', 'asleep', 'bed'].includes(item.text))) return;
  const before = sayings[s - 1];
  const after = sayings[s + 1];
  const sentence = saying.clause.sentence;
  const told = before !== undefined && before.clause.sentence === sentence && isFrost(before);
  const ahead = after !== undefined && after.clause.sentence === sentence && isFrost(after);
  if (
    !(told && suffered(saying.items)) &&
    !((told || ahead) && sayings.every((each) => each.mentions.length === 0))
  )
    return;
  silence(saying);
}

/** "another frost and the king's had it": what would be. */
export function isDoom(frost: Saying, then: Saying): boolean {
  const opening = frost.items[0]?.text;
  return (
    isFrost(frost) &&
    (opening === 'another' || (opening === 'one' && frost.items[1]?.text === 'more')) &&
    then.items.some((item) =>
      ['had', 'done', 'finished', 'toast', 'goner', 'dead', 'gone'].includes(item.text),
    )
  );
}

/** "frost, but the king was covered": with fleece, not with figs. */
function isCovered(saying: Saying): boolean {
  return (
    saying.hits.length === 1 &&
    saying.hits[0]?.kind === 'fruitlets' &&
    saying.items.some((item) => item.text === 'covered') &&
    !saying.items.some((item) => item.classes.has('FRUIT'))
  );
}

const COVERS = wordSet(`
  net nets netting mesh fleece cloth organza shadecloth cover covers tarp tarpaulin blanket blankets sheet
  sheets burlap hessian cage cages cloche cloches tent bag bags sock socks sail curtain
`);

/** "nipped out for netting, ronde is now covered": with what was named for it, not with figs; so after a frost. */
export function coveredUp(sayings: readonly Saying[], s: number): void {
  const saying = sayings[s];
  if (!saying || !isCovered(saying)) return;
  const before = sayings[s - 1];
  if (before && before.clause.sentence === saying.clause.sentence && isFrost(before)) saying.hits = [];
  else if (sayings.some(({ items }) => items.some((item) => COVERS.has(item.text))))
    saying.hits = [
      hitOn(
        'care',
        saying.items.findIndex((item) => item.text === 'covered'),
      ),
    ];
}
