import type { Day } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import type { Ask, NoteReading, ReadEvent } from './contract.ts';
import { complete, type Draft, type Pending } from './draft.ts';
import { tellOneFate } from './one-fate.ts';

/** Most candidates offered for one question. */
export const MOST_CANDIDATES = 5;

const ASK_ORDER: readonly Ask['what'][] = ['tree', 'date', 'kind', 'crop'];

/** Which kinds are only the lesser way to say another that was said too, of the same tree on the same day. */
const SUBSUMED: readonly (readonly [by: ObservationKind, lesser: readonly ObservationKind[]])[] = [
  ['fruitlets', ['buds-double', 'buds-single', 'no-fruitlets']],
  ['buds-double', ['buds-single']],
  ['branched', ['no-fruitlets', 'buds-single']],
  ['dropped', ['no-fruitlets', 'fruitlets']],
  ['frost', ['trouble']],
];

/** One event per tree, kind, day and crop, and at most one question. */
export function settleEvents(draft: Draft, today: Day): NoteReading {
  const ofOthers = draft.logged.some((event) => event.kept === true);
  const all = tellOneFate(dropLesser(unique(draft.logged)));
  const logged = ofOthers ? all : dropRemarks(all, draft.pending);
  const pending = draft.pending.filter((each) => !isAnswered(each, logged));
  const ask = toAsk(pending);
  // What is asked of a tree is no remark on it as well.
  const told = logged.filter(
    (event) =>
      event.kind !== 'remark' ||
      event.tree === null ||
      !pending.some((each) => each.open.tree === event.tree),
  );
  if (logged.length === 0 && ask === null)
    return { logged: [{ tree: null, kind: 'remark', on: today }], ask: null };
  return { logged: told, ask };
}

function unique(drafted: Draft['logged']): ReadEvent[] {
  // "lost its last leaves nov 18, properly dormant": said again without a day, it is the same event.
  const kept = drafted.filter(
    (event, e) =>
      !isLongAgo(event, drafted.slice(e + 1)) &&
      (!event.assumed ||
        event.count !== undefined ||
        !drafted.some(
          (other) =>
            !other.assumed && other.tree === event.tree && other.kind === event.kind && event.kind !== 'care',
        )),
  );
  const events = kept.map((event) => complete(event, event.tree, event.kind, event.on));
  const byKey = new Map<string, ReadEvent>();
  for (const event of events) {
    const key = `${event.tree}|${event.kind}|${event.on}|${event.crop ?? ''}`;
    const before = byKey.get(key);
    // The one with a number says more.
    if (!before || (before.count === undefined && event.count !== undefined)) byKey.set(key, event);
  }
  return [...byKey.values()];
}

/** "pinched the alma and it just branched": no shoot grows on the day of the pinch, which was some other day. */
function isLongAgo(event: Draft['logged'][number], later: Draft['logged']): boolean {
  return (
    event.kind === 'tipped' &&
    event.assumed === true &&
    event.count === undefined &&
    later.some((other) => other.kind === 'branched' && other.assumed === true && other.tree === event.tree)
  );
}

/** "gone blind this year, no brebas": the same lack, said once with its crop. */
function isSaidWithCrop(event: ReadEvent, events: readonly ReadEvent[]): boolean {
  return (
    event.kind === 'no-fruitlets' &&
    event.crop === undefined &&
    events.some(
      (other) =>
        other.kind === event.kind &&
        other.crop !== undefined &&
        other.tree === event.tree &&
        other.on === event.on,
    )
  );
}

function dropLesser(events: readonly ReadEvent[]): ReadEvent[] {
  return events.filter(
    (event) =>
      !isSaidWithCrop(event, events) &&
      !SUBSUMED.some(
        ([by, lesser]) =>
          lesser.includes(event.kind) &&
          events.some(
            (other) =>
              other.kind === by &&
              other.tree === event.tree &&
              other.on === event.on &&
              (other.crop === event.crop ||
                event.kind.startsWith('buds') ||
                by === 'branched' ||
                (by === 'dropped' && event.kind !== 'fruitlets')),
          ),
      ),
  );
}

/** A remark of no tree adds nothing beside anything else. */
function dropRemarks(events: readonly ReadEvent[], pending: readonly Pending[]): ReadEvent[] {
  const others = events.some((event) => event.kind !== 'remark' || event.tree !== null) || pending.length > 0;
  const kept = others
    ? events.filter((event) => event.kind !== 'remark' || event.tree !== null)
    : [...events];
  // What was seen is asked, so that it was seen is no remark.
  return kept.filter(
    (event) =>
      event.kind !== 'remark' ||
      !pending.some((each) => each.what === 'kind' && each.open.tree === event.tree) ||
      events.some((other) => other.kind !== 'remark' && other.tree === event.tree),
  );
}

/** A bump is no riddle when the same tree's figs are named. */
function isAnswered(pending: Pending, logged: readonly ReadEvent[]): boolean {
  if (pending.what !== 'kind') return false;
  return logged.some(
    (event) =>
      event.tree === pending.open.tree &&
      ['fruitlets', 'buds-double', 'buds-single', 'no-fruitlets', 'leafed-out', 'branched'].includes(
        event.kind,
      ),
  );
}

function toAsk(pending: readonly Pending[]): Ask | null {
  for (const what of ASK_ORDER) {
    const some = pending.filter((each) => each.what === what);
    const first = some[0];
    if (!first) continue;
    // Only what the same answer completes is opened together.
    const alike = some.filter(
      (each) => each.trees.join() === first.trees.join() && each.phrase === first.phrase,
    );
    return {
      what,
      trees: first.trees.slice(0, MOST_CANDIDATES),
      kinds: first.kinds,
      ...(first.phrase === undefined ? {} : { phrase: first.phrase }),
      open: alike.map((each) => each.open),
    };
  }
  return null;
}
