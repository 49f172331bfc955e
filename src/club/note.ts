import { dateOrderOf, readNoteDay, takenWords } from './date-option.ts';
import type { Feature } from './feature.ts';
import { askWhichTree, pickTree } from './pick-tree.ts';
import { takeNote } from './take-note.ts';

export const noteFeature: Feature = {
  command: {
    name: 'note',
    description: 'Log what you saw or did, as you would say it',
    visibility: 'everyone',
    options: [
      {
        name: 'text',
        type: 'text',
        required: true,
        maxLength: 2000,
        description: 'such as: 3 fruitlets on the alma',
      },
      {
        name: 'tree',
        type: 'text',
        complete: 'tree',
        maxLength: 100,
        description: 'which tree, if the text does not say',
      },
      { name: 'on', type: 'text', maxLength: 60, description: 'which day, if not today' },
    ],
  },
  async handle(context, input) {
    const day = typeof input.on === 'string' ? readNoteDay(context, 'on', input.on) : undefined;
    const picked = typeof input.tree === 'string' ? await pickTree(context, input.tree) : undefined;
    if (picked?.kind === 'several') {
      return askWhichTree(picked.trees, 'tree-story', 'Which tree? Send the note again with its whole name');
    }
    const answer = await takeNote(context, {
      text: String(input.text),
      ...(picked === undefined ? {} : { about: [picked.tree.id] }),
      ...(day === undefined ? {} : { on: day.on }),
    });
    if (day === undefined) return answer;
    const taken = takenWords(day.understood, day.on, dateOrderOf(context));
    return {
      ...answer,
      text: taken === null ? answer.text : `${taken}\n\n${answer.text}`,
      data: { ...answer.data, understood: [day.understood] },
    };
  },
};
