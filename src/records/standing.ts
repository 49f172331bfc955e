import { type Cultivar, findCultivar } from '../engine/cultivars.ts';
import { addDays, type Day, daysBetween } from '../engine/day.ts';
import type { SeasonObservation } from '../engine/fruit.ts';
import { gardenSeasonOf } from '../engine/garden-season.ts';
import type { LearnedSpan } from '../engine/learning.ts';
import { outlookDecisionDate } from '../engine/outlook-decision.ts';
import { type Span, spanOf } from '../engine/ripening.ts';
import { type Season, seasonOf } from '../engine/season.ts';
import { type TreeFacts, type VerdictInput, type VerdictResult, verdictOf } from '../engine/verdict.ts';
import { groupBy } from '../group-by.ts';
import type { Database } from './database.ts';
import { gardenFactsOf, hemisphereOf } from './garden.ts';
import { learnedSpanOf, learningKeyOf, spanRecords } from './learning.ts';
import { gardenObservations, observationsOfTrees } from './notes.ts';
import { preparedRecord } from './prepared.ts';
import type { Member, Observation, Tree } from './schema.ts';

/** A tree as it stands on a day: what is on record of it, and what the engine makes of that. */
export interface Standing {
  readonly tree: Tree;
  readonly season: Season;
  readonly cultivar: Cultivar | null;
  readonly span: Span;
  /** This season's, of the tree itself, oldest first. */
  readonly observations: readonly Observation[];
  readonly input: VerdictInput;
  readonly result: VerdictResult;
}

/** A first-year tree was started less than a year before the day asked about. */
const FIRST_YEAR_DAYS = 365;

/** How these trees of one member stand on `today`, in the order given. */
export async function standingsOf(
  db: Database,
  member: Member,
  trees: readonly Tree[],
  today: Day,
): Promise<Standing[]> {
  const season = seasonOf(today, hemisphereOf(member));
  const ids = trees.map((tree) => tree.id);
  const ofTrees = groupBy(await observationsOfTrees(db, ids, season), (row) => row.treeId);
  const ofGarden = (await gardenObservations(db, member.id, season)).map(toSeasonObservation);
  const garden = gardenSeasonOf(gardenFactsOf(member), season);
  const records = await spanRecords(db, member.clubId, {
    // It may be tomorrow already where another member gardens.
    until: addDays(today, 1),
    keys: new Set(trees.flatMap((tree) => (tree.spanFrom === null ? (learningKeyOf(tree) ?? []) : []))),
  });
  const record = member.rule === 'outlook' ? await preparedRecord(db, member) : null;
  return trees.map((tree) => {
    const cultivar = tree.cultivar === null ? null : findCultivar(tree.cultivar);
    const span = spanOfTree(tree, cultivar, learnedSpanOf(tree, records));
    const observations = ofTrees.get(tree.id) ?? [];
    const input: VerdictInput = {
      today,
      season,
      garden,
      tree: treeFactsOf(tree, cultivar, span, today),
      observations: [...observations.map(toSeasonObservation), ...ofGarden],
      ...(record === null ? {} : { outlookDate: outlookDecisionDate(record, span, season) }),
    };
    return { tree, season, cultivar, span, observations, input, result: verdictOf(input) };
  });
}

export async function standingOf(db: Database, member: Member, tree: Tree, today: Day): Promise<Standing> {
  const [standing] = await standingsOf(db, member, [tree], today);
  if (standing === undefined) throw new Error('one tree gives one standing');
  return standing;
}

export function spanOfTree(tree: Tree, cultivar: Cultivar | null, learned: LearnedSpan | null): Span {
  const { spanFrom: from, spanTo: to } = tree;
  return spanOf({
    own: from === null || to === null ? null : { from, to },
    cultivar,
    group: tree.ripening ?? 'unknown',
    learned,
  });
}

function treeFactsOf(tree: Tree, cultivar: Cultivar | null, span: Span, today: Day): TreeFacts {
  return {
    span,
    needsPollination: cultivar?.mainNeedsPollination ?? false,
    pollinated: tree.pollinated,
    purpose: tree.purpose,
    kept: tree.kept,
    coverDays: tree.coverDays,
    firstYear: tree.startedOn !== null && daysBetween(tree.startedOn, today) < FIRST_YEAR_DAYS,
    ...(cultivar === null || cultivar.breba === null ? {} : { bearsBrebas: cultivar.breba !== 'none' }),
  };
}

function toSeasonObservation(row: Observation): SeasonObservation {
  return { kind: row.kind, on: row.day, crop: row.crop, count: row.count, order: row.id };
}
