import { addDays, type Day, dayOf, earlier, later, monthOf, toEpochDays, yearOf } from '../engine/day.ts';

/** Days along the width of a picture. */
export interface TimeScale {
  readonly from: Day;
  readonly to: Day;
  /** Pixels of `from` and `to`. */
  readonly left: number;
  readonly right: number;
}

/** Pixels from the left edge of the picture; days outside the scale are drawn at its nearer end. */
export function xOf(scale: TimeScale, on: Day): number {
  const { from, to, left, right } = scale;
  const first = toEpochDays(from);
  const share = (toEpochDays(later(from, earlier(to, on))) - first) / (toEpochDays(to) - first);
  return left + share * (right - left);
}

export function isOn(scale: TimeScale, on: Day): boolean {
  return on >= scale.from && on <= scale.to;
}

/** First days of the months that begin on the scale. */
export function monthStarts({ from, to }: TimeScale): Day[] {
  const starts: Day[] = [];
  for (let at = firstOfMonth(from); at <= to; at = nextMonth(at)) if (at >= from) starts.push(at);
  return starts;
}

/** Whole months around these days, at least `months` of them, none outside the season. */
export function monthsAround(
  days: readonly Day[],
  months: number,
  season: Pick<TimeScale, 'from' | 'to'>,
): Pick<TimeScale, 'from' | 'to'> {
  const [first] = days;
  if (first === undefined) return { from: season.from, to: season.to };
  let from = firstOfMonth(later(season.from, days.reduce(earlier, first)));
  let end = nextMonth(firstOfMonth(earlier(season.to, days.reduce(later, first))));
  // Grown by turns, so that what there is stays in the middle.
  for (let turn = 0; monthsBetween(from, end) < months; turn++) {
    if (turn % 2 === 0 && end <= season.to) end = nextMonth(end);
    else if (from > season.from) from = firstOfMonth(addDays(from, -1));
    else if (end <= season.to) end = nextMonth(end);
    else break;
  }
  return { from, to: addDays(end, -1) };
}

export function firstOfMonth(of: Day): Day {
  return `${of.slice(0, 8)}01` as Day;
}

export function nextMonth(of: Day): Day {
  const month = monthOf(of);
  return (month === 12 ? dayOf(yearOf(of) + 1, 1, 1) : dayOf(yearOf(of), month + 1, 1)) ?? of;
}

function monthsBetween(from: Day, to: Day): number {
  return (yearOf(to) - yearOf(from)) * 12 + monthOf(to) - monthOf(from);
}
