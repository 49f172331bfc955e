import type { Day } from '../engine/day.ts';
import type { Correction, ReadEvent } from './contract.ts';
import { COUNTED } from './counts.ts';

/**
 * The events of a note after a correction, or null where it is not clear which of several it means: then it is
 * better read as a message of its own. `writtenOn` tells the days that were said from
 * those that were not.
 *
 * `correctEvents([celeste tipped 3, king tipped 4], { tree: king, count: 5 }, writtenOn) //=> [celeste tipped 3, king tipped 5]`
 */
export function correctEvents(
  events: readonly ReadEvent[],
  correction: Correction,
  writtenOn: Day,
): ReadEvent[] | null {
  const { also } = correction;
  // What was counted on one tree was not counted on the other.
  if (also)
    return [...events, ...also.flatMap((tree) => events.map((event) => ({ ...withoutCount(event), tree })))];
  const meant = eventsMeant(events, correction, writtenOn);
  if (meant === null || meant.length === 0) return null;
  return events.map((event) => (meant.includes(event) ? correctEvent(event, correction) : event));
}

function eventsMeant(
  events: readonly ReadEvent[],
  correction: Correction,
  writtenOn: Day,
): readonly ReadEvent[] | null {
  const { instead, tree, kind, count, crop, on } = correction;
  if (instead)
    return narrow(
      events.filter((event) => isWrong(event, instead)),
      correction,
      writtenOn,
    );
  if (events.length <= 1) return events;
  const ofTree = events.filter((event) => event.tree === tree);
  if (tree !== undefined && ofTree.length > 0) {
    const says = kind !== undefined || count !== undefined || crop !== undefined || on !== undefined;
    return says ? narrow(ofTree, correction, writtenOn) : null;
  }
  // Another tree than any of the note's: of which of them?
  if (tree !== undefined && new Set(events.map((event) => event.tree)).size > 1) return null;
  return narrow(events, correction, writtenOn);
}

/** The crop does not tell which: figs of the main crop carry none. */
function isWrong(event: ReadEvent, instead: NonNullable<Correction['instead']>): boolean {
  return (
    (instead.tree === undefined || event.tree === instead.tree) &&
    (instead.on === undefined || event.on === instead.on) &&
    (instead.count === undefined || event.count === instead.count) &&
    (instead.kind === undefined || event.kind === instead.kind)
  );
}

/** A crop is put right of all, a day of those whose day was said, a number only where one event has one, a kind only of one event. */
function narrow(
  events: readonly ReadEvent[],
  { kind, count, on }: Correction,
  writtenOn: Day,
): readonly ReadEvent[] | null {
  if (kind === undefined && count === undefined) {
    const dated = events.filter((event) => event.on !== writtenOn);
    return on !== undefined && dated.length > 0 ? dated : events;
  }
  const alike = kind === undefined ? [] : events.filter((event) => event.kind === kind);
  const counted = events.filter((event) => event.count !== undefined);
  for (const some of [alike, count === undefined ? [] : counted, events]) if (some.length === 1) return some;
  return null;
}

function correctEvent(event: ReadEvent, { instead: _, also: __, ...correction }: Correction): ReadEvent {
  // "3 tips off the celeste, 4 off the king" – "no, 5 off the king": still tips.
  const same = event.kind === 'tipped' && correction.kind === 'picked' && event.tree === correction.tree;
  const corrected = { ...event, ...correction, ...(same && { kind: event.kind }) };
  return COUNTED.has(corrected.kind) ? corrected : withoutCount(corrected);
}

function withoutCount({ count: _, unit: __, ...event }: ReadEvent): ReadEvent {
  return event;
}
