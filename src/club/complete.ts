import { completeCultivars } from '../engine/cultivars.ts';
import { matchTrees } from '../notes/index.ts';
import { treesOf } from '../records/trees.ts';
import { completePlaces } from '../weather/places.ts';
import type { Context } from './context.ts';
import type { Completion } from './feature.ts';

/** What a channel may offer while an option is typed: `value` is what the option then holds. */
export interface Suggestion {
  readonly name: string;
  readonly value: string;
}

export const MOST_SUGGESTIONS = 25;

/** At most 25, most likely first. Only ever the member's own trees. */
export async function complete(context: Context, kind: Completion, typed: string): Promise<Suggestion[]> {
  switch (kind) {
    case 'tree':
      return completeTrees(context, typed);
    case 'cultivar':
      return completeCultivars(typed, MOST_SUGGESTIONS).map(({ name }) => ({ name, value: name }));
    case 'place':
      return (await completePlaces(typed, MOST_SUGGESTIONS)).map(({ label }) => ({
        name: label,
        value: label,
      }));
  }
}

async function completeTrees(context: Context, typed: string): Promise<Suggestion[]> {
  const roster = await treesOf(context.db, context.member.id);
  const wanted = typed.trim();
  const found =
    wanted === ''
      ? roster
      : matchTrees(wanted, roster).flatMap(({ id }) => roster.find((tree) => tree.id === id) ?? []);
  const begins = roster.filter(({ nameKey }) => wanted !== '' && nameKey.includes(wanted.toLowerCase()));
  const all = [...new Set([...begins, ...found])];
  return all.slice(0, MOST_SUGGESTIONS).map(({ name }) => ({ name, value: name }));
}
