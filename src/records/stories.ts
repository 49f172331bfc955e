import { and, asc, eq, isNull } from 'drizzle-orm';
import { type Day, earlier } from '../engine/day.ts';
import { inOrder } from '../engine/fruit.ts';
import { parseSeason, seasonOf } from '../engine/season.ts';
import type { Database } from './database.ts';
import { hemisphereOf } from './garden.ts';
import { type Member, observations, type Tree, trees } from './schema.ts';
import { type Standing, standingOf } from './standing.ts';

/** Seasons further back than this are left to /mydata export. */
const MOST_SEASONS = 12;

/** One season of a tree in short; days are null where nothing was noted. */
export interface SeasonStory {
  readonly season: string;
  readonly leafedOut: Day | null;
  readonly seen: Day | null;
  readonly tipped: Day | null;
  /** First ripe main-crop fig picked. */
  readonly ripe: Day | null;
  /** Cuttings counted. */
  readonly cuttings: number;
  /** How the tree stood on the season's last day, or stands now. */
  readonly standing: Standing;
}

/** Where a tree comes from and what was taken from it, among the member's own trees. */
export interface Lineage {
  /** From the tree itself back: its parent, that one's parent, and so on. */
  readonly parents: readonly Tree[];
  /** What the oldest of these came from, in the member's words. */
  readonly origin: string | null;
  /** Trees struck from its cuttings. */
  readonly children: readonly Tree[];
}

/** The tree's seasons before that of `today`, the latest first. */
export async function pastSeasonsOf(
  db: Database,
  member: Member,
  tree: Tree,
  today: Day,
): Promise<SeasonStory[]> {
  const hemisphere = hemisphereOf(member);
  const rows = await db
    .selectDistinct({ day: observations.day })
    .from(observations)
    .where(and(eq(observations.treeId, tree.id), isNull(observations.undoneAt)));
  const current = seasonOf(today, hemisphere);
  const labels = new Set(rows.map(({ day }) => seasonOf(day, hemisphere).label));
  const past = [...labels]
    .flatMap((label) => parseSeason(label, hemisphere) ?? [])
    .filter(({ from }) => from < current.from)
    .sort((a, b) => b.startYear - a.startYear)
    .slice(0, MOST_SEASONS);
  const stories: SeasonStory[] = [];
  for (const season of past) {
    stories.push(storyOf(await standingOf(db, member, tree, earlier(season.to, today))));
  }
  return stories;
}

/** A standing as a line of the story. */
export function storyOf(standing: Standing): SeasonStory {
  const { season, input, result, observations: own } = standing;
  const notes = inOrder(input.observations);
  return {
    season: season.label,
    leafedOut: notes.find(({ kind }) => kind === 'leafed-out')?.on ?? null,
    seen: result.fruit.seen,
    tipped: notes.find(({ kind }) => kind === 'tipped')?.on ?? null,
    ripe: result.fruit.pickedOn,
    cuttings: own.filter(({ kind }) => kind === 'cuttings').reduce((sum, { count }) => sum + (count ?? 0), 0),
    standing,
  };
}

/** A tree's forebears and offspring. */
export async function lineageOf(db: Database, tree: Tree): Promise<Lineage> {
  const own = await db
    .select()
    .from(trees)
    .where(eq(trees.memberId, tree.memberId))
    .orderBy(asc(trees.nameKey));
  const byId = new Map(own.map((row) => [row.id, row]));
  const parents: Tree[] = [];
  let at: Tree = tree;
  while (at.parentTreeId !== null) {
    const parent = byId.get(at.parentTreeId);
    // A ring can be typed ("A from B", then "B from A"); nobody's story goes round in it.
    if (parent === undefined || parent.id === tree.id || parents.includes(parent)) break;
    parents.push(parent);
    at = parent;
  }
  return {
    parents,
    origin: at.origin,
    children: own.filter(({ parentTreeId }) => parentTreeId === tree.id),
  };
}
