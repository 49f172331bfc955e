import type { Day } from '../engine/day.ts';
import type { Crop, ObservationKind, WeightUnit } from '../engine/observation.ts';
import type { Hemisphere } from '../engine/season.ts';

/** What the reader of a message must know besides its text. Nothing in `notes/` looks anywhere else. */
export interface Setting {
  /** The member's own day; whoever calls has resolved their zone. */
  readonly today: Day;
  readonly hemisphere: Hemisphere;
  readonly order: DateOrder;
  readonly roster: readonly RosterTree[];
  /** Trees that the message answers about (a reply to a nudge or question), by id; a bare clause is theirs. */
  readonly about?: readonly number[];
}

export type DateOrder = 'MDY' | 'DMY';

export interface RosterTree {
  readonly id: number;
  readonly name: string;
  /** As the member typed it or as the catalogue has it; null when the cultivar is not known. */
  readonly cultivar: string | null;
}

/** Which occurrence of a date without a year is meant. */
export type Lean = 'past' | 'future';

/** A phrase understood as days, both ends inclusive. One day: `from === to`. */
export interface DateReading {
  readonly from: Day;
  readonly to: Day;
  /** What the words did not say and the reader took for granted, e.g. `['year']`; empty when all is certain. */
  readonly assumed: readonly ('year' | 'month' | 'part' | 'order')[];
}

/** A date phrase inside a longer text. */
export interface DateHit extends DateReading {
  readonly index: number;
  readonly length: number;
  readonly text: string;
}

/** One thing a note says. `tree` is a roster id, or null for the garden as a whole. */
export interface ReadEvent {
  readonly tree: number | null;
  readonly kind: ObservationKind;
  readonly on: Day;
  readonly count?: number;
  readonly unit?: WeightUnit;
  readonly crop?: Crop;
}

/** The one question a note leaves open, and what an answer has to fill in. */
export interface Ask {
  readonly what: 'tree' | 'kind' | 'date' | 'crop';
  /** For 'tree': the roster trees that may be meant, best first, at most five; empty when none fits. */
  readonly trees: readonly number[];
  /** For 'kind': what may have been meant, most likely first. */
  readonly kinds: readonly ObservationKind[];
  /** For 'date': the phrase that could not be taken, as typed. */
  readonly phrase?: string;
  /** The events that wait for the answer, with whatever is known of them. */
  readonly open: readonly OpenEvent[];
}

/** An event with the asked-for part missing. */
export interface OpenEvent {
  readonly tree?: number | null;
  readonly kind?: ObservationKind;
  readonly on?: Day;
  readonly count?: number;
  readonly unit?: WeightUnit;
  readonly crop?: Crop;
}

/** A note, read: what is sure, and at most one question. */
export interface NoteReading {
  readonly logged: readonly ReadEvent[];
  readonly ask: Ask | null;
}

export type Intent = 'tip' | 'ripe-when' | 'due' | 'roundup' | 'help' | 'note';

/** What a message to the assistant wants. */
export interface QuestionReading {
  readonly intent: Intent;
  readonly tree: number | null;
  /** Set when the intent needs a tree and the words do not settle on one. */
  readonly ask: 'tree' | null;
  /** The candidates for that question, best first, at most five. */
  readonly trees: readonly number[];
}

/** "no, the tall one" / "that was saturday": what it changes of the note before. */
export interface Correction {
  readonly tree?: number;
  readonly on?: Day;
  readonly count?: number;
  readonly unit?: WeightUnit;
  readonly kind?: ObservationKind;
  readonly crop?: Crop;
  /** What is wrong, where it is said ("alma, not king"): only events that have it are meant. */
  readonly instead?: Pick<Partial<ReadEvent>, 'tree' | 'on' | 'count' | 'kind' | 'crop'>;
  /** Trees of which the same is true ("both", "and the little one"); nothing else is changed then. */
  readonly also?: readonly number[];
}
