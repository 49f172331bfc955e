import { COUNTED } from './counts.ts';
import { type Hit, hitBehind, hitOn } from './hits.ts';
import { isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import { type Saying, silence } from './sayings.ts';
import type { Subject } from './subjects.ts';

/** Small words beside a number of things told before. */
const PLAIN_BESIDE_COUNT = wordSet(`
  call say make it pieces units shots at last count counted counting nodes of them total more so far another today all told altogether in to be exact precise about maybe or counted seen there visible i think guess reckon suppose believe would say roughly ish one eh innit mind like lol haha yay woo
`);
/** Small words beside a total. */
const PLAIN_BESIDE_TOTAL = wordSet(`
  lot that all total in them it which worth weighed of about came to roughly whole i make altogether
  told
`);

/** The clause just before, or an earlier one if only a tree or small talk lies between. */
export function lastCounted(sayings: readonly Saying[], s: number): Saying | null {
  for (let k = s - 1; k >= Math.max(0, s - 3); k--) {
    const before = sayings[k];
    const saying = sayings[s];
    if (!before || !saying) return null;
    if (before.clause.sentence !== saying.clause.sentence && !isPlainTotal(saying)) return null;
    if (before.hits.length > 0)
      return before.hits.some(
        (hit) => COUNTED.has(hit.kind) || (saying.date !== null && hit.kind === 'no-fruitlets'),
      )
        ? before
        : null;
    if (before.dropped) continue;
    if (before.items.some((item) => item.quantity) || (isPlainTotal(saying) && !before.bare && k < s - 1))
      return null;
  }
  return null;
}

/** "colour on the adriatic!! two of em": by itself in its sentence it can only count what went before. */
function isPlainTotal(saying: Saying): boolean {
  return saying.items.every((item) => item.type !== 'word' || OF_ALL.has(item.text));
}

const AT_PRESENT = new Set(['now', 'currently', 'presently']);
/** "now has 4", "down to 4 now" */
const BESIDE_PRESENT = wordSet('by at down up to it its is are there got left only just');
const ONCE = wordSet('had was were then before earlier');
const SEEN: ReadonlySet<string> = new Set(['fruitlets', 'no-fruitlets', 'ripening']);

/** "had 2 figs when i repotted it on the 14th, 10 now": the saying that tells of the figs counted again, or −1. */
export function seenBefore(sayings: readonly Saying[], s: number): number {
  const saying = sayings[s];
  const number = saying?.items.find((item) => item.quantity)?.quantity;
  if (
    !saying ||
    !number ||
    saying.mentions.length > 0 ||
    !(saying.date || saying.items.some((item) => AT_PRESENT.has(item.text)))
  )
    return -1;
  if (saying.hits.some((hit) => hit.kind !== 'fruitlets')) return -1;
  if (
    !saying.items.every(
      (item) =>
        item.quantity ||
        item.type === 'date' ||
        AT_PRESENT.has(item.text) ||
        BESIDE_PRESENT.has(item.text) ||
        isAnyOf(item, ['FRUIT', 'DET', 'ADV', 'HAVE']),
    )
  )
    return -1;
  for (let k = s - 1; k >= 0 && sayings[k]?.clause.sentence === saying.clause.sentence; k--) {
    const hit = sayings[k]?.hits.find((each) => SEEN.has(each.kind));
    if (!hit) continue;
    // "no figs on the alma last week" denies what it speaks of.
    const none = hit.kind === 'no-fruitlets' || sayings[k]?.mood.denials.length !== 0;
    // "no figs on the 10th, 5 by the 20th"; of figs there the day is a second count.
    if (!none && saying.date) return -1;
    const dated = sayings.slice(k, s).some((each) => each.date !== null);
    // "had 8 figs, now 5": only what is there now counts.
    const earlier = sayings[k];
    if (!dated && earlier && k === s - 1 && earlier.items.some((item) => ONCE.has(item.text))) {
      silence(earlier);
      saying.hits = [hitBehind(none ? 'fruitlets' : hit.kind, saying.items)];
      saying.count = number;
      return k;
    }
    if (!dated) return -1;
    saying.hits = [hitBehind(none ? 'fruitlets' : hit.kind, saying.items)];
    saying.count = number;
    return k;
  }
  return -1;
}

const CAME_OF_IT = new Set(['branches', 'laterals', 'sideshoots', 'forks', 'offshoots']);
const OF_ALL = wordSet('of them all total altogether so far shoots shots tips leaders cuttings sticks');

/** "(11)" gives the number of what was just told; "7 more yesterday" tells it again. */
export function continueCount(saying: Saying, before: Saying, out: Subject[], s: number, told: number): void {
  const hit = before.hits.find((each) => COUNTED.has(each.kind));
  const number =
    saying.items.find((item) => item.quantity)?.quantity ??
    (hit && hit.kind !== 'dropped' && isJustOne(saying) ? ONE : null);
  if (!number || !hit) return;
  const words = saying.items.filter((item) => item.type === 'word');
  // "topped it on the 12th, 5 branches": what came of it.
  if (hit.kind === 'tipped' && words.some((item) => CAME_OF_IT.has(item.text))) {
    saying.hits = [hitBehind('branched', saying.items)];
    out[s] = { ...(out[told] ?? { mentions: [], others: false, wide: false }), direct: true };
    return;
  }
  const plain = words.every(
    (item) =>
      isAnyOf(item, ['DET', 'PREP', 'FRUIT', 'SHOOT', 'CUTTING', 'CONTAINER', 'ADV', 'SIZE']) ||
      PLAIN_BESIDE_COUNT.has(item.text) ||
      // "both got stopped, took 2 shoots on each"
      (hit.kind === 'tipped' && ['took', 'did', 'each', 'both'].includes(item.text)),
  );
  if (!plain) return;
  // "raided the alma, two bowls"
  if (words.some((item) => item.classes.has('CONTAINER'))) {
    saying.dropped = true;
    return;
  }
  const again =
    words.some((item) => item.text === 'more' || item.text === 'another') ||
    (saying.date !== null && before.date !== null && before.items.includes(before.date)) ||
    (saying.date !== null && before.count !== null);
  if (again && saying.date !== null) {
    saying.hits = [hitBehind(hit.kind, saying.items)];
    saying.count = number;
    out[s] = { ...(out[told] ?? { mentions: [], others: false, wide: false }), direct: true };
    return;
  }
  if (!again && !before.items.some((item) => item.quantity)) {
    before.count = number;
    saying.dropped = true;
  }
}

const ONE = { value: 1, unit: null, ofMore: false } as const;

/** "…, just the one" */
function isJustOne({ items }: Saying): boolean {
  return (
    items.some((item) => item.text === 'one') &&
    items.some((item) => ['just', 'only', 'single', 'lone', 'solitary'].includes(item.text)) &&
    items.every((item) =>
      ['just', 'only', 'the', 'a', 'one', 'single', 'lone', 'solitary', 'lonely', 'but'].includes(item.text),
    )
  );
}

/** "…, the unknown isn't": the news before, denied of another tree. */
export function denyAlso(saying: Saying, before: Saying): Hit[] | null {
  const hit = before.hits[0];
  if (!hit || saying.hits.length > 0 || saying.mentions.length === 0) return null;
  const last = saying.items.at(-1);
  const room = ['one', 'any', 'a'].includes(saying.items[1]?.text ?? '') ? 7 : 5;
  const opens =
    ['not', 'nor', 'neither'].includes(saying.items[0]?.text ?? '') && saying.items.length <= room;
  if (
    !last ||
    !(
      last.text === 'not' ||
      last.classes.has('NONE') ||
      opens ||
      (last.text === 'any' && saying.mood.denials.length > 0)
    )
  )
    return null;
  const kind = hit.kind === 'fruitlets' || hit.kind === 'no-fruitlets' ? ('no-fruitlets' as const) : null;
  return kind === null ? null : [hitOn(kind, saying.items.length - 1)];
}

/** It gives a number of figs or a weight and tells nothing else: "3 lbs the lot", "thats 11 figs". */
export function isNumberOnly(saying: Saying, hit: Hit): boolean {
  const number = saying.items.find((item) => item.quantity);
  if (!number || saying.date !== null) return false;
  if (hit.kind !== 'fruitlets' && hit.kind !== 'picked') return false;
  return saying.items.every(
    (item) =>
      item.type !== 'word' ||
      isAnyOf(item, ['DET', 'FRUIT', 'ADV', 'BE', 'SIZE']) ||
      PLAIN_BESIDE_TOTAL.has(item.text),
  );
}
