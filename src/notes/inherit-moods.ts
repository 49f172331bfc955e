import type { Day } from '../engine/day.ts';
import { isAnyOf } from './item.ts';
import type { Saying } from './sayings.ts';

/** What a clause takes over from the mood of the one before. */
export interface Inherited {
  readonly unreal: boolean;
  readonly denied: boolean;
  readonly past: boolean;
  readonly hearsay: boolean;
}

/** "should have tipped and fed it": a clause without a subject of its own goes on in the mood before it. */
export function inheritMoods(sayings: readonly Saying[], today: Day): Inherited[] {
  const out: Inherited[] = [];
  let before: Saying | null = null;
  let heading = false;
  let state: Inherited = { unreal: false, denied: false, past: false, hearsay: false };
  for (const saying of sayings) {
    const joined = before !== null && before.clause.sentence === saying.clause.sentence;
    const { join } = saying.clause;
    const recalls = before !== null && !joined && recallsYear(before, saying);
    const continues =
      joined &&
      (join === 'and' || join === 'or' || (join === 'comma' && saying.items[0]?.text === 'with')) &&
      !hasOwnSubject(saying) &&
      !SEEING.has(saying.items[0]?.text ?? '');
    const whole =
      !(saying.mentions.length > 0 && saying.items.some((item) => item.text === 'already')) &&
      joined &&
      before !== null &&
      before.clause.sub === 'if' &&
      (join === 'comma' || join === 'and');
    const colon = joined && join === 'colon' && before !== null && before.hits.length === 0;
    // "wife said do it so i tipped it": what came of it is no hearsay.
    const told = join === 'sub' && saying.clause.sub !== 'so';
    // "tomorrow: feed ronde"
    const plans =
      saying.hits.length === 0 &&
      saying.date?.date !== undefined &&
      saying.date.date.on > today &&
      !saying.date.date.problem;
    // "to do: pinch ronde, water alma": a heading holds for all that follows.
    heading = joined && (heading || (colon && (state.unreal || (before !== null && isToDo(before)))));
    const supposed = heading || ((continues || whole || colon) && state.unreal);
    const next: Inherited = {
      unreal: supposed || saying.mood.unrealFrom !== null || plans,
      denied:
        continues && join === 'or' && state.denied && !isTally(saying)
          ? true
          : saying.mood.denials.length > 0,
      past:
        ((joined || recalls) && state.past && join !== 'but') || saying.mood.past || isLongAgo(saying, today),
      hearsay: (joined && state.hearsay && (told || continues)) || saying.mood.hearsay,
    };
    out.push({
      unreal: supposed,
      // "adriatic 0 / celeste 3"
      denied: continues && join === 'or' && state.denied && !isTally(saying),
      past:
        (joined || recalls) &&
        state.past &&
        join !== 'but' &&
        !PRESENT.some((word) =>
          saying.items.some(
            (item) => item.text === word || (item.type === 'date' && item.typed.toLowerCase().includes(word)),
          ),
        ),
      hearsay: joined && state.hearsay && (told || continues),
    });
    // "saving the sticks for cuttings, come february"
    const last = out.at(-2);
    if (
      last &&
      joined &&
      saying.hits.length === 0 &&
      saying.items[0]?.text === 'come' &&
      saying.items.length <= 3
    )
      out[out.length - 2] = { ...last, unreal: true };
    state = next;
    before = saying;
  }
  return out;
}

const RECALLING = new Set(['remember', 'recall', 'throwback', 'flashback', 'back', 'rewind']);

/** "remember 2021? 6 lb off the unknown": a year called to mind is what the next sentence tells of. */
function recallsYear(before: Saying, saying: Saying): boolean {
  return (
    before.clause.sentence + 1 === saying.clause.sentence &&
    before.mood.past &&
    before.hits.length === 0 &&
    before.mentions.length === 0 &&
    (before.clause.asked || RECALLING.has(before.items[0]?.text ?? ''))
  );
}

/** "pinched it in june 2025 and got nowt": a day of an earlier summer holds for what follows too. */
function isLongAgo(saying: Saying, today: Day): boolean {
  const on = saying.date?.date?.on;
  // "aug 3: picked 4": no year was said, so it is asked about.
  if (saying.date?.date?.assumed.includes('year')) return false;
  return on !== undefined && on < `${Number(today.slice(0, 4)) - 1}-09-01`;
}

const TO_DO = new Set(['shopping', 'todo', 'todos', 'wishlist', 'outstanding']);

/** "to do", "jobs still to do", "shopping list": a heading of what is not done yet. */
function isToDo({ items, mentions }: Saying): boolean {
  if (mentions.length > 0 || items.length > 5) return false;
  return items.some(
    (item, i) =>
      TO_DO.has(item.text) ||
      (item.text === 'to' &&
        (items[i + 1]?.text === 'do' || isAnyOf(items[i + 1], ['TIP', 'PICK', 'SNIP'])) &&
        i + 2 === items.length),
  );
}

/** A tree with its number. */
function isTally({ mentions, items }: Saying): boolean {
  return mentions.length > 0 && items.some((item) => item.quantity !== undefined);
}

function hasOwnSubject(saying: Saying): boolean {
  const first = saying.items[0];
  const hit = saying.hits[0];
  if (!first) return false;
  if (
    ['i', 'we', 'it', 'they', 'he', 'she', 'now', 'today', 'there'].includes(first.text) ||
    SEEING.has(first.text)
  )
    return true;
  if (
    saying.mentionAt >= 0 &&
    hit &&
    saying.mentionAt < Math.max(hit.first, saying.mentionAt < 2 ? hit.core : 0)
  )
    return true;
  return false;
}

/** "almost pinched it then saw a fig": a sight is news. */
const SEEING = new Set([
  'saw',
  'spotted',
  'noticed',
  'found',
  'clocked',
  'realised',
  'realized',
  'remembered',
  'discovered',
]);

const PRESENT = ['now', 'today', 'currently', 'this'];
