import type { Day } from '../engine/day.ts';
import { groupBy } from '../group-by.ts';
import type { DateOrder } from '../notes/contract.ts';
import { outlookOfTree, type SupposedOutlook } from '../records/outlook.ts';
import { preparedRecord } from '../records/prepared.ts';
import type { Tree } from '../records/schema.ts';
import type { Standing } from '../records/standing.ts';
import { standingOf, standingsOf } from '../records/standing.ts';
import { treesOf } from '../records/trees.ts';
import type { Context } from './context.ts';
import { OVERWINTER_WORDS, outlookDates } from './cool-summer-words.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb, Feature } from './feature.ts';
import { WHICH_TREE } from './option-kinds.ts';
import { outlookBrief, outlookData, outlookSentence } from './outlook-words.ts';
import { askWhichTree, ownTree, pickTree } from './pick-tree.ts';
import { type Button, type Field, type Reply, reply } from './reply.ts';
import { verdictData } from './verdict-data.ts';
import { SAP_CAUTION, verdictLabel, verdictWords } from './verdict-words.ts';
import { countWords, dayWords, listWords, rangeWords, sentence } from './words.ts';

/** Up to so many trees each get a line; beyond, trees that stand alike share one. */
const MOST_SINGLE_LINES = 12;
const MOST_NAMES_A_LINE = 10;

export const tipFeature: Feature = {
  command: {
    name: 'tip',
    description: 'Should I tip this one? Without a tree: all of them, the most urgent first',
    visibility: 'everyone',
    options: [WHICH_TREE],
  },
  async handle(context, input) {
    if (typeof input.tree !== 'string') return tipAll(context);
    const picked = await pickTree(context, input.tree);
    return picked.kind === 'one' ? tipOne(context, picked.tree) : askWhichTree(picked.trees, 'tip');
  },
};

/** `tip:<tree id>`: the verdict on that tree, for "which tree?". */
export const tipVerb: ButtonVerb = {
  verb: 'tip',
  async press(context, [id]) {
    return tipOne(context, await ownTree(context, id));
  },
};

export async function tipOne(context: Context, tree: Tree): Promise<Reply> {
  const order = dateOrderOf(context);
  const standing = await standingOf(context.db, context.member, tree, todayOf(context));
  const record = await preparedRecord(context.db, context.member);
  const outlook = record === null ? null : outlookOfTree(record, standing);
  const { title, paragraphs } = verdictWords(standing, order);
  const questions = openQuestions(standing, order);
  return reply({
    title,
    text: [
      ...paragraphs,
      ...(outlook === null ? [] : [outlookSentence(outlook)]),
      ...(record === null ? [] : outlookDates(record, [standing], order)),
      ...(standing.result.timing === 'no-heat' ? [OVERWINTER_WORDS] : []),
      ...questions.paragraphs,
    ].join('\n\n'),
    fields: dateFields(standing, order),
    buttons: [...questions.buttons, ...verdictButtons(standing)],
    data: treeData(standing, outlook),
  });
}

/** What only the member can tell: whose figs they are, and whether all dropped. */
export function openQuestions(
  { tree, result }: Standing,
  order: DateOrder,
): { paragraphs: string[]; buttons: Button[] } {
  const paragraphs: string[] = [];
  const buttons: Button[] = [];
  if (result.cropQuestion) {
    paragraphs.push(
      `The figs noted on ${tree.name} came so early that they may be brebas, on last year's wood, which say nothing about the main crop. Which are they?`,
    );
    buttons.push(
      { label: 'Brebas', action: `crop:${tree.id}:breba` },
      { label: 'Main crop', action: `crop:${tree.id}:main` },
    );
  }
  if (result.contradictedOn !== null) {
    paragraphs.push(
      `On ${dayWords(result.contradictedOn, order)} you noted none on it, after fruitlets before. If all have dropped, say so: "${tree.name} dropped all its figs".`,
    );
  }
  return { paragraphs, buttons };
}

function verdictButtons({ tree, result }: Standing): Button[] {
  if (result.verdict !== 'tip') return [];
  return [
    { label: 'I tipped it', action: `log:${tree.id}:tipped` },
    { label: 'Fruitlets are showing', action: `log:${tree.id}:fruitlets` },
  ];
}

export function dateFields({ tree, result, span }: Standing, order: DateOrder): Field[] {
  const fields: Field[] = [];
  // Of a tree that bears no figs, dates would only mislead.
  if (result.verdict === 'not-for-fruit') return fields;
  if (result.decisionDate !== null)
    fields.push({ name: 'Decision date', value: dayWords(result.decisionDate, order) });
  if (result.heatEnd !== null) {
    const cover = tree.coverDays > 0 ? `, ${countWords(tree.coverDays, 'day')} of cover included` : '';
    fields.push({ name: 'Heat ends', value: `${dayWords(result.heatEnd, order)}${cover}` });
  }
  if (result.firstFrost !== null)
    fields.push({ name: 'First frost', value: `about ${dayWords(result.firstFrost, order)}` });
  if (result.ripeFrom !== null && result.ripeTo !== null) {
    fields.push({ name: 'Ripe', value: rangeWords(result.ripeFrom, result.ripeTo, order) });
  }
  fields.push({ name: 'Fruitlet to ripe', value: spanWords(span) });
  return fields;
}

function spanWords(span: Standing['span']): string {
  const days = span.from === span.to ? countWords(span.from, 'day') : `${span.from}–${span.to} days`;
  switch (span.basis) {
    case 'own':
      return `${days}, as you set it`;
    case 'published':
      return `${days}, published for this cultivar`;
    case 'learned':
      return `${days}, from ${countWords(span.records ?? 0, 'club record')}`;
    case 'group':
      return span.group === 'unknown'
        ? `${days}, since its ripening group is not known`
        : `${days}, usual for ${span.group} kinds`;
  }
}

export async function tipAll(context: Context): Promise<Reply> {
  const order = dateOrderOf(context);
  const trees = await treesOf(context.db, context.member.id);
  if (trees.length === 0) {
    return reply({
      title: 'No trees yet',
      text: 'Add your first with /tree add name:Pot 3 cultivar:Brunswick, for example; then ask again.',
      data: { items: [] },
    });
  }
  const standings = byUrgency(await standingsOf(context.db, context.member, trees, todayOf(context)));
  const record = await preparedRecord(context.db, context.member);
  const outlooks = new Map(
    standings.map((standing) => [standing, record === null ? null : outlookOfTree(record, standing)]),
  );
  const toTip = standings.filter(({ result }) => result.verdict === 'tip');
  return reply({
    title:
      toTip.length === 0 ? 'Nothing to tip today' : `${sentence(countWords(toTip.length, 'tree'))} to tip`,
    text: [
      ...(standings.length === 1 ? [] : [`${countWords(standings.length, 'tree')}, the most urgent first.`]),
      ...(toTip.length === 0 ? [] : [`Side shoots first. ${SAP_CAUTION}`]),
    ].join('\n\n'),
    fields: treeFields(standings, outlooks, order),
    data: {
      items: standings.map((standing) => treeData(standing, outlooks.get(standing) ?? null)),
    },
  });
}

const URGENCY: Readonly<Record<Standing['result']['verdict'], number>> = {
  tip: 0,
  await: 1,
  watch: 2,
  leave: 3,
  'no-deadline': 4,
  'let-grow': 5,
  'not-for-fruit': 6,
  'set-up': 7,
};

/** Trees to tip by how few days are left for it; trees to watch by their decision date. */
export function byUrgency(standings: readonly Standing[]): Standing[] {
  return [...standings].sort(
    (a, b) =>
      URGENCY[a.result.verdict] - URGENCY[b.result.verdict] ||
      compare(dayThatCounts(a), dayThatCounts(b)) ||
      compare(a.tree.nameKey, b.tree.nameKey),
  );
}

function dayThatCounts({ result }: Standing): Day | null {
  switch (result.verdict) {
    case 'tip':
      return result.latestTipDate;
    case 'await':
      return result.lookFrom;
    case 'watch':
      return result.decisionDate;
    default:
      return result.ripeFrom;
  }
}

function compare(a: string | null, b: string | null): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return a < b ? -1 : 1;
}

/** A verdict with its outlook, for machines. */
export function treeData(standing: Standing, outlook: SupposedOutlook | null): Record<string, unknown> {
  return { ...verdictData(standing), ...(outlook === null ? {} : { outlook: outlookData(outlook) }) };
}

/** A line for each tree; where they are many, one for all that stand alike. */
export function treeFields(
  standings: readonly Standing[],
  outlooks: ReadonlyMap<Standing, SupposedOutlook | null>,
  order: DateOrder,
): Field[] {
  const lineOf = (standing: Standing) => {
    const outlook = outlooks.get(standing) ?? null;
    const line = standsLike(standing, order);
    return outlook === null ? line : `${line}; ${outlookBrief(outlook)}`;
  };
  if (standings.length <= MOST_SINGLE_LINES) {
    return standings.map((standing) => ({ name: standing.tree.name, value: lineOf(standing) }));
  }
  const alike = groupBy(standings, lineOf);
  return [...alike].map(([how, group]) => {
    const names = group.map(({ tree }) => tree.name);
    const shown = names.slice(0, MOST_NAMES_A_LINE);
    const more = names.length - shown.length;
    return {
      name: sentence(how),
      value: more > 0 ? `${shown.join(', ')} and ${more} more` : listWords(shown),
    };
  });
}

function standsLike({ result }: Standing, order: DateOrder): string {
  const label = verdictLabel(result.verdict, result.timing);
  switch (result.verdict) {
    case 'tip':
      return `${label}, no later than ${dayOr(result.latestTipDate, order)}`;
    case 'watch':
      return `${label} until ${dayOr(result.decisionDate, order)}`;
    case 'await':
      return `tipped, look from ${dayOr(result.lookFrom, order)}`;
    case 'leave':
      return result.ripeFrom !== null && result.ripeTo !== null
        ? `${label}, ripe about ${rangeWords(result.ripeFrom, result.ripeTo, order)}`
        : label;
    default:
      return label;
  }
}

function dayOr(of: Day | null, order: DateOrder): string {
  return of === null ? 'no date' : dayWords(of, order);
}
