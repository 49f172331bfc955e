import { tidy } from './names.ts';
import { first, last, MOST_ROWS } from './roundup-drawing.ts';
import type { CultivarSeason, RoundupPictureInput, TipResult } from './roundup-input.ts';
import { counted, shortDate, shortDates } from './words.ts';

/** A roundup picture in sentences; cultivars that the picture leaves out are only counted. */
export function roundupAlt(input: RoundupPictureInput): string {
  const { week, today, dates, cultivars, season } = input;
  const rows = cultivars.slice(0, MOST_ROWS);
  const more = cultivars.length - rows.length;
  const isNow = !week && today && today >= season.from && today <= season.to;
  return [
    `${tidy(input.club)}. ${tidy(input.heading)}.`,
    ...(week ? [`The week ${shortDates(week.from, week.to, dates)} is marked.`] : []),
    ...(isNow ? [`Today is ${shortDate(today, dates)}.`] : []),
    ...rows.map((row) => rowInWords(row, input)),
    ...(rows.length === 0 ? ['Nothing logged yet.'] : []),
    ...(more > 0 ? [`And ${counted(more, 'more cultivar')}.`] : []),
  ].join(' ');
}

function rowInWords(row: CultivarSeason, { dates }: RoundupPictureInput): string {
  const { fruitlets, picks, figs, tips } = row;
  const firstSeen = first(fruitlets);
  const lastSeen = last(fruitlets);
  const firstPick = first(picks);
  const lastPick = last(picks);
  const parts = [
    ...(firstSeen && lastSeen
      ? [`fruitlets on ${fruitlets.length}, ${shortDates(firstSeen, lastSeen, dates)}`]
      : []),
    ...(tips.length > 0 ? [tipsInSentence(tips, dates)] : []),
    ...(firstPick && lastPick ? [`picked ${shortDates(firstPick, lastPick, dates)}`] : []),
    ...(figs !== null && figs > 0 ? [counted(figs, 'fig')] : []),
  ];
  const facts = parts.length > 0 ? parts.join(', ') : 'nothing logged yet';
  return `${tidy(row.cultivar)}: ${counted(row.trees, 'tree')}, ${facts}.`;
}

function tipsInSentence(tips: readonly TipResult[], dates: RoundupPictureInput['dates']): string {
  const days = tips.map(({ on }) => on);
  const from = first(days);
  const to = last(days);
  const count = (worked: boolean | null) => tips.filter((tip) => tip.worked === worked).length;
  const results = [
    ...(count(true) > 0 ? [`${count(true)} worked`] : []),
    ...(count(false) > 0 ? [`${count(false)} failed`] : []),
    ...(count(null) > 0 ? [`${count(null)} open`] : []),
  ];
  return `${counted(tips.length, 'tip')} ${from && to ? shortDates(from, to, dates) : ''} (${results.join(', ')})`;
}
