import type { Setting } from './contract.ts';
import type { Hit } from './hits.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';
import type { Mention } from './trees/mentions.ts';

/** Small words beside a number of things told before. */
const PLAIN_BESIDE_COUNT = wordSet(`
  of them total more so far another today all told altogether in to be exact precise about maybe or
`);
/** Small words beside a total. */
const PLAIN_BESIDE_TOTAL = wordSet(`
  lot that all total in them it which worth weighed of about came to roughly whole i make altogether
  told
`);

/** Which trees a clause is about. */
export interface Subject {
  readonly mentions: readonly Mention[];
  /** Somebody else's. */
  readonly others: boolean;
  /** The garden as a whole. */
  readonly wide: boolean;
  /** Named in the clause or brought to it by a list; not only carried on from before. */
  readonly direct?: boolean;
  /** A tree was meant and none is known. */
  readonly unknown?: boolean;
  /** Trees that no other clause speaks for. */
  readonly fresh?: boolean;
}

const PLURAL = new Set(['both', 'they', 'them', 'their', 'themselves', 'these', 'all', 'each']);

/** Hands every clause its trees: its own, those of the list it belongs to, or the last ones named. */
export function spreadSubjects(sayings: readonly Saying[], setting: Setting): Subject[] {
  const out: Subject[] = sayings.map(() => ({ mentions: [], others: false, wide: false }));
  let carry: readonly Mention[] = [];
  let group: readonly Mention[] = [];
  let groupSentence = -1;
  let others = false;
  let waiting: Mention[] = [];
  const about: readonly Mention[] =
    setting.about && setting.about.length > 0 ? [{ ids: setting.about, all: true }] : [];
  for (let s = 0; s < sayings.length; s++) {
    const saying = sayings[s];
    if (!saying) continue;
    const { clause, mood } = saying;
    const before = sayings[s - 1];
    const sameSentence = before !== undefined && before.clause.sentence === clause.sentence;
    if (mood.others) others = true;
    else if (saying.mentions.length > 0 || clause.join === 'stop') {
      if (saying.mentions.length > 0) others = false;
    }
    if (saying.mentions.length > 0) {
      if (clause.sentence !== groupSentence) {
        group = [];
        groupSentence = clause.sentence;
      }
      group = [...group, ...saying.mentions];
    }
    if (
      saying.mentions.length === 0 &&
      before &&
      sameSentence &&
      saying.hits.length > 0 &&
      saying.hits.every((hit) => isNumberOnly(saying, hit))
    ) {
      const told = [before, sayings[s - 2]].find((each) =>
        each?.hits.some((hit) => hit.kind === 'picked' || hit.kind === 'dropped'),
      );
      const number = saying.items.find((item) => item.quantity)?.quantity;
      if (told && number) {
        // A number of figs says more than a weight.
        const had = told.count ?? told.items.find((item) => item.quantity)?.quantity;
        if (!had || (had.unit !== null && number.unit === null)) told.count = number;
        saying.hits = [];
        saying.dropped = true;
        continue;
      }
    }
    if (saying.hits.length === 0 && saying.mentions.length === 0) {
      if (before && sameSentence) continueCount(saying, before, out, s);
      if (saying.hits.length === 0) {
        // A denial or a wish without a tree is about the last one.
        const pointless = saying.mood.denials.length === 0 && saying.mood.unrealFrom === null;
        if (!pointless && carry.length > 0 && !others)
          out[s] = { mentions: carry, others: false, wide: false, fresh: true };
        continue;
      }
      continue;
    }
    const isnt = before !== undefined && sameSentence ? ellipsis(saying, before) : null;
    if (isnt) {
      saying.hits = isnt;
      out[s] = { mentions: saying.mentions, others, wide: false, direct: true };
      carry = saying.mentions.slice(-1);
      continue;
    }
    if (saying.hits.length === 0 && saying.dropped) {
      carry = saying.mentions.slice(-1);
      continue;
    }
    if (saying.hits.length === 0) {
      carry = saying.mentions.slice(-1);
      if (others) {
        out[s] = { mentions: saying.mentions, others: true, wide: false };
        continue;
      }
      const next = followingHit(sayings, s);
      const listBack =
        saying.bare &&
        before !== undefined &&
        sameSentence &&
        (out[s - 1]?.mentions.length ?? 0) > 0 &&
        ['and', 'comma', 'or'].includes(clause.join) &&
        before.hits.length > 0 &&
        (opensObject(before) ||
          saying.items.some((item) =>
            ['too', 'also', 'same', 'likewise', 'ditto', 'well', 'aswell', 'neither', 'either'].includes(
              item.text,
            ),
          ));
      if (listBack && before) {
        // "tipped the alma, ronde and king"
        saying.hits = before.hits.map((hit) => ({
          ...hit,
          at: [],
          first: saying.items.length,
          last: saying.items.length,
          core: saying.items.length,
        }));
        saying.mood = { ...before.mood, denials: before.mood.denials };
        saying.date ??= before.date;
        out[s] = { mentions: saying.mentions, others: false, wide: false, direct: true };
        continue;
      }
      if (saying.bare && next !== null) {
        waiting.push(...saying.mentions);
        saying.dropped = true;
        continue;
      }
      if (saying.bare && before && before.hits.length > 0 && out[s - 1]?.mentions.length === 0) {
        // "1.5 kilos picked, adriatic"
        out[s - 1] = { mentions: saying.mentions, others: false, wide: false, direct: true };
        saying.dropped = true;
        continue;
      }
      out[s] = { mentions: saying.mentions, others: false, wide: false, direct: true, fresh: true };
      continue;
    }
    let mentions: readonly Mention[] = saying.mentions;
    let direct = mentions.length > 0;
    if (waiting.length > 0) {
      if (
        mentions.length === 0 ||
        (saying.mentionAt < (saying.hits[0]?.first ?? 0) && clause.join !== 'stop')
      ) {
        mentions = [...waiting, ...mentions];
        direct = true;
      }
      waiting = [];
    }
    if (mentions.length === 0) {
      const forward = forwardObject(sayings, s);
      const carried = carry.length > 0 && (sameSentence || saying.pronoun || forward === null);
      if (
        forward !== null &&
        !saying.pronoun &&
        (carry.length === 0 || !sameSentence || isVerbOnly(saying))
      ) {
        mentions = forward;
        const owner = sayings.find((each) => each.mentions === forward);
        if (owner && owner.hits.length === 0) owner.dropped = true;
      } else if (carried) mentions = PLURALS(saying) && group.length > 1 ? group : carry;
      else if (about.length > 0) mentions = about;
      else {
        const later = sayings
          .slice(s + 1)
          .find((each) => each.mentions.length > 0 && each.hits.length === 0 && each.bare);
        if (later && !mood.wide) {
          mentions = later.mentions;
          later.dropped = true;
        }
      }
      if (mentions === about) direct = true;
    }
    if (direct || mentions.length > 0)
      carry =
        mentions.length > 1 && saying.mentions.length === mentions.length ? mentions.slice(-1) : mentions;
    const wideNearby =
      carry.length === 0 &&
      sayings.some((each) => each.mood.wide && each.clause.sentence === clause.sentence);
    const weather =
      carry.length === 0 &&
      mentions.length === 0 &&
      saying.items.some((item) =>
        ['hail', 'hailed', 'storm', 'hailstorm', 'gale', 'hurricane', 'heatwave'].includes(item.text),
      );
    if (saying.mentions.length === 0 && (mood.wide || wideNearby || weather) && !saying.pronoun) {
      out[s] = { mentions: [], others, wide: true };
      continue;
    }
    out[s] = { mentions, others, wide: mood.wide, direct };
  }
  return out;
}

function PLURALS(saying: Saying): boolean {
  return saying.items.some((item) => PLURAL.has(item.text));
}

/** The verb comes before the trees, so that a list of trees may go on after it. */
function opensObject(saying: Saying): boolean {
  const first = saying.hits[0]?.first ?? 0;
  return saying.mentionAt < 0 || first < saying.mentionAt || first >= saying.items.length;
}

function isVerbOnly(saying: Saying): boolean {
  return saying.items.length <= 2;
}

/** The next clause with a hit, if only bare clauses of the same sentence lie between. */
function followingHit(sayings: readonly Saying[], s: number): Saying | null {
  const here = sayings[s];
  for (let k = s + 1; k < sayings.length; k++) {
    const next = sayings[k];
    if (!next || !here) return null;
    const near = next.clause.sentence === here.clause.sentence;
    if (!near) return null;
    if (next.clause.join === 'but' || next.clause.join === 'sub') return null;
    if (next.hits.length > 0)
      return next.mentionAt < 0 || next.mentionAt < (next.hits[0]?.first ?? 0) ? next : null;
    if (!next.bare) return null;
  }
  return null;
}

/** "watered, fed and mulched the alma": the object stands with the last verb. */
function forwardObject(sayings: readonly Saying[], s: number): readonly Mention[] | null {
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

const COUNTED = new Set(['fruitlets', 'picked', 'ripening', 'tipped', 'dropped', 'cuttings', 'rooted']);

/** "(11)" gives the number of what was just told; "7 more yesterday" tells it again. */
function continueCount(saying: Saying, before: Saying, out: Subject[], s: number): void {
  const number = saying.items.find((item) => item.quantity)?.quantity;
  const hit = before.hits.find((each) => COUNTED.has(each.kind));
  if (!number || !hit) return;
  const words = saying.items.filter((item) => item.type === 'word');
  const plain = words.every(
    (item) =>
      item.classes.has('DET') ||
      item.classes.has('PREP') ||
      item.classes.has('FRUIT') ||
      item.classes.has('SHOOT') ||
      item.classes.has('CUTTING') ||
      item.classes.has('ADV') ||
      item.classes.has('SIZE') ||
      PLAIN_BESIDE_COUNT.has(item.text),
  );
  if (!plain) return;
  const again =
    words.some((item) => item.text === 'more' || item.text === 'another') ||
    (saying.date !== null && before.date !== null);
  if (again && saying.date !== null) {
    saying.hits = [
      { ...hit, at: [], first: saying.items.length, last: saying.items.length, core: saying.items.length },
    ];
    saying.count = number;
    out[s] = { ...(out[s - 1] ?? { mentions: [], others: false, wide: false }), direct: true };
    return;
  }
  if (!again && !before.items.some((item) => item.quantity)) {
    before.count = number;
    saying.dropped = true;
  }
}

/** "…, the unknown isn't": the news before, denied of another tree. */
function ellipsis(saying: Saying, before: Saying): Hit[] | null {
  const hit = before.hits[0];
  if (!hit || saying.hits.length > 0 || saying.mentions.length === 0) return null;
  const last = saying.items.at(-1);
  const opens = saying.items[0]?.text === 'not' && saying.items.length <= 5;
  if (!last || !(last.text === 'not' || last.classes.has('NONE') || opens)) return null;
  const kind = hit.kind === 'fruitlets' ? ('no-fruitlets' as const) : null;
  return kind === null
    ? null
    : [
        {
          kind,
          at: [saying.items.length - 1],
          first: saying.items.length - 1,
          last: saying.items.length - 1,
          core: saying.items.length - 1,
        },
      ];
}

/** It gives a number of figs or a weight and tells nothing else: "3 lbs the lot", "thats 11 figs". */
function isNumberOnly(saying: Saying, hit: Hit): boolean {
  const number = saying.items.find((item) => item.quantity);
  if (!number || saying.date !== null) return false;
  if (hit.kind !== 'fruitlets' && hit.kind !== 'picked') return false;
  return saying.items.every(
    (item) =>
      item.type !== 'word' ||
      item.classes.has('DET') ||
      item.classes.has('FRUIT') ||
      item.classes.has('ADV') ||
      item.classes.has('BE') ||
      item.classes.has('SIZE') ||
      PLAIN_BESIDE_TOTAL.has(item.text),
  );
}
