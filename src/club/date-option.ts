import type { Day } from '../engine/day.ts';
import { type Hemisphere, seasonOf } from '../engine/season.ts';
import { UserError } from '../errors.ts';
import type { DateOrder, Lean } from '../notes/contract.ts';
import { type PlacedReading, readDates } from '../notes/dates/index.ts';
import type { Context } from './context.ts';
import { dayWords, fullDayWords } from './words.ts';

/** How an option's words were taken; goes into `data.understood`. */
export interface Understood {
  readonly option: string;
  readonly text: string;
  readonly from: Day;
  readonly to: Day;
}

/** The order of the member's numeric dates: what they chose, else their platform's, else their units'. */
export function dateOrderOf(context: Pick<Context, 'member' | 'localeDates'>): DateOrder {
  const { dates, units } = context.member;
  return dates ?? context.localeDates ?? (units === 'C' ? 'DMY' : 'MDY');
}

/** The member's own day. */
export function todayOf(context: Pick<Context, 'clock' | 'member' | 'club'>): Day {
  return context.clock.today(context.member.zone ?? context.club.zone);
}

/** The days in the past that an option's words mean. Throws UserError when they mean none. */
export function readPastOption(context: Context, option: string, text: string): Understood {
  return understoodAs(option, text, place(context, text, 'past') ?? fail(context, option, text));
}

/** The same with the one day that a note takes from them ("early March": the 5th). */
export function readNoteDay(
  context: Context,
  option: string,
  text: string,
): { understood: Understood; on: Day } {
  const reading = place(context, text, 'past') ?? fail(context, option, text);
  return { understood: understoodAs(option, text, reading), on: reading.on };
}

/**
 * The days of the season at hand that an option's words mean, also where they have gone by. Throws UserError
 * when they mean none. `hemisphereOf` tells whose season from the days themselves.
 */
export function readSeasonOption(
  context: Context,
  option: string,
  text: string,
  hemisphereOf: (from: Day) => Hemisphere,
): Understood {
  const coming = place(context, text, 'future') ?? fail(context, option, text);
  const season = seasonOf(todayOf(context), hemisphereOf(coming.from));
  const past =
    coming.from > season.to && coming.assumed.includes('year') ? place(context, text, 'past') : null;
  return understoodAs(option, text, past !== null && past.from >= season.from ? past : coming);
}

function place(context: Context, text: string, lean: Lean): PlacedReading | null {
  const hemisphere = context.member.hemisphere ?? 'N';
  return readDates(text, { today: todayOf(context), hemisphere, order: dateOrderOf(context), lean });
}

function understoodAs(option: string, text: string, { from, to }: PlacedReading): Understood {
  return { option, text, from, to };
}

function fail(context: Context, option: string, text: string): never {
  const example = dateOrderOf(context) === 'MDY' ? 'October 15' : '15 October';
  throw new UserError(
    'date-not-understood',
    `"${text}" is not a date that can be placed; type it like ${option}:${example} or ${option}:2026-10-15. Nothing was changed.`,
  );
}

/** Says aloud a phrase that meant several days and which of them was taken. */
export function takenWords(understood: Understood, taken: Day, order: DateOrder): string | null {
  const { text, from, to } = understood;
  if (from === to) return null;
  const days = `"${text}" was taken as ${fullDayWords(from, order)} to ${fullDayWords(to, order)}`;
  if (taken === from) return `${days}; the earliest of these days counts.`;
  if (taken === to) return `${days}; the latest of these days counts.`;
  return `${days}; ${dayWords(taken, order)} is put down for them.`;
}
