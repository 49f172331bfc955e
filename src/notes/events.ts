import { addDays, type Day, daysBetween } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import { seasonOf } from '../engine/season.ts';
import type { OpenEvent, Setting } from './contract.ts';
import { countFor } from './counts.ts';
import { leaveOpen } from './draft.ts';
import type { Hit } from './hits.ts';
import type { Saying } from './sayings.ts';

/** What may be noted of the winter before, since last autumn, and still belongs to this season (RULES §3). */
const WINTER_KINDS: ReadonlySet<ObservationKind> = new Set([
  'dormant',
  'pruned',
  'cuttings',
  'rooted',
  'care',
  'frost',
]);
/** Autumn begins in September, in the south in March: four months before the season's first day. */
const AUTUMN_DAYS = 122;

export type DateOutcome =
  | { readonly on: Day }
  | { readonly ask: string }
  | { readonly past: true }
  | { readonly plan: true };

/** The day an event of `kind` falls on, given the date phrase of its clause. */
export function placeDate(
  kind: ObservationKind,
  saying: Saying,
  inherited: Day | null,
  setting: Setting,
): DateOutcome {
  const { today, hemisphere } = setting;
  if (!saying.date) {
    if (saying.vague && !isLoose(saying.vague.typed, kind)) return { ask: saying.vague.typed };
    const on = inherited ?? today;
    return isOfAnotherSeason(kind, on, setting) ? { past: true } : { on };
  }
  const hit = saying.date.date;
  if (!hit) return { on: today };
  if (hit.problem) return { ask: hit.text };
  if (hit.on > today) {
    return { ask: hit.text };
  }
  const season = seasonOf(today, hemisphere);
  if (hit.on >= season.from) return { on: hit.on };
  if (WINTER_KINDS.has(kind) && hit.on >= addDays(season.from, -AUTUMN_DAYS)) return { on: hit.on };
  // A year that was not said: it is this year's day that was meant, and that is still to come.
  return hit.assumed.includes('year') ? { ask: hit.text } : { past: true };
}

/** Around the turn of a year last season's late figs are still news. */
const STILL_NEWS_DAYS = 120;

/** "remember last july? 50 on it": what a tree did in another growing season decides nothing in this one. */
export function isOfAnotherSeason(kind: ObservationKind, on: Day, { today, hemisphere }: Setting): boolean {
  return (
    daysBetween(on, today) > STILL_NEWS_DAYS &&
    !WINTER_KINDS.has(kind) &&
    kind !== 'trouble' &&
    kind !== 'remark' &&
    on < seasonOf(today, hemisphere).from
  );
}

function isLoose(phrase: string, kind: ObservationKind): boolean {
  return /lately|recently/i.test(phrase) && (kind === 'trouble' || kind === 'ripening' || kind === 'remark');
}

const CROP_KINDS: ReadonlySet<ObservationKind> = new Set([
  'fruitlets',
  'no-fruitlets',
  'ripening',
  'dropped',
  'picked',
]);

/** The event a hit stands for, without tree and day. */
export function eventOf(kind: ObservationKind, hit: Hit, saying: Saying, breba: boolean): OpenEvent {
  const count = saying.count
    ? { count: saying.count.value, unit: saying.count.unit ?? undefined }
    : countFor(kind, hit, saying.items, saying.hits);
  const crop = breba && CROP_KINDS.has(kind) ? 'breba' : undefined;
  return leaveOpen({ count: count?.count, unit: count?.unit, crop }, kind);
}
