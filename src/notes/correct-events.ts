import type { Correction, ReadEvent } from './contract.ts';

/**
 * The events of a note after a correction, or null where it is not clear which of several it means: then it is
 * better read as a message of its own.
 *
 * `correctEvents([celeste tipped 3, king tipped 4], { tree: king, count: 5 }) //=> [celeste tipped 3, king tipped 5]`
 */
export function correctEvents(events: readonly ReadEvent[], correction: Correction): ReadEvent[] | null {
  const meant = eventsMeant(events, correction);
  if (meant === null) return null;
  return events.map((event) => (meant.includes(event) ? correctEvent(event, correction) : event));
}

function eventsMeant(events: readonly ReadEvent[], correction: Correction): readonly ReadEvent[] | null {
  if (events.length <= 1) return events;
  const { tree, kind, count } = correction;
  const ofTree = events.filter((event) => event.tree === tree);
  if (tree !== undefined && ofTree.length > 0) {
    const says = kind !== undefined || count !== undefined || correction.crop !== undefined || correction.on;
    return says ? narrow(ofTree, correction) : null;
  }
  // Another tree than any of the note's: of which of them?
  if (tree !== undefined && new Set(events.map((event) => event.tree)).size > 1) return null;
  return narrow(events, correction);
}

/** A day or a crop is put right of all, a number only where one event has one, a kind only of one event. */
function narrow(events: readonly ReadEvent[], { kind, count }: Correction): readonly ReadEvent[] | null {
  if (kind === undefined && count === undefined) return events;
  const alike = kind === undefined ? [] : events.filter((event) => event.kind === kind);
  const counted = events.filter((event) => event.count !== undefined);
  for (const some of [alike, count === undefined ? [] : counted, events]) if (some.length === 1) return some;
  return null;
}

function correctEvent(event: ReadEvent, correction: Correction): ReadEvent {
  // "3 tips off the celeste, 4 off the king" – "no, 5 off the king": still tips.
  const same = event.kind === 'tipped' && correction.kind === 'picked' && event.tree === correction.tree;
  return { ...event, ...correction, ...(same && { kind: event.kind }) };
}
