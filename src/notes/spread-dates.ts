import type { Day } from '../engine/day.ts';
import type { Saying } from './sayings.ts';

/** Actions that go on in the same breath share their date; what is seen is seen today. */
export const ACTIONS: ReadonlySet<string> = new Set(['tipped', 'care', 'pruned', 'cuttings', 'picked']);

export const WERE = new Set(['had', 'was', 'were', 'already']);

const THIS_ONE = new Set(['year', 'season', 'summer', 'time', 'spring']);

/** How a tree stands in spring: told tree by tree under one day. */
const LISTED: ReadonlySet<string> = new Set(['leafed-out', 'dormant']);

const SAME_DAY = new Set(['day', 'night', 'morning', 'evening', 'afternoon']);

/** The day each clause without a date of its own takes over from its neighbours, or null. */
export function spreadDates(sayings: readonly Saying[], today: Day): (Day | null)[] {
  const out: (Day | null)[] = sayings.map(() => null);
  let leading: Day | null = null;
  let sentence = -1;
  let headed = false;
  let last: Day | null = null;
  sayings.forEach((saying, s) => {
    if (saying.clause.sentence !== sentence) {
      sentence = saying.clause.sentence;
      headed = false;
      leading = null;
      if (!saying.items.some((item) => WERE.has(item.text))) last = null;
    }
    // "a while back, i repotted the ronde"
    const later = sayings.slice(s + 1).find((each) => each.hits.length > 0);
    if (
      saying.vague !== null &&
      isOnlyATime(saying) &&
      !sayings.slice(0, s).some((each) => each.hits.length > 0) &&
      later?.clause.sentence === saying.clause.sentence &&
      !later.date
    )
      later.vague ??= saying.vague;
    const bare = saying.vague !== null && isOnlyATime(saying) && s > 0;
    const ahead = sayings[s - 1];
    if (bare && ahead && ahead.hits.length > 0 && !ahead.date) ahead.vague ??= saying.vague;
    const own = saying.date?.date;
    const first = saying.hits[0];
    if (own) {
      const on = own.problem || own.on > today ? null : own.on;
      last = on;
      const at = saying.items.indexOf(saying.date as never);
      if (!first) {
        if (isAside(saying, today) && (on === null || saying.mentions.length > 0 || !isGuessedDay(saying)))
          return;
        // "monday: …", "late may, …": for what follows; after an event without a date, for that one.
        const previous = sayings.slice(0, s).findLast(
          (each) =>
            !each.dropped &&
            // "in leaf, yes, since may 1"
            !(each.empty && each.mentions.length === 0 && each.hits.length === 0 && each.date === null) &&
            (saying.items.length > 1 || each.hits.length > 0),
        );
        // "thats when i tipped it. tuesday": a day by itself at the end.
        const alone = saying.items.length === 1 && sayings.slice(s + 1).every((each) => each.empty);
        if (
          previous &&
          (previous.clause.sentence === sentence || alone) &&
          previous.hits.length > 0 &&
          (saying.mood.unrealFrom === null || isGuessedDay(saying)) &&
          !saying.mood.past &&
          !previous.date &&
          saying.clause.join !== 'start'
        ) {
          previous.date = saying.date;
          backfill(sayings, sayings.indexOf(previous), out, on);
        } else {
          leading = on;
          headed = saying.items.length === 1;
          const next = sayings[s + 1];
          if (next && !next.date && next.clause.sentence === sentence && !isNow(next))
            next.date = saying.date;
        }
      } else if (at < first.first && (saying.mentionAt < 0 || at < saying.mentionAt)) leading = on;
      // "broke the tops off pot 3 and mission mon": the last of a list has the day of all.
      else if (
        (at > first.last || first.at.length === 0) &&
        saying.mood.unrealFrom === null &&
        !saying.mood.past
      )
        backfill(sayings, s, out, on);
      return;
    }
    // "last year nothing, this year 12": of now.
    if (saying.items.some((item, i) => item.text === 'this' && THIS_ONE.has(saying.items[i + 1]?.text ?? '')))
      return;
    // "april 18: ronde leafing out, adriatic still asleep": under a day that heads a list of trees.
    const listed = headed && saying.mentions.length > 0 && first !== undefined && LISTED.has(first.kind);
    const stands =
      !listed &&
      saying.items.some((item) => item.text === 'still') &&
      !saying.items.some((item) => WERE.has(item.text));
    if (stands || (!listed && saying.items.some((item) => ['now', 'currently', 'still'].includes(item.text))))
      return;
    if (leading !== null) {
      out[s] = leading;
      return;
    }
    if (last !== null) {
      // "frost that night"
      if (
        saying.items.some(
          (item, i) =>
            (item.text === 'that' || item.text === 'same') && SAME_DAY.has(saying.items[i + 1]?.text ?? ''),
        )
      ) {
        out[s] = last;
        return;
      }
      const action = first !== undefined && ACTIONS.has(first.kind);
      const grown = first !== undefined && (first.kind === 'branched' || first.kind === 'rooted');
      const stated = saying.items.some((item) => WERE.has(item.text) && !(grown && item.text === 'already'));
      const shares =
        action &&
        saying.mentions.length === 0 &&
        saying.clause.join !== 'stop' &&
        saying.clause.join !== 'but';
      // "fleece off april 18, new leaves showing under it"
      const revealed =
        first?.kind === 'leafed-out' &&
        saying.items.some((item) => ['under', 'underneath', 'beneath'].includes(item.text));
      // "first hard frost nov 12, everything went to sleep"
      const slept = first?.kind === 'dormant' && saying.clause.join !== 'stop';
      if (shares || revealed || slept || (stated && first !== undefined)) out[s] = last;
    }
  });
  return out;
}

/** "…, last year none", "…, maybe next year", "…, ronde on sunday": its day is of another season, or of another tree's plans. */
function isAside(saying: Saying, today: Day): boolean {
  const { mood, items, date } = saying;
  const [subject, verb] = items;
  // "that was last year" tells when it was.
  if (subject && REFERRING.has(subject.text) && verb?.classes.has('BE')) return false;
  const tells = items.some(
    (item) => item.type === 'word' && !item.classes.has('DET') && !item.classes.has('PREP'),
  );
  if (tells && (mood.past || mood.unrealFrom !== null)) return true;
  // "…, the rest on saturday", "…, more tomorrow"
  if (items.length <= 5 && items.some(({ text }) => text === 'rest' || text === 'others')) return true;
  if (items.length <= 3 && items[0]?.text === 'more' && (date?.date?.on ?? today) > today) return true;
  // "…, jam tomorrow"
  if (
    tells &&
    saying.clause.join === 'comma' &&
    saying.hits.length === 0 &&
    (date?.date?.on ?? today) > today
  )
    return true;
  return saying.mentions.length > 0 && saying.clause.join !== 'start' && (date?.date?.on ?? today) > today;
}

/** "…, 2 have rooted now" */
function isNow({ items }: Saying): boolean {
  return items.some(
    (item, i) =>
      item.text === 'now' ||
      item.text === 'currently' ||
      // "last year who cares, this year the adriatic has 11"
      (item.text === 'this' && THIS_ONE.has(items[i + 1]?.text ?? '')),
  );
}

const REFERRING = new Set(['that', 'this', 'it', 'they', 'which', 'those']);

function isOnlyATime(saying: Saying): boolean {
  return (
    saying.hits.length === 0 &&
    saying.mentions.length === 0 &&
    // "forever ago now"
    saying.items.every(
      (item) =>
        item.type !== 'word' ||
        GUESSING.has(item.text) ||
        ['now', 'already', 'easily', 'maybe', 'sometime'].includes(item.text),
    ) &&
    saying.items.filter((item) => item.type !== 'word').length === 1
  );
}

/** "must have been the 20th": the day as well as the writer knows it. */
function isGuessedDay({ items }: Saying): boolean {
  return items.every((item) => item.type !== 'word' || GUESSING.has(item.text));
}

const GUESSING = new Set([
  'must',
  'have',
  'been',
  'it',
  'was',
  'i',
  'think',
  'that',
  'is',
  'probably',
  'maybe',
  'guess',
  'reckon',
  'on',
  'suppose',
  'or',
  'so',
  'ish',
  'roughly',
  'about',
]);

/** "tipped the alma and fed the ronde yesterday": the closing date holds for what is joined by "and". */
function backfill(sayings: readonly Saying[], s: number, out: (Day | null)[], on: Day | null): void {
  for (let k = s; k > 0; k--) {
    const here = sayings[k];
    const before = sayings[k - 1];
    if (
      !here ||
      !before ||
      !(here.clause.join === 'and' || (here.clause.join === 'comma' && here.bare)) ||
      before.clause.sentence !== here.clause.sentence ||
      before.date
    )
      return;
    const first = before.hits[0];
    if (first && !ACTIONS.has(first.kind) && first.kind !== 'trouble' && first.kind !== 'dormant') return;
    out[k - 1] = on;
  }
}
