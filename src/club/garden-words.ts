import type { Day, MonthDay } from '../engine/day.ts';
import type { FrostStat } from '../engine/frost.ts';
import { gardenSeasonOf } from '../engine/garden-season.ts';
import { FEW_SEASONS, type RecordSummary } from '../engine/record-summary.ts';
import { type Season, seasonOf } from '../engine/season.ts';
import type { DateOrder } from '../notes/contract.ts';
import { gardenFactsOf, hemisphereOf, markOf, zoneOf } from '../records/garden.ts';
import type { Club, Member } from '../records/schema.ts';
import { OVERWINTER_WORDS } from './cool-summer-words.ts';
import type { Field } from './reply.ts';
import { countWords, dayWords, listWords, monthDayWords } from './words.ts';

/** A garden's season in sentences. */
export function gardenStory(member: Member, today: Day, order: DateOrder): string {
  const season = seasonOf(today, hemisphereOf(member));
  const { heat } = gardenSeasonOf(gardenFactsOf(member), season);
  const mark = markOf(member);
  const high = `${mark.value} °${mark.unit}`;
  switch (heat.kind) {
    case 'unknown':
      return `Your heat end is not known yet. Say the last day on which highs of ${high} are still usual, for example /garden set heat_end:${order === 'MDY' ? 'October 15' : '15 October'}, or have it worked out with /garden weather.`;
    case 'date': {
      const basis =
        heat.basis === 'stated'
          ? `Your heat ends on ${dayWords(heat.day, order)}, as you said`
          : `By your record, highs of ${high} are reliable until ${dayWords(heat.day, order)}`;
      return [
        `${basis}; decision dates are counted back from there.`,
        ...disagreement(member, order),
        ...recordDoubts(member.summary, season),
      ].join(' ');
    }
    case 'never-ends':
      return [
        `By your record, highs of ${high} never end, so no tree needs a decision date.`,
        ...recordDoubts(member.summary, season),
      ].join(' ');
    case 'none':
      return [
        `Your record shows no time of the year when at least half of the days reach ${high}, so there is no reliable heat to count back from and no date is made up.`,
        `A lower mark can be set with /garden set heat_mark:. ${OVERWINTER_WORDS}`,
        ...recordDoubts(member.summary, season),
      ].join(' ');
  }
}

/** What the record says where the member said otherwise. */
function disagreement(member: Member, order: DateOrder): string[] {
  const heat = member.summary?.heat;
  if (member.heatEnd === null || heat === undefined || heat.greatestShare === null) return [];
  const follow = 'to follow it type /garden set heat_end:record.';
  switch (heat.kind) {
    case 'date':
      return heat.heatEnd === member.heatEnd
        ? []
        : [`The weather record says ${monthDayWords(heat.heatEnd, order)}; ${follow}`];
    case 'never-ends':
      return [`By the weather record it never ends; ${follow}`];
    case 'none':
      return [`The weather record shows no reliable heat at that mark; ${follow}`];
  }
}

function recordDoubts(summary: RecordSummary | null, running: Season): string[] {
  if (summary === null || summary.seasons === 0) return [];
  const doubts: string[] = [];
  if (summary.seasons < FEW_SEASONS) {
    doubts.push(`That rests on ${countWords(summary.seasons, 'season')} only, so take it with care.`);
  }
  // The season that is running has not had its days yet.
  const labels = summary.gaps.map((gap) => gap.season).filter((label) => label !== running.label);
  if (labels.length > 0) {
    const shown = labels.length > 6 ? `${labels.length} seasons` : listWords(labels);
    doubts.push(
      `More than a tenth of the days are missing in ${shown}; missing days were left out, not made up.`,
    );
  }
  return doubts;
}

export function gardenFields(member: Member, club: Club, order: DateOrder): Field[] {
  const mark = markOf(member);
  const { summary } = member;
  const fields: Field[] = [];
  if (member.place !== null) fields.push({ name: 'Place', value: member.place });
  fields.push({ name: 'Time zone', value: zoneOf(member, club) });
  fields.push({ name: 'Heat mark', value: `${mark.value} °${mark.unit}` });
  fields.push({ name: 'First frost', value: frostWords(member.firstFrost, summary?.frost.first, order) });
  fields.push({ name: 'Last frost', value: frostWords(member.lastFrost, summary?.frost.last, order) });
  if (summary !== null && summary.seasons > 0) {
    fields.push({
      name: 'Record',
      value: `${countWords(summary.seasons, 'season')}, ${summary.from?.slice(0, 4)}–${summary.to?.slice(0, 4)}`,
    });
  }
  if (member.cautionDays > 0) fields.push({ name: 'Caution', value: countWords(member.cautionDays, 'day') });
  fields.push({ name: 'Nudges', value: nudgeWords(member) });
  return fields;
}

function frostWords(stated: MonthDay | null, stat: FrostStat | undefined, order: DateOrder): string {
  if (stated !== null) {
    const recorded = stat?.p50 ?? null;
    const record =
      recorded === null || recorded === stated ? '' : ` (the record: ${monthDayWords(recorded, order)})`;
    return `${monthDayWords(stated, order)}, as you said${record}`;
  }
  if (stat === undefined || stat.seasons === 0) return 'not known';
  if (stat.p50 === null || stat.p10 === null || stat.p90 === null)
    return `none in ${countWords(stat.seasons, 'season')}`;
  const without = stat.none > 0 ? `; none in ${stat.none} of them` : '';
  return `${monthDayWords(stat.p50, order)} in the middle, ${monthDayWords(stat.p10, order)} to ${monthDayWords(stat.p90, order)} in eight of ten (${countWords(stat.seasons, 'season')}${without})`;
}

function nudgeWords(member: Member): string {
  if (member.nudgeWay === 'off') return 'off';
  const where = member.nudgeWay === 'channel' ? 'in the channel' : 'by direct message';
  return `${where} at ${String(member.nudgeHour).padStart(2, '0')}:00${member.rule === 'outlook' ? ', by the outlook' : ''}`;
}

/** The machine's view of a garden; days without year as `MM-DD`. */
export function gardenData(member: Member, club: Club): Record<string, unknown> {
  const { summary } = member;
  const recorded = summary?.heat.kind === 'date' ? summary.heat.heatEnd : null;
  const heatEnd = member.heatEnd ?? recorded;
  const heatKind =
    member.heatEnd === null && summary !== null && summary.seasons > 0 ? summary.heat.kind : undefined;
  return {
    heatEnd,
    basis: member.heatEnd !== null ? 'stated' : summary !== null && summary.seasons > 0 ? 'record' : null,
    ...(heatKind === undefined || heatKind === 'date' ? {} : { heat: heatKind }),
    mark: markOf(member),
    seasons: summary?.seasons ?? 0,
    frost: {
      first: frostData(member.firstFrost, summary?.frost.first),
      last: frostData(member.lastFrost, summary?.frost.last),
    },
    zone: zoneOf(member, club),
    hemisphere: hemisphereOf(member),
    ...(member.place === null ? {} : { place: member.place }),
    ...(member.lat === null ? {} : { lat: member.lat, lon: member.lon }),
  };
}

function frostData(stated: MonthDay | null, stat: FrostStat | undefined) {
  if (stated !== null) return { p10: null, p50: stated, p90: null, none: 0, stated: true };
  return { p10: stat?.p10 ?? null, p50: stat?.p50 ?? null, p90: stat?.p90 ?? null, none: stat?.none ?? 0 };
}
