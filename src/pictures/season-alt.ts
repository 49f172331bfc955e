import { addDays, type Day, daysBetween } from '../engine/day.ts';
import { toCelsius } from '../engine/record-summary.ts';
import { datesInWords } from './alt-dates.ts';
import type { Highs } from './bands.ts';
import { tidy } from './names.ts';
import { type SeasonFacts, seasonDates } from './season-drawing.ts';
import type { SeasonPictureInput } from './season-input.ts';
import { monthStarts } from './time-scale.ts';
import { counted, inUnits, listed, shortDate, shortDates, shortMonth } from './words.ts';

/** A season picture in sentences. */
export function seasonAlt(input: SeasonPictureInput, facts: SeasonFacts): string {
  const { season, dates, units, mark } = input;
  const heading = `${tidy(input.garden)}, season ${season.label}${facts.highs ? `: daily highs in °${units}` : ''}.`;
  return [
    heading,
    ...datesInWords(seasonDates(input, facts), dates),
    ...decisionSentences(input, facts),
    facts.highs ? `Heat mark ${mark.value} °${mark.unit}.` : 'No temperatures: stated dates only.',
    ...(facts.highs ? [thisSeasonSentence(input, facts.highs), pastSentence(input, facts.highs)] : []),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function decisionSentences({ trees, dates }: SeasonPictureInput, { groups }: SeasonFacts): string[] {
  if (trees.length === 0) return [];
  const undated = trees.filter(({ decisionDate }) => !decisionDate).map(({ name }) => tidy(name));
  const rows = groups.map((group) => {
    const isOneDay = group.from === group.to;
    const names = group.trees.map(({ name, decisionDate, settled }) => {
      const extra = [
        ...(isOneDay || !decisionDate ? [] : [shortDate(decisionDate, dates)]),
        ...(settled ? ['nothing left to decide'] : []),
      ];
      return extra.length > 0 ? `${tidy(name)} (${extra.join(', ')})` : tidy(name);
    });
    return `${shortDates(group.from, group.to, dates)}: ${listed(names)}`;
  });
  return [
    rows.length > 0 ? `Decision dates: ${rows.join('; ')}.` : 'No decision dates.',
    undated.length > 0 ? `Without a date: ${listed(undated)}.` : '',
  ];
}

function thisSeasonSentence({ season, dates, units, mark }: SeasonPictureInput, highs: Highs): string {
  const seen = highs.thisSeason.flatMap((high, i) =>
    high === null ? [] : [{ on: addDays(season.from, i), high }],
  );
  const [first] = seen;
  const last = seen.at(-1);
  if (!first || !last) return `No highs of ${season.label} yet.`;
  const coldest = seen.reduce((a, b) => (b.high < a.high ? b : a));
  const hottest = seen.reduce((a, b) => (b.high > a.high ? b : a));
  const markC = Math.round(toCelsius(mark.value, mark.unit) * 10) / 10;
  const hot = seen.filter(({ high }) => high >= markC).length;
  const said = ({ on, high }: { on: Day; high: number }) =>
    `${Math.round(inUnits(high, units))}° on ${shortDate(on, dates)}`;
  return (
    `${season.label} from ${shortDate(first.on, dates)} to ${shortDate(last.on, dates)}: lowest high ${said(coldest)}, ` +
    `highest ${said(hottest)}, ${counted(hot, 'day')} at the mark or above.`
  );
}

function pastSentence({ season, units }: SeasonPictureInput, highs: Highs): string {
  if (highs.past.length === 0) return 'No past seasons.';
  const labels = highs.past.map(({ label }) => label);
  if (highs.bands.length === 0) return `Drawn singly beside it: ${listed(labels)}.`;
  const degrees = (celsius: number) => Math.round(inUnits(celsius, units));
  const scale = { from: season.from, to: season.to, left: 0, right: 1 };
  const months = monthStarts(scale).flatMap((start) => {
    const band = highs.bands[daysBetween(season.from, start) + 14];
    if (!band) return [];
    const { p10, p25, p50, p75, p90 } = band;
    const name = shortMonth(Number(start.slice(5, 7)));
    return [
      `${name} ${degrees(p50)} (${degrees(p25)} to ${degrees(p75)}; ${degrees(p10)} to ${degrees(p90)})`,
    ];
  });
  return (
    `${counted(labels.length, 'past season')}, ${labels[0]} to ${labels.at(-1)}; in mid-month the median high ` +
    `(half of the days; 8 days in 10): ${months.join(', ')}.`
  );
}
