import type { SeasonDates } from './dates-flags.ts';
import type { FrostDays } from './frost-days.ts';
import type { DateOrder } from './picture.ts';
import { shortDate, shortDates } from './words.ts';

/** The dates that every picture of a season marks, one sentence each; nothing for what is not known. */
export function datesInWords(of: SeasonDates, dates: DateOrder): readonly string[] {
  return [
    ...(of.decisionDate ? [`Decision date ${shortDate(of.decisionDate, dates)}.`] : []),
    heatInWords(of, dates),
    ...frostInWords('Last frost', of.lastFrost, dates),
    ...frostInWords('First frost', of.firstFrost, dates),
    ...(of.today ? [`Today is ${shortDate(of.today, dates)}.`] : []),
  ];
}

function heatInWords({ heat }: SeasonDates, dates: DateOrder): string {
  switch (heat.kind) {
    case 'date':
      return `Heat end ${shortDate(heat.day, dates)}${heat.basis === 'stated' ? ' (stated)' : ''}.`;
    case 'never-ends':
      return 'Heat does not end here.';
    case 'none':
      return 'No reliable heat at this mark.';
    case 'unknown':
      return 'Heat end not known.';
  }
}

function frostInWords(words: string, frost: FrostDays | null, dates: DateOrder): readonly string[] {
  if (!frost) return [];
  const spread =
    frost.from < frost.to ? `, in 8 seasons of 10 ${shortDates(frost.from, frost.to, dates)}` : '';
  return [`${words} ${shortDate(frost.on, dates)}${spread}.`];
}
