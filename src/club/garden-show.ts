import { dateOrderOf, todayOf } from './date-option.ts';
import type { Feature } from './feature.ts';
import { gardenData, gardenFields, gardenStory } from './garden-words.ts';
import { reply } from './reply.ts';

export const gardenShow: Feature = {
  command: {
    name: 'garden show',
    description: 'Your season, with its picture',
    visibility: 'everyone',
    options: [],
  },
  async handle(context) {
    const order = dateOrderOf(context);
    return reply({
      title: 'Your garden',
      text: gardenStory(context.member, todayOf(context), order),
      fields: gardenFields(context.member, context.club, order),
      data: gardenData(context.member, context.club),
    });
  },
};
