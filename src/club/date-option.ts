import type { Day } from '../engine/day.ts';
import { UserError } from '../errors.ts';
import type { DateOrder, Lean } from '../notes/contract.ts';
import { readDates } from '../notes/dates/index.ts';
import type { Context } from './context.ts';
import { fullDayWords } from './words.ts';

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

/** The days an option's words mean. Throws UserError when they mean none. */
export function readDateOption(context: Context, option: string, text: string, lean: Lean): Understood {
  const order = dateOrderOf(context);
  const today = todayOf(context);
  const reading = readDates(text, {
    today,
    hemisphere: context.member.hemisphere ?? 'N',
    order,
    lean,
  });
  if (reading === null) {
    const example = order === 'MDY' ? 'October 15' : '15 October';
    throw new UserError(
      'date-not-understood',
      `"${text}" is not a date that can be placed; type it like ${option}:${example} or ${option}:2026-10-15. Nothing was changed.`,
    );
  }
  return { option, text, from: reading.from, to: reading.to };
}

/** Says aloud a phrase that meant several days and which of them was taken. */
export function takenWords(understood: Understood, taken: Day, order: DateOrder): string | null {
  if (understood.from === understood.to) return null;
  const which = taken === understood.from ? 'earliest' : 'latest';
  return `"${understood.text}" was taken as ${fullDayWords(understood.from, order)} to ${fullDayWords(understood.to, order)}; the ${which} of these days counts.`;
}
