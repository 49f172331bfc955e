import type { Day } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import type { Ask, OpenEvent, ReadEvent } from './contract.ts';
import { complete } from './draft.ts';

/** What a question still asks once the doubtful is out of it, and what became of that. */
interface GuardedAsk {
  readonly ask: Ask | null;
  readonly logged: readonly ReadEvent[];
}

/** A day that cannot be placed sounds like another season ("ages ago"), and doubt of the crop like a question. */
const EXPECTED: Readonly<Record<'date' | 'crop', readonly string[]>> = {
  date: ['unclear', 'past'],
  crop: ['unclear', 'asked', 'told', 'plan', 'if'],
};

/**
 * The second look at what waits for an answer: the answer brings the tree, the day or the crop, and never makes
 * done what the note denied, planned or told of others. Such an event waits as a remark, or as nothing.
 */
export function guardAsk(ask: Ask, doubtOf: (event: ReadEvent) => string | null, today: Day): GuardedAsk {
  const { what } = ask;
  if (what === 'kind') return { ask, logged: [] };
  const open: OpenEvent[] = [];
  const logged: ReadEvent[] = [];
  const kinds: ObservationKind[] = [];
  for (const event of ask.open) {
    const { kind, tree, on } = event;
    const doubt = kind === undefined ? null : doubtOf(complete(event, tree ?? null, kind, on ?? today));
    if (doubt === null || (what !== 'tree' && EXPECTED[what].includes(doubt))) open.push(event);
    else if (doubt === 'other') logged.push({ tree: null, kind: 'remark', on: today });
    else if (what !== 'tree') logged.push({ tree: tree ?? null, kind: 'remark', on: today });
    else if (doubt === 'unclear') {
      const { kind: meant, ...rest } = event;
      open.push(rest);
      if (meant) kinds.push(meant);
    } else open.push({ kind: 'remark', on: today });
  }
  if (logged.length === 0 && open.every((event, i) => event === ask.open[i])) return { ask, logged };
  return {
    ask: open.length > 0 ? { ...ask, kinds: kinds.length > 0 ? withUsual(kinds) : ask.kinds, open } : null,
    logged,
  };
}

/** What may have been meant, and what else it may be. */
export function withUsual(kinds: readonly ObservationKind[]): readonly ObservationKind[] {
  return [...new Set([...kinds, 'fruitlets', 'no-fruitlets', 'remark'] as const)];
}
