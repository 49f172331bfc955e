import { type Day, yearOf } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import type { DateOrder, ReadEvent } from '../notes/contract.ts';
import { countWords, dayWords, distanceWords, fullDayWords } from './words.ts';

/** What a button or a question calls each kind. */
export const KIND_LABELS: Readonly<Record<ObservationKind, string>> = {
  'leafed-out': 'Leafed out',
  'buds-single': 'Single buds',
  'buds-double': 'Double buds',
  fruitlets: 'Fruitlets',
  'no-fruitlets': 'No fruitlets',
  tipped: 'Tipped',
  branched: 'Only branches',
  dropped: 'Dropped all its figs',
  ripening: 'Ripening',
  picked: 'Picked',
  frost: 'Frost',
  trouble: 'Trouble',
  care: 'Care',
  pruned: 'Pruned',
  cuttings: 'Cuttings taken',
  rooted: 'Cuttings rooted',
  dormant: 'Dormant',
  remark: 'A remark',
};

/** `Alma: 3 fruitlets`, `the garden: frost`, with its day where that is not today. */
export function eventWords(event: ReadEvent, treeName: string | null, today: Day, order: DateOrder): string {
  const day = yearOf(event.on) === yearOf(today) ? dayWords(event.on, order) : fullDayWords(event.on, order);
  const when = event.on === today ? '' : `, ${day} (${distanceWords(today, event.on)})`;
  return `${treeName ?? 'The garden'}: ${whatHappened(event)}${when}`;
}

export function whatHappened(event: ReadEvent): string {
  const { kind, count } = event;
  const breba = event.crop === 'breba';
  switch (kind) {
    case 'fruitlets':
      if (count === undefined) return breba ? 'brebas' : 'fruitlets';
      return breba ? countWords(count, 'breba') : countWords(count, 'fruitlet');
    case 'no-fruitlets':
      return breba ? 'no brebas' : 'no fruitlets';
    case 'tipped':
      return count === undefined ? 'tipped' : `${countWords(count, 'shoot')} tipped`;
    case 'dropped':
      return `${breba ? 'brebas' : 'all figs'} dropped`;
    case 'ripening':
      return count === undefined ? `${breba ? 'brebas' : 'figs'} ripening` : `${figs(event)} ripening`;
    case 'picked':
      return count === undefined ? `${breba ? 'brebas' : 'figs'} picked` : `${figs(event)} picked`;
    case 'cuttings':
      return count === undefined ? 'cuttings taken' : `${countWords(count, 'cutting')} taken`;
    case 'rooted':
      return count === undefined ? 'cuttings rooted' : `${countWords(count, 'cutting')} rooted`;
    case 'branched':
      return 'only branches after the tip';
    case 'remark':
      return 'kept as a remark';
    default:
      return KIND_LABELS[kind].toLowerCase();
  }
}

function figs({ count = 0, unit, crop }: ReadEvent): string {
  const what = crop === 'breba' ? 'breba' : 'fig';
  return unit === undefined ? countWords(count, what) : `${count} ${unit} of ${what}s`;
}

/** The machine's view of what was logged. */
export function eventData(event: ReadEvent, treeName: string | null): Record<string, unknown> {
  return {
    tree: treeName,
    kind: event.kind,
    on: event.on,
    ...(event.count === undefined ? {} : { count: event.count }),
    ...(event.unit === undefined ? {} : { unit: event.unit }),
    ...(event.crop === undefined ? {} : { crop: event.crop }),
  };
}
