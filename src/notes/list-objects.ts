import { isAnyOf } from './item.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';
import type { Mention } from './trees/mentions.ts';

/** The verb comes before the trees, so that a list of trees may go on after it. */
export function opensObject(saying: Saying): boolean {
  const first = saying.hits[0]?.first ?? 0;
  return saying.mentionAt < 0 || first < saying.mentionAt || first >= saying.items.length;
}

/** "…, pot 3 and the alma with sulphur": the last of the trees, and with what. */
export function isObjectTail({ items, mentionAt, hits }: Saying): boolean {
  return (
    hits.length === 0 &&
    mentionAt >= 0 &&
    items
      .slice(0, mentionAt)
      .every((item) => item.classes.has('DET') || ['both', 'all'].includes(item.text)) &&
    ['with', 'for', 'using', 'in', 'at', 'before', 'all'].includes(items[mentionAt + 1]?.text ?? '')
  );
}

const SAME = new Set(['same', 'so', 'ditto', 'likewise', 'too', 'neither', 'nor', 'also']);
const BESIDE_SAME = wordSet(`
  same so ditto likewise too neither nor also does did do has have is are was were the to with for of as well it i we
  goes went gone thing story on can be said and my just then also
`);

/** "and so does the king", "did the same to the king", "ditto the ronde". */
export function saysTheSame({ items, hits, mentions }: Saying): boolean {
  return (
    hits.length === 0 &&
    mentions.length > 0 &&
    items.some((item) => SAME.has(item.text)) &&
    items.every((item) => item.type !== 'word' || BESIDE_SAME.has(item.text))
  );
}

/** "ronde (not ready)", "king (left alone)": words of its own in brackets, more than a number or a day. */
export function hasOwnWords(sayings: readonly Saying[], s: number): boolean {
  const beside = sayings[s + 1];
  if (!beside?.clause.aside || sayings[s]?.clause.aside || beside.mentions.length > 0) return false;
  if (beside.mood.denials.length > 0) return true;
  return (
    beside.hits.length === 0 && beside.items.some((item) => item.type === 'word' && !isAnyOf(item, COUNTED))
  );
}

const COUNTED = ['FRUIT', 'SHOOT', 'CUTTING', 'DET', 'PREP', 'SIZE', 'ADV', 'TREEWORD', 'NEG'];

/** A verb and little else. */
export function isVerbOnly(saying: Saying): boolean {
  return saying.items.length <= 2;
}

/** "alma and ronde have 4 figs": the trees before share what is said of the last, which stands before its verb. */
export function takesSubjects(saying: Saying): boolean {
  const first = saying.hits[0]?.first ?? 0;
  return (
    saying.mentionAt < first ||
    (saying.mentionAt === first &&
      (saying.clause.join === 'and' ||
        saying.items.some((item) => item.text === 'each' || item.text === 'both')))
  );
}

/** The next clause with a hit, if only bare clauses of the same sentence lie between. */
export function followingHit(sayings: readonly Saying[], s: number): Saying | null {
  const here = sayings[s];
  for (let k = s + 1; k < sayings.length; k++) {
    const next = sayings[k];
    if (!next || !here) return null;
    const near = next.clause.sentence === here.clause.sentence;
    if (!near) return null;
    if (next.clause.join === 'but' || next.clause.join === 'sub') return null;
    if (next.hits.length > 0) return takesSubjects(next) ? next : null;
    if (!next.bare) return null;
  }
  return null;
}

/** "watered, fed and mulched the alma": the object stands with the last verb. */
export function forwardObject(sayings: readonly Saying[], s: number): readonly Mention[] | null {
  const here = sayings[s];
  for (let k = s + 1; k < sayings.length; k++) {
    const next = sayings[k];
    if (!next || !here || next.clause.sentence !== here.clause.sentence) return null;
    if (!['and', 'comma', 'or', 'colon'].includes(next.clause.join)) return null;
    if (next.mentions.length > 0) {
      if (next.clause.join === 'comma' && next.hits.length > 0 && k === s + 1) return null;
      const first = next.hits[0]?.first ?? -1;
      return first < next.mentionAt ? next.mentions : null;
    }
    if (!isVerbOnly(next) && next.hits.length > 0) return null;
  }
  return null;
}

/** "watered at 6, alma and king": the trees of a list behind the verb's first one. */
export function goingOn(sayings: readonly Saying[], s: number): readonly Mention[] {
  const more: Mention[] = [];
  for (const each of sayings.slice(s + 1)) {
    const near = each.clause.sentence === sayings[s]?.clause.sentence;
    if (!near || !['and', 'comma'].includes(each.clause.join)) break;
    if (
      !each.bare ||
      each.hits.length > 0 ||
      each.mentions.length === 0 ||
      each.items.some((item) => item.quantity)
    )
      break;
    each.dropped = true;
    more.push(...each.mentions);
  }
  return more;
}
