import type { AskIntent } from './intents.ts';

export type CueIntent = Exclude<AskIntent, 'record' | 'tip-now' | 'maybe-ripe'>;

/**
 * What a question is about, word by word, for questions that no phrase of `intents.ts` covers: an intent, a
 * weight, the words. A word may speak for several intents. A new word is one more entry on a line here.
 */
export const QUESTION_CUES: readonly (readonly [intent: CueIntent, weight: number, words: string])[] = [
  [
    'tip',
    4,
    'tip tipping tipped pinch pinching pinched pnch nip nipping nipped stop stopping stopped top topping topped detip',
  ],
  ['tip', 2, 'snip snipping clip leaders leader apex apical terminal tips tops point points'],
  ['tip', 1, 'off out yet again skip redo over early late soon side'],

  ['ripe-when', 4, 'ripe rip ripen ripens ripening ripened ripeness eta edible pickable harvestable'],
  [
    'ripe-when',
    3,
    'ready eat eating harvest harvesting picking pick taste tasting munch scoff dessert jam soft crop cropping finish eatable',
  ],
  [
    'ripe-when',
    2,
    'chance chances odds gonna hopes will arrival finish estimate countdown forecast figs fig first expect date window arrive arrival due long far close weeks days until till wait',
  ],
  ['ripe-when', 1, 'when wen whens time soon before by chance yet nearly almost month roughly rough'],

  [
    'due',
    4,
    'due overdue chores chore jobs job todo tasks task agenda deadline deadlines reminders schedule upcoming outstanding pending',
  ],
  [
    'due',
    3,
    'need needs needing want wants wanting attention urgent crying begging jobs neglected neglecting forget forgetting forgotten behind',
  ],
  [
    'due',
    2,
    'next do doing done now today week weekend tomorrow month watering feeding water feed anything something list plate calendar should priority priorities first coming look care',
  ],
  ['due', 1, 'what whats any which'],

  [
    'roundup',
    4,
    'everyone everybody everyones everybodys members member others club group gang folks crew roundup recap summary leaderboard standings community neighbours yall lads growers',
  ],
  [
    'roundup',
    3,
    'anyone anybody anyones we us our season totals total stats tally collectively together between news highlights who whos whose elses else rest',
  ],
  ['roundup', 1, 'far year week month doing going best most ahead'],

  [
    'help',
    4,
    'commands command manual instructions tutorial help guide cheat cheatsheet settings features menu faq format syntax',
  ],
  [
    'help',
    3,
    'undo delete edit export import rename unsubscribe mute notifications celsius fahrenheit metric photos photo pictures timezone language units voice entry entries notes bot app reminders nudges',
  ],
  [
    'help',
    2,
    'you understand read tell ask log logging record recording type write say add change remove set use see find show work works switch old',
  ],
  ['help', 1, 'how can could where way right things sort'],
];

const byWord = new Map<string, (readonly [CueIntent, number])[]>();
for (const [intent, weight, words] of QUESTION_CUES) {
  for (const word of words.split(' ')) {
    const cues = byWord.get(word) ?? [];
    cues.push([intent, weight]);
    byWord.set(word, cues);
  }
}

/** What a word says of a question's intent; nothing for most words. */
export function cuesOf(word: string): readonly (readonly [CueIntent, number])[] {
  return byWord.get(word) ?? NO_CUES;
}

const NO_CUES: readonly (readonly [CueIntent, number])[] = [];
