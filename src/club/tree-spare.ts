import { findCultivar } from '../engine/cultivars.ts';
import { groupBy } from '../group-by.ts';
import { type OwnedTree, spareTreesOf } from '../records/club-trees.ts';
import type { Feature } from './feature.ts';
import { type Field, reply } from './reply.ts';
import { countWords, listWords } from './words.ts';

export const treeSpare: Feature = {
  command: {
    name: 'tree spare',
    description: 'Wood that members of the club have to spare',
    visibility: 'everyone',
    options: [],
  },
  async handle(context) {
    const spare = await spareTreesOf(context.db, context.club.id);
    return reply({
      title:
        spare.length === 0 ? 'No wood to spare' : `Wood to spare from ${countWords(spare.length, 'tree')}`,
      text:
        spare.length === 0
          ? 'Nobody has marked wood as spare. Mark yours with /tree edit tree: and its name, spare:yes.'
          : 'Ask the member. Dormant wood travels best, from late fall to early spring.',
      fields: spareFields(spare),
      data: {
        spare: spare.map(({ tree, member }) => ({
          member: member.name,
          tree: tree.name,
          cultivar: tree.cultivar,
        })),
      },
    });
  },
};

/** A line a cultivar: who has wood of it. */
export function spareFields(spare: readonly OwnedTree[]): Field[] {
  const byCultivar = groupBy(spare, ({ tree }) =>
    tree.cultivar === null ? null : (findCultivar(tree.cultivar)?.name ?? tree.cultivar),
  );
  return [...byCultivar].map(([cultivar, trees]) => ({
    name: cultivar ?? 'Cultivar not known',
    value: listWords(trees.map(({ tree, member }) => `${member.name} (${tree.name})`)),
  }));
}
