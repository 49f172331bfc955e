import type { Day } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import type { Ask, OpenEvent, ReadEvent, Setting } from './contract.ts';
import type { Subject } from './subjects.ts';

/** An event that lacks something, with what it lacks. */
export interface Pending {
  readonly what: Ask['what'];
  readonly trees: readonly number[];
  readonly kinds: readonly ObservationKind[];
  readonly phrase?: string;
  readonly open: OpenEvent;
}

/** An event with what settling has to know of it: its day was not said, or it is of another's tree and stays. */
type Drafted = ReadEvent & { readonly assumed?: boolean; readonly kept?: boolean };

/** Everything a message gave rise to, before it is settled. */
export interface Draft {
  readonly logged: Drafted[];
  readonly pending: Pending[];
}

/** An open event with what it lacked; what was not said (number, unit, crop) is left out. */
export function complete(
  { count, unit, crop }: Pick<OpenEvent, 'count' | 'unit' | 'crop'>,
  tree: number | null,
  kind: ObservationKind,
  on: Day,
  assumed = false,
): Drafted {
  // Set one by one and not spread: a spread into a literal costs more than all the rest of an event.
  const event: { -readonly [K in keyof Drafted]: Drafted[K] } = { tree, kind, on };
  if (count !== undefined) event.count = count;
  if (unit !== undefined) event.unit = unit;
  if (crop !== undefined) event.crop = crop;
  if (assumed) event.assumed = true;
  return event;
}

/** An event that lacks something: what is known of it, set one by one for the same reason. */
export function leaveOpen(
  { count, unit, crop }: Pick<OpenEvent, 'count' | 'unit' | 'crop'>,
  kind: ObservationKind,
  on?: Day,
  tree?: number | null,
): OpenEvent {
  const open: { -readonly [K in keyof OpenEvent]: OpenEvent[K] } = { kind };
  if (count !== undefined) open.count = count;
  if (unit !== undefined) open.unit = unit;
  if (crop !== undefined) open.crop = crop;
  if (on !== undefined) open.on = on;
  if (tree !== undefined) open.tree = tree;
  return open;
}

const BUD_KINDS: readonly ObservationKind[] = [
  'fruitlets',
  'buds-single',
  'buds-double',
  'no-fruitlets',
  'remark',
];

/** A remark on each tree the clause is about. */
export function pushRemark(subject: Subject, setting: Setting, draft: Draft, kept = false): void {
  const { today } = setting;
  if (subject.others || (subject.mentions.length === 0 && !subject.unknown)) {
    draft.logged.push({ tree: null, kind: 'remark', on: today, ...(kept ? { kept } : {}) });
    return;
  }
  for (const mention of subject.mentions) {
    if (mention.ids.length === 1 || mention.all) {
      for (const tree of mention.ids) draft.logged.push({ tree, kind: 'remark', on: today });
    } else if (mention.ids.length === 0) {
      draft.logged.push({ tree: null, kind: 'remark', on: today });
    } else {
      draft.pending.push({
        what: 'tree',
        trees: mention.ids,
        kinds: [],
        open: { kind: 'remark', on: today },
      });
    }
  }
}

/** An event that lacks its kind, or its tree before that. */
export function pushPending(subject: Subject, draft: Draft, open: OpenEvent): void {
  if (subject.others) return;
  if (subject.mentions.length === 0) {
    draft.pending.push({ what: 'tree', trees: [], kinds: BUD_KINDS, open });
    return;
  }
  for (const mention of subject.mentions) {
    if (mention.ids.length === 1 || mention.all) {
      for (const tree of mention.ids)
        draft.pending.push({ what: 'kind', trees: [], kinds: BUD_KINDS, open: { ...open, tree } });
    } else draft.pending.push({ what: 'tree', trees: mention.ids, kinds: BUD_KINDS, open });
  }
}
