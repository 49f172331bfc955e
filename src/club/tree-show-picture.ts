import { addDays, inYear, type MonthDay, monthDayOf } from '../engine/day.ts';
import type { FrostStat } from '../engine/frost.ts';
import type { GardenHeat } from '../engine/garden-season.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { FrostDates } from '../pictures/season-input.ts';
import type { RipeWindow } from '../pictures/tree-input.ts';
import { drawTree } from '../pictures/tree-picture.ts';
import type { Member } from '../records/schema.ts';
import type { Standing } from '../records/standing.ts';
import type { ReplyFile } from './reply.ts';
import { stateWords } from './tree-show-words.ts';

/** The tree's season on a time line. */
export async function treePicture(member: Member, standing: Standing, order: DateOrder): Promise<ReplyFile> {
  const { tree, season, cultivar, input, result, observations } = standing;
  const { coverDays } = tree;
  const frost = member.summary?.frost;
  const { name, bytes, alt } = await drawTree({
    tree: tree.name,
    cultivar: cultivar?.name ?? tree.cultivar,
    season,
    today: tree.retiredOn === null ? input.today : null,
    dates: order,
    state: tree.retiredOn === null ? stateWords(standing, order) : null,
    notes: observations.map(({ day: on, kind, crop, count, unit }) => ({ on, kind, crop, count, unit })),
    heat: shiftedHeat(input.garden.heat, coverDays),
    // Cover holds frost off at the season's end; in spring it brings growth on, and nobody dates that.
    lastFrost: frostDates(member.lastFrost, frost?.last, 0),
    firstFrost: frostDates(member.firstFrost, frost?.first, coverDays),
    decisionDate: result.verdict === 'not-for-fruit' || result.fruit.present ? null : result.decisionDate,
    ripe: ripeOf(standing),
  });
  return { name, bytes, alt };
}

function ripeOf({ result }: Standing): RipeWindow | null {
  const { ripeFrom, ripeTo, verdict, fruit } = result;
  if (ripeFrom === null || ripeTo === null) return null;
  const basis = fruit.present ? 'fruitlets' : verdict === 'await' ? 'tipped' : 'tip-today';
  return { from: ripeFrom, to: ripeTo, basis };
}

function shiftedHeat(heat: GardenHeat, days: number): GardenHeat {
  return heat.kind === 'date' ? { ...heat, day: addDays(heat.day, days) } : heat;
}

function frostDates(stated: MonthDay | null, stat: FrostStat | undefined, days: number): FrostDates | null {
  if (stated !== null) return { on: later(stated, days), from: null, to: null };
  if (stat?.p50 == null) return null;
  const { p10, p50, p90 } = stat;
  return {
    on: later(p50, days),
    from: p10 === null ? null : later(p10, days),
    to: p90 === null ? null : later(p90, days),
  };
}

function later(of: MonthDay, days: number): MonthDay {
  // A common year, so that no 29 February shifts the answer.
  return days === 0 ? of : monthDayOf(addDays(inYear(of, 2001), days));
}
