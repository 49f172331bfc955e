import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import { addDays, type Day } from '../engine/day.ts';
import type { NudgeKind } from '../engine/milestones.ts';
import type { ReplyFile } from './reply.ts';

/** A date for a calendar. */
export interface CalendarItem {
  readonly treeId: number;
  readonly tree: string;
  /** Whose tree it is, in a calendar of the whole club. */
  readonly member?: string;
  readonly kind: NudgeKind;
  readonly season: string;
  readonly on: Day;
}

const SUMMARIES: Readonly<Record<NudgeKind, string>> = {
  'heads-up': 'two weeks to the decision',
  decision: 'tip it or not?',
  'second-look': 'look again after the tip',
  'ripe-watch': 'first ripe figs from about now',
  frost: 'two weeks to the first frost',
  dormant: 'dormant: cuttings, pruning, cover',
};

/**
 * The dates as an iCalendar file (RFC 5545) of all-day events. A day is the same day in every zone, so it has
 * none. A tree's date keeps its UID through the season, so that a file taken later moves it.
 */
export function calendarFile(items: readonly CalendarItem[], name: string, now: Date): ReplyFile {
  const calendar = ical({ name, prodId: { company: 'Ostiole', product: 'due dates', language: 'EN' } });
  calendar.method(ICalCalendarMethod.PUBLISH);
  for (const { treeId, tree, member, kind, season, on } of items) {
    calendar.createEvent({
      id: `${treeId}-${kind}-${season.replace('/', '-')}@ostiole`,
      // Read by its UTC parts: an all-day event is written without a zone.
      start: midnight(on),
      end: midnight(addDays(on, 1)),
      allDay: true,
      stamp: now,
      summary: `${member === undefined ? '' : `${member}’s `}${tree}: ${SUMMARIES[kind]}`,
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  return { name: 'fig-dates.ics', bytes: new TextEncoder().encode(calendar.toString()) };
}

function midnight(on: Day): Date {
  return new Date(`${on}T00:00:00Z`);
}
