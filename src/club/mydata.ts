import { UserError } from '../errors.ts';
import { learnedBefore, lockClub, replanLearned } from '../nudges/plan-learned.ts';
import { updateMember } from '../records/clubs.ts';
import { eraseMember, recordsOf } from '../records/erase.ts';
import { treesOf } from '../records/trees.ts';
import { loadSeries } from '../weather/series.ts';
import type { Context } from './context.ts';
import { todayOf } from './date-option.ts';
import type { Feature } from './feature.ts';
import { zipTakeout } from './mydata-export.ts';
import { type Reply, reply } from './reply.ts';
import { countWords } from './words.ts';

/** What must be typed to erase one's records; case makes no difference. */
export const ERASE_WORDS = 'erase my records';

export const mydataExport: Feature = {
  command: {
    name: 'mydata export',
    description: 'Everything on record of you, as one ZIP file',
    visibility: 'only-you',
    options: [],
  },
  async handle(context) {
    const { db, club, member, clock } = context;
    const records = await recordsOf(db, member.id);
    const readings = member.ownSeriesId === null ? null : await loadSeries(db, member.ownSeriesId);
    const bytes = zipTakeout({ club, member, records, readings, now: clock.now() });
    const parts = [
      countWords(records.trees.length, 'tree'),
      countWords(records.notes.length, 'note'),
      countWords(records.observations.length, 'observation'),
    ];
    return reply({
      title: 'Your records',
      text: `${parts.join(', ')}, your garden and its nudges: records.json has all of it, the CSV files open in any spreadsheet.`,
      files: [{ name: `my-fig-records-${todayOf(context)}.zip`, bytes }],
      visibility: 'only-you',
      data: {
        trees: records.trees.length,
        notes: records.notes.length,
        observations: records.observations.length,
        nudges: records.nudges.length,
      },
    });
  },
};

export const mydataErase: Feature = {
  command: {
    name: 'mydata erase',
    description: 'Erase everything on record of you in this club',
    visibility: 'only-you',
    options: [{ name: 'confirm', type: 'text', maxLength: 60, description: `type: ${ERASE_WORDS}` }],
  },
  async handle(context, input) {
    const confirmed = typeof input.confirm === 'string' ? input.confirm.trim().toLowerCase() : null;
    if (confirmed === null) return warn(context);
    if (confirmed !== ERASE_WORDS) {
      throw new UserError(
        'not-confirmed',
        `Nothing was erased: to go through with it type /mydata erase confirm:${ERASE_WORDS}`,
      );
    }
    return erase(context);
  },
};

const CANNOT_RECALL =
  'What I cannot recall: messages already posted in the channel, mine and yours, exports and calendar files that were downloaded, and what others wrote in their own notes.';

async function warn(context: Context): Promise<Reply> {
  const trees = await treesOf(context.db, context.member.id, { withRetired: true });
  return reply({
    ok: false,
    title: 'Erase all your records?',
    text: [
      `This removes your garden, ${countWords(trees.length, 'tree')} and every note on them from this club, for good. Roundups no longer count or name you, for past seasons either. /mydata export gives you a copy first.`,
      CANNOT_RECALL,
      `To go through with it type /mydata erase confirm:${ERASE_WORDS}`,
    ].join('\n\n'),
    visibility: 'only-you',
    data: { error: 'confirm', confirm: ERASE_WORDS },
  });
}

async function erase(context: Context): Promise<Reply> {
  const { db, club, member, clock } = context;
  const gone = await db.transaction(async (tx) => {
    await lockClub(tx, club.id);
    const records = await recordsOf(tx, member.id);
    const before = await learnedBefore(tx, member, todayOf(context));
    await eraseMember(tx, member);
    // What the others plan by no longer rests on these records.
    await replanLearned(tx, before, clock);
    return records;
  });
  return reply({
    title: 'Your records are erased',
    text: [
      `${countWords(gone.trees.length, 'tree')}, ${countWords(gone.notes.length, 'note')}, your garden and your nudges are gone from this club.`,
      CANNOT_RECALL,
    ].join('\n\n'),
    visibility: 'only-you',
    data: { erased: { trees: gone.trees.length, notes: gone.notes.length } },
  });
}

export const mydataLearning: Feature = {
  command: {
    name: 'mydata learning',
    description: 'Whether the club may learn from your trees',
    visibility: 'only-you',
    options: [
      {
        name: 'share',
        type: 'choice',
        required: true,
        description: 'whether your trees count in what the club learns',
        choices: [
          { value: 'yes', label: 'yes, learn from them' },
          { value: 'no', label: 'no, keep them out' },
        ],
      },
    ],
  },
  async handle(context, input) {
    const { db, club, clock } = context;
    const keepsOut = input.share === 'no';
    await db.transaction(async (tx) => {
      await lockClub(tx, club.id);
      const before = await learnedBefore(tx, context.member, todayOf(context));
      await updateMember(tx, context.member.id, { keepsOut });
      await replanLearned(tx, before, clock);
    });
    return reply({
      title: keepsOut ? 'Your trees are kept out' : 'Your trees count',
      text: keepsOut
        ? 'Spans, the share of tips that worked and other figures of what the club learns no longer rest on your trees, past seasons included. Roundups still tell what happened on them.'
        : 'What is noted on your trees goes into spans and other figures the club learns.',
      visibility: 'only-you',
      data: { learning: keepsOut ? 'kept-out' : 'shared' },
    });
  },
};
