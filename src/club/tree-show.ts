import { type Milestone, milestonesOf } from '../engine/milestones.ts';
import { outlookOfTree } from '../records/outlook.ts';
import { preparedRecord } from '../records/prepared.ts';
import type { Tree } from '../records/schema.ts';
import { type Standing, standingOf } from '../records/standing.ts';
import { lineageOf, pastSeasonsOf } from '../records/stories.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import { DUE_WORDS } from './due.ts';
import type { ButtonVerb, Feature } from './feature.ts';
import {
  coverGainWords,
  harvestOfStanding,
  harvestWords,
  lateFruitWords,
  ripeningWords,
} from './harvest-words.ts';
import { WHICH_TREE } from './option-kinds.ts';
import { outlookData, outlookSentence } from './outlook-words.ts';
import { askWhichTree, ownTree, pickTree } from './pick-tree.ts';
import { type Reply, reply } from './reply.ts';
import { openQuestions } from './tip.ts';
import { treeWords } from './tree-list.ts';
import { treePicture } from './tree-show-picture.ts';
import { lineageWords, pastField, stateWords, timeLine } from './tree-show-words.ts';
import { verdictData } from './verdict-data.ts';
import { coverWords, isResting, winterReaderOf } from './winter-words.ts';
import { dayWords, distanceWords } from './words.ts';

export const treeShow: Feature = {
  command: {
    name: 'tree show',
    description: 'A tree’s story: this season, what comes next, past seasons',
    visibility: 'everyone',
    options: [{ ...WHICH_TREE, required: true }],
  },
  async handle(context, input) {
    const picked = await pickTree(context, String(input.tree), { withRetired: true });
    return picked.kind === 'one' ? showTree(context, picked.tree) : askWhichTree(picked.trees, 'show');
  },
};

/** `show:<tree id>`, for "which tree?". */
export const showVerb: ButtonVerb = {
  verb: 'show',
  press: async (context, [id]) => showTree(context, await ownTree(context, id)),
};

/** The tree's story this season, and every season before it in a line. */
export async function showTree(context: Context, tree: Tree): Promise<Reply> {
  const { db, member } = context;
  const order = dateOrderOf(context);
  const today = todayOf(context);
  const standing = await standingOf(db, member, tree, today);
  const record = await preparedRecord(db, member);
  const open = standing.result.verdict !== 'let-grow' && standing.result.fruit.pickedOn === null;
  const outlook = record === null || !open ? null : outlookOfTree(record, standing);
  const past = await pastSeasonsOf(db, member, tree, today);
  const lineage = await lineageOf(db, tree);
  const next = tree.retiredOn === null ? nextOf(standing) : null;
  const harvest = harvestOfStanding(standing);
  const picked = [
    harvestWords(harvest.main, 'fig', member.units),
    harvestWords(harvest.breba, 'breba', member.units),
  ];
  const questions = openQuestions(standing, order);
  const from = lineageWords(lineage);
  const retired =
    tree.retiredOn === null ? null : `Retired on ${dayWords(tree.retiredOn, order)}; its story is kept.`;
  const paragraphs = [
    `${treeWords(tree)}.`,
    retired ?? stateWords(standing, order),
    ripeningWords(standing, order),
    retired === null ? lateFruitWords(standing, order) : null,
    retired === null ? coverGainWords(standing) : null,
    next === null
      ? retired === null
        ? openDecision(standing)
        : null
      : `Next: ${DUE_WORDS[next.kind]}, ${dayWords(next.on, order)} (${distanceWords(today, next.on)}).`,
    outlook === null || retired !== null ? null : outlookSentence(outlook),
    isResting(standing) && retired === null ? coverWords(standing, winterReaderOf(member, order)) : null,
    ...questions.paragraphs,
  ];
  return reply({
    title: tree.name,
    text: paragraphs.filter((words) => words !== null && words !== '').join('\n\n'),
    fields: [
      ...timeLine(standing, order),
      ...present('Picked this season', picked.filter((words) => words !== null).join(', and ')),
      ...past.map((season) => pastField(season, order, member.units)),
      ...present('Lineage', from),
    ],
    buttons: questions.buttons,
    files: [await treePicture(member, standing, order)],
    data: {
      ...verdictData(standing),
      ...(outlook === null ? {} : { outlook: outlookData(outlook) }),
      retired: tree.retiredOn,
      next: next === null ? null : { kind: next.kind, on: next.on },
      timeline: standing.observations.map(({ day, kind, count, unit, crop }) => ({
        on: day,
        kind,
        ...(count === null ? {} : { count }),
        ...(unit === null ? {} : { unit }),
        ...(crop === null ? {} : { crop }),
      })),
      harvest,
      past: past.map(({ standing: _, ...story }) => story),
      lineage: {
        from: lineage.parents.map(({ name }) => name),
        origin: lineage.origin,
        struck: lineage.children.map(({ name }) => name),
      },
    },
  });
}

/** The next date of this season that still holds. */
function nextOf(standing: Standing): Milestone | null {
  const { input, tree, season, result } = standing;
  const closed = tree.leftAloneIn === season.label || result.tippedOn !== null;
  return (
    milestonesOf(input).find(
      ({ kind, on, holds }) =>
        holds && on > input.today && !(closed && (kind === 'heads-up' || kind === 'decision')),
    ) ?? null
  );
}

/** What is left to do where no date is ahead. */
function openDecision({ result, tree }: Standing): string | null {
  return result.verdict === 'tip'
    ? `Next: look at its nodes and decide; /tip tree:${tree.name} has the whole verdict.`
    : null;
}

function present(name: string, value: string | null): { name: string; value: string }[] {
  return value === null || value === '' ? [] : [{ name, value }];
}
