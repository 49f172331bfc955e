import { outlookData, outlookSentence } from '../club/outlook-words.ts';
import { type Button, type Reply, reply } from '../club/reply.ts';
import { SAP_CAUTION } from '../club/verdict-words.ts';
import { winterReaderOf } from '../club/winter-words.ts';
import { countWords, listSome } from '../club/words.ts';
import { type Day, daysBetween } from '../engine/day.ts';
import type { PreparedWarmth } from '../engine/past-seasons.ts';
import { groupBy } from '../group-by.ts';
import type { DateOrder } from '../notes/contract.ts';
import { outlookOfTree, type SupposedOutlook } from '../records/outlook.ts';
import type { Member, Nudge, NudgeKind } from '../records/schema.ts';
import type { Standing } from '../records/standing.ts';
import { itemButtons, MOST_BUTTONS, quietButtons } from './item-buttons.ts';
import { groupParagraphs, itemParagraphs, itemTitle, kindTitle } from './item-words.ts';

/** One nudge and how its tree stands this morning. */
export interface MorningItem {
  readonly nudge: Pick<Nudge, 'id' | 'kind' | 'due' | 'occurrence'>;
  readonly standing: Standing;
}

export interface Morning {
  readonly member: Member;
  readonly today: Day;
  /** At least one. */
  readonly items: readonly MorningItem[];
  /** For the outlook of decisions; null where there is none. */
  readonly record: PreparedWarmth | null;
  /** Whether to ask if nudges are wanted at all. */
  readonly asksQuiet: boolean;
}

/** What presses hardest stands first. */
const BY_URGENCY: readonly NudgeKind[] = [
  'decision',
  'second-look',
  'ripe-watch',
  'frost',
  'heads-up',
  'dormant',
];

/** Up to this many trees with the same thing to say are spoken of one by one; only a decision differs by tree. */
const ONE_BY_ONE: Readonly<Record<NudgeKind, number>> = {
  'heads-up': 1,
  decision: 3,
  'second-look': 1,
  'ripe-watch': 1,
  frost: 1,
  dormant: 1,
};

/** Names before an outlook; the rest is counted. */
const MOST_NAMES = 6;

/** Discord shows at most 4,096 characters; this leaves room for names. */
const MOST_CHARACTERS = 3500;

/** All that is due to a member on one morning, as one message. */
export function composeMorning({ member, today, items, record, asksQuiet }: Morning): Reply {
  const order: DateOrder = member.dates ?? (member.units === 'C' ? 'DMY' : 'MDY');
  const winter = winterReaderOf(member, order);
  const sorted = [...items].sort((a, b) => urgencyOf(a) - urgencyOf(b));
  const paragraphs: string[] = [];
  for (const [kind, group] of groupBy(sorted, ({ nudge }) => nudge.kind)) {
    if (group.length > ONE_BY_ONE[kind]) {
      paragraphs.push(...groupParagraphs(kind, group, today, winter));
      if (kind === 'decision') paragraphs.push(...groupOutlooks(group, record));
    } else {
      for (const item of group) {
        paragraphs.push(...itemParagraphs(item, today, winter, items.length > 1));
        const outlook = outlookOfItem(item, record);
        if (outlook !== null) paragraphs.push(outlookSentence(outlook));
      }
    }
  }
  const tips = sorted.some(({ nudge }) => nudge.kind === 'decision');
  const late = lateWords(sorted, today);
  const text = [
    ...(late === null ? [] : [late]),
    ...paragraphs,
    ...(tips ? [SAP_CAUTION] : []),
    ...(asksQuiet ? [QUIET_WORDS] : []),
  ].join('\n\n');
  return reply({
    title: titleOf(sorted),
    text: text.length > MOST_CHARACTERS ? `${text.slice(0, MOST_CHARACTERS)}…` : text,
    buttons: buttonsOf(sorted, asksQuiet),
    data: {
      items: sorted.map(({ nudge, standing }) => ({
        tree: standing.tree.name,
        kind: nudge.kind,
        due: nudge.due,
        late: nudge.due < today,
        ...outlookPart({ nudge, standing }, record),
      })),
      ...(asksQuiet ? { asks: 'quiet' } : {}),
    },
  });
}

/** How past seasons would have ended, for a tree whose decision it is. */
function outlookOfItem(
  { nudge, standing }: MorningItem,
  record: PreparedWarmth | null,
): SupposedOutlook | null {
  return record === null || nudge.kind !== 'decision' ? null : outlookOfTree(record, standing);
}

/** Trees of one span share their outlook, so many trees take few sentences. */
function groupOutlooks(group: readonly MorningItem[], record: PreparedWarmth | null): string[] {
  const told = group.flatMap((item) => {
    const outlook = outlookOfItem(item, record);
    return outlook === null ? [] : [{ name: item.standing.tree.name, words: outlookSentence(outlook) }];
  });
  return [...groupBy(told, ({ words }) => words)].map(
    ([words, trees]) =>
      `${listSome(
        trees.map(({ name }) => name),
        MOST_NAMES,
      )}. ${words}`,
  );
}

function outlookPart(item: MorningItem, record: PreparedWarmth | null) {
  const outlook = outlookOfItem(item, record);
  return outlook === null ? {} : { outlook: outlookData(outlook) };
}

const QUIET_WORDS =
  'You have answered none of these for a season. If they are of no use to you, turn them off; I stay silent from now on unless you keep them or write to me. /due and /tip answer at any time.';

function titleOf(items: readonly MorningItem[]): string {
  const [first] = items;
  if (first !== undefined && items.length === 1) return itemTitle(first);
  const kinds = [...new Set(items.map(({ nudge }) => nudge.kind))];
  const [kind] = kinds;
  const trees = new Set(items.map(({ standing }) => standing.tree.id)).size;
  return kinds.length === 1 && kind !== undefined ? kindTitle(kind, trees) : `${trees} trees this morning`;
}

function lateWords(items: readonly MorningItem[], today: Day): string | null {
  const days = Math.max(...items.map(({ nudge }) => daysBetween(nudge.due, today)));
  if (days <= 0) return null;
  const by = countWords(days, 'day');
  return items.length === 1
    ? `This comes late by ${by}; I could not reach you before. It still holds.`
    : `Some of this comes late, by up to ${by}; I could not reach you before. It still holds.`;
}

function buttonsOf(items: readonly MorningItem[], asksQuiet: boolean): Button[] {
  const room = MOST_BUTTONS - (asksQuiet ? quietButtons.length : 0);
  return [...itemButtons(items, room), ...(asksQuiet ? quietButtons : [])];
}

function urgencyOf({ nudge }: MorningItem): number {
  return BY_URGENCY.indexOf(nudge.kind);
}
