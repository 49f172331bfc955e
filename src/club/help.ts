import { knowsSeason } from '../records/garden.ts';
import { treesOf } from '../records/trees.ts';
import { PLACES_CREDIT } from '../weather/places.ts';
import type { Context } from './context.ts';
import { dateOrderOf } from './date-option.ts';
import type { Feature } from './feature.ts';
import { type Reply, reply } from './reply.ts';

export const helpFeature: Feature = {
  command: {
    name: 'help',
    description: 'How to begin, and what there is',
    visibility: 'only-you',
    options: [],
  },
  handle: (context) => helpReply(context),
};

/** What to do next for this very member, then what there is. */
export async function helpReply(context: Context): Promise<Reply> {
  const trees = await treesOf(context.db, context.member.id);
  const example = dateOrderOf(context) === 'MDY' ? 'October 15' : '15 October';
  const steps = [
    knowsSeason(context.member)
      ? null
      : `Say when your heat ends: /garden set place: and your town, then heat_end:${example} if you know it, or /garden weather to have it worked out.`,
    trees.length > 0 ? null : 'Add a tree: /tree add name:Pot 3 cultivar:Brunswick',
    'Tell me what you see, in your own words: "3 fruitlets on pot 3", "tipped the alma on Sunday".',
    'Ask: "should I tip pot 3?"',
  ].filter((step) => step !== null);
  return reply({
    title: 'How Ostiole helps',
    text: [
      'I keep your fig trees and what you see on them, tell you the last day to tip each one, and remind you on that day if it shows no fruitlets.',
      steps.map((step, i) => `${i + 1}. ${step}`).join('\n'),
    ].join('\n\n'),
    fields: [
      { name: '/garden', value: 'set where you garden; weather for its temperatures; show your season' },
      { name: '/tree', value: 'add, edit, list, show, retire; import and export a list; wood to spare' },
      { name: '/note', value: 'log what you saw; every note can be undone' },
      { name: '/tip', value: 'should I tip this one? or all of them' },
      { name: '/due', value: 'what comes when, with a calendar file' },
      { name: '/roundup', value: 'the club’s week, or any season of it' },
      {
        name: '/mydata',
        value: 'take your records out, erase them, or keep your trees out of what the club learns',
      },
      {
        name: 'Sources',
        value: `${PLACES_CREDIT} Daily temperatures: NOAA daily summaries, or NASA POWER’s grid.`,
      },
    ],
    visibility: 'only-you',
    data: { intent: 'help' },
  });
}
