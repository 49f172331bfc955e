import { and, asc, eq, exists, inArray, isNotNull, isNull, lte, or, sql } from 'drizzle-orm';
import { cultivarKey, findCultivar } from '../engine/cultivars.ts';
import type { Day } from '../engine/day.ts';
import { mainCropFromDay, mainCropOf } from '../engine/fruit.ts';
import { gardenSeasonOf } from '../engine/garden-season.ts';
import { type LearnedSpan, learnSpan, recordedSpan } from '../engine/learning.ts';
import { groupOf, spanOf } from '../engine/ripening.ts';
import { parseSeason, seasonOf } from '../engine/season.ts';
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

type LearningOwner = Pick<Tree, 'id' | 'memberId' | 'cultivar' | 'ripening'>;
type LearningNote = Pick<Observation, 'id' | 'treeId' | 'memberId' | 'kind' | 'day' | 'crop' | 'count'>;

/** Every tree-season of a club with notes of its own, trees of members who keep out left out. */
export async function learningTrees(
  db: Database,
  clubId: number,
  { until, keys, picked = false }: LearningQuery,
): Promise<LearningTree[]> {
  // Few trees matter on most days, so little is read: these queries run with every plan.
  const owners = (await ownersOf(db, clubId, picked)).filter((tree) => {
    const key = learningKeyOf(tree);
    return key !== null && (keys === undefined || keys.has(key));
  });
  if (owners.length === 0) return [];
  const memberIds = [...new Set(owners.map(({ memberId }) => memberId))];
  const gardens = new Map(
    (await db.select().from(members).where(inArray(members.id, memberIds))).map((row) => [row.id, row]),
  );
  const notes = await notesOf(db, owners, memberIds, until);
  const seasonOfNote = ({ memberId, day }: LearningNote) => {
    const member = gardens.get(memberId);
    return seasonOf(day, member ? hemisphereOf(member) : 'N');
  };
  const ofGardens = groupBy(
    notes.filter(({ treeId }) => treeId === null),
    (note) => `${note.memberId} ${seasonOfNote(note).label}`,
  );
  const ofTrees = groupBy(
    notes.filter(({ treeId }) => treeId !== null),
    (note) => note.treeId,
  );
  return owners.flatMap((tree) => {
    const member = gardens.get(tree.memberId);
    if (member === undefined) return [];
    const bySeason = groupBy(ofTrees.get(tree.id) ?? [], (note) => seasonOfNote(note).label);
    return [...bySeason].flatMap(([label, own]) => {
      const garden = ofGardens.get(`${tree.memberId} ${label}`) ?? [];
      return treeSeasonFacts(tree, member, label, [...own, ...garden]);
    });
  });
}

function ownersOf(db: Database, clubId: number, picked: boolean): Promise<LearningOwner[]> {
  const somethingPicked = exists(
    db
      .select({ one: sql`1` })
      .from(observations)
      .where(
        and(
          eq(observations.treeId, trees.id),
          eq(observations.kind, 'picked'),
          isNull(observations.undoneAt),
        ),
      ),
  );
  return db
    .select({
      id: trees.id,
      memberId: trees.memberId,
      cultivar: trees.cultivar,
      ripening: trees.ripening,
    })
    .from(trees)
    .innerJoin(members, eq(members.id, trees.memberId))
    .where(
      and(
        eq(members.clubId, clubId),
        eq(members.keepsOut, false),
        isNotNull(trees.cultivar),
        ...(picked ? [somethingPicked] : []),
      ),
    )
    .orderBy(asc(trees.id));
}

/** Notes of these trees, and those of their whole gardens, such as a leafing out, which hold for each of them. */
function notesOf(
  db: Database,
  owners: readonly LearningOwner[],
  memberIds: readonly number[],
  until: Day,
): Promise<LearningNote[]> {
  return db
    .select({
      id: observations.id,
      treeId: observations.treeId,
      memberId: observations.memberId,
      kind: observations.kind,
      day: observations.day,
      crop: observations.crop,
      count: observations.count,
    })
    .from(observations)
    .where(
      and(
        or(
          inArray(
            observations.treeId,
            owners.map(({ id }) => id),
          ),
          and(isNull(observations.treeId), inArray(observations.memberId, [...memberIds])),
        ),
        isNull(observations.undoneAt),
        lte(observations.day, until),
      ),
    )
    .orderBy(asc(observations.day), asc(observations.id));
}

function treeSeasonFacts(
  tree: LearningOwner,
  member: Member,
  label: string,
  rows: readonly LearningNote[],
): LearningTree[] {
  const notes = rows.map(({ id, kind, day, crop, count }) => ({ kind, on: day, crop, count, order: id }));
  const season = parseSeason(label, hemisphereOf(member));
  if (season === null) return [];
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
  return [
    {
      key: learningKeyOf(tree) ?? '',
      cultivar: cultivar?.name ?? tree.cultivar ?? '',
      season: season.label,
      span: crop.seen === null || crop.pickedOn === null ? null : recordedSpan(crop.seen, crop.pickedOn),
      tips: tipResultsOf(notes),
      tipped: notes.some(({ kind }) => kind === 'tipped'),
      hadFruitlets: crop.present,
      picked: crop.pickedOn !== null,
    },
  ];
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

/** What a club's complete records up to `until` say, by cultivar key. */
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
