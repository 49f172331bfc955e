import type { Tree } from '../records/schema.ts';
import { treesOf } from '../records/trees.ts';
import { dateOrderOf } from './date-option.ts';
import type { Feature } from './feature.ts';
import { type Field, reply } from './reply.ts';
import { countWords, fullDayWords } from './words.ts';

export const treeList: Feature = {
  command: { name: 'tree list', description: 'Your trees', visibility: 'everyone', options: [] },
  async handle(context) {
    const order = dateOrderOf(context);
    const all = await treesOf(context.db, context.member.id, { withRetired: true });
    const standing = all.filter((tree) => tree.retiredOn === null);
    const retired = all.filter((tree) => tree.retiredOn !== null);
    if (all.length === 0) {
      return reply({
        title: 'No trees yet',
        text: 'Add your first with /tree add name:Pot 3 cultivar:Brunswick, for example.',
        data: { trees: [] },
      });
    }
    const fields: Field[] = standing.map((tree) => ({ name: tree.name, value: treeWords(tree) }));
    for (const tree of retired) {
      const on = tree.retiredOn === null ? '' : ` ${fullDayWords(tree.retiredOn, order)}`;
      fields.push({ name: tree.name, value: `retired${on}` });
    }
    return reply({
      title: `Your ${countWords(standing.length, 'tree')}`,
      fields,
      data: {
        trees: all.map((tree) => ({
          tree: tree.name,
          cultivar: tree.cultivar,
          ripening: tree.ripening,
          kept: tree.kept,
          for: tree.purpose,
          retired: tree.retiredOn,
        })),
      },
    });
  },
};

const KEPT_WORDS: Readonly<Record<Tree['kept'], string>> = {
  ground: 'in the ground',
  pot: 'in a pot',
  cover: 'under cover',
};

const PURPOSE_WORDS: Readonly<Record<Tree['purpose'], string>> = {
  fruit: 'for fruit',
  wood: 'for wood',
  both: 'for fruit and wood',
};

/** `Brunswick, in a pot, for fruit`. */
export function treeWords(tree: Tree): string {
  return [
    tree.cultivar ?? 'cultivar not known',
    KEPT_WORDS[tree.kept],
    PURPOSE_WORDS[tree.purpose],
    ...(tree.pollinated ? ['pollinated'] : []),
    ...(tree.spareWood ? ['wood to spare'] : []),
  ].join(', ');
}
