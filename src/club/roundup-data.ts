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
import { treesWithin } from '../records/club-trees.ts';
import { membersOfClub } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { hemisphereOf } from '../records/garden.ts';
import type { Member, Tree } from '../records/schema.ts';
import { type Standing, standingsOf } from '../records/standing.ts';

/** Decisions and frosts this many days ahead stand in a week's roundup. */
export const AHEAD_DAYS = 14;

/** The days a roundup is about: seven of them, or a whole season, which differs by hemisphere. */
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
  clubId: number,
  period: RoundupPeriod,
  today: Day,
): Promise<Roundup> {
  const found: RoundupTree[] = [];
  const decisions: Ahead[] = [];
  const frosts: Ahead[] = [];
  for (const member of await membersOfClub(db, clubId)) {
    const days = period.span === 'week' ? period : period.seasonOf(member);
    const asOf = earlier(today, days.to);
    const trees = await treesWithin(db, member.id, days);
    for (const standing of await standingsOf(db, member, trees, asOf)) {
      found.push(factsOf(member, standing, days.from, asOf));
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

function factsOf(member: Member, standing: Standing, from: Day, to: Day): RoundupTree {
  const { tree, input, result, observations } = standing;
  const within = (on: Day | null) => (on !== null && on >= from && on <= to ? on : null);
  const known = inOrder(input.observations).filter(({ on }) => on <= to);
  const before = known.filter(({ on }) => on < from);
  const cropInput = {
    mainCropFrom: result.mainCropFrom,
    spanFrom: input.tree.span.from,
    ...(input.tree.bearsBrebas === undefined ? {} : { bearsBrebas: input.tree.bearsBrebas }),
  };
  const seen = firstSeen(known, cropInput);
  const tellingBefore = tipResultsOf(before).map(({ on }) => on);
  const picks = observations.map((row) => ({
    kind: row.kind,
    on: row.day,
    crop: row.crop,
    count: row.count,
    unit: row.unit,
    order: row.id,
  }));
  const upTo = (day: Day) => harvestOf({ ...cropInput, observations: picks.filter(({ on }) => on <= day) });
  return {
    member,
    tree,
    cultivar: tree.cultivar === null ? null : (findCultivar(tree.cultivar)?.name ?? tree.cultivar),
    standing,
    leafedOut: within(known.find(({ kind }) => kind === 'leafed-out')?.on ?? null),
    seen: within(seen),
    tips: known.filter(({ kind, on }) => kind === 'tipped' && on >= from).map(({ on }) => on),
    results: tipResultsOf(known).filter(({ on }) => !tellingBefore.includes(on)),
    ripening: within(result.fruit.ripeningOn),
    ripe: within(result.fruit.pickedOn),
    span:
      result.fruit.seen !== null && within(result.fruit.pickedOn) !== null && result.fruit.pickedOn !== null
        ? recordedSpan(result.fruit.seen, result.fruit.pickedOn)
        : null,
    harvest: less(upTo(to), upTo(addDays(from, -1))),
    picks: picks
      .filter(({ kind, on, crop }) => kind === 'picked' && crop !== 'breba' && on >= from && on <= to)
      .map(({ on }) => on)
      .filter((on) => result.fruit.pickedOn !== null && on >= result.fruit.pickedOn),
    cuttings: observations
      .filter(({ kind, day }) => kind === 'cuttings' && day >= from && day <= to)
      .reduce((sum, { count }) => sum + (count ?? 0), 0),
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
