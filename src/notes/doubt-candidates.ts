import type { Day } from '../engine/day.ts';
import type { ReadEvent } from './contract.ts';
import type { Piece } from './doubt-pieces.ts';
import { coreAt, coreOf, LEVELS } from './doubt-signs.ts';
import { wordSet } from './lexicon/word-set.ts';

/** The clauses an event may have been read from: they speak of its kind and of its tree; the fewest that fit. */
export function candidates(event: ReadEvent, pieces: readonly Piece[], today: Day): number[] {
  let chosen: number[] = [];
  const namesTree = (p: number): boolean =>
    event.tree !== null && pieces[p]?.own.includes(event.tree) === true;
  for (const level of LEVELS) {
    const telling = placesWhere(pieces, (piece) => coreAt(event.kind, piece, level) >= 0);
    const ofTree = telling.filter((p) => event.tree !== null && pieces[p]?.trees.includes(event.tree));
    if (ofTree.length === 0) {
      chosen = orAll(chosen, telling);
      continue;
    }
    const counting = orAll(
      ofTree.filter((p) => event.count !== undefined && pieces[p]?.numbers.includes(event.count)),
      ofTree,
    );
    chosen = orAll(counting.filter(namesTree), counting);
    // "no new branches on the alma, no figs either": the clause that speaks of figs.
    if (event.kind === 'no-fruitlets')
      chosen = orAll(
        counting.filter(
          (p) => saysNo(pieces[p]) && pieces[p]?.items.some((item) => item.classes.has('FRUIT')),
        ),
        chosen,
      );
    // "no brebas on the king but it is loaded"
    if (event.kind === 'fruitlets' && chosen.every((p) => saysNo(pieces[p])))
      chosen = orAll(
        counting.filter((p) => pieces[p]?.join === 'but' && !saysNo(pieces[p])),
        chosen,
      );
    break;
  }
  // "no breba but main crop coming": the clause of what is there, not that of what is not.
  if (event.kind === 'fruitlets' && chosen.length > 1)
    chosen = orAll(
      chosen.filter((p) => !saysNo(pieces[p])),
      chosen,
    );
  // "full of beans and full of figs"
  if (event.kind === 'fruitlets' && chosen.length > 1)
    chosen = orAll(
      chosen.filter((p) => pieces[p]?.items.some((item) => item.classes.has('FRUIT'))),
      chosen,
    );
  const { count } = event;
  if (count !== undefined && !chosen.some((p) => pieces[p]?.numbers.includes(count))) {
    // "how many figs? 16 on the alma": the clause that gives the number tells it.
    const counting = placesWhere(
      pieces,
      (piece) =>
        event.tree !== null &&
        (piece.own.includes(event.tree) || (isNumberAlone(piece) && piece.trees.includes(event.tree))) &&
        piece.numbers.includes(count) &&
        coreOf(event.kind, piece) >= 0,
    );
    if (counting.length === 1) chosen = counting;
  }
  if (count !== undefined)
    chosen = orAll(
      chosen.filter((p) => pieces[p]?.numbers.includes(count)),
      chosen,
    );
  if (event.on !== today)
    chosen = orAll(
      chosen.filter((p) => pieces[p]?.items.some((item) => item.date?.on === event.on)),
      chosen,
    );
  if (chosen.length > 0) return chosen;
  return orAll(
    pieces.map((_, p) => p).filter(namesTree),
    pieces.map((_, p) => p),
  );
}

function saysNo(piece: Piece | undefined): boolean {
  return piece?.items.some((item) => item.classes.has('NEG')) === true;
}

function placesWhere(pieces: readonly Piece[], holds: (piece: Piece) => boolean): number[] {
  const places: number[] = [];
  pieces.forEach((piece, p) => {
    if (holds(piece)) places.push(p);
  });
  return places;
}

const BESIDE_NUMBER = wordSet(
  "by on now more already up to the then has have had got 's is are there it its",
);

/** "4", "3 now", "5 by the 20th" */
function isNumberAlone({ items }: Piece): boolean {
  return (
    items.length === 1 ||
    items.every((item) => item.quantity !== undefined || item.type === 'date' || BESIDE_NUMBER.has(item.text))
  );
}

function orAll(some: number[], all: number[]): number[] {
  return some.length > 0 ? some : all;
}
