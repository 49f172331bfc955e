import type { GardenFacts } from '../engine/garden-season.ts';
import type { HeatMark } from '../engine/record-summary.ts';
import type { Hemisphere } from '../engine/season.ts';
import type { Club, Member } from './schema.ts';

/** Usual marks of the trade: highs of 80 °F; 27 °C where people think in °C. */
const USUAL_MARK: Readonly<Record<'F' | 'C', number>> = { F: 80, C: 27 };

export function markOf(member: Pick<Member, 'units' | 'heatMark'>): HeatMark {
  return { value: member.heatMark ?? USUAL_MARK[member.units], unit: member.units };
}

export function hemisphereOf(member: Pick<Member, 'hemisphere'>): Hemisphere {
  return member.hemisphere ?? 'N';
}

export function zoneOf(member: Pick<Member, 'zone'>, club: Pick<Club, 'zone'>): string {
  return member.zone ?? club.zone;
}

export function gardenFactsOf(member: Member): GardenFacts {
  return {
    statedHeatEnd: member.heatEnd,
    statedFirstFrost: member.firstFrost,
    statedLastFrost: member.lastFrost,
    caution: member.cautionDays,
    summary: member.summary,
  };
}

/** Whether anything is known of the season: a stated heat end or a record with readings. */
export function knowsSeason(member: Pick<Member, 'heatEnd' | 'summary'>): boolean {
  return member.heatEnd !== null || (member.summary !== null && member.summary.seasons > 0);
}
