import type { MonthDay } from '../engine/day.ts';
import type { HeatEnd } from '../engine/heat.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { Member } from '../records/schema.ts';
import { listWords, monthDayWords } from './words.ts';

/** What new readings did to the dates the record gives; nothing where there was no record before. */
export function changedSeason(before: Member, after: Member, order: DateOrder): string[] {
  const [was, is] = [before.summary, after.summary];
  if (was === null || is === null || was.seasons === 0) return [];
  const changes = [
    change('heat end', heatWords(was.heat, order), heatWords(is.heat, order)),
    change('first frost', frostDay(was.frost.first.p50, order), frostDay(is.frost.first.p50, order)),
    change('last frost', frostDay(was.frost.last.p50, order), frostDay(is.frost.last.p50, order)),
  ].filter((words) => words !== null);
  return [
    changes.length === 0
      ? 'The dates of your season stay as they were in the record.'
      : `In the record that moves ${listWords(changes)}.`,
  ];
}

function change(what: string, was: string, is: string): string | null {
  return was === is ? null : `${what} from ${was} to ${is}`;
}

function heatWords(heat: HeatEnd, order: DateOrder): string {
  switch (heat.kind) {
    case 'date':
      return monthDayWords(heat.heatEnd, order);
    case 'never-ends':
      return '“never”';
    case 'none':
      return '“no reliable heat”';
  }
}

function frostDay(of: MonthDay | null, order: DateOrder): string {
  return of === null ? '“none”' : monthDayWords(of, order);
}
