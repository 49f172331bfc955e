import type { Setting } from './contract.ts';
import type { Saying } from './sayings.ts';
import type { Mention } from './trees/mentions.ts';

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
    if (saying.hits.length === 0) {
      if (saying.mentions.length === 0) continue;
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
        ['and', 'comma', 'or'].includes(clause.join) &&
        before.hits.length > 0 &&
        opensObject(before);
      if (listBack && before) {
        // "tipped the alma, ronde and king"
        saying.hits = before.hits.map((hit) => ({
          ...hit,
          at: [],
          first: saying.items.length,
          last: saying.items.length,
        }));
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
      if (forward !== null && !saying.pronoun && (carry.length === 0 || !sameSentence || isVerbOnly(saying)))
        mentions = forward;
      else if (carried) mentions = PLURALS(saying) && group.length > 1 ? group : carry;
      else if (about.length > 0) mentions = about;
      else {
        const later = sayings
          .slice(s + 1)
          .find((each) => each.mentions.length > 0 && each.hits.length === 0 && each.bare);
        if (later && !mood.wide) mentions = later.mentions;
      }
      if (mentions === about) direct = true;
    }
    if (direct || mentions.length > 0)
      carry =
        mentions.length > 1 && saying.mentions.length === mentions.length ? mentions.slice(-1) : mentions;
    if (saying.mentions.length === 0 && mood.wide && !saying.pronoun) {
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
