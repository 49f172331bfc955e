import { and, eq, gte, isNull } from 'drizzle-orm';
import type { ObservationKind } from '../engine/observation.ts';
import { UserError } from '../errors.ts';
import { answerButtons, type NudgeAnswer } from '../nudges/item-buttons.ts';
import type { Database } from '../records/database.ts';
import { answerNudge, lockNudge } from '../records/nudges.ts';
import { type Nudge, observations, type Tree } from '../records/schema.ts';
import { standingOf } from '../records/standing.ts';
import { treesOf } from '../records/trees.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { ButtonVerb } from './feature.ts';
import { leaveVerb, unleaveVerb } from './leave-alone.ts';
import { ownNudge } from './own-nudge.ts';
import { quietVerb } from './quiet-answer.ts';
import { laterVerb } from './remind-later.ts';
import { type Reply, reply } from './reply.ts';
import { askShoots, shootsVerb } from './shoots.ts';
import { recordReading } from './take-note.ts';
import { verdictWords } from './verdict-words.ts';

/** Logs what a button says was seen or done today, once a press, and answers as a typed note is answered. */
async function logAnswer(
  context: Context,
  id: string | undefined,
  answer: NudgeAnswer,
  kind: ObservationKind,
): Promise<{ reply: Reply; tree: Tree }> {
  const { nudge, tree } = await ownNudge(context, id);
  const crop = kind === 'fruitlets' || kind === 'picked' ? ({ crop: 'main' } as const) : {};
  const answered = await recordReading(context, {
    text: `${tree.name}: ${kind} (by button)`,
    reading: { logged: [{ tree: tree.id, kind, on: todayOf(context), ...crop }], ask: null },
    roster: await treesOf(context.db, context.member.id),
    isMessage: false,
    first: (tx) => takeOnce(tx, context, nudge, answer, kind),
  });
  return { reply: answered, tree };
}

/**
 * Two presses of one button may arrive at the same moment: the nudge's row is taken, then looked at. Not the
 * member's row, which is taken later and together with those of others.
 */
async function takeOnce(
  tx: Database,
  context: Context,
  { id }: Nudge,
  answer: NudgeAnswer,
  kind: ObservationKind,
): Promise<void> {
  const nudge = await lockNudge(tx, context.member.id, id);
  if (nudge?.answer === answer) {
    const [standing] = await tx
      .select({ id: observations.id })
      .from(observations)
      .where(
        and(
          eq(observations.treeId, nudge.treeId),
          eq(observations.kind, kind),
          gte(observations.day, nudge.due),
          isNull(observations.undoneAt),
        ),
      );
    if (standing)
      throw new UserError('logged-already', 'That is on record already; nothing was logged twice.');
  }
  await answerNudge(tx, id, answer, context.clock.now());
}

/** `showing:<nudge id>`: fruitlets are showing, and the decision is settled. */
const showingVerb: ButtonVerb = {
  verb: 'showing',
  press: async (context, [id]) => (await logAnswer(context, id, 'showing', 'fruitlets')).reply,
};

/** `tipped:<nudge id>`: it was tipped today; asks how many shoots. The second look counts from now on. */
const tippedVerb: ButtonVerb = {
  verb: 'tipped',
  press: async (context, [id]) => askShoots((await logAnswer(context, id, 'tipped', 'tipped')).reply),
};

/** `picked:<nudge id>`: the first ripe fig. */
const pickedVerb: ButtonVerb = {
  verb: 'picked',
  press: async (context, [id]) => (await logAnswer(context, id, 'picked', 'picked')).reply,
};

/** `look-…:<nudge id>`: what came of a tip, and what to do next. */
const lookVerbs: readonly ButtonVerb[] = [
  {
    verb: 'look-fruitlets',
    press: async (context, [id]) => (await logAnswer(context, id, 'look-fruitlets', 'fruitlets')).reply,
  },
  { verb: 'look-branched', press: (context, [id]) => lookWithout(context, id, 'look-branched', 'branched') },
  {
    verb: 'look-nothing',
    press: (context, [id]) => lookWithout(context, id, 'look-nothing', 'no-fruitlets'),
  },
];

/** No fruit came of the tip (yet): the verdict of today tells what is left to do. */
async function lookWithout(
  context: Context,
  id: string | undefined,
  answer: NudgeAnswer,
  kind: 'branched' | 'no-fruitlets',
): Promise<Reply> {
  const { reply: logged, tree } = await logAnswer(context, id, answer, kind);
  const standing = await standingOf(context.db, context.member, tree, todayOf(context));
  const { title, paragraphs } = verdictWords(standing, dateOrderOf(context));
  const { brief: _, ...rest } = logged;
  return {
    ...rest,
    text: [logged.text, `${title}.`, ...paragraphs].join('\n\n'),
    data: { ...logged.data, verdict: standing.result.verdict },
  };
}

/** `done:<nudge id>`: seen to; nothing goes on record. */
const doneVerb: ButtonVerb = {
  verb: 'done',
  async press(context, [id]) {
    const { nudge, tree } = await ownNudge(context, id);
    await answerNudge(context.db, nudge.id, 'done', context.clock.now());
    return reply({
      title: 'Good',
      text: `I say no more of it for ${tree.name} this season. To keep what you did on record, write it as a note.`,
      visibility: 'only-you',
      data: { answered: nudge.kind, tree: tree.name },
    });
  },
};

/** `nudge:<nudge id>`: the answers to one nudge of a message that had no room for those of all. */
const openVerb: ButtonVerb = {
  verb: 'nudge',
  async press(context, [id]) {
    const { nudge, tree } = await ownNudge(context, id);
    const standing = await standingOf(context.db, context.member, tree, todayOf(context));
    return reply({
      title: `${tree.name}: your answer?`,
      buttons: answerButtons({ nudge, standing }, false),
      visibility: 'only-you',
      data: { tree: tree.name, kind: nudge.kind },
    });
  },
};

/** All that buttons under a nudge do. */
export const nudgeVerbs: readonly ButtonVerb[] = [
  showingVerb,
  tippedVerb,
  shootsVerb,
  laterVerb,
  leaveVerb,
  unleaveVerb,
  ...lookVerbs,
  pickedVerb,
  doneVerb,
  openVerb,
  quietVerb,
];
