import type { ReadEvent } from './contract.ts';

type Kind = ReadEvent['kind'];

/** Of the same figs a note tells one fate: which later kind takes the place of which earlier one. */
const FATES: readonly (readonly [earlier: Kind, later: Kind])[] = [
  ['fruitlets', 'ripening'],
  ['fruitlets', 'picked'],
];

/**
 * "3 on last year's wood, all going soft", "whole crop: 1. ate it": figs told of twice become one event with their
 * number; so are "16 figs, 1.2 lb". Two numbers tell of two things ("12 figs, 2 ripe"). "10 oz picked, all gone": what was picked did not drop.
 */
export function tellOneFate(events: readonly ReadEvent[]): ReadEvent[] {
  let kept = [...events];
  for (const [earlier, later] of FATES) {
    for (const event of kept.filter(({ kind }) => kind === earlier)) {
      const fate = kept.find((other) => other.kind === later && isSame(event, other));
      const told = fate && tellOnce(event, fate);
      if (!told) continue;
      kept = kept.filter((other) => other !== event).map((other) => (other === fate ? told : other));
    }
  }
  return kept.filter(
    (event, e) =>
      !isLoss(event) ||
      event.count !== undefined ||
      !kept.slice(0, e).some((other) => isLoss(other) && other.kind !== event.kind && isSame(event, other)),
  );
}

/** The later event with the number of figs, from wherever it was given; null where two numbers tell of two things. */
function tellOnce(event: ReadEvent, fate: ReadEvent): ReadEvent | null {
  if (event.count === undefined) return fate;
  // Of a number and a weight the number counts.
  const { unit, count, ...rest } = fate;
  return count === undefined || unit !== undefined ? { ...rest, count: event.count } : null;
}

function isLoss({ kind }: ReadEvent): boolean {
  return kind === 'picked' || kind === 'dropped';
}

function isSame(one: ReadEvent, other: ReadEvent): boolean {
  return one.tree === other.tree && one.on === other.on && one.crop === other.crop;
}
