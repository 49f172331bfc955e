import { findCultivar } from '../engine/cultivars.ts';
import type { RipeningGroup } from '../engine/ripening.ts';
import { UserError } from '../errors.ts';
import type { Kept, Purpose, Tree } from '../records/schema.ts';
import { treeNamed } from '../records/trees.ts';
import type { Context } from './context.ts';
import { dateOrderOf, readPastOption, todayOf, type Understood } from './date-option.ts';
import type { Input, OptionDefinition } from './feature.ts';
import { choiceOption } from './option-kinds.ts';
import { readName } from './text.ts';
import { fullDayWords } from './words.ts';

/** No fig ripens sooner or later than this after its fruitlet shows: the records the club learns from. */
const LEAST_SPAN_DAYS = 35;
const MOST_SPAN_DAYS = 160;
/** More days of added heat than this is no cover but another climate. */
const MOST_COVER_DAYS = 120;

/** What /tree add and /tree edit both take. */
export const TREE_OPTIONS: readonly OptionDefinition[] = [
  {
    name: 'cultivar',
    type: 'text',
    complete: 'cultivar',
    maxLength: 100,
    description: 'its cultivar, or "unknown"',
  },
  choiceOption('ripening', 'how long its figs take', {
    early: 'early (60–75 days)',
    mid: 'mid (75–90 days)',
    late: 'late (90–100 days)',
    unknown: 'unknown',
  }),
  { name: 'span', type: 'text', maxLength: 20, description: 'days from fruitlet to ripe fig, such as 75-80' },
  { name: 'started', type: 'text', maxLength: 60, description: 'when it was planted or struck' },
  choiceOption('kept', 'where it stands', { ground: 'in the ground', pot: 'in a pot', cover: 'under cover' }),
  {
    name: 'cover_days',
    type: 'integer',
    min: 0,
    max: MOST_COVER_DAYS,
    description: 'days of heat that its cover adds',
  },
  choiceOption('for', 'what you keep it for', { fruit: 'fruit', wood: 'wood', both: 'both' }),
  choiceOption('pollinated', 'whether caprifigs and their wasps reach it', { yes: 'yes', no: 'no' }),
  {
    name: 'from',
    type: 'text',
    complete: 'tree',
    maxLength: 200,
    description: 'the tree it was taken from, or where it came from',
  },
  choiceOption('spare', 'whether you have wood of it to spare for others', { yes: 'yes', no: 'no' }),
];

export interface TreeChange {
  readonly set: Partial<Tree>;
  readonly understood: readonly Understood[];
}

/** The options as columns of a tree. Throws UserError on one that cannot be taken. */
export async function readTreeOptions(context: Context, input: Input): Promise<TreeChange> {
  const set: Partial<Tree> = {};
  const understood: Understood[] = [];
  if (typeof input.cultivar === 'string') set.cultivar = readCultivar(input.cultivar);
  if (typeof input.ripening === 'string') set.ripening = input.ripening as RipeningGroup;
  if (typeof input.span === 'string') Object.assign(set, readSpan(input.span));
  if (typeof input.started === 'string') {
    const started = readPastOption(context, 'started', input.started);
    checkStarted(context, started);
    understood.push(started);
    set.startedOn = started.from;
  }
  if (typeof input.kept === 'string') set.kept = input.kept as Kept;
  if (typeof input.cover_days === 'number') set.coverDays = input.cover_days;
  if (typeof input.for === 'string') set.purpose = input.for as Purpose;
  if (typeof input.pollinated === 'string') set.pollinated = input.pollinated === 'yes';
  if (typeof input.spare === 'string') set.spareWood = input.spare === 'yes';
  if (typeof input.from === 'string') Object.assign(set, await readOrigin(context, input.from));
  return { set, understood };
}

/** The catalogue's spelling where it knows the cultivar, else as typed. */
function readCultivar(text: string): string | null {
  const name = readName(text, 'The cultivar');
  if (/^(unknown|none|\?+)$/i.test(name)) return null;
  return findCultivar(name)?.name ?? name;
}

function readSpan(text: string): Pick<Tree, 'spanFrom' | 'spanTo'> {
  if (/^(none|clear)$/i.test(text)) return { spanFrom: null, spanTo: null };
  const match = /^(\d{1,3})(?:\s*(?:-|–|to)\s*(\d{1,3}))?(?:\s*d(?:ays?)?)?$/i.exec(text);
  const from = Number(match?.[1]);
  const to = match?.[2] === undefined ? from : Number(match[2]);
  if (match === null || from > to || from < LEAST_SPAN_DAYS || to > MOST_SPAN_DAYS) {
    throw new UserError(
      'span-not-understood',
      `"${text}" is not a span from ${LEAST_SPAN_DAYS} to ${MOST_SPAN_DAYS} days; type it like span:75-80. Nothing was changed.`,
    );
  }
  return { spanFrom: from, spanTo: to };
}

function checkStarted(context: Context, started: Understood) {
  if (started.from <= todayOf(context)) return;
  const day = fullDayWords(started.from, dateOrderOf(context));
  throw new UserError(
    'started-later',
    `A tree cannot have been started on ${day}, which is still to come. Nothing was changed.`,
  );
}

/** One of the member's own trees when its whole name is given ("Maria's Alma" is not the member's Alma). */
async function readOrigin(context: Context, text: string): Promise<Pick<Tree, 'parentTreeId' | 'origin'>> {
  const parent = await treeNamed(context.db, context.member.id, text);
  if (parent !== null) return { parentTreeId: parent.id, origin: null };
  return { parentTreeId: null, origin: readName(text, 'Where it came from') };
}
