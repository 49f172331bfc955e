import type { Day } from '../engine/day.ts';
import type { GardenHeat } from '../engine/garden-season.ts';
import type { Flag } from './flags.ts';
import type { FrostDays } from './frost-days.ts';
import { type Box, hatch, type Mark, rect } from './marks.ts';
import { DASH } from './palette.ts';
import type { DateOrder } from './picture.ts';
import { isOn, type TimeScale, xOf } from './time-scale.ts';
import { shortDate } from './words.ts';

/** The days every picture of a season marks in the same way. */
export interface SeasonDates {
  readonly heat: GardenHeat;
  readonly lastFrost: FrostDays | null;
  readonly firstFrost: FrostDays | null;
  readonly today: Day | null;
  /** Of one tree. */
  readonly decisionDate?: Day | null;
}

const FROST_STYLE = { ink: 'frost', width: 5, dash: DASH.frost } as const;

/** A flag for each date that is known and lies on the scale. */
export function dateFlags(of: SeasonDates, scale: TimeScale, dates: DateOrder): readonly Flag[] {
  const flag = (words: string, on: Day | null | undefined, style: Flag['style']): Flag[] =>
    on && isOn(scale, on) ? [{ x: xOf(scale, on), words: `${words} ${shortDate(on, dates)}`, style }] : [];
  return [
    ...flag('last frost', of.lastFrost?.on, FROST_STYLE),
    ...flag('decision', of.decisionDate, { ink: 'fig', width: 4, dash: DASH.decision }),
    ...flag('heat end', of.heat.kind === 'date' ? of.heat.day : null, { ink: 'heat', width: 6 }),
    ...flag('first frost', of.firstFrost?.on, FROST_STYLE),
    ...flag('today', of.today, { ink: 'ink', width: 3, dash: DASH.today }),
  ];
}

/** Where the frosts of eight seasons in ten fell, as strips from `top` to `bottom`. */
export function frostStrips(of: SeasonDates, scale: TimeScale, top: number, bottom: number): readonly Mark[] {
  return spreadFrosts(of).flatMap(({ from, to }) =>
    frostHatch({ left: xOf(scale, from), right: xOf(scale, to), top, bottom }),
  );
}

/** The frosts of which more than one day is known. */
export function spreadFrosts({ lastFrost, firstFrost }: SeasonDates): readonly FrostDays[] {
  return [lastFrost, firstFrost].flatMap((frost) => (frost && frost.from < frost.to ? [frost] : []));
}

export function frostHatch(box: Box): readonly Mark[] {
  return [
    rect(box, { fill: 'frostFill', ink: 'frost', width: 2 }),
    hatch(box, 14, { ink: 'frost', width: 2 }),
  ];
}
