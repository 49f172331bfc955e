import type { Button } from '../club/reply.ts';
import type { NudgeKind } from '../records/schema.ts';
import type { MorningItem } from './compose.ts';

/** Discord shows five rows of five. */
export const MOST_BUTTONS = 25;

/** Longest part of a tree's name on a button, of 80 characters on Discord. */
const NAME_CHARACTERS = 40;

const LABELS = {
  showing: 'Fruitlets are showing',
  tipped: 'I tipped it',
  later: 'Remind me in 7 days',
  leave: 'Leave it this year',
  'look-fruitlets': 'Fruitlets',
  'look-branched': 'Only branches',
  'look-nothing': 'Nothing yet',
  picked: 'I picked the first',
  done: 'Done',
} as const;

/** What can be answered to a nudge; the first part of its button's action. */
export type NudgeAnswer = keyof typeof LABELS;

export function answersTo(kind: NudgeKind): readonly NudgeAnswer[] {
  switch (kind) {
    case 'heads-up':
      return ['showing', 'tipped', 'leave'];
    case 'decision':
      return ['showing', 'tipped', 'later', 'leave'];
    case 'second-look':
      return ['look-fruitlets', 'look-branched', 'look-nothing'];
    case 'ripe-watch':
      return ['picked', 'later'];
    case 'frost':
    case 'dormant':
      return ['done', 'later'];
  }
}

export const quietButtons: readonly Button[] = [
  { label: 'Turn nudges off', action: 'nudges:off' },
  { label: 'Keep them', action: 'nudges:keep' },
];

/** The answers to one nudge; `named` where the message speaks of other trees too. */
export function answerButtons({ nudge, standing }: MorningItem, named: boolean): Button[] {
  const prefix = named ? `${shorten(standing.tree.name)}: ` : '';
  return answersTo(nudge.kind).map((answer) => ({
    label: prefix === '' ? LABELS[answer] : prefix + lowered(LABELS[answer]),
    action: `${answer}:${nudge.id}`,
  }));
}

/**
 * Every nudge's answers where they fit into `room` buttons; else one button a nudge, which opens its answers,
 * for as many as fit.
 */
export function itemButtons(items: readonly MorningItem[], room: number): Button[] {
  const all = items.flatMap((item) => answerButtons(item, items.length > 1));
  if (all.length <= room) return all;
  return items.slice(0, room).map(({ nudge, standing }) => ({
    label: `Answer for ${shorten(standing.tree.name)}`,
    action: `nudge:${nudge.id}`,
  }));
}

function lowered(label: string): string {
  return label.startsWith('I ') ? label : label.charAt(0).toLowerCase() + label.slice(1);
}

function shorten(name: string): string {
  const signs = [...name];
  return signs.length > NAME_CHARACTERS ? `${signs.slice(0, NAME_CHARACTERS - 1).join('')}…` : name;
}
