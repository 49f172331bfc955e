import { continueCount, denyAlso, isNumberOnly, lastCounted, seenBefore } from './continue-count.ts';
import type { Setting } from './contract.ts';
import { isMeant, isPair, isPlural, ofGroup } from './groups.ts';
import { hitBehind } from './hits.ts';
import {
  followingHit,
  forwardObject,
  goingOn,
  hasOwnWords,
  isObjectTail,
  isVerbOnly,
  opensObject,
  saysTheSame,
  takesSubjects,
} from './list-objects.ts';
import { isFact } from './mood.ts';
import { type Saying, silence } from './sayings.ts';
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

/** Hands every clause its trees: its own, those of the list it belongs to, or the last ones named. */
export function spreadSubjects(sayings: readonly Saying[], setting: Setting): Subject[] {
  const out: Subject[] = sayings.map(() => ({ mentions: [], others: false, wide: false }));
  let carry: readonly Mention[] = [];
  let recent: readonly Mention[] = [];
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
    // "(4)" after a tree is no clause of its own.
    let b = s - 1;
    while (b > 0 && sayings[b]?.dropped && sayings[b]?.mentions.length === 0) b--;
    const before = sayings[b];
    const sameSentence = before !== undefined && before.clause.sentence === clause.sentence;
    // "hers has 30, mine has none": of the same name as hers.
    const mine =
      saying.mentions.length === 0 &&
      saying.items.slice(0, 2).some((item) => item.text === 'mine' || item.text === 'ours');
    if (mine) others = false;
    else if (mood.others && !['my', 'our'].includes(saying.items[saying.mentionAt - 1]?.text ?? ''))
      others = true;
    else if (saying.mentions.length > 0 || clause.join === 'stop') {
      if (saying.mentions.length > 0) others = false;
    }
    if (saying.mentions.length > 0) {
      if (clause.sentence !== groupSentence) {
        group = [];
        groupSentence = clause.sentence;
      }
      group = [...group, ...saying.mentions];
      recent = [...recent, ...saying.mentions].slice(-2);
    }
    if (
      saying.mentions.length === 0 &&
      before &&
      sameSentence &&
      saying.hits.length > 0 &&
      // "2 brebas dropped, main crop 6" are others.
      !saying.main &&
      saying.hits.every((hit) => isNumberOnly(saying, hit)) &&
      // "dropped everything in may, 12 new figs now": others.
      !saying.items.some((item) => item.text === 'new' || item.text === 'now')
    ) {
      const told = [before, sayings[s - 2]].find((each) =>
        each?.hits.some((hit) => hit.kind === 'picked' || hit.kind === 'dropped'),
      );
      const number = saying.items.find((item) => item.quantity)?.quantity;
      if (told && number) {
        // A number of figs says more than a weight.
        const had = told.count ?? told.items.find((item) => item.quantity)?.quantity;
        if (!had || (had.unit !== null && number.unit === null)) told.count = number;
        silence(saying);
        continue;
      }
    }
    const seen = seenBefore(sayings, s);
    if (seen >= 0) {
      out[s] = { ...(out[seen] ?? { mentions: [], others: false, wide: false }), direct: true };
      continue;
    }
    if (saying.hits.length === 0 && saying.mentions.length === 0) {
      const counted = before ? lastCounted(sayings, s) : null;
      if (counted) continueCount(saying, counted, out, s, sayings.indexOf(counted));
      if (saying.hits.length === 0) {
        // A denial or a wish without a tree is about the last one.
        const pointless = isFact(saying.mood);
        if (!pointless && carry.length > 0 && !others)
          out[s] = { mentions: carry, others: false, wide: false, fresh: true };
        continue;
      }
      continue;
    }
    const isnt = before !== undefined && sameSentence ? denyAlso(saying, before) : null;
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
      if (saying.bare && hasOwnWords(sayings, s)) {
        out[s] = { mentions: saying.mentions, others: false, wide: false, direct: true, fresh: true };
        continue;
      }
      const next = followingHit(sayings, s);
      // "the alma, which i tipped …, has none": told of in what follows.
      const told = sayings[s + 1];
      if (
        saying.bare &&
        told?.clause.sentence === clause.sentence &&
        ['which', 'that'].includes(told.clause.sub ?? '') &&
        told.mentions.length === 0 &&
        told.hits.length > 0
      ) {
        saying.dropped = true;
        continue;
      }
      const listBack =
        (saying.bare || isObjectTail(saying) || saysTheSame(saying)) &&
        before !== undefined &&
        sameSentence &&
        // "alma (tips out), king (left alone)": what is said of the king follows it.
        !(before.clause.aside && sayings[s + 1]?.clause.aside && !clause.aside) &&
        (out[b]?.mentions.length ?? 0) > 0 &&
        ['and', 'comma', 'or'].includes(clause.join) &&
        before.hits.length > 0 &&
        (opensObject(before) ||
          saysTheSame(saying) ||
          (saying.date !== null && before.date !== null) ||
          saying.items.some((item) =>
            ['too', 'also', 'same', 'likewise', 'ditto', 'well', 'aswell', 'neither', 'either'].includes(
              item.text,
            ),
          ));
      if (listBack && before) {
        // "tipped the alma, ronde and king"
        const counted = saying.items.some((item) => item.quantity);
        saying.hits = before.hits.map(({ kind }) =>
          // "none for the mission, 5 for the celeste"
          hitBehind(kind === 'no-fruitlets' && counted ? 'fruitlets' : kind, saying.items),
        );
        // "branched instead of fruiting, king same story": what denied that denies this, no more.
        const denials = before.mood.denials.filter((i) => before.hits.some((hit) => i <= hit.last));
        saying.mood = { ...before.mood, denials: counted ? [] : denials };
        saying.date ??= before.date;
        // "3 figs each on the alma and the king"
        if (before.items.some((item) => item.text === 'each' || item.text === 'apiece'))
          saying.count = before.count ?? before.items.find((item) => item.quantity)?.quantity ?? null;
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
      if (mentions.length === 0 || (takesSubjects(saying) && clause.join !== 'stop')) {
        mentions =
          mentions.length === 0 && group.length > 1
            ? ofGroup(saying, group, waiting)
            : [...waiting, ...mentions];
        direct = true;
      }
      waiting = [];
    }
    if (mentions.length === 0) {
      const forward = mood.wide ? null : forwardObject(sayings, s);
      const carried = carry.length > 0 && (sameSentence || saying.pronoun || forward === null);
      if (
        forward !== null &&
        !saying.pronoun &&
        (carry.length === 0 || !sameSentence || isVerbOnly(saying))
      ) {
        mentions = forward;
        const owner = sayings.find((each) => each.mentions === forward);
        if (owner && owner.hits.length === 0) {
          owner.dropped = true;
          mentions = [...forward, ...goingOn(sayings, sayings.indexOf(owner))];
        }
      } else if (carried)
        mentions =
          group.length > 1
            ? ofGroup(saying, group, carry)
            : isPair(saying) && recent.length > 1
              ? recent
              : carry;
      else if (about.length > 0) mentions = about;
      else {
        const later = sayings
          .slice(s + 1)
          .filter(
            (each) =>
              each.mentions.length > 0 &&
              each.hits.length === 0 &&
              (each.bare || (isMeant(each) && each.clause.sentence === clause.sentence)) &&
              isFact(each.mood),
          );
        // "they both have figs, the alma and the king"
        const named = isPlural(saying)
          ? later.filter((each) => each.clause.sentence === clause.sentence)
          : later.slice(0, 1);
        if (named.length > 0 && !mood.wide) {
          mentions = named.flatMap((each) => each.mentions);
          for (const each of named) each.dropped = true;
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
    // "shed celeste: squirrels had the lot" is all of that tree.
    const ofTree =
      sameSentence &&
      carry.length > 0 &&
      saying.items.some((item, i) => item.text === 'lot' && saying.items[i - 1]?.text === 'the');
    // "wasps in the split ones. bagged the rest": the rest of its figs.
    const ofFigs =
      carry.length > 0 &&
      saying.items.some((item) => item.text === 'rest') &&
      before?.items.some((item) => item.text === 'ones' || item.classes.has('FRUIT')) === true;
    if (
      saying.mentions.length === 0 &&
      ((mood.wide && !ofTree && !ofFigs) || wideNearby || weather) &&
      !saying.pronoun
    ) {
      out[s] = { mentions: [], others, wide: true };
      continue;
    }
    out[s] = { mentions, others, wide: mood.wide, direct };
  }
  return out;
}
