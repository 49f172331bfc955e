import type { NoteReading } from '../../src/notes/contract.ts';
import { DECISIVE, type DecisiveKind } from '../../src/notes/doubt.ts';

/** Plain denials of each decisive kind, of a tree. Written for this test; common usage, no source. */
export const DENIALS: readonly (readonly [DecisiveKind, readonly ((tree: string) => string)[]])[] = [
  [
    'tipped',
    [
      (tree) => `haven't tipped ${tree}`,
      (tree) => `not pinched ${tree}`,
      (tree) => `${tree} not tipped yet`,
      (tree) => `never pinched ${tree}`,
      (tree) => `didn't stop ${tree}`,
      (tree) => `havent got round to pinching ${tree}`,
      (tree) => `${tree} still has all its tips`,
      (tree) => `left the tips on ${tree}`,
      (tree) => `forgot to pinch ${tree}`,
      (tree) => `decided not to tip ${tree}`,
      (tree) => `couldnt bring myself to top ${tree}`,
      (tree) => `${tree} remains unpinched`,
    ],
  ],
  [
    'dropped',
    [
      (tree) => `${tree} hasn't dropped its figs`,
      (tree) => `no figs dropped off ${tree}`,
      (tree) => `${tree} didn't drop all its fruit`,
      (tree) => `${tree} never dropped a fig`,
      (tree) => `not one fig has fallen off ${tree}`,
      (tree) => `${tree} hasnt lost any figs`,
      (tree) => `no drop on ${tree}`,
    ],
  ],
  [
    'picked',
    [
      (tree) => `haven't picked any off ${tree}`,
      (tree) => `nothing picked from ${tree}`,
      (tree) => `didn't eat any ${tree} figs`,
      (tree) => `not picking ${tree} yet`,
      (tree) => `left the figs on ${tree} another day`,
      (tree) => `nobody has picked ${tree}`,
    ],
  ],
  [
    'fruitlets',
    [
      (tree) => `no figs on ${tree}`,
      (tree) => `${tree} hasn't got any figs`,
      (tree) => `not a single fig on ${tree}`,
      (tree) => `${tree} without figs`,
      (tree) => `${tree} has no fruit`,
      (tree) => `still nothing on ${tree}`,
      (tree) => `${tree} isnt fruiting`,
      (tree) => `zero figs on ${tree}`,
    ],
  ],
];

/** What takes a whole note back, makes it another's word, another year's, a plan or a question. */
export const TAKES_BACK: readonly ((note: string) => string)[] = [
  (note) => `it is not true that ${note}`,
  (note) => `i never said ${note}`,
  (note) => `${note}... not!`,
  (note) => `${note}. just kidding`,
  (note) => `${note}, i wish`,
  (note) => `if ${note}`,
  (note) => `if only ${note}`,
  (note) => `imagine ${note}`,
  (note) => `dreamt that ${note}`,
  (note) => `dave says ${note}`,
  (note) => `my neighbour says ${note}`,
  (note) => `apparently ${note}`,
  (note) => `last year ${note}`,
  (note) => `in 2023 ${note}`,
  (note) => `tomorrow: ${note}`,
  (note) => `to do: ${note}`,
  (note) => `plan for the weekend: ${note}`,
  (note) => `is it true that ${note}?`,
];

/** Whether a reading logs none of `kind` (null: nothing decisive) on `tree` (null: on any). */
export function denies({ logged }: NoteReading, kind: DecisiveKind | null, tree: number | null): boolean {
  return !logged.some(
    (event) =>
      (tree === null || event.tree === tree) &&
      (kind === null
        ? DECISIVE.includes(event.kind as DecisiveKind) || event.crop === 'breba'
        : event.kind === kind),
  );
}
