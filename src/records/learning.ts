import { and, asc, eq, inArray, isNotNull, isNull, lte, or } from 'drizzle-orm';
import { cultivarKey, findCultivar } from '../engine/cultivars.ts';
import type { Day } from '../engine/day.ts';
import { mainCropFromDay, mainCropOf, type SeasonObservation } from '../engine/fruit.ts';
import { gardenSeasonOf } from '../engine/garden-season.ts';
import { type LearnedSpan, learnSpan, recordedSpan } from '../engine/learning.ts';
import { groupOf, spanOf } from '../engine/ripening.ts';
import { seasonOf } from '../engine/season.ts';
import { type TipResult, tipResultsOf } from '../engine/tip-success.ts';
import { groupBy } from '../group-by.ts';
import type { Database } from './database.ts';
import { gardenFactsOf, hemisphereOf } from './garden.ts';
import { type Member, members, type Observation, observations, type Tree, trees } from './schema.ts';

/** What two spellings of a cultivar share, synonyms included; null for a tree of no known cultivar. */
export function learningKeyOf(tree: Pick<Tree, 'cultivar'>): string | null {
  if (tree.cultivar === null) return null;
  return cultivarKey(findCultivar(tree.cultivar)?.name ?? tree.cultivar);
}

/** One tree in one season, of a member who shares in what the club learns. */
export interface LearningTree {
  readonly key: string;
  readonly cultivar: string;
  readonly season: string;
  /** Days from first main-crop fruitlet to first ripe pick, when the season is a complete record. */
  readonly span: number | null;
  readonly tips: readonly TipResult[];
  readonly tipped: boolean;
  readonly hadFruitlets: boolean;
  readonly picked: boolean;
}

export interface LearningQuery {
  /** Nothing noted after this day is read. */
  readonly until: Day;
  /** Cultivars wanted, as `learningKeyOf` gives them; all when left out. */
  readonly keys?: ReadonlySet<string>;
  /** Only trees from which something was ever picked, since the others are no complete record. */
  readonly picked?: boolean;
}

/** Every tree-season of a club with notes of its own, trees of members who keep out left out. One query. */
export async function learningTrees(
  db: Database,
  clubId: number,
  { until, keys, picked = false }: LearningQuery,
): Promise<LearningTree[]> {
  const pickedTrees = db
    .select({ id: observations.treeId })
    .from(observations)
    .where(and(eq(observations.kind, 'picked'), isNull(observations.undoneAt)));
  const rows = await db
    .select({ observation: observations, tree: trees, member: members })
    .from(observations)
    .innerJoin(members, eq(members.id, observations.memberId))
    .leftJoin(trees, eq(trees.id, observations.treeId))
    .where(
      and(
        eq(members.clubId, clubId),
        eq(members.keepsOut, false),
        isNull(observations.undoneAt),
        // What was noted of a whole garden, such as its leafing out, holds for each tree in it.
        or(
          isNull(observations.treeId),
          and(isNotNull(trees.cultivar), ...(picked ? [inArray(trees.id, pickedTrees)] : [])),
        ),
        lte(observations.day, until),
      ),
    )
    .orderBy(asc(observations.day), asc(observations.id));
  const seasonOfRow = ({ observation, member }: (typeof rows)[number]) =>
    seasonOf(observation.day, hemisphereOf(member)).label;
  const ofGardens = groupBy(
    rows.filter(({ tree }) => tree === null),
    (row) => `${row.member.id} ${seasonOfRow(row)}`,
  );
  const ofTrees = groupBy(
    rows.filter(({ tree }) => {
      const key = tree === null ? null : learningKeyOf(tree);
      return key !== null && (keys === undefined || keys.has(key));
    }),
    (row) => `${row.tree?.id} ${seasonOfRow(row)}`,
  );
  return [...ofTrees.values()].flatMap((group) => {
    const [first] = group;
    if (first?.tree == null) return [];
    const garden = ofGardens.get(`${first.member.id} ${seasonOfRow(first)}`) ?? [];
    return [
      treeSeasonFacts(
        first.tree,
        first.member,
        [...group, ...garden].map((row) => row.observation),
      ),
    ];
  });
}

function treeSeasonFacts(tree: Tree, member: Member, rows: readonly Observation[]): LearningTree {
  const notes = rows.map(seasonObservationOf);
  const first = rows[0]?.day ?? tree.addedOn;
  const season = seasonOf(first, hemisphereOf(member));
  const cultivar = tree.cultivar === null ? null : findCultivar(tree.cultivar);
  const { lastFrost } = gardenSeasonOf(gardenFactsOf(member), season);
  // The span without what was learned: a record must not decide whether it is one.
  const { from } = spanOf({ cultivar, group: tree.ripening ?? 'unknown' });
  const crop = mainCropOf({
    observations: notes,
    mainCropFrom: mainCropFromDay(notes, lastFrost, season),
    spanFrom: from,
    ...(cultivar === null || cultivar.breba === null ? {} : { bearsBrebas: cultivar.breba !== 'none' }),
  });
  return {
    key: learningKeyOf(tree) ?? '',
    cultivar: cultivar?.name ?? tree.cultivar ?? '',
    season: season.label,
    span: crop.seen === null || crop.pickedOn === null ? null : recordedSpan(crop.seen, crop.pickedOn),
    tips: tipResultsOf(notes),
    tipped: notes.some(({ kind }) => kind === 'tipped'),
    hadFruitlets: crop.present,
    picked: crop.pickedOn !== null,
  };
}

function seasonObservationOf(row: Observation): SeasonObservation {
  return { kind: row.kind, on: row.day, crop: row.crop, count: row.count, order: row.id };
}

/** Complete records by cultivar key, days, in ascending order. */
export function spanRecordsOf(learned: readonly LearningTree[]): Map<string, number[]> {
  const records = new Map<string, number[]>();
  for (const { key, span } of learned) {
    if (span === null) continue;
    const known = records.get(key);
    if (known) known.push(span);
    else records.set(key, [span]);
  }
  for (const days of records.values()) days.sort((a, b) => a - b);
  return records;
}

/** What a club's complete records up to `until` say, by cultivar key. One query. */
export async function spanRecords(
  db: Database,
  clubId: number,
  query: LearningQuery,
): Promise<Map<string, number[]>> {
  if (query.keys?.size === 0) return new Map();
  return spanRecordsOf(await learningTrees(db, clubId, { ...query, picked: true }));
}

/** What the records teach of this tree's cultivar, with its own ripening group as the prior; null without any. */
export function learnedSpanOf(
  tree: Pick<Tree, 'cultivar' | 'ripening'>,
  records: ReadonlyMap<string, readonly number[]>,
): LearnedSpan | null {
  const key = learningKeyOf(tree);
  const days = key === null ? undefined : records.get(key);
  if (days === undefined) return null;
  const cultivar = tree.cultivar === null ? null : findCultivar(tree.cultivar);
  return learnSpan(days, groupOf(tree.ripening ?? 'unknown', cultivar));
}
