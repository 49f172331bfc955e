import type { Item } from './items.ts';
import { wordSet } from './lexicon/word-set.ts';
import { isFact } from './mood.ts';
import type { Saying } from './sayings.ts';

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
    if (!next || next.clause.sentence !== saying.clause.sentence) return;
    if (next.mentions.length === 0) {
      if (next.hits.length > 0) return;
      continue;
    }
    if (!isFact(next.mood) || !suffered(next.items)) return;
    if (!next.hits.every((hit) => ['trouble', 'dormant', 'care'].includes(hit.kind))) return;
    saying.mentions = next.mentions;
    next.hits = [];
    next.dropped = true;
    return;
  }
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
  saying.hits = [];
  saying.dropped = true;
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
export function isCovered(saying: Saying): boolean {
  return (
    saying.hits.length === 1 &&
    saying.hits[0]?.kind === 'fruitlets' &&
    saying.items.some((item) => item.text === 'covered') &&
    !saying.items.some((item) => item.classes.has('FRUIT'))
  );
}
