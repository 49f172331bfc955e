import { addDays, type Day } from '../engine/day.ts';
import { milestonesOf, type NudgeKind } from '../engine/milestones.ts';
import { groupBy } from '../group-by.ts';
import type { DateOrder } from '../notes/contract.ts';
import { membersOfClub } from '../records/clubs.ts';
import type { Member, Tree } from '../records/schema.ts';
import { standingsOf } from '../records/standing.ts';
import { treesOf } from '../records/trees.ts';
import { calendarFile } from './calendar.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb, Feature } from './feature.ts';
import { choiceOption } from './option-kinds.ts';
import { ownTree } from './pick-tree.ts';
import { type Field, type Reply, reply } from './reply.ts';
import { countWords, dayWords, distanceWords, listWords } from './words.ts';

const USUAL_DAYS = 60;
const MOST_NAMES_A_LINE = 8;
/** More days than this are only counted; the calendar file has them. */
const MOST_LINES = 24;

/** What is due on a tree, on a day. */
export interface DueItem {
  readonly tree: Tree;
  readonly member: Member;
  readonly kind: NudgeKind;
  readonly on: Day;
  /** Label of the season it belongs to. */
  readonly season: string;
}

export const dueFeature: Feature = {
  command: {
    name: 'due',
    description: 'What comes when: decision dates, second looks, ripe figs, frost',
    visibility: 'everyone',
    options: [
      choiceOption('whose', 'yours, or the whole club’s', { me: 'me', club: 'club' }),
      {
        name: 'days',
        type: 'integer',
        min: 1,
        max: 400,
        description: 'how far ahead, 60 days unless you say',
      },
    ],
  },
  handle: (context, input) =>
    dueReply(context, {
      whose: input.whose === 'club' ? 'club' : 'me',
      ...(typeof input.days === 'number' ? { days: input.days } : {}),
    }),
};

/** `due-tree:<tree id>`, for "which tree?". */
export const dueTreeVerb: ButtonVerb = {
  verb: 'due-tree',
  press: async (context, [id]) => dueReply(context, { whose: 'me', tree: await ownTree(context, id) }),
};

export interface DueRequest {
  readonly whose: 'me' | 'club';
  readonly days?: number;
  readonly tree?: Tree | null;
}

export async function dueReply(context: Context, request: DueRequest): Promise<Reply> {
  const order = dateOrderOf(context);
  const today = todayOf(context);
  const days = request.days ?? USUAL_DAYS;
  const until = addDays(today, days);
  const all = await dueItems(context, request);
  const items = all.filter(({ on }) => on >= today && on <= until);
  const whose = request.whose === 'club' ? 'the club' : (request.tree?.name ?? 'you');
  return reply({
    title:
      items.length === 0
        ? `Nothing due for ${whose} in the next ${days} days`
        : `Due for ${whose}, next ${days} days`,
    text: [
      ...(items.length === 0 ? ['Tell me what you see, and ask again.'] : []),
      ...(all.length === 0 ? [] : ['The calendar file has every date of this season.']),
    ].join(' '),
    fields: dueFields(items, request.whose === 'club', today, order),
    files: all.length === 0 ? [] : [calendarOf(context, all, request)],
    data: {
      items: items.map(({ tree, member, kind, on }) => ({
        tree: tree.name,
        kind,
        on,
        ...(request.whose === 'club' ? { member: member.name } : {}),
      })),
    },
  });
}

function calendarOf(context: Context, items: readonly DueItem[], request: DueRequest) {
  const ofClub = request.whose === 'club';
  return calendarFile(
    items.map(({ tree, member, kind, on, season }) => ({
      treeId: tree.id,
      tree: tree.name,
      ...(ofClub ? { member: member.name } : {}),
      kind,
      season,
      on,
    })),
    ofClub ? `Fig dates of ${context.club.name}` : `Fig dates of ${context.member.name}`,
    context.clock.now(),
  );
}

/** All that is due from now on, in order, of a member or of every member of the club. */
export async function dueItems(
  context: Context,
  request: Pick<DueRequest, 'whose' | 'tree'>,
): Promise<DueItem[]> {
  const members =
    request.whose === 'club' ? await membersOfClub(context.db, context.club.id) : [context.member];
  const items: DueItem[] = [];
  for (const member of members) {
    const today = todayOf({ ...context, member });
    const trees = request.tree ? [request.tree] : await treesOf(context.db, member.id);
    for (const standing of await standingsOf(context.db, member, trees, today)) {
      const season = standing.season.label;
      const closed = standing.tree.leftAloneIn === season || standing.result.tippedOn !== null;
      for (const { kind, on, holds } of milestonesOf(standing.input)) {
        if (closed && (kind === 'heads-up' || kind === 'decision')) continue;
        if (holds && on >= today) items.push({ tree: standing.tree, member, kind, on, season });
      }
    }
  }
  return items.sort((a, b) =>
    a.on < b.on ? -1 : a.on > b.on ? 1 : a.tree.nameKey < b.tree.nameKey ? -1 : 1,
  );
}

export const DUE_WORDS: Readonly<Record<NudgeKind, string>> = {
  'heads-up': 'two weeks to the decision',
  decision: 'decide: tip or not',
  'second-look': 'look again after the tip',
  'ripe-watch': 'first ripe figs',
  frost: 'two weeks to the first frost',
  dormant: 'dormant: cuttings, pruning, cover',
};

function dueFields(items: readonly DueItem[], withMembers: boolean, today: Day, order: DateOrder): Field[] {
  const alike = [...groupBy(items, ({ on, kind }) => `${on} ${kind}`).values()];
  const lines = alike.slice(0, MOST_LINES).flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const names = group.map(({ tree, member }) =>
      withMembers ? `${member.name}’s ${tree.name}` : tree.name,
    );
    const shown = names.slice(0, MOST_NAMES_A_LINE);
    const more = names.length - shown.length;
    const who = more > 0 ? `${shown.join(', ')} and ${countWords(more, 'more', 'more')}` : listWords(shown);
    return [
      {
        name: `${dayWords(first.on, order)} (${distanceWords(today, first.on)})`,
        value: `${DUE_WORDS[first.kind]}: ${who}`,
      },
    ];
  });
  const rest = alike.slice(MOST_LINES).flat();
  const last = rest.at(-1);
  if (last === undefined) return lines;
  return [
    ...lines,
    { name: 'And later', value: `${countWords(rest.length, 'date')} more until ${dayWords(last.on, order)}` },
  ];
}
