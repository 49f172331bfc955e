import type { MonthDay } from '../engine/day.ts';
import { addDays, daysBetween } from '../engine/day.ts';
import { decisionDate } from '../engine/decision.ts';
import type { FrostStat } from '../engine/frost.ts';
import { gardenSeasonOf } from '../engine/garden-season.ts';
import { outlookDecisionDate } from '../engine/outlook-decision.ts';
import type { PreparedWarmth } from '../engine/past-seasons.ts';
import { seasonOf } from '../engine/season.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { FrostDates } from '../pictures/season-input.ts';
import { drawSeason } from '../pictures/season-picture.ts';
import { gardenFactsOf, hemisphereOf, knowsSeason, markOf } from '../records/garden.ts';
import { preparedRecord } from '../records/prepared.ts';
import type { Member } from '../records/schema.ts';
import type { Standing } from '../records/standing.ts';
import { loadRecord } from '../weather/series.ts';
import type { Context } from './context.ts';
import { outlookDates } from './cool-summer-words.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { Feature } from './feature.ts';
import { gardenTrees } from './garden-trees.ts';
import { gardenData, gardenFields, gardenStory } from './garden-words.ts';
import { type ReplyFile, reply } from './reply.ts';
import { countWords, dayWords, listSome } from './words.ts';

/** Less than this between the two rules is no difference worth a word. Design: "by more than a week". */
const WORTH_SAYING_DAYS = 7;
const MOST_NAMED = 5;

export const gardenShow: Feature = {
  command: {
    name: 'garden show',
    description: 'Your season, with its picture',
    visibility: 'everyone',
    options: [],
  },
  async handle(context) {
    const { member } = context;
    const order = dateOrderOf(context);
    const today = todayOf(context);
    const trees = await gardenTrees(context.db, member, today, order);
    const { standings } = trees;
    const record = await preparedRecord(context.db, member);
    const rules =
      record === null
        ? []
        : [...rulesThatDiffer(member, standings, record, order), ...outlookDates(record, standings, order)];
    return reply({
      title: 'Your garden',
      text: [gardenStory(member, today, order), ...rules].join('\n\n'),
      fields: [...gardenFields(member, context.club, order), ...trees.fields],
      files: knowsSeason(member) ? [await seasonPicture(context, standings)] : [],
      data: { ...gardenData(member, context.club), trees: trees.items },
    });
  },
};

/** Trees whose decision date by days and by outlook are more than a week apart, and how to choose. */
function rulesThatDiffer(
  member: Member,
  standings: readonly Standing[],
  record: PreparedWarmth,
  order: DateOrder,
): string[] {
  const dateless: string[] = [];
  const apart = standings.flatMap(({ tree, span, season, input, result }) => {
    if (result.heatEnd === null || result.verdict === 'not-for-fruit') return [];
    const byOutlook = outlookDecisionDate(record, span, season);
    if (byOutlook === null) {
      dateless.push(tree.name);
      return [];
    }
    const byDays = decisionDate(result.heatEnd, span, 0);
    const outlookDay = addDays(byOutlook, -input.garden.caution);
    const daysDay = addDays(byDays, -input.garden.caution);
    if (Math.abs(daysBetween(daysDay, outlookDay)) <= WORTH_SAYING_DAYS) return [];
    return [`${tree.name}: ${dayWords(daysDay, order)} by days, ${dayWords(outlookDay, order)} by outlook`];
  });
  const byDays =
    dateless.length > 0 && member.rule === 'outlook'
      ? [
          `The outlook has no date for ${listSome(dateless, MOST_NAMED)}: on no day would a tip have ripened figs before frost in four of five past seasons, or fewer than three can tell. So the days are counted back there.`,
        ]
      : [];
  if (apart.length === 0) return byDays;
  const shown = apart.slice(0, MOST_NAMED);
  const more =
    apart.length > shown.length ? `; and ${countWords(apart.length - shown.length, 'more tree')}` : '';
  const now = member.rule === 'days' ? 'by days' : 'by outlook';
  const other = member.rule === 'days' ? 'outlook' : 'days';
  return [
    ...byDays,
    `Two rules give dates more than a week apart. ${shown.join('; ')}${more}. By outlook, a tip on that day would have ripened figs before frost in four of five past seasons. Nudges go ${now}; to change that type /garden set rule:${other}.`,
  ];
}

async function seasonPicture(context: Context, standings: readonly Standing[]): Promise<ReplyFile> {
  const { member } = context;
  const today = todayOf(context);
  const season = seasonOf(today, hemisphereOf(member));
  const series = await loadRecord(context.db, member);
  const { name, bytes, alt } = await drawSeason({
    garden: member.place ?? `${member.name}’s garden`,
    season,
    today,
    units: member.units,
    dates: dateOrderOf(context),
    mark: markOf(member),
    series: series.length === 0 ? null : series,
    heat: gardenSeasonOf(gardenFactsOf(member), season).heat,
    firstFrost: frostDates(member.firstFrost, member.summary?.frost.first),
    lastFrost: frostDates(member.lastFrost, member.summary?.frost.last),
    trees: standings.map(({ tree, result }) => ({
      name: tree.name,
      decisionDate: result.verdict === 'not-for-fruit' ? null : result.decisionDate,
      settled: result.fruit.present || result.tippedOn !== null,
    })),
  });
  return { name, bytes, alt };
}

function frostDates(stated: MonthDay | null, stat: FrostStat | undefined): FrostDates | null {
  if (stated !== null) return { on: stated, from: null, to: null };
  if (stat?.p50 == null) return null;
  return { on: stat.p50, from: stat.p10, to: stat.p90 };
}
