import { instantAt } from '../clock.ts';
import { findCultivar } from '../engine/cultivars.ts';
import { addDays, type Day, earlier } from '../engine/day.ts';
import { inOrder, mainCropOf, type SeasonObservation } from '../engine/fruit.ts';
import { addHarvests, type Harvest, harvestOf, NO_HARVEST } from '../engine/harvest.ts';
import { recordedSpan } from '../engine/learning.ts';
import { FROST_BEFORE_DAYS, milestonesOf } from '../engine/milestones.ts';
import type { Crop } from '../engine/observation.ts';
import type { Season } from '../engine/season.ts';
import { type TipResult, tipResultsOf } from '../engine/tip-success.ts';
import { groupBy } from '../group-by.ts';
import { lastObservationBefore, treesWithin } from '../records/club-trees.ts';
import { membersOfClub } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { hemisphereOf } from '../records/garden.ts';
import type { Club, Member, Tree } from '../records/schema.ts';
import { type Standing, standingsOf } from '../records/standing.ts';

/** Decisions and frosts this many days ahead stand in a week's roundup. */
export const AHEAD_DAYS = 14;

/** What happened longer than this before a week is no news when it is told, days. Ours. */
const NEWS_DAYS = 21;

/**
 * The days a roundup is about: a whole season, which differs by hemisphere, or seven days. A week takes in what
 * was told in it, so that what is noted late is told once, in the week after.
 */
export type RoundupPeriod =
  | { readonly span: 'week'; readonly from: Day; readonly to: Day }
  | { readonly span: 'season'; readonly seasonOf: (member: Member) => Season };

/** What happened on one tree within the period. */
export interface RoundupTree {
  readonly member: Member;
  readonly tree: Tree;
  /** The catalogue's spelling where it knows the cultivar; null when the member does not. */
  readonly cultivar: string | null;
  readonly standing: Standing;
  readonly leafedOut: Day | null;
  /** First main-crop fruitlet. */
  readonly seen: Day | null;
  readonly tips: readonly Day[];
  /** Tips whose result became known. */
  readonly results: readonly TipResult[];
  /** First signs of ripening on the main crop. */
  readonly ripening: Day | null;
  /** First ripe main-crop fig picked. */
  readonly ripe: Day | null;
  /** Days from the first to the last of these, when they make a record. */
  readonly span: number | null;
  readonly harvest: Readonly<Record<Crop, Harvest>>;
  /** Days on which main-crop figs were picked. */
  readonly picks: readonly Day[];
  readonly cuttings: number;
}

export interface Ahead {
  readonly member: Member;
  readonly tree: Tree;
  readonly on: Day;
}

export interface Roundup {
  readonly period: RoundupPeriod;
  /** Growers with a tree on the list in the period. */
  readonly members: readonly Member[];
  readonly trees: readonly RoundupTree[];
  /** Decisions of the next 14 days on trees without fruitlets; of a week only. */
  readonly decisions: readonly Ahead[];
  /** Trees with unripe fruit, or in pots outside, whose usual first frost is near; of a week only. */
  readonly frosts: readonly Ahead[];
}

/** All of one club that a roundup of `period` rests on, as known on `today`. */
export async function readRoundup(
  db: Database,
  club: Pick<Club, 'id' | 'zone'>,
  period: RoundupPeriod,
  today: Day,
): Promise<Roundup> {
  const found: RoundupTree[] = [];
  const decisions: Ahead[] = [];
  const frosts: Ahead[] = [];
  for (const member of await membersOfClub(db, club.id)) {
    const days = period.span === 'week' ? period : period.seasonOf(member);
    const asOf = earlier(today, days.to);
    const told = period.span === 'week' ? await toldWithin(db, member, club.zone, period) : null;
    const trees = await treesWithin(db, member.id, days);
    for (const standing of await standingsOf(db, member, trees, asOf)) {
      found.push(factsOf(member, standing, told, days.from, asOf));
      if (period.span === 'season' || standing.tree.retiredOn !== null) continue;
      for (const { kind, on, holds } of milestonesOf(standing.input)) {
        const ahead = {
          member,
          tree: standing.tree,
          on: kind === 'frost' ? addDays(on, FROST_BEFORE_DAYS) : on,
        };
        if (!holds || ahead.on < today || ahead.on > addDays(today, AHEAD_DAYS)) continue;
        if (kind === 'decision') decisions.push(ahead);
        if (kind === 'frost') frosts.push(ahead);
      }
    }
  }
  const byDay = (a: Ahead, b: Ahead) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0);
  return {
    period,
    members: [...new Set(found.map(({ member }) => member))],
    trees: found,
    decisions: decisions.sort(byDay),
    frosts: frosts.sort(byDay),
  };
}

/** Ids of a member's observations told before a week and by its end: they grow with time. */
interface Told {
  readonly before: number;
  readonly by: number;
}

async function toldWithin(
  db: Database,
  member: Member,
  zone: string,
  { from, to }: { from: Day; to: Day },
): Promise<Told> {
  return {
    before: await lastObservationBefore(db, member.id, instantAt(from, 0, zone)),
    by: await lastObservationBefore(db, member.id, instantAt(addDays(to, 1), 0, zone)),
  };
}

function factsOf(member: Member, standing: Standing, told: Told | null, from: Day, to: Day): RoundupTree {
  const { tree, input, result, observations } = standing;
  const known = inOrder(input.observations).filter(
    ({ on, order }) => on <= to && (told === null || order <= told.by),
  );
  const before = told === null ? [] : known.filter(({ order }) => order <= told.before);
  const cropInput = {
    mainCropFrom: result.mainCropFrom,
    spanFrom: input.tree.span.from,
    ...(input.tree.bearsBrebas === undefined ? {} : { bearsBrebas: input.tree.bearsBrebas }),
  };
  const is = signsOf(known, cropInput);
  const was = signsOf(before, cropInput);
  const oldest = told === null ? from : addDays(from, -NEWS_DAYS);
  /** What is known now and was not before. */
  const news = (sign: 'leafedOut' | 'seen' | 'ripening' | 'ripe'): Day | null => {
    const on = is[sign];
    return on !== null && was[sign] === null && on >= oldest ? on : null;
  };
  const isNews = ({ on, order }: { on: Day; order: number }) =>
    on >= oldest && on <= to && (told === null || (order > told.before && order <= told.by));
  const rows = observations.map((row) => ({
    kind: row.kind,
    on: row.day,
    crop: row.crop,
    count: row.count,
    unit: row.unit,
    order: row.id,
  }));
  const knownIds = new Set(known.map(({ order }) => order));
  const beforeIds = new Set(before.map(({ order }) => order));
  const harvestIn = (ids: ReadonlySet<number>) =>
    harvestOf({ ...cropInput, observations: rows.filter(({ order }) => ids.has(order)) });
  const ripe = news('ripe');
  return {
    member,
    tree,
    cultivar: tree.cultivar === null ? null : (findCultivar(tree.cultivar)?.name ?? tree.cultivar),
    standing,
    leafedOut: news('leafedOut'),
    seen: news('seen'),
    tips: known.filter((note) => note.kind === 'tipped' && isNews(note)).map(({ on }) => on),
    results: is.results.filter(({ on }) => !was.results.some((one) => one.on === on)),
    ripening: news('ripening'),
    ripe,
    span: ripe === null || is.current === null ? null : recordedSpan(is.current, ripe),
    harvest: less(harvestIn(knownIds), harvestIn(beforeIds)),
    picks: rows
      .filter((row) => row.kind === 'picked' && row.crop !== 'breba' && isNews(row))
      .map(({ on }) => on)
      .filter((on) => is.ripe !== null && on >= is.ripe),
    cuttings: rows
      .filter((row) => row.kind === 'cuttings' && isNews(row))
      .reduce((sum, { count }) => sum + (count ?? 0), 0),
  };
}

/** What a set of notes says of a tree's season. */
function signsOf(
  notes: readonly SeasonObservation[],
  cropInput: Omit<Parameters<typeof mainCropOf>[0], 'observations'>,
) {
  const crop = mainCropOf({ ...cropInput, observations: notes });
  return {
    leafedOut: notes.find(({ kind }) => kind === 'leafed-out')?.on ?? null,
    seen: firstSeen(notes, cropInput),
    /** First fruitlet since the tree last lost all. */
    current: crop.seen,
    ripening: crop.ripeningOn,
    ripe: crop.pickedOn,
    results: tipResultsOf(notes),
  };
}

/** The first main-crop fruitlet of the season, whether or not it was lost later. */
function firstSeen(
  known: readonly SeasonObservation[],
  cropInput: Omit<Parameters<typeof mainCropOf>[0], 'observations'>,
): Day | null {
  const held = known.filter(({ kind }) => kind !== 'dropped');
  return mainCropOf({ ...cropInput, observations: held }).seen;
}

/** What came to a harvest since an earlier one of the same season. */
function less(all: Readonly<Record<Crop, Harvest>>, before: Readonly<Record<Crop, Harvest>>) {
  const since = (crop: Crop): Harvest => ({
    ...all[crop],
    picks: all[crop].picks - before[crop].picks,
    figs: all[crop].figs - before[crop].figs,
    grams: all[crop].grams - before[crop].grams,
  });
  return { main: since('main'), breba: since('breba') };
}

/** Whether a week has nothing to tell: no news, and nothing ahead that last week's roundup did not have. */
export function isQuiet({ trees, decisions, frosts }: Roundup, today: Day): boolean {
  const news = trees.some(
    ({ leafedOut, seen, tips, results, ripening, ripe, harvest }) =>
      leafedOut !== null ||
      seen !== null ||
      ripening !== null ||
      ripe !== null ||
      tips.length + results.length + harvest.main.picks + harvest.breba.picks > 0,
  );
  return !news && ![...decisions, ...frosts].some(({ on }) => on > addDays(today, AHEAD_DAYS - 7));
}

/** One cultivar's line in a roundup. Counts are trees, but for `tips`, `figs` and `grams`. */
export interface CultivarLine {
  readonly cultivar: string | null;
  readonly trees: number;
  readonly fruitlets: number;
  readonly fruitletsFrom: Day | null;
  readonly fruitletsTo: Day | null;
  readonly tipped: number;
  /** Trees on which a tip's result is known. */
  readonly tipKnown: number;
  readonly tipWorked: number;
  /** Days from first fruitlet to first ripe fig, ascending. */
  readonly spans: readonly number[];
  readonly picked: number;
  readonly main: Harvest;
  readonly breba: Harvest;
}

/** A line a cultivar: those with most trees first, trees of no known cultivar last. */
export function linesByCultivar(trees: readonly RoundupTree[]): CultivarLine[] {
  const lines = [...groupBy(trees, ({ cultivar }) => cultivar)].map(([cultivar, group]) =>
    lineOf(cultivar, group),
  );
  return lines.sort(
    (a, b) =>
      Number(a.cultivar === null) - Number(b.cultivar === null) ||
      b.trees - a.trees ||
      ((a.cultivar ?? '') < (b.cultivar ?? '') ? -1 : 1),
  );
}

function lineOf(cultivar: string | null, group: readonly RoundupTree[]): CultivarLine {
  const seen = group.flatMap((tree) => tree.seen ?? []).sort();
  const total = (crop: Crop) =>
    group.reduce((sum, { harvest }) => addHarvests(sum, harvest[crop]), NO_HARVEST);
  return {
    cultivar,
    trees: group.length,
    fruitlets: seen.length,
    fruitletsFrom: seen[0] ?? null,
    fruitletsTo: seen.at(-1) ?? null,
    tipped: group.filter(({ tips }) => tips.length > 0).length,
    tipKnown: group.filter(({ results }) => results.length > 0).length,
    tipWorked: group.filter(({ results }) => results.some(({ broughtFruitlets }) => broughtFruitlets)).length,
    spans: group.flatMap(({ span }) => span ?? []).sort((a, b) => a - b),
    picked: group.filter(({ harvest }) => harvest.main.picks + harvest.breba.picks > 0).length,
    main: total('main'),
    breba: total('breba'),
  };
}

/** The season in which most of a club's growers garden now, for posting. */
export function hemisphereOfClub(members: readonly Member[]): 'N' | 'S' {
  const south = members.filter((member) => hemisphereOf(member) === 'S').length;
  return south * 2 > members.length ? 'S' : 'N';
}
